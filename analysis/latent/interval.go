package latent

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Interval is an estimate with its standard error and limits. An end may be
// infinite where the observations set no limit.
type Interval struct {
	Estimate, SE, Low, High float64
}

// Freedom is the degrees of freedom of the small-sample correction, n - p.
func (f *Fit) Freedom() int { return f.N - len(f.Coef) }

// inflation is n/(n-p): by so much the likelihood understates a variance.
func (f *Fit) inflation() float64 { return float64(f.N) / float64(f.Freedom()) }

// Multipliers is what a standard error is multiplied by to reach limits: the
// quantile of t(n-p), and √(n/(n-p)) because the likelihood understates it.
func (f *Fit) Multipliers(confidence float64) (t, widened float64) {
	dist := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(f.Freedom())}
	return dist.Quantile((1 + confidence) / 2), math.Sqrt(f.inflation())
}

func (f *Fit) reach(confidence float64) float64 {
	t, widened := f.Multipliers(confidence)
	return t * widened
}

// Wald is the combination a of the coefficients, on the line, with limits from
// the information matrix: estimate ± t(n-p) SE √(n/(n-p)). SE is the
// likelihood's, uncorrected. The difference of two rows of a design compares two
// formulas.
func (f *Fit) Wald(a []float64, confidence float64) Interval {
	return around(dot(a, f.Coef), deviation(f.Covariance, a), f.reach(confidence))
}

// WaldScale is ln Scale with limits of the same kind.
func (f *Fit) WaldScale(confidence float64) Interval {
	p := len(f.Coef)
	return around(math.Log(f.Scale), math.Sqrt(f.Covariance.At(p, p)), f.reach(confidence))
}

// Quantile is the value, in the original unit, below which the share p of
// observations falls at row x of a design; its limits are Wald's on the line.
func (f *Fit) Quantile(x []float64, p, confidence float64) Interval {
	q := f.Family.quantile(p)
	a := append(append([]float64(nil), x...), q*f.Scale) // slope in ln Scale
	w := around(dot(x, f.Coef)+q*f.Scale, deviation(f.Covariance, a), f.reach(confidence))
	if f.Family.positive() {
		w.Estimate, w.Low, w.High = math.Exp(w.Estimate), math.Exp(w.Low), math.Exp(w.High)
		w.SE *= w.Estimate
	}
	return w
}

func around(estimate, se, reach float64) Interval {
	return Interval{Estimate: estimate, SE: se, Low: estimate - reach*se, High: estimate + reach*se}
}

// deviation is the standard deviation of the combination a of the first len(a)
// parameters.
func deviation(cov *mat.SymDense, a []float64) float64 {
	var v float64
	for i, x := range a {
		for j, y := range a {
			v += x * y * cov.At(i, j)
		}
	}
	return math.Sqrt(math.Max(v, 0))
}

// Profile is the combination a of the coefficients with limits from the profile
// likelihood: the values at which twice the fall of the log likelihood is
// t(n-p)² n/(n-p), the correction of Wald.
func (f *Fit) Profile(a []float64, confidence float64) (Interval, error) {
	w := f.Wald(a, confidence)
	if w.SE == 0 {
		return w, nil
	}
	p := len(f.Coef)
	toward := direction(f.Covariance, a, p+1)
	b, err := orthonormal(fixing(f.x, a, pivot(f.Covariance, a)))
	if err != nil {
		return w, err
	}
	l := &line{sample: f.data, basis: b, eta0: make([]float64, f.N)}
	theta := make([]float64, p)
	w.Low, w.High, err = limits(w, f.LogLik, f.reach(confidence), func(t float64) (float64, error) {
		for i := range l.eta0 {
			l.eta0[i] = f.eta[i] + t*dot(f.x.RawRowView(i), toward[:p])
		}
		l.s0 = f.Scale * math.Exp(math.Max(-20, math.Min(20, t*toward[p])))
		clear(theta)
		theta[p-1] = 1
		top := l.climb(theta)
		// Far from the estimate the best spread may be endless; the likelihood then
		// is what it tends to.
		endless := top.status == NotConverged && theta[p-1] < 1e-9
		if top.status != Converged && !endless {
			return 0, f.refusal(top)
		}
		return top.ll, nil
	})
	return w, err
}

func (f *Fit) refusal(top summit) error {
	return &Refusal{Status: top.status, N: f.N, Parameters: len(f.Coef) + 1, Counts: f.Counts,
		Iterations: top.iterations, LogLik: top.ll, Decrement: top.decrement}
}

