package draining

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"foamfield/ingest/thorough"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// TestDrainageByHand: readings worked out by hand from the formula, and some
// that show no half-time.
func TestDrainageByHand(t *testing.T) {
	for _, c := range []struct {
		name  string
		f     Readings
		want  Curve
		power float64
		ok    bool
	}{
		// 40·t/(t + 15): 40·5/20 = 10, 40·15/30 = 20, 40·45/60 = 30, 40·60/75 = 32.
		{"second order", Readings{[]float64{5, 15, 45, 60}, []float64{10, 20, 30, 32}}, Curve{40, 15}, 1, true},
		// 30·t²/(t² + 100): t = 5 gives 6, 10 gives 15, 20 gives 24, 30 gives 27.
		{"sigmoid", Readings{[]float64{5, 10, 20, 30, 10. / 3, 2.5, 60}, []float64{6, 15, 24, 27, 3, 30. / 17, 30 * 36. / 37}}, Curve{30, 10}, 2, true},
		{"still rising evenly", Readings{[]float64{5, 10, 20, 30}, []float64{1, 2, 4, 6}}, Curve{}, 1, false},
		{"all out by the first reading", Readings{[]float64{10, 20, 30}, []float64{20, 20, 20}}, Curve{}, 1, false},
		{"nothing drained", Readings{[]float64{10, 20, 30}, []float64{0, 0, 0}}, Curve{}, 1, false},
		{"two readings", Readings{[]float64{10, 20}, []float64{5, 8}}, Curve{}, 1, false},
	} {
		power := Power([]Readings{c.f})
		got, ok := Fit(c.f, power)
		if ok != c.ok {
			t.Errorf("%s: %+v, %v", c.name, got, ok)
		}
		if ok && (math.Abs(got.Most-c.want.Most) > 1e-3 || math.Abs(got.Half-c.want.Half) > 1e-3 || math.Abs(power-c.power) > 1e-3) {
			t.Errorf("%s: %+v, power %v, want %+v, %v", c.name, got, power, c.want, c.power)
		}
	}
}

// TestDrainageIsLeastSquares: no curve near the fitted one fits better, and a power of its own is
// taken only from enough readings.
func TestDrainageIsLeastSquares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(t, "n")
		truth := Curve{rapid.Float64Range(5, 60).Draw(t, "most"), rapid.Float64Range(5, 40).Draw(t, "half")}
		steep := rapid.Float64Range(0.7, 3).Draw(t, "power")
		var f Readings
		for i := range n {
			m := float64(5 * (i + 1))
			f.Minutes = append(f.Minutes, m)
			f.Percents = append(f.Percents, truth.At(m, steep)+rapid.Float64Range(-0.5, 0.5).Draw(t, "off"))
		}
		power := Power([]Readings{f})
		c, ok := Fit(f, power)
		if !ok {
			return
		}
		if power != 1 && n < 4 {
			t.Fatalf("power %v of %d readings", power, n)
		}
		sum := func(c Curve) (s float64) {
			for i, m := range f.Minutes {
				s += (f.Percents[i] - c.At(m, power)) * (f.Percents[i] - c.At(m, power))
			}
			return s
		}
		best := sum(c)
		for _, by := range []float64{0.98, 1.02} {
			for _, near := range []Curve{{min(c.Most*by, 100), c.Half}, {c.Most, c.Half * by}, {min(c.Most*by, 100), c.Half * by}} {
				if s := sum(near); s < best-1e-9 {
					t.Fatalf("%+v leaves %v, %+v only %v", c, best, near, s)
				}
			}
		}
	})
}

var logs = flag.Int("logs", 0, "simulated logs of the half-times' limits; unless set 20, in a thorough run 400")

// simulated is a log of foams of one power that end and halve each by their own, read with so much
// scatter.
func simulated(rng *rand.Rand, foams int, power, sd float64) (of []Readings, truth []Curve) {
	for range foams {
		c := Curve{10 + 8*rng.Float64(), 8 + 6*rng.Float64()}
		var f Readings
		for _, m := range []float64{2, 5, 10, 15, 20, 30} {
			f.Minutes = append(f.Minutes, m)
			f.Percents = append(f.Percents, math.Max(0, c.At(m, power)+sd*rng.NormFloat64()))
		}
		of, truth = append(of, f), append(truth, c)
	}
	return of, truth
}

// One foam alone has no limits.
func TestOneFoamHasNoLimits(t *testing.T) {
	of, truth := simulated(rand.New(rand.NewPCG(1, 1)), 2, 1.4, 0.2)
	if About(of[:1], truth[:1], 1.4) != nil || About(of, truth, 1.4) == nil {
		t.Error("limits want two foams")
	}
}

// One power for all foams of a log finds half-times that six readings of one foam put far off, and
// limits by the scatter of readings hold them about as often as they say.
func TestHalfTimesOfOneLaw(t *testing.T) {
	thorough.NotShort(t, "simulates readings of many foams")
	n := *logs
	if n == 0 {
		n = thorough.Of(t, 20, 400)
	}
	for _, c := range []struct {
		foams     int
		power, sd float64
	}{{4, 1.8, 0.2}, {12, 1.8, 0.2}, {12, 1, 0.2}, {12, 1.4, 0.4}} {
		rng := rand.New(rand.NewPCG(uint64(c.foams), 1))
		inside, drained, all, off, alone, fitted := 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
		for range n {
			of, truth := simulated(rng, c.foams, c.power, c.sd)
			power := Power(of)
			var kept []Readings
			var curves, real []Curve
			for i, f := range of {
				if fit, ok := Fit(f, power); ok {
					kept, curves, real = append(kept, f), append(curves, fit), append(real, truth[i])
				}
				if fit, ok := Fit(f, Power(of[i:i+1])); ok {
					alone += math.Abs(math.Log(fit.Half / truth[i].Half))
					fitted++
				}
			}
			s := About(kept, curves, power)
			if s == nil {
				continue
			}
			reach := distuv.StudentsT{Sigma: 1, Nu: s.Free}.Quantile(0.95)
			for i, fit := range curves {
				own, by := s.HalfTime(i)
				miss := math.Abs(math.Log(fit.Half / real[i].Half))
				off += miss
				all++
				if miss <= reach*math.Sqrt(own+by*by*s.PowerVar) {
					inside++
				}
				own, by = s.Drained(i, 17)
				if math.Abs(math.Log(fit.At(17, power)/real[i].At(17, c.power))) <= reach*math.Sqrt(own+by*by*s.PowerVar) {
					drained++
				}
			}
		}
		t.Logf("%d foams, power %g, a reading off by %g: limits hold the half-time in %.3f, minute 17 in %.3f; half-times off by %.3f, each by a power of its own %.3f",
			c.foams, c.power, c.sd, inside/all, drained/all, off/all, alone/fitted)
		if loose := 0.02 + 3*math.Sqrt(0.09/float64(n)); math.Abs(inside/all-0.9) > loose {
			t.Errorf("%d foams, power %g: limits hold the half-time in %.3f", c.foams, c.power, inside/all)
		}
		if off/all > alone/fitted {
			t.Errorf("%d foams, power %g: half-times off by %.3f, each by its own power %.3f", c.foams, c.power, off/all, alone/fitted)
		}
	}
}
