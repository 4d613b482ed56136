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
