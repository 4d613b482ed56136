package latent

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
)

var update = flag.Bool("update", false, "write the coverage table anew")

// Logs as the judging model has them: 30-60 % fat, 0.5-3 % emulsifier, second
// order, and foams still standing at the end of a watch. How often 90 % limits
// hold the truth must be near 90 % at 24 and 40 trials.
func TestCoverage(t *testing.T) {
	const logs = 2000
	var table strings.Builder
	table.WriteString("family,trials,bounded share,quantity,wald,refused\n")
	truth := []float64{2.7, -0.45, 0.35, 0.1, -0.1, -0.05}
	const scale = 0.3
	formula := func(a, b float64) []float64 { return []float64{1, a, b, a * b, a * a, b * b} }
	here, there := formula(0.2, -0.3), formula(-0.6, 0.5)
	apart := make([]float64, 6)
	for j := range apart {
		apart[j] = there[j] - here[j]
	}
	for _, fam := range []Family{Lognormal, Weibull, Loglogistic} {
		for _, n := range []int{12, 24, 40} {
			r := rand.New(rand.NewPCG(uint64(n), uint64(fam)))
			var hits [3]int
			var fits, refused, bounds int
			for range logs {
				x, y := mat.NewDense(n, 6, nil), make([]Obs, n)
				for i := range n {
					row := formula(2*r.Float64()-1, 2*r.Float64()-1)
					x.SetRow(i, row)
					h := math.Exp(dot(row, truth) + scale*fam.quantile(r.Float64()))
					if y[i] = Exact(h); h > 20 {
						y[i] = AtLeast(20)
						bounds++
					}
				}
				f, err := FitScale(fam, x, y)
				if err != nil {
					refused++
					continue
				}
				fits++
				holds := func(i Interval, v float64) bool { return i.Low <= v && v <= i.High }
				fat := []float64{0, 1, 0, 0, 0, 0}
				for k, ok := range []bool{
					holds(f.Wald(fat, 0.9), truth[1]),
					holds(f.Quantile(here, 0.5, 0.9), math.Exp(dot(here, truth)+scale*fam.median())),
					holds(f.Wald(apart, 0.9), dot(apart, truth)),
				} {
					if ok {
						hits[k]++
					}
				}
			}
			for k, q := range []string{"coefficient", "median hold", "difference of two formulas"} {
				share := float64(hits[k]) / float64(fits)
				fmt.Fprintf(&table, "%v,%d,%.2f,%s,%.3f,%d\n", fam, n, float64(bounds)/float64(logs*n), q, share, refused)
				if n >= 24 && !(share >= 0.87 && share <= 0.93) {
					t.Errorf("%v, %d trials, %s: 90 %% limits hold the truth in %.3f", fam, n, q, share)
				}
			}
		}
	}
	t.Log("\n" + table.String())
	if *update {
		if err := os.WriteFile(filepath.Join(reference, "censored/coverage.csv"), []byte(table.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// Without bounds, and only then, Wald's limits for the lognormal are those of
// least squares: Student's t with the spread on n-p.
func TestWaldIsLeastSquaresWithoutBounds(t *testing.T) {
	y := []Obs{Exact(5), Exact(7), Exact(6), Exact(11), Exact(9), Exact(14)}
	x := mat.NewDense(6, 2, []float64{1, 1, 1, 2, 1, 3, 1, 4, 1, 5, 1, 6})
	f, err := FitScale(Lognormal, x, y)
	if err != nil {
		t.Fatal(err)
	}
	var sxx, sxy, mean float64
	for i, o := range y {
		d := float64(i) - 2.5
		sxx += d * d
		sxy += d * math.Log(o.Low)
		mean += math.Log(o.Low) / 6
	}
	slope := sxy / sxx
	var rss float64
	for i, o := range y {
		e := math.Log(o.Low) - mean - slope*(float64(i)-2.5)
		rss += e * e
	}
	const t95 = 2.1318467863266499 // Student's t, 4 df, 0.95: R qt(0.95, 4)
	se := math.Sqrt(rss / 4 / sxx)
	w := f.Wald([]float64{0, 1}, 0.9)
	within(t, "low", w.Low, slope-t95*se, 1e-9, 0)
	within(t, "high", w.High, slope+t95*se, 1e-9, 0)
	// The likelihood-ratio test is the F test in another dress.
	test, err := f.Test(1)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "statistic", test.Statistic, 6*math.Log1p(slope*slope*sxx/rss), 1e-9, 0)
	r2, err := f.LikelihoodR2()
	if err != nil {
		t.Fatal(err)
	}
	within(t, "R2", r2, slope*slope*sxx/(slope*slope*sxx+rss), 1e-9, 0)
}

// A profile's end is where the likelihood, refitted under the constraint, has
// fallen by the stated amount; a combination is no different from a coefficient
// of a design written in other columns.
func TestProfileOfACombination(t *testing.T) {
	x, y := bounded(t, "four_kinds")
	z := mat.DenseCopyOf(x) // columns 1, fat, emulsifier - 0.1 fat: coefficient of fat is b1 + 0.1 b2
	for i := range y {
		z.Set(i, 2, x.At(i, 2)-0.1*x.At(i, 1))
	}
	for _, fam := range all {
		f, err := FitScale(fam, x, y)
		if err != nil {
			t.Fatal(err)
		}
		g, err := FitScale(fam, z, y)
		if err != nil {
			t.Fatal(err)
		}
		a, err := f.Profile([]float64{0, 1, 0.1}, 0.9)
		if err != nil {
			t.Fatal(err)
		}
		b, err := g.Profile([]float64{0, 1, 0}, 0.9)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "estimate", a.Estimate, b.Estimate, 1e-8, 0)
		within(t, "low", a.Low, b.Low, 1e-8, 0)
		within(t, "high", a.High, b.High, 1e-8, 0)
	}
}

// Mostly bounds, and separated answers: limits that are far from Wald's.
func TestProfileFarFromWald(t *testing.T) {
	x, y := answers(t, "separable")
	f, err := FitYesNoFirth(x, y)
	if err != nil {
		t.Fatal(err)
	}
	i, err := f.Profile([]float64{0, 1, 0}, 0.95)
	if err != nil || math.IsInf(i.Low, 0) || math.IsInf(i.High, 0) {
		t.Errorf("penalised limits are finite under separation: %+v %v", i, err)
	}
	one := mat.NewDense(9, 1, []float64{1, 1, 1, 1, 1, 1, 1, 1, 1})
	g, err := FitScale(Normal, one, []Obs{Exact(3), AtLeast(3), AtLeast(4), AtLeast(5), AtLeast(6), AtLeast(6), AtLeast(6), AtLeast(6), Exact(4)})
	if err != nil {
		t.Fatal(err)
	}
	// Compared by hand: the likelihood maximised over the scale alone on a grid.
	p, err := g.Profile([]float64{1}, 0.9)
	if err != nil {
		t.Fatal(err)
	}
	best := func(mu float64) float64 {
		top := math.Inf(-1)
		for lnS := -3.0; lnS < 12; lnS += 0.0005 {
			var ll float64
			for _, o := range g.data.rows {
				obs := Obs{Low: o.lo, High: o.hi}
				v, _, _, _, _, _ := LogLik(Normal, obs, mu, lnS)
				ll += v
			}
			top = math.Max(top, ll)
		}
		return top
	}
	within(t, "low", 2*(g.LogLik-best(p.Low)), math.Pow(1.859548037530898, 2)*9/8, 1e-5, 0) // R qt(0.95, 8)
	within(t, "high", 2*(g.LogLik-best(p.High)), math.Pow(1.859548037530898, 2)*9/8, 1e-5, 0)
}

// With nothing but bounds a location far off with as large a spread explains
// them nearly as well: the profile levels out and has no end.
func TestProfileWithoutEnd(t *testing.T) {
	one := mat.NewDense(6, 1, []float64{1, 1, 1, 1, 1, 1})
	f, err := FitScale(Normal, one, []Obs{AtMost(3), AtMost(6), AtLeast(2), AtLeast(5), AtLeast(5), AtLeast(4)})
	if err != nil {
		t.Fatal(err)
	}
	p, err := f.Profile([]float64{1}, 0.9)
	if err != nil || !math.IsInf(p.High, 1) || !math.IsInf(p.Low, -1) {
		t.Errorf("%+v %v", p, err)
	}
}

func TestLeaveOneOutIsFittedWithout(t *testing.T) {
	x, y := bounded(t, "four_kinds_weighted")
	for _, fam := range all {
		f, err := FitScale(fam, x, y)
		if err != nil {
			t.Fatal(err)
		}
		left := f.LeaveOneOut()
		for _, k := range []int{0, 2, 7, 35} {
			rest := mat.NewDense(35, 3, nil)
			var others []Obs
			for i := range y {
				if i != k {
					rest.SetRow(len(others), x.RawRowView(i))
					others = append(others, y[i])
				}
			}
			g, err := FitScale(fam, rest, others)
			if err != nil {
				t.Fatal(err)
			}
			ll, _, _, _, _, _ := LogLik(fam, y[k], g.Predict(x.RawRowView(k)), math.Log(g.Scale))
			within(t, fmt.Sprint(fam, k), left[k].LogLik, ll, 1e-9, 0)
		}
	}
}

// Answers are foreseen by the same estimator, fitted without them.
func TestYesNoLeaveOneOutIsFittedWithout(t *testing.T) {
	x, y := answers(t, "overlap")
	n, p := x.Dims()
	for name, fit := range map[string]func(*mat.Dense, []bool) (*YesNoFit, error){"likelihood": FitYesNo, "reduced": FitYesNoFirth} {
		f, err := fit(x, y)
		if err != nil {
			t.Fatal(err)
		}
		for k, left := range f.LeaveOneOut() {
			rest := mat.NewDense(n-1, p, nil)
			var others []bool
			for i := range y {
				if i != k {
					rest.SetRow(len(others), x.RawRowView(i))
					others = append(others, y[i])
				}
			}
			g, err := fit(rest, others)
			if err != nil {
				t.Fatal(err)
			}
			chance := g.Chance(x.RawRowView(k))
			if !y[k] {
				chance = 1 - chance
			}
			within(t, fmt.Sprint(name, k), left.LogLik, math.Log(chance), 1e-9, 0)
		}
	}
	one, err := FitYesNoFirth(mat.NewDense(1, 1, []float64{1}), []bool{true})
	if err != nil {
		t.Fatal(err)
	}
	if left := one.LeaveOneOut(); left[0].Err == nil {
		t.Errorf("nothing foresees an answer: %+v", left)
	}
}

// A term's test and its profile are one thing: at the confidence 1 - P one end
// of the interval is 0.
func TestTestAndProfileAgree(t *testing.T) {
	type fitted interface {
		Test(columns ...int) (TermTest, error)
		Profile(a []float64, confidence float64) (Interval, error)
	}
	x, y := bounded(t, "four_kinds")
	w, err := FitScale(Weibull, x, y)
	if err != nil {
		t.Fatal(err)
	}
	xa, ya := answers(t, "overlap")
	likelihood, err := FitYesNo(xa, ya)
	if err != nil {
		t.Fatal(err)
	}
	reduced, err := FitYesNoFirth(xa, ya)
	if err != nil {
		t.Fatal(err)
	}
	for name, f := range map[string]fitted{"Weibull": w, "likelihood": likelihood, "reduced": reduced} {
		for k := 1; k <= 2; k++ {
			test, err := f.Test(k)
			if err != nil {
				t.Fatal(name, err)
			}
			p := test.P
			if name == "Weibull" {
				p = test.SmallP
			}
			a := make([]float64, 3)
			a[k] = 1
			i, err := f.Profile(a, 1-p)
			if err != nil {
				t.Fatal(name, err)
			}
			end := i.Low
			if i.Estimate < 0 {
				end = i.High
			}
			within(t, fmt.Sprint(name, " ", k), end, 0, 0, 1e-6*i.SE)
		}
	}
}
