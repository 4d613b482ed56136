package outcome

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func (d drainage) at(minute float64) float64 { return d.most * hill(minute, d.half, d.power) }

// TestDrainageByHand: readings worked out by hand from the formula, and some
// that show no half-time.
func TestDrainageByHand(t *testing.T) {
	for _, c := range []struct {
		name              string
		minutes, percents []float64
		want              drainage
		ok                bool
	}{
		// 40·t/(t + 15): 40·5/20 = 10, 40·15/30 = 20, 40·45/60 = 30, 40·60/75 = 32.
		{"second order", []float64{5, 15, 45, 60}, []float64{10, 20, 30, 32}, drainage{40, 15, 1}, true},
		// 30·t²/(t² + 100): t = 5 gives 6, 10 gives 15, 20 gives 24, 30 gives 27.
		{"sigmoid", []float64{5, 10, 20, 30, 10. / 3, 2.5, 60}, []float64{6, 15, 24, 27, 3, 30. / 17, 30 * 36. / 37}, drainage{30, 10, 2}, true},
		{"still rising evenly", []float64{5, 10, 20, 30}, []float64{1, 2, 4, 6}, drainage{}, false},
		{"all out by the first reading", []float64{10, 20, 30}, []float64{20, 20, 20}, drainage{}, false},
		{"nothing drained", []float64{10, 20, 30}, []float64{0, 0, 0}, drainage{}, false},
		{"two readings", []float64{10, 20}, []float64{5, 8}, drainage{}, false},
	} {
		d, ok := fitDrainage(c.minutes, c.percents)
		if ok != c.ok {
			t.Errorf("%s: %+v, %v", c.name, d, ok)
		}
		if ok && (math.Abs(d.most-c.want.most) > 1e-3 || math.Abs(d.half-c.want.half) > 1e-3 || math.Abs(d.power-c.want.power) > 1e-3) {
			t.Errorf("%s: %+v, want %+v", c.name, d, c.want)
		}
	}
}

// TestDrainageIsLeastSquares: no curve near the fitted one fits better, and a
// power of its own is taken only from enough readings.
func TestDrainageIsLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(t, "n")
		truth := drainage{rapid.Float64Range(5, 60).Draw(t, "most"), rapid.Float64Range(5, 40).Draw(t, "half"), rapid.Float64Range(0.7, 3).Draw(t, "power")}
		var minutes, percents []float64
		for i := range n {
			m := float64(5 * (i + 1))
			minutes = append(minutes, m)
			percents = append(percents, truth.at(m)+rapid.Float64Range(-0.5, 0.5).Draw(t, "off"))
		}
		d, ok := fitDrainage(minutes, percents)
		if !ok {
			return
		}
		if d.power != 1 && n < readingsForPower {
			t.Fatalf("power %v of %d readings", d.power, n)
		}
		sum := func(d drainage) (s float64) {
			for i, m := range minutes {
				s += (percents[i] - d.at(m)) * (percents[i] - d.at(m))
			}
			return s
		}
		best := sum(d)
		for _, f := range []float64{0.98, 1.02} {
			for _, near := range []drainage{{min(d.most*f, 100), d.half, d.power}, {d.most, d.half * f, d.power}, {min(d.most*f, 100), d.half * f, d.power}} {
				if s := sum(near); s < best-1e-9 {
					t.Fatalf("%+v leaves %v, %+v only %v", d, best, near, s)
				}
			}
		}
	})
}
