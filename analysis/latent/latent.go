// Package latent fits one idea: an observation is an interval on a
// location-scale line. A value read exactly, one known to be at least or at most
// so much, and one that fell between two looks all enter the same likelihood, an
// exact value by its density and an interval by its probability. The line is
// that of the normal, or on logarithms of the lognormal, the Weibull or the
// loglogistic distribution; a yes or no is the logistic with its scale fixed,
// and an ordered score k is the interval from k-1/2 to k+1/2.
//
// Estimates are maximum likelihood (or, for yes and no, Firth's bias-reduced
// likelihood), found by Newton steps on analytic derivatives. Whatever cannot be
// fitted is refused with an error that carries the numbers.
package latent

import (
	"fmt"
	"math"
)

// Obs is one observation as an interval on the original scale. Low equal to High
// is an exact value; High +Inf is "at least Low"; Low -Inf, or anything not above
// 0 for a distribution of positive values, is "at most High". Weight says how
// many alike observations it stands for; 0 means 1.
type Obs struct {
	Low, High, Weight float64
}

// Exact is a value read exactly.
func Exact(y float64) Obs { return Obs{Low: y, High: y} }

// AtLeast is a value known only to be y or more.
func AtLeast(y float64) Obs { return Obs{Low: y, High: math.Inf(1)} }

// AtMost is a value known only to be y or less.
func AtMost(y float64) Obs { return Obs{Low: math.Inf(-1), High: y} }

// Between is a value known only to lie from low to high.
func Between(low, high float64) Obs { return Obs{Low: low, High: high} }

// Score is a score on the whole-number scale lowest..highest: the interval
// half a step either side, open at the two ends of the scale.
func Score(k, lowest, highest int) Obs {
	o := Obs{Low: float64(k) - 0.5, High: float64(k) + 0.5}
	if k <= lowest {
		o.Low = math.Inf(-1)
	}
	if k >= highest {
		o.High = math.Inf(1)
	}
	return o
}

// Counts says how many observations are of each kind.
type Counts struct {
	Exact, AtLeast, AtMost, Between int
}

// Bounded is how many observations are known only up to a bound.
func (c Counts) Bounded() int { return c.AtLeast + c.AtMost + c.Between }

type kind uint8

const (
	exact kind = iota
	atLeast
	atMost
	between
)

// row is an observation on the line itself: logarithms for the positive
// families.
type row struct {
	kind     kind
	lo, hi   float64
	width    float64 // hi-lo, computed without cancellation
	jacobian float64 // ln |d line / d original| of an exact value
	weight   float64
}

func (f Family) row(o Obs) (row, error) {
	r := row{weight: o.Weight}
	if r.weight == 0 {
		r.weight = 1
	}
	switch {
	case math.IsNaN(o.Low) || math.IsNaN(o.High):
		return r, fmt.Errorf("it is not a number")
	case !(r.weight > 0) || math.IsInf(r.weight, 1):
		return r, fmt.Errorf("its weight is %g", o.Weight)
	case o.Low > o.High:
		return r, fmt.Errorf("its low end %g is above its high end %g", o.Low, o.High)
	case o.Low == o.High && math.IsInf(o.Low, 0):
		return r, fmt.Errorf("it is infinite")
	}
	openLow := math.IsInf(o.Low, -1)
	if f.positive() {
		if o.High <= 0 {
			return r, fmt.Errorf("%g is not above 0, as every value must be here", o.High)
		}
		openLow = o.Low <= 0
	}
	openHigh := math.IsInf(o.High, 1)
	switch {
	case openLow && openHigh:
		return r, fmt.Errorf("it has no bound on either side")
	case openLow:
		r.kind = atMost
	case openHigh:
		r.kind = atLeast
	case o.Low == o.High:
		r.kind = exact
	default:
		r.kind = between
	}
	r.lo, r.hi, r.width = o.Low, o.High, o.High-o.Low
	if f.positive() {
		r.lo, r.hi = math.Log(o.Low), math.Log(o.High)
		r.width = r.hi - r.lo
		if rel := (o.High - o.Low) / o.Low; rel < 0.5 {
			r.width = math.Log1p(rel)
		}
		if r.kind == exact {
			r.jacobian = -r.lo
		}
	}
	return r, nil
}

// middle is a rough value on the line, to start from.
func (r row) middle() float64 {
	switch r.kind {
	case atMost:
		return r.hi
	case between:
		return r.lo + r.width/2
	}
	return r.lo
}

func count(rows []row) (c Counts) {
	for _, r := range rows {
		switch r.kind {
		case exact:
			c.Exact++
		case atLeast:
			c.AtLeast++
		case atMost:
			c.AtMost++
		case between:
			c.Between++
		}
	}
	return c
}
