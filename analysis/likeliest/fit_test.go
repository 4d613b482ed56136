package likeliest

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"foamfield/analysis/latent"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

var all = []latent.Family{latent.Lognormal, latent.Weibull, latent.Loglogistic, latent.Normal}

func atLeast(y float64) latent.Obs         { return latent.Obs{Low: y, High: math.Inf(1)} }
func atMost(y float64) latent.Obs          { return latent.Obs{Low: math.Inf(-1), High: y} }
func between(low, high float64) latent.Obs { return latent.Obs{Low: low, High: high} }

// invented is a log of n trials: a constant and p-1 terms; some bounded.
func invented(seed uint64, n, p int, bounded bool) (*mat.Dense, []latent.Obs) {
	r := rand.New(rand.NewPCG(seed, 1))
	x := mat.NewDense(n, p, nil)
	y := make([]latent.Obs, n)
	for i := range n {
		x.Set(i, 0, 1)
		eta := 2.0
		for j := 1; j < p; j++ {
			v := r.NormFloat64()
			x.Set(i, j, v)
			eta += 0.2 * v
		}
		h := math.Exp(eta + 0.3*r.NormFloat64())
		y[i] = latent.Exact(h)
		if bounded && h > 10 {
			y[i] = atLeast(10)
		}
		if bounded && i%7 == 3 {
			y[i] = between(0.8*h, 1.3*h)
		}
	}
	return x, y
}

// Without bounds the lognormal is least squares on logarithms with the
// likelihood's spread, here by the normal equations in a centred basis.
func TestNoBoundsIsLeastSquaresOnLogs(t *testing.T) {
	x, y := invented(3, 40, 4, false)
	f, err := FitScale(latent.Lognormal, x, y)
	if err != nil {
		t.Fatal(err)
	}
	logs := mat.NewVecDense(40, nil)
	for i, o := range y {
		logs.SetVec(i, math.Log(o.Low))
	}
	var beta mat.VecDense
	if err := beta.SolveVec(x, logs); err != nil {
		t.Fatal(err)
	}
	var fitted mat.VecDense
	fitted.MulVec(x, &beta)
	fitted.SubVec(logs, &fitted)
	sigma := mat.Norm(&fitted, 2) / math.Sqrt(40)
	for j, b := range f.Coef {
		within(t, "coef", b, beta.AtVec(j), 1e-12, 1e-13)
	}
	within(t, "scale", f.Scale, sigma, 1e-12, 0)
	var xtx, inv mat.Dense
	xtx.Mul(x.T(), x)
	if err := inv.Inverse(&xtx); err != nil {
		t.Fatal(err)
	}
	for j := range 4 {
		within(t, "variance", f.Covariance.At(j, j), sigma*sigma*inv.At(j, j), 1e-10, 0)
	}
	// The likelihood-ratio test then is the F test: its small-sample p-value must
	// be close to exact F, and equal to first order.
	ll := -20*math.Log(2*math.Pi*sigma*sigma) - 20
	for i := range 40 {
		ll -= logs.AtVec(i)
	}
	within(t, "log likelihood", f.LogLik, ll, 0, 1e-11)
}

// A change of unit moves the intercept and, by the number of exact values times
// its ln, the log likelihood; nothing else.
func TestMinutesToSeconds(t *testing.T) {
	x, y := bounded(t, "four_kinds")
	for _, fam := range []latent.Family{latent.Lognormal, latent.Weibull, latent.Loglogistic} {
		a, err := FitScale(fam, x, y)
		if err != nil {
			t.Fatal(err)
		}
		seconds := slices.Clone(y)
		for i := range seconds {
			seconds[i].Low *= 60
			seconds[i].High *= 60
		}
		b, err := FitScale(fam, x, seconds)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "intercept", b.Coef[0], a.Coef[0]+math.Log(60), 1e-11, 0)
		within(t, "fat", b.Coef[1], a.Coef[1], 1e-9, 0)
		within(t, "emulsifier", b.Coef[2], a.Coef[2], 1e-9, 0)
		within(t, "scale", b.Scale, a.Scale, 1e-9, 0)
		within(t, "log likelihood", b.LogLik, a.LogLik-float64(a.data.counts.Exact)*math.Log(60), 0, 1e-9)
		for i := range 4 {
			for j := range 4 {
				within(t, "covariance", b.Covariance.At(i, j), a.Covariance.At(i, j), 1e-8, 1e-12)
			}
		}
	}
}

