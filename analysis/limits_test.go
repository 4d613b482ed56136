package analysis

import (
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/thorough"
)

// No start passes a use limit that the kitchen entered, at its rounded grams; one that
// nothing keeps leaves no start, and the reason says so.
func TestStartsKeepTheKitchensLimits(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	most := func(r *result.Results, name string) (percent float64) {
		for _, s := range r.Starts {
			for _, l := range s.Ingredients {
				if l.Name == name {
					percent = max(percent, l.PercentOfMix)
				}
			}
		}
		return percent
	}
	studied := func(limit float64) *result.Results {
		log, err := ingest.Read([]string{demo}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for i := range log.Trials {
			for k := range log.Trials[i].Parts {
				if p := &log.Trials[i].Parts[k]; p.Name == "GMS" && limit > 0 {
					what := *p.What
					what.Limits = append(what.Limits, ingredient.Limit{Percent: limit, Where: "our own", Own: true})
					p.What = &what
				}
			}
		}
		r, err := Run(log, Settings{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	free := most(studied(0), "GMS")
	limit := 0.85 * free
	r := studied(limit)
	if len(r.Starts) == 0 {
		t.Fatalf("no start below %.2f %%: %s", limit, r.StatusReason)
	}
	if got := most(r, "GMS"); got > limit || got == 0 {
		t.Errorf("%.3f %% of GMS, limit %.3f, without it %.3f", got, limit, free)
	}
	if r := studied(0.01); len(r.Starts) > 0 || r.Status != result.NoSafeStart {
		t.Errorf("%s with %d starts: nothing keeps 0.01 %%", r.Status, len(r.Starts))
	}
}
