package nested

import (
	"math"
	"math/rand/v2"
	"testing"

	"foamfield/ingest/thorough"
)

// ln P(low < y < high) with slope and curvature by the mean are what differences make of
// it, far out and near.
func TestBounds(t *testing.T) {
	for _, c := range [][2]float64{{1, math.Inf(1)}, {math.Inf(-1), 1}, {0, 1}, {-1, 0.5}, {8, math.Inf(1)}, {math.Inf(-1), -8}, {3, 4}, {-4, -3}} {
		for _, sd := range []float64{0.3, 1} {
			ln := func(m float64) float64 { l, _, _ := bounds(c[0], c[1], m, sd); return l }
			_, slope, curve := bounds(c[0], c[1], 0.1, sd)
			const h = 1e-4
			if got := (ln(0.1+h) - ln(0.1-h)) / (2 * h); math.Abs(got-slope) > 1e-4*math.Max(1, math.Abs(got)) {
				t.Errorf("%v, SD %v: slope %v, by differences %v", c, sd, slope, got)
			}
			if got := -(ln(0.1+h) - 2*ln(0.1) + ln(0.1-h)) / (h * h); math.Abs(got-curve) > 1e-3*math.Max(1, math.Abs(got)) {
				t.Errorf("%v, SD %v: curvature %v, by differences %v", c, sd, curve, got)
			}
		}
	}
}

// simulated is rows in 6 weeks of 3 days, with a level of days and nothing else.
func simulated(rng *rand.Rand, bound float64) Data {
	d := Data{Level: true, Within: true, Lean: []int{1}}
	for week := range 6 {
		for day := range 3 {
			level := 0.15 * rng.NormFloat64()
			for range 3 {
				x := 2*rng.Float64() - 1
				y := 1 + 0.5*x + level + 0.2*rng.NormFloat64()
				low, high := y, y
				if y > bound {
					low, high = bound, math.Inf(1)
				}
				d.X = append(d.X, []float64{1, x})
				d.Low, d.High = append(d.Low, low), append(d.High, high)
				d.Outer, d.Inner = append(d.Outer, week), append(d.Inner, 3*week+day)
			}
		}
	}
	return d
}

// The order of rows, and the numbers that groups bear, change nothing.
func TestOrderChangesNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	d := simulated(rng, 1.3)
	prior := Prior{0.5, 0.3, 0.4}
	a, err := Of(d, prior)
	if err != nil {
		t.Fatal(err)
	}
	e := Data{Level: true, Within: true, Lean: []int{1}}
	for _, i := range rng.Perm(len(d.X)) {
		e.X, e.Low, e.High = append(e.X, d.X[i]), append(e.Low, d.Low[i]), append(e.High, d.High[i])
		e.Outer, e.Inner = append(e.Outer, 5-d.Outer[i]), append(e.Inner, 100-d.Inner[i])
	}
	b, err := Of(e, prior)
	if err != nil {
		t.Fatal(err)
	}
	va, vb := a.Value(a.At([]float64{1, 0.5}, 2), 0.9), b.Value(b.At([]float64{1, 0.5}, 3), 0.9)
	for _, p := range [][2]float64{{a.LogML, b.LogML}, {va.Mean, vb.Mean}, {va.Low, vb.Low}, {va.High, vb.High}, {a.Zero(1), b.Zero(1)}} {
		if math.Abs(p[0]-p[1]) > 1e-6*math.Max(1, math.Abs(p[0])) {
			t.Errorf("%v and %v", p[0], p[1])
		}
	}
}

// Limits of a slope hold the truth in 9 of 10, and a p below 0.1 comes in 1 of 10 where
// there is nothing: within three standard deviations of 80 sets.
func TestLimitsHoldTheTruth(t *testing.T) {
	thorough.NotShort(t, "fits some hundred sets")
	const sets = 80
	in, small := 0, 0
	for k := range sets {
		rng := rand.New(rand.NewPCG(uint64(k), 9))
		d := simulated(rng, 1.4)
		for i := range d.X {
			d.X[i] = append(d.X[i], rng.NormFloat64())
		}
		f, err := Of(d, Prior{0.5, 0.3, 0.4})
		if err != nil {
			t.Fatal(err)
		}
		if v := f.Value(Combination{Line: []float64{0, 1, 0}, Of: -1}, 0.9); v.Low <= 0.5 && 0.5 <= v.High {
			in++
		}
		if f.Zero(2) < 0.1 {
			small++
		}
	}
	if in < 64 || small > 16 || small < 1 {
		t.Errorf("limits hold the truth in %d of %d, p below 0.1 in %d", in, sets, small)
	}
}

// Columns that make each other up are refused, not fitted.
func TestRefusesWhatIsNotSettled(t *testing.T) {
	d := simulated(rand.New(rand.NewPCG(1, 1)), 9)
	for i, x := range d.X {
		d.X[i] = append(x, 2*x[1])
	}
	if _, err := Of(d, Prior{0.5, 0.3, 0.4}); err == nil {
		t.Error("a column twice is fitted")
	}
}