// A weight of 2 is the same observation twice; the order does not matter.
func TestWeightsAreRepeats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := all[rapid.IntRange(0, 3).Draw(t, "family")]
		x, y := invented(rapid.Uint64().Draw(t, "seed"), 20, 3, true)
		twice := mat.NewDense(25, 3, nil)
		rows := make([]latent.Obs, 25)
		for i := range 25 {
			k := 19 - i
			if i >= 20 {
				k = i - 20
			}
			twice.SetRow(i, x.RawRowView(k))
			rows[i] = y[k]
		}
		for i := range 5 {
			y[i].Weight = 2
		}
		a, errA := FitScale(fam, x, y)
		b, errB := FitScale(fam, twice, rows)
		if errA != nil || errB != nil {
			t.Skip("refused", errA, errB)
		}
		if math.Abs(a.LogLik-b.LogLik) > 1e-8 || math.Abs(a.Scale-b.Scale) > 1e-7*a.Scale {
			t.Fatalf("%v %v", a, b)
		}
	})
}

// Columns of any size give the same fit, and their coefficient the inverse size.
func TestColumnScaleDoesNotMatter(t *testing.T) {
	x, y := bounded(t, "four_kinds")
	for _, fam := range all {
		a, err := FitScale(fam, x, y)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []float64{1e-12, 1e12, 1e-200, 1e200} {
			z := mat.DenseCopyOf(x)
			for i := range a.N {
				z.Set(i, 1, x.At(i, 1)*s)
			}
			b, err := FitScale(fam, z, y)
			if err != nil {
				t.Fatal(fam, s, err)
			}
			within(t, "coef", b.Coef[1]*s, a.Coef[1], 1e-9, 0)
			within(t, "log likelihood", b.LogLik, a.LogLik, 0, 1e-9)
		}
		for _, s := range []float64{1e-12, 1e12} { // and outcomes of any size
			z := slices.Clone(y)
			for i := range z {
				z[i].Low *= s
				z[i].High *= s
			}
			b, err := FitScale(fam, x, z)
			if err != nil {
				t.Fatal(fam, s, err)
			}
			within(t, "log likelihood", b.LogLik, a.LogLik-float64(a.data.counts.Exact)*math.Log(s), 0, 1e-8)
		}
	}
}

