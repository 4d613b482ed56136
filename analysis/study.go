package analysis

import (
	"math/rand/v2"

	"foamfield/analysis/latent"
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
	daySD    float64 // added to the scatter of numbers where the log cannot show it
	chain    *region.Chain
	links    []link        // what the chain's links were fitted on
	declared []link        // results beside the chain that were fitted
	fitted   []*latent.Fit // behind each of out.Fits, nil for none of a number
	search   *region.Search
	draws    *region.Draws
	seed     uint64

	tradeSigns bool
}

// stream is an own random stream for one purpose, so that a change in one place
// moves no other number.
func (s *study) stream(purpose uint64) *rand.Rand {
	return rand.New(rand.NewPCG(s.seed, purpose))
}

const (
	streamModel  = 1 << 8 // plus the outcome's place in the chain
	streamDraws  = 2 << 8
	streamPrior  = 3 << 8
	streamWidths = 4 << 8
)
