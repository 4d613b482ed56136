package regress

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

func random(seed uint64, n, p int) (*mat.Dense, []float64) {
	r := rand.New(rand.NewPCG(seed, 3))
	x, y := mat.NewDense(n, p, nil), make([]float64, n)
	for i := range n {
		x.Set(i, 0, 1)
		for j := 1; j < p; j++ {
			x.Set(i, j, r.NormFloat64())
		}
		y[i] = 2 + x.At(i, p-1) + r.NormFloat64()
	}
	return x, y
}

// Left-out values by formula are what fitting without the observation gives.
func TestLeftOutIsFittedWithout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, p := rapid.IntRange(7, 15).Draw(t, "n"), rapid.IntRange(1, 4).Draw(t, "p")
		x, y := random(rapid.Uint64().Draw(t, "seed"), n, p)
		w := make([]float64, n)
		for i := range w {
			w[i] = rapid.Float64Range(0.2, 5).Draw(t, "w")
		}
		f, err := Least(x, y, w)
		if err != nil {
			t.Fatal(err)
		}
		k := rapid.IntRange(0, n-1).Draw(t, "k")
		rest := mat.NewDense(n-1, p, nil)
		for i := range n - 1 {
			rest.SetRow(i, x.RawRowView(i+btoi(i >= k)))
		}
		g, err := Least(rest, slices.Delete(slices.Clone(y), k, k+1), slices.Delete(slices.Clone(w), k, k+1))
		if err != nil {
			t.Fatal(err)
		}
		if left := dot(x.RawRowView(k), g.Coef); math.Abs(f.LeftOut[k]-left) > 1e-8*(1+math.Abs(left)) {
			t.Fatalf("by formula %g, without %g", f.LeftOut[k], left)
		}
	})
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Residuals are orthogonal to every column, sums of squares add up, leverages
// add to the number of terms; and none of it depends on the sizes of columns.
func TestIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, p := rapid.IntRange(6, 30).Draw(t, "n"), rapid.IntRange(1, 5).Draw(t, "p")
		x, y := random(rapid.Uint64().Draw(t, "seed"), n, p)
		f, err := Least(x, y, nil)
		if err != nil {
			t.Fatal(err)
		}
		var total float64
		for _, h := range f.Leverage {
			total += h
		}
		if math.Abs(total-float64(p)) > 1e-12 {
			t.Fatalf("leverages add to %g, not %d", total, p)
		}
		for j := range p {
			if d := dot(mat.Col(nil, j, x), f.Residuals); math.Abs(d) > 1e-12*float64(n)*(1+f.ResidualSD) {
				t.Fatalf("column %d: %g", j, d)
			}
		}
		if math.Abs(f.R2-(1-f.RSS/f.TSS)) > 1e-12 {
			t.Fatalf("R2 %g, 1-RSS/TSS %g", f.R2, 1-f.RSS/f.TSS)
		}
		s := math.Ldexp(1, rapid.IntRange(-300, 300).Draw(t, "power"))
		z := mat.DenseCopyOf(x)
		for i := range n {
			z.Set(i, p-1, x.At(i, p-1)*s)
		}
		g, err := Least(z, y, nil)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(g.Coef[p-1]*s-f.Coef[p-1]) > 1e-12*math.Abs(f.Coef[p-1]) || math.Abs(g.RSS-f.RSS) > 1e-12*f.RSS {
			t.Fatalf("scaled by %g: %g %g", s, g.Coef[p-1]*s, f.Coef[p-1])
		}
	})
}

// Whatever is asked, the answer is finite or a named refusal.
func FuzzLeastIsFiniteOrRefused(f *testing.F) {
	f.Add(uint64(1), 1.0, 1.0, 0.5)
	f.Add(uint64(2), 1e12, 1e-12, 1e12)
	f.Add(uint64(3), 1e-12, 1e12, 1e-12)
	f.Add(uint64(4), 0.0, 3.0, 0.0)
	f.Fuzz(func(t *testing.T, seed uint64, a, b, c float64) {
		for _, v := range []float64{a, b, c} {
			if v != 0 && !(math.Abs(v) > 1e-100 && math.Abs(v) < 1e100) {
				t.Skip("a square would leave the range of numbers")
			}
		}
		r := rand.New(rand.NewPCG(seed, 4))
		n := 2 + r.IntN(12)
		x, y := mat.NewDense(n, 3, nil), make([]float64, n)
		for i := range n {
			x.SetRow(i, []float64{1, a * r.NormFloat64(), a + b*float64(r.IntN(3))})
			y[i] = c*math.Round(r.NormFloat64()) + 1
		}
		fit, err := Least(x, y, nil)
		if err != nil {
			var refused *Refusal
			var rank *RankError
			if !errors.As(err, &refused) && !errors.As(err, &rank) {
				t.Fatalf("unnamed refusal %v", err)
			}
			return
		}
		for _, v := range slices.Concat(fit.Coef, fit.SE, fit.Fitted, fit.Leverage, []float64{fit.R2, fit.AdjustedR2, fit.ResidualSD}) {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", fit)
			}
		}
	})
}

func BenchmarkLeast60x10(b *testing.B) {
	x, y := random(1, 60, 10)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Least(x, y, nil); err != nil {
			b.Fatal(err)
		}
	}
}
