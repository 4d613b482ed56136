package latent

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

var all = []Family{Lognormal, Weibull, Loglogistic, Normal}

func atLeast(y float64) Obs         { return Obs{Low: y, High: math.Inf(1)} }
func atMost(y float64) Obs          { return Obs{Low: math.Inf(-1), High: y} }
func between(low, high float64) Obs { return Obs{Low: low, High: high} }

// slopeOf is the derivative of f at x by central differences of four points.
func slopeOf(f func(float64) float64, x float64) float64 {
	h := 1e-3
	return (8*(f(x+h)-f(x-h)) - (f(x+2*h) - f(x-2*h))) / (12 * h)
}

// Every derivative of the likelihood of one observation against differences:
// the first of the value, the second of the first.
func TestDerivativesAgainstDifferences(t *testing.T) {
	kinds := []Obs{Exact(12), atLeast(12), atMost(12), between(10, 15), between(12, 12.001), between(0.1, 100), between(11.5, 14.2)}
	for _, fam := range all {
		for _, o := range kinds {
			for _, eta := range []float64{-20, -3, 0, 2.2, 2.6, 5, 20} {
				for _, lnS := range []float64{-1, 0, 0.7} {
					if fam == Normal {
						eta += 9
					}
					ll, e, s, ee, es, ss := LogLik(fam, o, eta, lnS)
					if ll < -1e6 {
						continue // differences lose everything
					}
					at := func(k int) (inEta, inS func(float64) float64) {
						pick := func(eta, lnS float64) float64 {
							v := [3]float64{}
							v[0], v[1], v[2], _, _, _ = LogLik(fam, o, eta, lnS)
							return v[k]
						}
						return func(x float64) float64 { return pick(x, lnS) }, func(x float64) float64 { return pick(eta, x) }
					}
					f0e, f0s := at(0)
					f1e, f1s := at(1)
					_, f2s := at(2)
					what := fmt.Sprintf("%v %v eta %g lnS %g", fam, o, eta, lnS)
					size := math.Max(1, math.Max(math.Abs(ll), math.Abs(ss)))
					within(t, what+" dEta", e, slopeOf(f0e, eta), 1e-8, 1e-9*size)
					within(t, what+" dLnS", s, slopeOf(f0s, lnS), 1e-8, 1e-9*size)
					within(t, what+" dEtaEta", ee, slopeOf(f1e, eta), 1e-8, 1e-9*size)
					within(t, what+" dEtaLnS", es, slopeOf(f1s, lnS), 1e-8, 1e-9*size)
					within(t, what+" dLnSLnS", ss, slopeOf(f2s, lnS), 1e-8, 1e-9*size)
				}
			}
		}
	}
	for _, yes := range []bool{true, false} {
		for _, eta := range []float64{-40, -3, 0, 0.4, 3, 40} {
			_, d, dd := LogLikYesNo(yes, eta)
			within(t, "yes/no d", d, slopeOf(func(x float64) float64 { v, _, _ := LogLikYesNo(yes, x); return v }, eta), 1e-8, 1e-10)
			within(t, "yes/no dd", dd, slopeOf(func(x float64) float64 { _, v, _ := LogLikYesNo(yes, x); return v }, eta), 1e-8, 1e-10)
		}
	}
}

// The ways a probability of an interval is formed must meet where one gives over
// to the next, and a partition of the line must add up to one.
func TestIntervalsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := all[rapid.IntRange(0, 3).Draw(t, "family")]
		eta := rapid.Float64Range(-3, 3).Draw(t, "eta")
		lnS := rapid.Float64Range(-2, 2).Draw(t, "lnS")
		a := rapid.Float64Range(0.05, 20).Draw(t, "a")
		w := math.Exp(rapid.Float64Range(-12, 3).Draw(t, "ln width"))
		parts := []Obs{atMost(a), between(a, a+w), between(a+w, a+3*w), atLeast(a + 3*w)}
		var total, slope, bend float64
		for _, o := range parts {
			ll, d, _, dd, _, _ := LogLik(fam, o, eta, lnS)
			p := math.Exp(ll)
			total += p
			if p > 0 {
				slope += p * d
				bend += p * (dd + d*d)
			}
		}
		if math.Abs(total-1) > 1e-12 || math.Abs(slope) > 1e-10/math.Exp(lnS) || math.Abs(bend) > 1e-9*math.Exp(-2*lnS) {
			t.Fatalf("%v: total %.17g, slope %g, bend %g", fam, total, slope, bend)
		}
	})
}

// As an interval shrinks its probability over its width tends to the density,
// with all derivatives.
func TestShrinkingIntervalTendsToExact(t *testing.T) {
	for _, fam := range all {
		for _, y := range []float64{0.02, 1, 7} {
			for _, w := range []float64{1e-4, 1e-6, 1e-9} {
				half := y * w / 2
				o := between(y-half, y+half)
				got := [6]float64{}
				got[0], got[1], got[2], got[3], got[4], got[5] = LogLik(fam, o, 1.1, 0.3)
				got[0] -= math.Log(o.High - o.Low)
				want := [6]float64{}
				want[0], want[1], want[2], want[3], want[4], want[5] = LogLik(fam, Exact(y), 1.1, 0.3)
				for k := range got {
					within(t, fmt.Sprintf("%v %g width %g part %d", fam, y, w, k), got[k], want[k], w, w)
				}
			}
		}
	}
}

// Where values lie far out the tails stay finite and keep their slope.
func TestFarTails(t *testing.T) {
	tests := []struct {
		fam     Family
		o       Obs
		eta     float64
		ll, tol float64
	}{
		{Normal, atLeast(40), 0, -804.608442013754, 1e-10},     // R: pnorm(40, lower = FALSE, log = TRUE)
		{Normal, atMost(-40), 0, -804.608442013754, 1e-10},     // the mirror image
		{Normal, atLeast(1e6), 0, -5.00000000014734e11, 1},     // R: pnorm(1e6, lower = FALSE, log = TRUE)
		{Normal, between(40, 41), 0, -804.608442013754, 1e-10}, // the rest of the tail is e^-40 of it
		{Normal, between(40, 40.001), 0, -807.846627, 1e-6},    // density at the middle, width, 1 + (z²-1) width²/24
		{Loglogistic, atLeast(1e300), 0, -300 * math.Ln10, 1e-10},
		{Weibull, atLeast(700), 0, -700, 1e-10},
		{Weibull, atMost(1e-300), 0, -300 * math.Ln10, 1e-10},
	}
	for _, c := range tests {
		ll, d, _, dd, _, _ := LogLik(c.fam, c.o, c.eta, 0)
		within(t, fmt.Sprint(c.fam, c.o), ll, c.ll, 0, c.tol)
		if !(dd < 0) || math.IsNaN(d) || math.IsInf(d, 0) {
			t.Errorf("%v %v: slope %g, bend %g", c.fam, c.o, d, dd)
		}
	}
}

func TestScoresCoverTheScale(t *testing.T) {
	var total float64
	for k := 1; k <= 5; k++ {
		ll, _, _, _, _, _ := LogLik(Normal, Score(k, 1, 5), 3.3, 0.2)
		total += math.Exp(ll)
	}
	within(t, "total", total, 1, 1e-14, 0)
	if got := Score(3, 1, 5); got != between(2.5, 3.5) {
		t.Error(got)
	}
}
