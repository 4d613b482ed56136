package mixes

import (
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/say"
)

// Ounces are said as finely as the scale in grams weighs.
func TestOuncesOfAScale(t *testing.T) {
	ounces := 129.27 / 28.349523125
	for _, step := range []struct {
		grams float64
		says  string
	}{{1, "4.56 oz"}, {0.1, "4.56 oz"}, {0.01, "4.560 oz"}, {0.001, "4.5599 oz"}} {
		b := Run{say.Run{R: &result.Results{Batch: result.Batch{ScaleStepGrams: step.grams}}}}
		if got := b.Ounces("x", &ounces).String(); got != step.says {
			t.Errorf("on a scale of %v g: %q, want %q", step.grams, got, step.says)
		}
	}
}

// What is unclear did not fail.
func TestMade(t *testing.T) {
	for _, c := range []struct {
		times, worked, unclear int
		want                   string
	}{
		{0, 0, 0, "Predicted, not yet made: make it twice first."},
		{1, 0, 0, "Made once before; it did not work."},
		{1, 0, 1, "Made once before; whether it worked is unclear."},
		{2, 0, 2, "Made twice before; whether it worked is unclear."},
		{3, 1, 1, "Made 3 times before; it worked once, and once it is unclear."},
		{2, 0, 1, "Made twice before; it never surely worked, and once it is unclear."},
		{3, 1, 0, "Made 3 times before; it worked once."},
		{2, 2, 0, "Made twice, worked every time: keep it."},
	} {
		if got := (Run{}).Made("starts[0]", result.Start{MadeTimes: c.times, MadeWorked: c.worked, MadeUnclear: c.unclear}).String(); got != c.want {
			t.Errorf("%d, %d, %d: %q, want %q", c.times, c.worked, c.unclear, got, c.want)
		}
	}
}

// What became of a start is told as of any mix that was made.
func TestMadeSince(t *testing.T) {
	for _, c := range []struct {
		made, worked, unclear int
		want                  string
	}{
		{1, 0, 0, "Made once; it did not work."},
		{1, 1, 0, "Made once; it worked once."},
		{2, 0, 0, "Made twice; it did not work."},
		{2, 2, 0, "Made twice; it worked every time."},
		{3, 1, 1, "Made 3 times; it worked once, and once it is unclear."},
	} {
		if got := (Run{}).MadeSince("plans[1]", c.made, c.worked, c.unclear).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
