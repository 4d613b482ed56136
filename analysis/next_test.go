package analysis

import (
	"math"
	"strings"
	"testing"

	"foamfield/analysis/answers"
	"foamfield/analysis/kitchen"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
)

// Trials that explore tell something, seldom clog, and stand within a half range of one that
// came out.
func TestExploringTrialsKeepTheRules(t *testing.T) {
	thorough.NotShort(t, "analyses many logs")
	suggested := 0
	all := thorough.Of(t, 2, 6)
	for seed := range uint64(all) {
		k := kitchen.New(kitchen.Family(seed%2), 800+seed)
		var csv strings.Builder
		if err := kitchen.WriteCSV(&csv, k.Log(kitchen.Layouts[seed%4], 20, kitchen.Stream(seed, "explore"))); err != nil {
			t.Fatal(err)
		}
		log, err := ingest.Read([]string{written(t, csv.String())}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := Run(log, Settings{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		s, err := surface.Of(log, r.Targets, r.Batch.ScaleStepGrams)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range r.NextTrials {
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
			if near > 1.1 { // half ranges; rounding to the scale moves it a little
				t.Errorf("kitchen %d: %v half ranges from any trial that came out", seed, near)
			}
		}
	}
	if suggested < all {
		t.Errorf("only %d trials suggested in %d kitchens", suggested, all)
	}
}
