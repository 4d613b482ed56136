package analysis

import (
	"foamfield/analysis/belief"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/trial"
)

// study is one run in the making: the log on one side, the results on the other.
type study struct {
	log  *trial.Log
	want result.Targets
	out  *result.Results
	*surface.Surface
	bel    *belief.Belief
	chain  *region.Chain
	links  []belief.Link // what the chain's links were fitted on
	search *region.Search
	draws  *region.Draws
	seed   uint64

	tradeSigns bool
}
