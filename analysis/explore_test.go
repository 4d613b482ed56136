package analysis

import (
	"bytes"
	"math"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/works"
	"foamfield/ingest"
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

func TestExploringTrialsKeepTheRules(t *testing.T) {
	if testing.Short() {
		t.Skip("analyses many logs")
	}
	suggested := 0
	for seed := range uint64(6) {
		k := kitchen.New(kitchen.Family(seed%2), 800+seed)
		var b bytes.Buffer
		if err := kitchen.WriteCSV(&b, k.Log(kitchen.Layouts[seed%4], 20, kitchen.Stream(seed, "explore"))); err != nil {
			t.Fatal(err)
		}
		log, err := ingest.Read([]string{written(t, b.String())}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := Run(log, Settings{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		s := studied(t, log, Settings{})
		for _, n := range r.NextTrials {
			if n.Tells == nil {
				continue
			}
			suggested++
			if *n.Tells < leastTold || *n.Tells > 1 {
				t.Errorf("kitchen %d: tells %v of the doubt", seed, *n.Tells)
			}
			if n.ClogChance != nil && *n.ClogChance > clogLimitTrial {
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
	if suggested < 6 {
		t.Errorf("only %d trials suggested in six kitchens", suggested)
	}
}

// More mixes that all work raise what may be said, and the last settles it.
func TestConfirm(t *testing.T) {
	for _, start := range run(t, demo, Settings{}).Starts {
		for i, c := range start.Confirm {
			if c.Settles != (i == len(start.Confirm)-1) {
				t.Errorf("%s: entry %d of %d settles: %v", start.Aim, i, len(start.Confirm), c.Settles)
			}
			if i == 0 {
				// Draws against the closed form: 1200 draws leave 0.02.
				if math.Abs(c.Chance.Mean-start.Chance.Mean) > 0.03 || c.Chance.Low != start.Chance.Low && math.Abs(c.Chance.Low-start.Chance.Low) > 0.01 {
					t.Errorf("%s: before any is made %+v, the start says %+v", start.Aim, c.Chance, start.Chance)
				}
				continue
			}
			if b := start.Confirm[i-1]; c.Made <= b.Made || c.Chance.Mean <= b.Chance.Mean || c.ReachesWanted <= b.ReachesWanted {
				t.Errorf("%s: %+v after %+v", start.Aim, c, b)
			}
		}
	}
}
