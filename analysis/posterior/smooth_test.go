package posterior

import (
	"math"
	"testing"
)

// The polynomials are the functions they stand for to 1e-11 of their value, across the ends of the cells
// and of the range.
func TestSmooth(t *testing.T) {
	for k := range 60_001 {
		z := -32 + 42*float64(k)/60_000
		if got, want := logBelow(z), logPhi(z); math.Abs(got-want) > 2e-12*math.Max(1, math.Abs(want)) {
			t.Fatalf("ln Φ(%v) = %v, not %v", z, got, want)
		}
		if got, want := chanceBelow(z), 0.5*math.Erfc(-z/math.Sqrt2); math.Abs(got-want) > 1e-11*want {
			t.Fatalf("Φ(%v) = %v, not %v", z, got, want)
		}
		eta := 80 * (float64(k)/30_000 - 1)
		if got, want := logistic(eta), 1/(1+math.Exp(-eta)); math.Abs(got-want) > 1e-12*want {
			t.Fatalf("the chance at %v = %v, not %v", eta, got, want)
		}
		want := -math.Max(eta, 0) - math.Log1p(math.Exp(-math.Abs(eta)))
		if got := logNo(eta); math.Abs(got-want) > 1e-12*math.Max(1, math.Abs(want)) {
			t.Fatalf("-ln(1+e^%v) = %v, not %v", eta, got, want)
		}
	}
	if !math.IsNaN(logNo(math.NaN())) || !math.IsNaN(logBelow(math.NaN())) || logNo(math.Inf(-1)) != 0 || !math.IsInf(logNo(math.Inf(1)), -1) {
		t.Error("no number, or one without end, is taken for another")
	}
}

var sink float64

func BenchmarkLogBelow(b *testing.B) {
	k := 0
	for b.Loop() {
		sink += logBelow(-1 + float64(k&63)/8)
		k++
	}
}

func BenchmarkLogNo(b *testing.B) {
	k := 0
	for b.Loop() {
		sink += logNo(-4 + float64(k&63)/8)
		k++
	}
}

// logNo is logNos of one line.
func logNo(eta float64) float64 {
	of := []float64{eta}
	logNos(of)
	return of[0]
}
