package mix

import (
	"math"
	"testing"

	"foamfield/ingest/ingredient"

	"pgregory.net/rapid"
)

func TestWeighingError(t *testing.T) {
	// 0.4 g on a 0.1 g scale: 12.5 % at most.
	if got := WeighingError(0.4, 0.1); !near(got, 0.125) {
		t.Errorf("at most %v, want 0.125", got)
	}
	if got := WeighingError(0, 0.1); !math.IsInf(got, 1) {
		t.Errorf("of nothing %v, want +Inf", got)
	}
}

// Worked by hand: 0.4 g of HLB 15 with 1.6 g of 3.8, step 0.1. Blend (0.4·15 +
// 1.6·3.8)/2 = 6.04. Farthest: (0.45·15 + 1.55·3.8)/2 = 6.32 and 5.76.
func TestWeighingOfBlend(t *testing.T) {
	got := WeighingErrors([]Part{{1.6, low}, {0.4, high}}, 0.1)
	if !near(got.BlendHLB.AtMost, 0.28) {
		t.Errorf("at most %v, want 0.28", got.BlendHLB.AtMost)
	}
	// √((15−6.04)² + (3.8−6.04)²)/2 · 0.1/√12
	if want := math.Hypot(8.96, 2.24) / 2 * 0.1 / math.Sqrt(12); !near(got.BlendHLB.SD, want) {
		t.Errorf("SD %v, want %v", got.BlendHLB.SD, want)
	}
	if e := WeighingErrors([]Part{{100, plain}, {1, grade}}, 0.1); e.FatPercent != nil || e.BlendHLB != nil || e.EmulsifierPercent == nil {
		t.Errorf("unknown numbers have errors: %+v", e)
	}
}

// No mix within half a step is farther off than AtMost, and some mix is as far.
func TestAtMostIsTheFarthestCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "n")
		step := rapid.SampledFrom([]float64{0.01, 0.1, 1}).Draw(t, "step")
		var parts []Part
		for range n {
			parts = append(parts, Part{rapid.Float64Range(0.2, 5).Draw(t, "g"), item(ingredient.Emulsifier, none, rapid.SampledFrom([]float64{3, 3.8, 8, 15}).Draw(t, "hlb"))})
		}
		base := Total(parts).BlendHLB.Value
		farthest := 0.0
		for corner := range 1 << n {
			moved := make([]Part, n)
			for i, p := range parts {
				moved[i] = p
				if corner>>i&1 == 0 {
					moved[i].Grams = p.Grams + step/2
				} else {
					moved[i].Grams = max(0, p.Grams-step/2)
				}
			}
			if b := Total(moved).BlendHLB; b != nil {
				farthest = max(farthest, math.Abs(b.Value-base))
			}
		}
		if got := WeighingErrors(parts, step).BlendHLB.AtMost; math.Abs(got-farthest) > 1e-9 {
			t.Fatalf("at most %v, the farthest corner is %v off", got, farthest)
		}
	})
}

// The SD is the first-order spread: check its slopes by finite differences.
func TestSDFollowsTheSlopes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := drawMix(t)
		got := WeighingErrors(parts, 0.1)
		var variance float64
		for i := range parts {
			if parts[i].Grams == 0 {
				continue
			}
			const h = 1e-4
			at := func(by float64) float64 {
				moved := append([]Part(nil), parts...)
				moved[i].Grams += by
				return *Total(moved).FatPercent
			}
			if parts[i].Grams <= h {
				return
			}
			slope := (at(h) - at(-h)) / (2 * h)
			variance += slope * slope
		}
		if want := math.Sqrt(variance) * 0.1 / math.Sqrt(12); math.Abs(got.FatPercent.SD-want) > 1e-7 {
			t.Fatalf("SD %v, by finite differences %v", got.FatPercent.SD, want)
		}
	})
}
