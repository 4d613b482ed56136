package analysis

import (
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/kitchen"
)

func TestTries(t *testing.T) {
	typed := "fat 44, emulsifier 2, hlb 8.5; fat 72; emulsifier 3.4, fat 57, hlb 5.5; fat 45, emulsifier 7 g"
	tries, err := kitchen.ParseTries(typed)
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, demo, Settings{Tries: tries})
	if len(r.Tries) != 4 {
		t.Fatalf("%d tries", len(r.Tries))
	}
	good, far, corner, grams := r.Tries[0], r.Tries[1], r.Tries[2], r.Tries[3]
	if !good.Tested || good.Chance == nil || good.Chance.Mean < 0.7 || len(good.Ingredients) == 0 {
		t.Errorf("a mix among those that worked: %+v", good)
	}
	sum := good.Chance.Mean
	for _, v := range good.Fails {
		sum += v
	}
	if sum < 0.999 || sum > 1.001 {
		t.Errorf("works and fails add up to %v", sum)
	}
	if far.Chance != nil || far.Tested || !strings.Contains(strings.Join(far.Notes, "; "), "fat of 72 % lies outside") {
		t.Errorf("a mix nobody came near: %+v", far)
	}
	if corner.Tested || !strings.Contains(strings.Join(corner.Notes, "; "), "no trial is near it") {
		t.Errorf("a corner nobody made: %+v", corner)
	}
	if e := grams.Mix.EmulsifierPercent; e == nil || *e < 2.3 || *e > 2.4 {
		t.Errorf("7 g in 300 g: %+v", grams)
	}
	few := run(t, written(t, header+row(1, 40, 2, 0.4, "y,25,n")), Settings{Tries: tries})
	if len(few.Tries) != 4 || few.Tries[0].Chance != nil || few.Status != result.TooFewTrials {
		t.Errorf("one trial knows nothing: %+v", few.Tries)
	}
}
