package analysis

import (
	"math"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// A service is the start's mix in more grams, split by size; trials keep their batch; no
// fill is suggested for a size that no trial had.
func TestService(t *testing.T) {
	thorough.NotShort(t, "analyses a log again")
	asked := 1000.0
	mixed := []trial.Canister{{Text: "1 L", Litres: 1}, {Text: "1 L", Litres: 1}, {Text: "0.5 L", Litres: 0.5}}
	r := run(t, demo, Settings{Service: mixed, ServiceBatch: &asked})
	s, start := r.Service, r.Starts[0]
	sum := 0.0
	for i, l := range s.Ingredients {
		sum += l.Grams
		if share := l.Grams / 1000; math.Abs(share-start.Ingredients[i].Grams/r.Batch.Grams) > 2e-4 {
			t.Errorf("%s is %v of the service, %v of the start", l.Name, share, start.Ingredients[i].Grams/r.Batch.Grams)
		}
	}
	if math.Abs(sum-1000) > 0.3 || s.Fills[0].Grams != 400 || s.Fills[2].Grams != 200 || !s.Fills[0].Beyond || s.Fills[2].Beyond {
		t.Errorf("%v g, fills %+v", sum, s.Fills)
	}
	if r.Batch.Grams != 300 || len(r.NextTrials) == 0 {
		t.Errorf("trials have a batch of %v", r.Batch.Grams)
	}
	if s := service(r, mixed, nil); s.Note == "" || len(s.Fills) > 0 {
		t.Errorf("a fill for a size that nobody logged: %+v", s)
	}
	if s := service(r, mixed[2:], nil); s.Note != "" || s.Grams != *r.Batch.LargestFillGrams {
		t.Errorf("the logged size: %+v", s)
	}
}

// Portions are served out of what is made for service, not out of a batch of the trials.
func TestCostOfService(t *testing.T) {
	eight, each := 8, 0.25
	for _, c := range []struct {
		cost        *result.Cost
		all, served float64
	}{
		{nil, 0, 0},
		{&result.Cost{Batch: 2, Per100Grams: 0.8}, 9.6, 0},
		{&result.Cost{Batch: 2, Per100Grams: 0.8, Portions: &eight, Portion: &each}, 9.6, 1.2},
	} {
		if servedAt(c.cost, 1200); c.cost == nil {
			continue
		}
		if got := *c.cost.Service; math.Abs(got-c.all) > 1e-9 || c.cost.Batch != 2 {
			t.Errorf("%v for all, want %v", got, c.all)
		}
		if p := c.cost.Portion; p != nil && math.Abs(*p-c.served) > 1e-9 {
			t.Errorf("%v for each, want %v", *p, c.served)
		}
	}
	if each != 0.25 {
		t.Error("what was shared was written over")
	}
}

// Where a log has canisters of several sizes each gets what a trial of its own size had, and
// what was too much for its canister does not count.
func TestServiceOfSeveralSizes(t *testing.T) {
	half, litre, much := 250.0, 480.0, 900.0
	r := &result.Results{Batch: result.Batch{Grams: 250, ScaleStepGrams: 0.1, LargestFillGrams: &much},
		Starts: []result.Start{{Ingredients: []result.FormulaLine{{Name: "oil", Grams: 100}, {Name: "water", Grams: 150}}}},
		Trials: []result.Trial{{Used: true, Canister: "0.5 L", BatchGrams: &half}, {Used: true, Canister: "500 ml", BatchGrams: &half},
			{Used: true, Canister: "1 l", BatchGrams: &litre}, {Used: true, Flagged: true, Canister: "1 L", BatchGrams: &much}}}
	both := []trial.Canister{{Text: "1 L", Litres: 1}, {Text: "0.5 L", Litres: 0.5}, {Text: "1 L", Litres: 1}}
	s := service(r, both, nil)
	if s.Grams != 1210 || s.From != "the largest fills logged, 480 g in 1 L and 250 g in 0.5 L" {
		t.Errorf("%v g, %s", s.Grams, s.From)
	}
	for i, want := range []float64{480, 250, 480} {
		if f := s.Fills[i]; f.Grams != want || f.Beyond {
			t.Errorf("%+v, want %v g", f, want)
		}
	}
	if s := service(r, append(both, trial.Canister{Text: "2 L", Litres: 2}, trial.Canister{Text: "0.3 L", Litres: 0.3}), nil); !strings.HasPrefix(s.Note, "no trial filled a canister of 2 L or 0.3 L, so") {
		t.Errorf("a fill for a size that nobody logged: %+v", s)
	}
}