func TestRefusals(t *testing.T) {
	line := func(cols ...[]float64) *mat.Dense {
		x := mat.NewDense(len(cols[0]), len(cols), nil)
		for j, c := range cols {
			x.SetCol(j, c)
		}
		return x
	}
	one, up := []float64{1, 1, 1, 1, 1, 1}, []float64{1, 2, 3, 4, 5, 6}
	values := []latent.Obs{latent.Exact(3), latent.Exact(5), latent.Exact(4), latent.Exact(8), latent.Exact(6), latent.Exact(9)}
	with := func(i int, o latent.Obs) []latent.Obs { v := slices.Clone(values); v[i] = o; return v }
	repeat := func(o latent.Obs) []latent.Obs { return slices.Repeat([]latent.Obs{o}, 6) }
	tests := []struct {
		name string
		x    *mat.Dense
		y    []latent.Obs
		want string
	}{
		{"all at least", line(one, up), repeat(atLeast(20)), "likeliest: of 6 observations 6 are at-least and 0 at-most bounds and none is a value"},
		{"all at most", line(one, up), repeat(atMost(2)), "likeliest: of 6 observations 0 are at-least and 6 at-most bounds and none is a value"},
		{"no spread", line(one, up), repeat(latent.Exact(5)), "likeliest: 6 observations lie exactly on a fit with 3 parameters, so the spread cannot be estimated"},
		{"no spread, one bound", line(one), append(repeat(latent.Exact(5)), atLeast(4))[1:], "likeliest: 6 observations lie exactly on a fit with 2 parameters, so the spread cannot be estimated"},
		{"same interval", line(one), repeat(between(4, 6)), "likeliest: 6 observations lie exactly on a fit with 2 parameters, so the spread cannot be estimated"},
		{"more terms than values", line(one[:2], up[:2]), values[:2], "likeliest: 2 observations cannot carry 3 parameters"},
		{"constant twice", line(one, up, []float64{2, 2, 2, 2, 2, 2}), values, "likeliest: column 2 is a combination of columns [0]"},
		{"sum of two", line(one, up, []float64{3, 4, 5, 6, 7, 8}), values, "likeliest: column 2 is a combination of columns [0 1]"},
		{"same twice", line(one, up, up), values, "likeliest: column 2 is a combination of columns [1]"},
		{"zeros", line(one, make([]float64, 6)), values, "likeliest: column 1 is zero"},
		{"not a number in x", line(one, []float64{1, 2, math.NaN(), 4, 5, 6}), values, "likeliest: row 2, column 1: it is not a finite number"},
		{"not a number in y", line(one, up), with(1, latent.Exact(math.NaN())), "likeliest: row 1: it is not a number"},
		{"upside down", line(one, up), with(1, between(6, 2)), "likeliest: row 1: its low end 6 is above its high end 2"},
		{"no bound", line(one, up), with(4, between(math.Inf(-1), math.Inf(1))), "likeliest: row 4: it has no bound on either side"},
		{"zero", line(one, up), with(4, latent.Exact(0)), "likeliest: row 4: 0 is not above 0, as every value must be here"},
		{"infinite", line(one, up), with(4, latent.Exact(math.Inf(1))), "likeliest: row 4: it is infinite"},
		{"weight", line(one, up), with(4, latent.Obs{Low: 1, High: 1, Weight: -1}), "likeliest: row 4: its weight is -1"},
	}
	for _, c := range tests {
		for _, fam := range []latent.Family{latent.Lognormal, latent.Weibull, latent.Loglogistic} {
			_, err := FitScale(fam, c.x, c.y)
			if err == nil || err.Error() != c.want {
				t.Errorf("%s, %v: %v, want %s", c.name, fam, err, c.want)
			}
		}
	}
}

// A level at which every foam still stood has no finite effect: refused, with
// the column named.
func TestSeparatedLevelIsNamed(t *testing.T) {
	x := mat.NewDense(8, 3, nil)
	y := make([]latent.Obs, 8)
	for i := range 8 {
		x.SetRow(i, []float64{1, float64(i % 4), float64(i / 6)})
		y[i] = latent.Exact(float64(3 + i*i%5))
		if i >= 6 {
			y[i] = atLeast(20)
		}
	}
	for _, fam := range all {
		_, err := FitScale(fam, x, y)
		var r *Refusal
		if !errors.As(err, &r) || r.Status != Separated || !slices.Equal(r.Columns, []int{2}) {
			t.Errorf("%v: %v", fam, err)
		}
	}
	_, err := FitYesNo(x, []bool{true, false, true, false, false, true, true, true})
	var r *Refusal
	if !errors.As(err, &r) || r.Status != Separated || !slices.Equal(r.Columns, []int{2}) || r.Yes != 5 {
		t.Errorf("yes/no: %v", err)
	}
	_, err = FitYesNo(x, slices.Repeat([]bool{true}, 8))
	if !errors.As(err, &r) || r.Status != NoEvents || err.Error() != "likeliest: 8 of 8 answers are yes, so no effect can be estimated" {
		t.Errorf("all yes: %v", err)
	}
	f, err := FitYesNoFirth(x, slices.Repeat([]bool{true}, 8))
	if err != nil || !finite(f.Coef) {
		t.Errorf("all yes, reduced: %v", err)
	}
	for _, set := range []string{"endometrial", "separable"} {
		x, y := answers(t, set)
		if _, err := FitYesNo(x, y); !errors.As(err, &r) || r.Status != Separated {
			t.Errorf("%s: %v", set, err)
		}
	}
}

