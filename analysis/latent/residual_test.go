package latent

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// survfit's steps, from R: the product-limit estimate of the handbook's lifetimes
// and the interval estimate of the looks (whose intervals do not overlap).
func TestDistributionFreeAgreesWithSurvfit(t *testing.T) {
	_, rows := records(t, "censored/survfit.csv")
	for _, set := range []string{"handbook", "looks"} {
		_, y := bounded(t, set)
		var spans []span
		for _, o := range y {
			spans = append(spans, span{o.Low, o.High, 1})
		}
		var above []float64 // share above after each step
		left := 1.0
		for _, s := range turnbull(spans) {
			left -= s.weight
			above = append(above, left)
		}
		k := 0
		for _, r := range rows {
			if r[0] != set || r[1] == "500" { // at 500 nothing steps
				continue
			}
			within(t, set+" "+r[1], above[k], number(t, r[2]), 0, 1e-9)
			k++
		}
		if k < 7 {
			t.Errorf("%s: %d steps", set, k)
		}
	}
}

// The certificate of the largest likelihood (Gentleman and Geyer 1994, Biometrika
// 81:618-623): no place would gain from more share, and those with a share are
// worth exactly it.
func TestTurnbullIsTheLargestLikelihood(t *testing.T) {
	_, y := bounded(t, "four_kinds")
	var obs []span
	for _, o := range y {
		obs = append(obs, span{o.Low, o.High, 1})
	}
	inner := turnbull(obs)
	inside := func(s, o span) bool {
		return s.low >= o.low && s.high <= o.high && (s.low > o.low || s.low < s.high || o.low == o.high)
	}
	var total float64
	for _, s := range inner {
		total += s.weight
		var worth float64
		for _, o := range obs {
			var mass float64
			for _, u := range inner {
				if inside(u, o) {
					mass += u.weight
				}
			}
			if inside(s, o) {
				worth += 1 / mass / float64(len(obs))
			}
		}
		if worth > 1+1e-6 || s.weight > 1e-6 && worth < 1-1e-6 {
			t.Errorf("(%g, %g]: share %g is worth %g", s.low, s.high, s.weight, worth)
		}
	}
	within(t, "total", total, 1, 1e-12, 0)
}

func TestResidualsRespectBounds(t *testing.T) {
	x, y := bounded(t, "four_kinds")
	for _, fam := range all {
		f, err := FitScale(fam, x, y)
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range f.Residuals() {
			back := func(z float64) float64 { // to the original unit
				u := f.Predict(x.RawRowView(i)) + f.Scale*z
				if fam.positive() {
					return math.Exp(u)
				}
				return u
			}
			if !math.IsInf(y[i].High, 1) {
				within(t, "high", back(r.High), y[i].High, 1e-12, 0)
			} else if !math.IsInf(r.High, 1) {
				t.Errorf("%v %v: %+v", fam, y[i], r)
			}
			if y[i].Low > 0 {
				within(t, "low", back(r.Low), y[i].Low, 1e-12, 0)
			} else if !math.IsInf(r.Low, -1) {
				t.Errorf("%v %v: %+v", fam, y[i], r)
			}
			exact := y[i].Low == y[i].High
			if fam == Normal && exact {
				within(t, "score", r.Score, r.Low, 1e-12, 1e-12)
			}
			if lo, hi := fam.score(r.Low, r.Low), fam.score(r.High, r.High); !exact && !(r.Score > lo && r.Score < hi) {
				t.Errorf("%v %v: score %g outside %g..%g", fam, y[i], r.Score, lo, hi)
			}
		}
		last := 0.0
		for _, p := range f.ProbabilityPlot() {
			if !(p.Cumulative > last && p.Cumulative < 1 && p.Low <= p.High) || math.IsNaN(p.Expected) {
				t.Errorf("%v: %+v after %g", fam, p, last)
			}
			last = p.Cumulative
		}
	}
}

// The probability plot of values alone is the plain (k - 1/2)/n plot.
func TestProbabilityPlotOfValues(t *testing.T) {
	x := mat.NewDense(5, 1, []float64{1, 1, 1, 1, 1})
	f, err := FitScale(Normal, x, []Obs{Exact(3), Exact(9), Exact(4), Exact(7), Exact(5)})
	if err != nil {
		t.Fatal(err)
	}
	points := f.ProbabilityPlot()
	for k, want := range []float64{3, 4, 5, 7, 9} {
		within(t, "value", f.Coef[0]+f.Scale*points[k].Low, want, 1e-12, 0)
		within(t, "share", points[k].Cumulative, (float64(k)+0.5)/5, 1e-12, 0)
	}
	within(t, "expected", points[2].Expected, 0, 0, 1e-12)
}

// A score is where the normal has the same share, however far out.
func TestScoreKeepsTheShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := all[rapid.IntRange(0, 3).Draw(t, "family")]
		z := rapid.Float64Range(-300, 5).Draw(t, "z")
		s := fam.score(z, z)
		got, want := Normal.logBelow(s), fam.logBelow(z)
		if s > 0 {
			got, want = Normal.logAbove(s), fam.logAbove(z)
		}
		if math.Abs(got-want) > 1e-10*(1+math.Abs(want)) {
			t.Fatalf("%v %g: score %g has ln share %g, not %g", fam, z, s, got, want)
		}
	})
}
