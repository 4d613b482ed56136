package next

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/analysis/answers"
	"foamfield/analysis/belief"
	"foamfield/analysis/kitchen"
	"foamfield/analysis/logged"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
	"foamfield/analysis/works"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

var asked = answers.Asked{Seed: 1, Batch: result.Batch{Grams: 300, ScaleStepGrams: 0.1, Canisters: 1},
	Want: result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"},
		WantedChance: result.Target{Value: 0.8, From: "assumed"}}}

func written(t *testing.T, text []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

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

func TestExploringTrialsKeepTheRules(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	suggested := 0
	all := thorough.Of(t, 2, 6)
	for seed := range uint64(all) {
		k := kitchen.New(kitchen.Family(seed%2), 800+seed)
		var csv bytes.Buffer
		if err := kitchen.WriteCSV(&csv, k.Log(kitchen.Layouts[seed%4], 20, kitchen.Stream(seed, "explore"))); err != nil {
			t.Fatal(err)
		}
		log, err := ingest.Read([]string{written(t, csv.Bytes())}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		s, err := surface.Of(log, asked.Want, asked.Batch.ScaleStepGrams)
		if err != nil {
			t.Fatal(err)
		}
		b, err := belief.Of(s, asked.Want, asked.Seed, true)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range Trials(s, logged.Count(s, asked.Want), answers.Of(s, b, asked), asked.Batch, 0.8, 0) {
			if n.Tells == nil {
				continue
			}
			suggested++
			if *n.Tells > 1 {
				t.Errorf("kitchen %d: tells %v of the doubt", seed, *n.Tells)
			}
			if n.ClogChance != nil && *n.ClogChance > answers.ClogLimitTrial {
				t.Errorf("kitchen %d: clogs %v", seed, *n.ClogChance)
			}
			near := math.Inf(1)
			for _, trial := range s.OnSurface() {
				if works.CameOut(trial.Trial) == works.Yes {
					near = min(near, s.Distance(s.Values(n.Mix), trial.Mix))
				}
			}
			if near > exploreStep+0.1 { // rounding to the scale moves it a little
				t.Errorf("kitchen %d: %v half ranges from any trial that came out", seed, near)
			}
		}
	}
	if suggested < all {
		t.Errorf("only %d trials suggested in %d kitchens", suggested, all)
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
		got := step(s, c.counts, weigh.New(s, asked.Batch, nil), from)
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
