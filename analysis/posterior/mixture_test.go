package posterior

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestMixtureOfWeightless: a belief of little share may give one draw, and that draw may weigh
// nothing, which must not turn the moments of all into no numbers.
func TestMixtureOfWeightless(t *testing.T) {
	belief := func(draws, weight []float64) *Posterior {
		return &Posterior{draws: mat.NewDense(len(draws), 1, draws), weight: weight}
	}
	for _, c := range []struct {
		name       string
		little     []float64 // weights of the belief of little share
		share      float64
		mean, draw float64 // of the mixture; how many draws the little belief gives
	}{
		{"its one draw weighs nothing", []float64{0, 1, 0, 0}, 0.2, 2.5, 1},
		{"its one draw weighs something", []float64{0.5, 0.5, 0, 0}, 0.2, 2.5*0.8 + 10*0.2, 1},
		{"it has no share", []float64{0, 1, 0, 0}, 0, 2.5, 0},
	} {
		large := belief([]float64{1, 2, 3, 4}, []float64{0.25, 0.25, 0.25, 0.25})
		m := mixture([]*Posterior{large, belief([]float64{10, 20, 30, 40}, c.little)}, []float64{1 - c.share, c.share})
		m.moments()
		sum, little := 0.0, 0.0
		for k, w := range m.weight {
			sum += w
			if m.draws.At(k, 0) >= 10 {
				little++
			}
		}
		if little != c.draw {
			t.Errorf("%s: it gives %g draws, so that this tests nothing; want %g", c.name, little, c.draw)
		}
		if !(math.Abs(sum-1) < 1e-12) || !(math.Abs(m.Mean[0]-c.mean) < 1e-9) || math.IsNaN(m.ESS) {
			t.Errorf("%s: weights add up to %g, mean %g, of %g draws; want 1, %g", c.name, sum, m.Mean[0], m.ESS, c.mean)
		}
	}
}
