package series

import (
	"cmp"
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// Flow rates of ten batches, NIST/SEMATECH e-Handbook 6.3.2.2: centre 50.81, limits 55.8041 and
// 45.8159 as printed there, by a mean moving range of 1.8778 and d2 = 1.128.
func TestFlowRates(t *testing.T) {
	c, ok := Individuals([]float64{49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1})
	if !ok {
		t.Fatal("no chart")
	}
	near(t, "centre", c.Centre, 50.81, 1e-9)
	near(t, "move", c.Move, 1.8778, 5e-5)
	near(t, "upper limit", c.High, 55.8041, 5e-5)
	near(t, "lower limit", c.Low, 45.8159, 5e-5)
	near(t, "2.66", 3/d2, 2.66, 5e-4)
}

// Seven points, Sen 1968: slope 4, limits 26/7 and 35/8 at 95 in 100, which by ranks between
// whole ones come within 0.02.
func TestSevenPoints(t *testing.T) {
	times, values := []float64{1, 2, 3, 4, 10, 12, 18}, []float64{9, 15, 19, 20, 45, 55, 78}
	s, ok := TheilSen(times, values, 0.95)
	if !ok {
		t.Fatal("no slope")
	}
	near(t, "slope", s.Mid, 4, 1e-12)
	near(t, "low", s.Low, 26.0/7, 0.02)
	near(t, "high", s.High, 35.0/8, 0.02)
}

// Fourteen values worked by hand, one pair of them equal: S 54, Z 2.9058, one-sided p 0.0018 (J.
// Little, College of the Holy Cross, "A Mann-Kendall example by hand").
func TestFourteenValues(t *testing.T) {
	values := []float64{12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7}
	var times []float64
	for i := range values {
		times = append(times, float64(i))
	}
	r := Rising(times, func(i, j int) int { return cmp.Compare(values[j], values[i]) }, values)
	near(t, "S", float64(r.S), 54, 0)
	near(t, "z", r.Z, 2.9058, 5e-5)
	near(t, "p", r.P/2, 0.0018, 5e-5)
}

// The Nile, as R has it (testdata/reference/trend).
func TestNileAsR(t *testing.T) {
	read := func(name string) [][]string {
		f, err := os.Open("../../testdata/reference/trend/" + name)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		rows, err := csv.NewReader(f).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		return rows[1:]
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	var years, flow []float64
	for _, r := range read("nile.csv") {
		years, flow = append(years, number(r[0])), append(flow, number(r[1]))
	}
	want := map[string]float64{}
	for _, r := range read("fits.csv") {
		if r[0] == "nile" {
			want[r[1]] = number(r[2])
		}
	}
	r := Rising(years, func(i, j int) int { return cmp.Compare(flow[j], flow[i]) }, flow)
	near(t, "z", r.Z, want["z"], 1e-9)
	near(t, "p", r.P, want["p"], 1e-12)
	s, _ := TheilSen(years, flow, 0.9)
	near(t, "slope", s.Mid, want["slope"], 1e-12)
	if !(s.Low < s.Mid && s.Mid < s.High) {
		t.Errorf("limits %v to %v", s.Low, s.High)
	}
}
