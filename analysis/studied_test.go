package analysis

import (
	"testing"

	"foamfield/analysis/belief"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/trial"
)

// studied is a log's study up to the search.
func studied(t *testing.T, log *trial.Log, set Settings) *study {
	t.Helper()
	s := &study{log: log, want: targets(log, set), seed: 1, tradeSigns: !set.FreeSigns}
	s.out = &result.Results{Targets: s.want, Batch: batch(log, set)}
	var err error
	if s.Surface, err = surface.Of(log, s.want, s.out.Batch.ScaleStepGrams); err != nil {
		t.Fatal(err)
	}
	if s.bel, err = belief.Of(s.Surface, s.want, s.seed, s.tradeSigns); err != nil {
		t.Fatal(err)
	}
	s.links, s.chain = s.bel.Links, s.bel.Chain
	return s
}
