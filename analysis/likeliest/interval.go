package likeliest

import (
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

// Wald is the combination a of the coefficients, on the line, with limits from
// the information matrix: estimate ± t(n-p) SE √(n/(n-p)). SE is the
// likelihood's, uncorrected. The difference of two rows of a design compares two
// formulas.
func (f *Fit) Wald(a []float64, confidence float64) Interval {
	t, widened := f.Multipliers(confidence)
	estimate, se, reach := dot(a, f.Coef), deviation(f.Covariance, a), t*widened
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

// Multiplier is what a standard error of a yes or no is multiplied by to reach limits: with
// the scale fixed there is no small-sample factor.
func (f *YesNoFit) Multiplier(confidence float64) float64 {
	return distuv.UnitNormal.Quantile((1 + confidence) / 2)
}
