package next

import (
	"math"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
	"foamfield/ingest/trial"
)

// What a trial tells of a chance, against the belief weighed by either end of it:
// the mean of the squared moves of the mean.
func TestTells(t *testing.T) {
	works, chance := []float64{0.9, 0.2, 0.6, 0.5}, []float64{0.8, 0.3, 0.7, 0.1}
	p, mean := 0.55, 0.475
	after := func(of func(float64) float64, share float64) float64 {
		sum := 0.0
		for k := range works {
			sum += of(works[k]) * chance[k] / 4
		}
		return sum / share
	}
	yes := after(func(a float64) float64 { return a }, p)
	no := after(func(a float64) float64 { return 1 - a }, 1-p)
	want := p*(yes-mean)*(yes-mean) + (1-p)*(no-mean)*(no-mean)
	variance := 0.0
	for _, c := range chance {
		variance += (c - mean) * (c - mean) / 4
	}
	if got := tells(works, chance); math.Abs(got*variance-want) > 1e-12 {
		t.Errorf("%v of the variance, want %v", got, want/variance)
	}
}

// Without a start the trial goes one step from what stopped most trials.
func TestStep(t *testing.T) {
	fat, emulsifier := 50.0, 2.0
	from := &surface.Placed{Trial: &trial.Trial{Composition: trial.Composition{FatPercent: &fat, EmulsifierPercent: &emulsifier}}}
	s := &surface.Surface{}
	for _, c := range []struct {
		name            string
		counts          result.Counts
		fat, emulsifier float64 // 0 = no trial
		says            string
	}{
		{"clogs ask for a thinner mix", result.Counts{Failed: 4, Clogged: 2, Partly: 1, ShortHold: 1, FellOrDrained: 1}, 42.5, 1.5, "3 of the 4 trials that failed did not come out fully"},
		{"splits for less fat", result.Counts{Failed: 2, Broke: 2}, 42.5, 2, "all 2 trials that failed split"},
		{"short holds for more emulsifier", result.Counts{Failed: 5, ShortHold: 4, FellOrDrained: 4, Broke: 1}, 50, 2.5, "4 of the 5 trials that failed fell too soon or drained too much"},
		{"two that fell and one that drained are more than two that clogged", result.Counts{Failed: 5, Clogged: 1, Partly: 1, ShortHold: 2, TooWet: 2, FellOrDrained: 3}, 50, 2.5, "3 of the 5 trials that failed fell too soon"},
		{"a taste may lie either way", result.Counts{Missed: map[result.Outcome]int{"taste": 2}}, 0, 0, ""},
		{"nothing failed", result.Counts{}, 0, 0, ""},
	} {
		got := step(s, c.counts, weigh.New(s, result.Batch{Grams: 300, ScaleStepGrams: 0.1, Canisters: 1}, nil), from)
		if len(got) == 0 {
			if c.fat != 0 {
				t.Errorf("%s: no trial", c.name)
			}
			continue
		}
		if m := got[0].Mix; *m.FatPercent != c.fat || *m.EmulsifierPercent != c.emulsifier {
			t.Errorf("%s: fat %v, emulsifier %v", c.name, *m.FatPercent, *m.EmulsifierPercent)
		}
		if !strings.HasPrefix(got[0].Reason, c.says) {
			t.Errorf("%s: %q", c.name, got[0].Reason)
		}
	}
}