// Whatever is asked, the answer is finite or a named refusal.
func FuzzScaleIsFiniteOrRefused(f *testing.F) {
	for _, s := range []struct {
		fam    uint8
		seed   uint64
		a, b   float64
		spread float64
	}{{0, 1, 1, 1, 1}, {1, 2, 1e12, 1e-12, 1}, {2, 3, 1e-12, 1e12, 1e-9}, {3, 4, 1, 1, 0}, {1, 5, 3, 0, 50}, {0, 9, 1e90, 1e-90, 1}} {
		f.Add(s.fam, s.seed, s.a, s.b, s.spread)
	}
	f.Fuzz(func(t *testing.T, fam uint8, seed uint64, a, b, spread float64) {
		for _, v := range []float64{a, b} {
			if v != 0 && !(math.Abs(v) > 1e-100 && math.Abs(v) < 1e100) {
				t.Skip("a variance would leave the range of numbers")
			}
		}
		r := rand.New(rand.NewPCG(seed, 2))
		n := 4 + r.IntN(16)
		x := mat.NewDense(n, 3, nil)
		y := make([]latent.Obs, n)
		for i := range n {
			x.SetRow(i, []float64{1, a * r.NormFloat64(), b * float64(r.IntN(3))})
			v := math.Exp(math.Mod(spread, 300) * r.NormFloat64())
			y[i] = []latent.Obs{latent.Exact(v), latent.Exact(v), atLeast(v), atMost(v), between(v/2, v)}[r.IntN(5)]
		}
		fit, err := FitScale(latent.Family(fam%4), x, y)
		if err != nil {
			var refused *Refusal
			var rank *RankError
			var data *DataError
			if !errors.As(err, &refused) && !errors.As(err, &rank) && !errors.As(err, &data) {
				t.Fatalf("unnamed refusal %v", err)
			}
			return
		}
		if !finite(fit.Coef) || !(fit.Scale > 0) || math.IsInf(fit.Scale, 1) || math.IsNaN(fit.LogLik) || math.IsInf(fit.LogLik, 0) {
			t.Fatalf("%+v", fit)
		}
		for j := range 4 {
			if !(fit.Covariance.At(j, j) > 0) {
				t.Fatalf("variance %g", fit.Covariance.At(j, j))
			}
		}
	})
}

// Refitting from the fitted values of a fit must not find anything better: the
// likelihood is checked around the estimates.
func TestEstimatesAreTheSummit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := all[rapid.IntRange(0, 3).Draw(t, "family")]
		x, y := invented(rapid.Uint64().Draw(t, "seed"), 24, 3, true)
		f, err := FitScale(fam, x, y)
		if err != nil {
			t.Skip(err)
		}
		total := func(beta []float64, lnS float64) (ll float64) {
			for i, o := range y {
				v, _, _, _, _, _ := latent.LogLik(fam, o, dot(x.RawRowView(i), beta), lnS)
				ll += v
			}
			return ll
		}
		if d := total(f.Coef, math.Log(f.Scale)) - f.LogLik; math.Abs(d) > 1e-9 {
			t.Fatalf("log likelihood off by %g", d)
		}
		for k := range 4 {
			for _, side := range []float64{-0.01, 0.01} {
				b, s := slices.Clone(f.Coef), math.Log(f.Scale)
				move := side * math.Sqrt(f.Covariance.At(k, k))
				if k < 3 {
					b[k] += move
				} else {
					s += move
				}
				if total(b, s) >= f.LogLik {
					t.Fatalf("%v: higher at parameter %d", fam, k)
				}
			}
		}
	})
}

func BenchmarkFit60x10(b *testing.B) {
	for _, fam := range all {
		x, y := invented(1, 60, 10, true)
		b.Run(fmt.Sprint(fam), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := FitScale(fam, x, y); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkYesNo60x10(b *testing.B) {
	x, y := invented(1, 60, 10, false)
	yes := make([]bool, len(y))
	for i, o := range y {
		yes[i] = o.Low*math.Exp(0.5*math.Sin(float64(i*i))) > 7
	}
	for name, fit := range map[string]func(*mat.Dense, []bool) (*YesNoFit, error){"likelihood": FitYesNo, "reduced": FitYesNoFirth} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := fit(x, yes); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(name+" each left out", func(b *testing.B) {
			f, err := fit(x, yes)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				f.LeaveOneOut()
			}
		})
	}
}
