package answers

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"foamfield/analysis/belief"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest"
	"foamfield/ingest/trial"
)

var asked = Asked{Seed: 1, Batch: result.Batch{Grams: 300, ScaleStepGrams: 0.1, Canisters: 1},
	Want: result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"},
		WantedChance: result.Target{Value: 0.8, From: "assumed"}}}

// believed is what is believed after a log.
func believed(t *testing.T, log *trial.Log) *belief.Belief {
	t.Helper()
	s, err := surface.Of(log, asked.Want, asked.Batch.ScaleStepGrams)
	if err != nil {
		t.Fatal(err)
	}
	b, err := belief.Of(s, asked.Want, asked.Seed, true)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// grounded is what the starts of a log are found on.
func grounded(t *testing.T, log *trial.Log) *Ground {
	t.Helper()
	return surestGround(believed(t, log), asked)
}

// answered is everything that a log answers.
func answered(t *testing.T, log *trial.Log) *Answers {
	t.Helper()
	b := believed(t, log)
	return Of(b.Surface, b, asked)
}

var demoAnswers *Answers

// ofDemo is everything that the demo's log answers, found once: it is only read.
func ofDemo(t *testing.T) *Answers {
	t.Helper()
	if demoAnswers == nil {
		log, err := ingest.Read([]string{"../../testdata/demo/week.xlsx"}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		demoAnswers = answered(t, log)
	}
	return demoAnswers
}

func written(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// More mixes that all work raise what may be said, and the last settles it.
func TestConfirm(t *testing.T) {
	for _, start := range ofDemo(t).Starts {
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

// The best trial worked more often than it failed; among equals it held longest.
func TestBest(t *testing.T) {
	made := func(group int, w works.Tri, hold float64) surface.Placed {
		return surface.Placed{Trial: &trial.Trial{CameOut: trial.Yes, Hold: &trial.Interval{Low: hold, High: hold}}, Group: group, Works: w}
	}
	clogged := surface.Placed{Trial: &trial.Trial{CameOut: trial.No}, Group: 5, Works: works.No}
	s := &surface.Surface{Trials: []surface.Placed{clogged, made(1, works.Yes, 60), made(1, works.No, 5), made(3, works.Yes, 30), made(4, works.Yes, 40)}}
	if got := Best(s); got != &s.Trials[4] {
		t.Errorf("%+v", got)
	}
	if got := Best(&surface.Surface{Trials: s.Trials[:1]}); got != nil {
		t.Errorf("of one that clogged: %+v", got)
	}
}
