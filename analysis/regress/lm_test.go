package regress

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func within(t *testing.T, what string, got, want, rel, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= math.Max(rel*math.Abs(want), abs)) {
		t.Errorf("%s = %.15g, want %.15g (off %.2g)", what, got, want, got-want)
	}
}

// surface is the response-surface example of the e-Handbook, 5.4.7.3: P, R, PR,
// P² and R² after a constant, and the groups of repeats.
func surface(t testing.TB) (x *mat.Dense, uniformity, stress []float64, groups []int) {
	_, rows := records(t, "response_surface.csv")
	x = mat.NewDense(len(rows), 6, nil)
	for i, r := range rows {
		p, q := number(t, r[5]), number(t, r[6])
		x.SetRow(i, []float64{1, p, q, p * q, p * p, q * q})
		uniformity = append(uniformity, number(t, r[3]))
		stress = append(stress, number(t, r[4]))
		groups = append(groups, int(100*p)*1000+int(100*q))
	}
	return x, uniformity, stress, groups
}

func columns(x *mat.Dense, keep ...int) *mat.Dense {
	n, _ := x.Dims()
	z := mat.NewDense(n, len(keep), nil)
	for j, k := range keep {
		z.SetCol(j, mat.Col(nil, k, x))
	}
	return z
}

func pontius(t testing.TB, degree int) (x *mat.Dense, y []float64, groups []int) {
	_, rows := records(t, "strd/pontius.csv")
	x = mat.NewDense(len(rows), degree+1, nil)
	for i, r := range rows {
		y = append(y, number(t, r[0]))
		load := number(t, r[1])
		groups = append(groups, int(load))
		for k := range degree + 1 {
			x.Set(i, k, math.Pow(load, float64(k)))
		}
	}
	return x, y, groups
}

// Figures of R's lm and its diagnostics, from lm.R beside lm.csv.
func TestFiguresAgreeWithLm(t *testing.T) {
	x, uniformity, stress, groups := surface(t)
	type job struct {
		fit    *Fit
		groups []int
	}
	jobs := map[string]job{}
	add := func(name string, x *mat.Dense, y, w []float64, groups []int) {
		f, err := Least(x, y, w)
		if err != nil {
			t.Fatal(name, err)
		}
		jobs[name] = job{f, groups}
	}
	w := []float64{1, 2, 1, 3, 1, 0.5, 1, 2, 1.5, 1, 4}
	add("full", x, uniformity, nil, groups)
	add("reduced", columns(x, 0, 1, 2, 3), uniformity, nil, groups)
	add("stress", columns(x, 0, 1, 2, 4), stress, nil, groups)
	add("weighted", columns(x, 0, 1, 2, 3), uniformity, w, groups)
	xl, yl := certifiedSet(t, "longley")
	add("longley", xl, yl, nil, nil)
	xp, yp, gp := pontius(t, 1)
	add("straight", xp, yp, nil, gp)
	xp, yp, gp = pontius(t, 2)
	add("quadratic", xp, yp, nil, gp)

	_, rows := records(t, "lm.csv")
	for _, r := range rows {
		j, ok := jobs[r[0]]
		if !ok {
			t.Fatal(r[0])
		}
		f := j.fit
		k, want := int(number(t, r[2])), number(t, r[3])
		var got float64
		rel, abs := 1e-10, 1e-11
		switch r[1] {
		case "coef":
			got = f.Coef[k]
		case "se":
			got = f.SE[k]
		case "sd":
			got = f.ResidualSD
		case "r2":
			got = f.R2
		case "adjusted":
			got = f.AdjustedR2
		case "f":
			got = f.F
		case "residual":
			got, abs = f.Residuals[k], 1e-8*f.ResidualSD
		case "leverage":
			got = f.Leverage[k]
		case "leftout":
			got, rel = f.LeftOut[k], 1e-9
		case "leaveoneout":
			got, rel = f.LeaveOneOutR2, 1e-7
		case "inflation":
			got, rel = f.Inflation[k+1], 1e-8
		case "lack":
			l, err := f.LackOfFit(j.groups)
			if err != nil {
				t.Fatal(r[0], err)
			}
			got, rel = []float64{l.LackSS, l.PureSS, float64(l.LackDF), float64(l.PureDF), l.F, l.P}[k], 1e-7
			abs = 0
		default:
			t.Fatal(r[1])
		}
		within(t, fmt.Sprint(r[:3]), got, want, rel, abs)
	}
}