// direction is how the first m parameters move, on the quadratic approximation,
// when the combination a of them moves by 1.
func direction(cov *mat.SymDense, a []float64, m int) []float64 {
	d := make([]float64, m)
	v := deviation(cov, a)
	for i := range d {
		for j, x := range a {
			d[i] += cov.At(i, j) * x
		}
		d[i] /= v * v
	}
	return d
}

// pivot is the coefficient that weighs most in the combination a.
func pivot(cov *mat.SymDense, a []float64) (k int) {
	var top float64
	for j, x := range a {
		if w := math.Abs(x) * math.Sqrt(cov.At(j, j)); w > top {
			top, k = w, j
		}
	}
	return k
}

// limits finds on both sides of an estimate where the signed root of twice the
// fall from the largest log likelihood is reach. at is the log likelihood t away
// from the estimate.
func limits(w Interval, top, reach float64, at func(t float64) (float64, error)) (low, high float64, err error) {
	var ends [2]float64
	for i, sign := range []float64{-1, 1} {
		t, err := crossing(w.SE, reach, func(t float64) (float64, error) {
			ll, err := at(sign * t)
			return math.Sqrt(math.Max(0, 2*(top-ll))) - reach, err
		})
		if err != nil {
			return w.Low, w.High, err
		}
		ends[i] = w.Estimate + sign*t
	}
	return ends[0], ends[1], nil
}

// crossing is the root of g, which is -reach at 0 and nearly a line of slope
// 1/se; +Inf if g has not risen to 0 a million standard errors out.
func crossing(se, reach float64, g func(float64) (float64, error)) (float64, error) {
	lo, gLo := 0.0, -reach
	hi := reach * se
	gHi, err := g(hi)
	for ; err == nil && gHi < 0; gHi, err = g(hi) {
		lo, gLo = hi, gHi
		if hi *= 2; hi > 1e6*reach*se {
			return math.Inf(1), nil
		}
	}
	kept := 0 // consecutive steps that kept the same end, for the Illinois rule
	for range 100 {
		if err != nil || gHi == 0 {
			return hi, err
		}
		t := hi - gHi*(hi-lo)/(gHi-gLo)
		if math.Abs(hi-lo) <= 1e-12*hi {
			return t, nil
		}
		var v float64
		v, err = g(t)
		if err != nil {
			return t, err
		}
		if math.Abs(v) < 1e-11*reach {
			return t, nil
		}
		if v < 0 {
			lo, gLo = t, v
			if kept++; kept > 1 {
				gHi /= 2
			}
			kept = max(kept, 1)
		} else {
			hi, gHi = t, v
			if kept--; kept < -1 {
				gLo /= 2
			}
			kept = min(kept, -1)
		}
	}
	return 0, errors.New("latent: the limit of a profile was not found")
}

// Wald is the combination a of the log odds ratios with limits from the
// information matrix and the normal distribution; with the scale fixed there is
// no small-sample factor.
func (f *YesNoFit) Wald(a []float64, confidence float64) Interval {
	return around(dot(a, f.Coef), deviation(f.Covariance, a), f.Multiplier(confidence))
}

// Multiplier is what a standard error is multiplied by to reach limits.
func (f *YesNoFit) Multiplier(confidence float64) float64 { return normalReach(confidence) }

func normalReach(confidence float64) float64 {
	return distuv.UnitNormal.Quantile((1 + confidence) / 2)
}

// Profile is the combination a of the log odds ratios with limits from the
// profile likelihood, penalised when the fit is bias-reduced, and the
// chi-squared distribution.
func (f *YesNoFit) Profile(a []float64, confidence float64) (Interval, error) {
	w := f.Wald(a, confidence)
	if w.SE == 0 {
		return w, nil
	}
	p := len(f.Coef)
	toward := direction(f.Covariance, a, p)
	b, err := orthonormal(fixing(f.x, a, pivot(f.Covariance, a)))
	if err != nil {
		return w, err
	}
	o := &odds{basis: b, yes: f.y, eta0: make([]float64, f.N)}
	if f.Reduced {
		full, err := orthonormal(whole(f.x))
		if err != nil {
			return w, err
		}
		o.reduced = newReduction(full)
	}
	theta := make([]float64, p-1)
	w.Low, w.High, err = limits(w, f.Penalised, normalReach(confidence), func(t float64) (float64, error) {
		for i := range o.eta0 {
			x := f.x.RawRowView(i)
			o.eta0[i] = dot(x, f.Coef) + t*dot(x, toward)
		}
		clear(theta)
		top := ascend(o, theta)
		if top.status != Converged {
			return 0, &Refusal{Status: top.status, N: f.N, Parameters: p, Yes: f.Yes,
				Iterations: top.iterations, LogLik: top.ll, Decrement: top.decrement}
		}
		return top.ll, nil
	})
	return w, err
}
