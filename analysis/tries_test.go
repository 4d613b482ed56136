package analysis

import (
	"math"
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/thorough"
)

func TestTries(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
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

// What is left out is the best for the rest: at a fat percent as good as the report's own
// best there, and no grams of what is open do better.
func TestLeftOutIsTheBestForTheRest(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	typed := "fat 50; clarified butter 150; GMS 4.2, clarified butter 130; clarified butter 130, cider 163.9, GMS 4.2, sucrose ester 15: 1.9"
	for _, grams := range []string{"0.5", "1.5", "2.5", "3.5", "4.5"} {
		typed += "; GMS 4.2, clarified butter 130, sucrose ester 15: " + grams
	}
	tries, err := kitchen.ParseTries(typed + "; lecithin 3; clarified butter 900; ghee 130, GMS 4.2")
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, demo, Settings{Tries: tries})
	for _, i := range []int{0, 1} {
		best := 0.0
		for _, l := range r.FatLimit {
			if f := *r.Tries[i].Mix.FatPercent; l.FatPercent > f-1.5 && l.FatPercent < f+1.5 {
				best = max(best, l.Chance.Mean)
			}
		}
		if c := r.Tries[i].Chance; c == nil || best == 0 || c.Mean < best-0.05 {
			t.Errorf("%s: %+v, the best about there is %v", r.Tries[i].Name, c, best)
		}
	}
	open := r.Tries[2]
	for _, fixed := range r.Tries[4:9] {
		if fixed.Chance != nil && fixed.Chance.Mean > open.Chance.Mean+0.005 {
			t.Errorf("%s works %v, left open %v", fixed.Name, fixed.Chance.Mean, open.Chance.Mean)
		}
	}
	if all := r.Tries[3]; len(all.Ingredients) != 4 || all.Ingredients[0].Grams != 130 || all.Ingredients[1].Grams != 163.9 || all.Ingredients[3].Grams != 1.9 {
		t.Errorf("a formula in full is not taken as it is: %+v", all.Ingredients)
	}
	n := len(r.Tries)
	for i, says := range map[int]string{n - 3: "lecithin is in none of these trials", n - 2: "more than the batch"} {
		if got := r.Tries[i]; got.Chance != nil || !strings.Contains(strings.Join(got.Notes, "; "), says) {
			t.Errorf("%s: %+v, want a note with %q", got.Name, got, says)
		}
	}
	if ghee := r.Tries[n-1]; ghee.Chance == nil || math.Abs(ghee.Chance.Mean-open.Chance.Mean) > 0.005 {
		t.Errorf("another name of the same fat: %+v", ghee)
	}
}

// Percents of all that goes in are the whole mix, or are not judged.
func TestPercentsThatAreNoWholeMix(t *testing.T) {
	thorough.NotShort(t, "analyses several logs")
	cases := []struct {
		typed, says string // "" = judged
	}{
		{"clarified butter 44%, cider 54%, GMS 1.3%, sucrose ester 15: 0.7%", ""},
		{"clarified butter 44%, cider 54%, GMS 1.4%, sucrose ester 15: 0.9%", ""}, // 100.3 by rounding
		{"clarified butter 44%, GMS 1.3%, sucrose ester 15: 0.7%", ""},            // filled up
		{"clarified butter 44%, cider 46%, GMS 1.3%, sucrose ester 15: 0.7%", "its percents add up to 92 %"},
		{"clarified butter 54%, cider 54%, GMS 1.3%, sucrose ester 15: 0.7%", "its percents add up to 110 %"},
		{"clarified butter 64%, cider 54%", "its percents add up to 118 %"},
		{"clarified butter 132, cider 150, GMS 4, sucrose ester 15: 2", ""}, // grams add up to what they do
	}
	var typed []string
	for _, c := range cases {
		typed = append(typed, c.typed)
	}
	tries, err := kitchen.ParseTries(strings.Join(typed, "; "))
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range run(t, demo, Settings{Tries: tries}).Tries {
		c := cases[i]
		if said := strings.Join(r.Notes, "; "); (r.Chance != nil) != (c.says == "") || !strings.Contains(said, c.says) {
			t.Errorf("%s: %v, %s", c.typed, r.Chance, said)
		}
	}
}

// A formula whose chance is shown above the surest start's says why it is not that start.
func TestTryAboveTheStartSaysWhyItIsNone(t *testing.T) {
	thorough.NotShort(t, "analyses a log")
	typed := []string{"fat 38", "fat 42", "fat 44, emulsifier 2.5", "fat 46, emulsifier 3", "fat 48, emulsifier 2.8, hlb 8", "fat 48, emulsifier 3.4, hlb 7.5", "emulsifier 3.2", "hlb 7"}
	tries, err := kitchen.ParseTries(strings.Join(typed, "; "))
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, demo, Settings{Tries: tries})
	above := 0
	for _, try := range r.Tries {
		said := strings.Contains(strings.Join(try.Notes, "; "), "its chance is above the start's")
		if higher := try.Chance != nil && try.Chance.Mean >= r.Starts[0].Chance.Mean+0.005; higher != said {
			t.Errorf("%s: %+v beside the start's %v: %q", try.Name, try.Chance, r.Starts[0].Chance.Mean, try.Notes)
		} else if higher {
			above++
		}
	}
	if above == 0 || above == len(r.Tries) {
		t.Errorf("%d of %d above the start: nothing is held apart", above, len(r.Tries))
	}
}