// NIST/SEMATECH e-Handbook 4.6.1.5 prints, for the straight line, B0 0.614969E-02,
// B1 0.722103E-06, residual SD 0.0021712694 and lack-of-fit F 214.7464 on (18, 20).
// The page's last digits are of a program in single precision: R and this package
// agree with each other to eleven digits (straight, quadratic in lm.csv) and with
// the page to six, which is what is asked here.
func TestPontiusLackOfFit(t *testing.T) {
	const printed = 5e-6
	for _, c := range []struct {
		degree, df int
		f          float64
	}{{1, 18, 214.7464}, {2, 17, 0.81072}} {
		x, y, groups := pontius(t, c.degree)
		f, err := Least(x, y, nil)
		if err != nil {
			t.Fatal(err)
		}
		l, err := f.LackOfFit(groups)
		if err != nil {
			t.Fatal(err)
		}
		within(t, fmt.Sprint("F of degree ", c.degree), l.F, c.f, printed, 0)
		if l.LackDF != c.df || l.PureDF != 20 {
			t.Errorf("%+v", l)
		}
		if c.degree == 1 {
			within(t, "B0", f.Coef[0], 0.614969e-2, printed, 0)
			within(t, "B1", f.Coef[1], 0.722103e-6, printed, 0)
			within(t, "residual SD", f.ResidualSD, 0.0021712694, printed, 0)
			if f.DF != 38 {
				t.Errorf("%d df", f.DF)
			}
		}
	}
}

// Printed figures of the e-Handbook 5.4.7.3.
func TestResponseSurfaceAsPrinted(t *testing.T) {
	x, uniformity, stress, groups := surface(t)
	full, err := Least(x, uniformity, nil)
	if err != nil {
		t.Fatal(err)
	}
	for j, want := range []float64{5.86613, -1.90967, -0.22408, 1.68617, 0.13373, 0.03373} {
		within(t, "coef", full.Coef[j], want, 0, 5e-6)
	}
	for j, want := range []float64{0.41773, 0.36103, 0.36103, 0.71766, 0.60733, 0.60733} {
		within(t, "se", full.SE[j], want, 0, 5e-6)
	}
	within(t, "sd", full.ResidualSD, 0.7235, 0, 5e-5)
	within(t, "R2", full.R2, 0.8716, 0, 5e-5)
	within(t, "adjusted", full.AdjustedR2, 0.7431, 0, 5e-5)
	reduced, err := Least(columns(x, 0, 1, 2, 3), uniformity, nil)
	if err != nil {
		t.Fatal(err)
	}
	l, err := reduced.LackOfFit(groups)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "lack", l.LackSS, 1.4963, 0, 5e-5)
	within(t, "pure", l.PureSS, 1.1467, 0, 5e-5)
	within(t, "F", l.F, 0.52, 0, 5e-3)
	within(t, "P", l.P, 0.7588, 0, 5e-5)
	within(t, "sd", reduced.ResidualSD, 0.6145, 0, 5e-5)
	within(t, "R2", reduced.R2, 0.8703, 0, 5e-5)
	within(t, "adjusted", reduced.AdjustedR2, 0.8148, 0, 5e-5)
	s, err := Least(columns(x, 0, 1, 2, 4), stress, nil)
	if err != nil {
		t.Fatal(err)
	}
	for j, want := range []float64{7.73410, 0.73593, 0.49686, -0.49426} {
		within(t, "stress coef", s.Coef[j], want, 0, 5e-6)
	}
	within(t, "stress sd", s.ResidualSD, 0.0883, 0, 5e-5)
	within(t, "stress R2", s.R2, 0.9848, 0, 5e-5)
	l, err = s.LackOfFit(groups)
	if err != nil {
		t.Fatal(err)
	}
	// The page prints 0.00065 for the mean square of 5 degrees of freedom, a slip.
	within(t, "stress lack mean square", l.LackSS/float64(l.LackDF), 0.00648, 0, 5e-6)
}

