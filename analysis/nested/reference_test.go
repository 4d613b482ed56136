package nested

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

const reference = "../../testdata/reference/trend"

func table(t *testing.T, name string) (rows []map[string]string) {
	t.Helper()
	f, err := os.Open(filepath.Join(reference, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range all[1:] {
		m := map[string]string{}
		for i, v := range r {
			m[all[0][i]] = v
		}
		rows = append(rows, m)
	}
	return rows
}

// wanted is R's figures of one fit.
func wanted(t *testing.T, fit string) map[string]float64 {
	t.Helper()
	out := map[string]float64{}
	for _, r := range table(t, "fits.csv") {
		if r["fit"] == fit {
			v, err := strconv.ParseFloat(r["value"], 64)
			if err != nil {
				t.Fatal(err)
			}
			out[r["quantity"]] = v
		}
	}
	return out
}

// weeks is weeks.csv, exact or with its bounds.
func weeks(t *testing.T, bounded bool) Data {
	t.Helper()
	number := func(s string, open float64) float64 {
		if s == "" {
			return open
		}
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	var d Data
	for _, r := range table(t, "weeks.csv") {
		x1, x2, lot := number(r["x1"], 0), number(r["x2"], 0), number(r["lot"], 0)
		d.X = append(d.X, []float64{1, x1, x1 * x1, x2, lot})
		low, high := number(r["y"], 0), number(r["y"], 0)
		if bounded {
			low, high = number(r["low"], math.Inf(-1)), number(r["high"], math.Inf(1))
		}
		d.Low, d.High = append(d.Low, low), append(d.High, high)
		d.Outer, d.Inner = append(d.Outer, int(number(r["week"], 0))), append(d.Inner, int(number(r["day"], 0)))
	}
	return d
}

func close(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Max(math.Abs(want), 0.01)) {
		t.Errorf("%s is %.9g, R has %.9g", what, got, want)
	}
}

// Spreads, coefficients, their errors, what each week adds, and the likelihood are those of
// R's lme. It stops a little short of the top: by 1e-4 in the spreads.
func TestSpreadsAsLme(t *testing.T) {
	want := wanted(t, "lme")
	d := weeks(t, false)
	d.Level, d.Within, d.Lean = true, true, []int{1}
	none := Prior{math.Inf(1), math.Inf(1), math.Inf(1)}
	s := newProblem(d)
	_, mode, _, err := s.top(none, s.usual(), true)
	if err != nil {
		t.Fatal(err)
	}
	close(t, "level of weeks", mode.Outer[0], want["sd_week"], 2e-3)
	close(t, "slopes of weeks", mode.Outer[1], want["sd_slope"], 2e-3)
	close(t, "days", mode.Inner, want["sd_day"], 2e-3)
	close(t, "rest", mode.Rest, want["sd_rest"], 2e-3)
	close(t, "likelihood", mode.logML, want["loglik"], 1e-7)
	// At R's own spreads all else is R's to seven figures.
	st, err := s.solve(Spreads{Rest: want["sd_rest"], Inner: want["sd_day"], Outer: []float64{want["sd_week"], want["sd_slope"]}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for j := range 5 {
		close(t, fmt.Sprint("coefficient ", j), st.b[j], want[fmt.Sprint("coef", j)], 2e-6)
		e := make([]float64, 5)
		e[j] = 1
		_, sd := s.normal(st, Combination{Line: e, Of: -1})
		close(t, fmt.Sprint("error ", j), sd, want[fmt.Sprint("se", j)], 2e-6)
	}
	for w := range 6 {
		u := s.levels(&st.groups[w], st.b)
		close(t, fmt.Sprint("level of week ", w), u[0], want[fmt.Sprint("level", w)], 1e-5)
		close(t, fmt.Sprint("slope of week ", w), u[1], want[fmt.Sprint("slope", w)], 1e-5)
	}
}

// Without groups, bounds and all, the line is that of R's survreg.
func TestBoundsAsSurvreg(t *testing.T) {
	want := wanted(t, "survreg")
	d := weeks(t, true)
	s := newProblem(d)
	st, err := s.solve(Spreads{Rest: want["scale"]}, nil)
	for range 20 { // to the last figure: solve stops earlier
		if err == nil {
			err = s.step(st)
			s.follow(st)
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	ll := 0.0
	for i, x := range d.X {
		mean := 0.0
		for j, v := range x {
			mean += v * st.b[j]
		}
		if d.Low[i] == d.High[i] {
			z := (d.Low[i] - mean) / want["scale"]
			ll += -z*z/2 - math.Log(want["scale"]*math.Sqrt(2*math.Pi))
			continue
		}
		ln, _, _ := bounds(d.Low[i], d.High[i], mean, want["scale"])
		ll += ln
	}
	close(t, "likelihood", ll, want["loglik"], 1e-9)
	for j := range 5 {
		close(t, fmt.Sprint("coefficient ", j), st.b[j], want[fmt.Sprint("coef", j)], 1e-6)
		e := make([]float64, 5)
		e[j] = 1
		_, sd := s.normal(st, Combination{Line: e, Of: -1})
		close(t, fmt.Sprint("error ", j), sd, want[fmt.Sprint("se", j)], 1e-5)
	}
}