func TestRefusals(t *testing.T) {
	one, up := []float64{1, 1, 1, 1, 1, 1}, []float64{1, 2, 3, 4, 5, 6}
	y := []float64{3, 5, 4, 8, 6, 9}
	design := func(cols ...[]float64) *mat.Dense {
		x := mat.NewDense(len(cols[0]), len(cols), nil)
		for j, c := range cols {
			x.SetCol(j, c)
		}
		return x
	}
	with := func(v []float64, i int, to float64) []float64 { v = slices.Clone(v); v[i] = to; return v }
	sum := make([]float64, 6)
	for i := range sum {
		sum[i] = 0.1*up[i] + 0.3*y[i]
	}
	tests := []struct {
		name string
		x    *mat.Dense
		y, w []float64
		want string
	}{
		{"same twice", design(one, up, up), y, nil, "regress: column 2 is a combination of columns [1]"},
		{"constant variable", design(one, up, with(one, 0, 1)), y, nil, "regress: column 2 is a combination of columns [0]"},
		{"sum in rounded decimals", design(one, up, y, sum), []float64{1, 2, 1, 3, 1, 7}, nil, "regress: column 3 is a combination of columns [1 2]"},
		{"parts of a hundred", design(one, []float64{30.1, 33.3, 35.7, 41.9, 44.4, 50.3}, []float64{69.9, 66.7, 64.3, 58.1, 55.6, 49.7}), y, nil, "regress: column 2 is a combination of columns [0 1]"},
		{"two at once", design(one, up, one, up), y, nil, "regress: column 2 is a combination of columns [0]; column 3 is a combination of columns [1]"},
		{"zeros", design(one, make([]float64, 6)), y, nil, "regress: column 1 is zero"},
		{"as many terms", design(one[:2], up[:2]), y[:2], nil, "regress: 2 observations leave nothing to judge 2 terms by"},
		{"no spread", design(one, up), []float64{0.1, 0.1, 0.1, 0.1, 0.1, 0.1}, nil, "regress: every value is 0.1, so there is nothing to explain"},
		{"all zero, no constant", design(up), make([]float64, 6), nil, "regress: every value is 0, so there is nothing to explain"},
		{"not a number", design(one, with(up, 3, math.NaN())), y, nil, "regress: row 3, column 1 is NaN"},
		{"infinite", design(one, up), with(y, 2, math.Inf(1)), nil, "regress: row 2: the result is +Inf"},
		{"weight", design(one, up), y, with(one, 1, 0), "regress: row 1: the weight is 0"},
	}
	for _, c := range tests {
		if _, err := Least(c.x, c.y, c.w); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v, want %s", c.name, err, c.want)
		}
	}
	f, err := Least(design(one, up), y, nil)
	if err != nil {
		t.Fatal(err)
	}
	groups := []struct {
		name   string
		groups []int
		want   Status
	}{
		{"no repeats", []int{1, 2, 3, 4, 5, 6}, NoRepeats},
		{"as many groups as terms", []int{1, 1, 1, 2, 2, 2}, NoLack},
	}
	for _, c := range groups {
		_, err := f.LackOfFit(c.groups)
		var r *Refusal
		if !errors.As(err, &r) || r.Status != c.want {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	f, err = Least(design(one, []float64{1, 1, 2, 2, 3, 3}), []float64{4, 4, 5, 5, 9, 9}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var r *Refusal
	if _, err := f.LackOfFit([]int{1, 1, 2, 2, 3, 3}); !errors.As(err, &r) || r.Status != RepeatsAlike {
		t.Errorf("repeats alike: %v", err)
	}
}

// An observation that alone decides a coefficient has leverage 1 and no
// left-out figures; the others keep theirs.
func TestLeverageOne(t *testing.T) {
	x := mat.NewDense(6, 3, nil)
	for i := range 6 {
		x.SetRow(i, []float64{1, float64(i * i % 4), 0})
	}
	x.Set(5, 2, 1)
	f, err := Least(x, []float64{1, 2, 1.5, 3, 2, 50}, nil)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "leverage", f.Leverage[5], 1, 1e-14, 0)
	if !math.IsNaN(f.LeaveOneOutR2) || !math.IsNaN(f.LeftOut[5]) || math.IsNaN(f.LeftOut[0]) {
		t.Errorf("%+v", f)
	}
}
