// Package latent is one idea: an observation is an interval on a
// location-scale line. A value read exactly, one known to be at least or at most
// so much, and one that fell between two looks all enter the same likelihood, an
// exact value by its density and an interval by its probability. The line is
// that of the normal, or on logarithms of the lognormal, the Weibull or the
// loglogistic distribution; a yes or no is the logistic with its scale fixed,
// and an ordered score k is the interval from k-1/2 to k+1/2.
//
// Here stands what one observation says of a line, with derivatives; the lines by which
// many are likeliest are found in package likeliest.
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

// Kind is what is known of a value.
type Kind uint8

// The kinds.
const (
	IsExact Kind = iota
	IsAtLeast
	IsAtMost
	IsBetween
)

// Row is an observation on the line itself: logarithms for the positive
// families.
type Row struct {
	Kind     Kind
	Lo, Hi   float64
	Width    float64 // Hi-Lo, computed without cancellation
	Jacobian float64 // ln |d line / d original| of an exact value
	Weight   float64
}

// Row puts an observation on the line; the error is why it is none.
func (f Family) Row(o Obs) (Row, error) {
	r := Row{Weight: o.Weight}
	if r.Weight == 0 {
		r.Weight = 1
	}
	switch {
	case math.IsNaN(o.Low) || math.IsNaN(o.High):
		return r, fmt.Errorf("it is not a number")
	case !(r.Weight > 0) || math.IsInf(r.Weight, 1):
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
		r.Kind = IsAtMost
	case openHigh:
		r.Kind = IsAtLeast
	case o.Low == o.High:
		r.Kind = IsExact
	default:
		r.Kind = IsBetween
	}
	r.Lo, r.Hi, r.Width = o.Low, o.High, o.High-o.Low
	if f.positive() {
		r.Lo, r.Hi = math.Log(o.Low), math.Log(o.High)
		r.Width = r.Hi - r.Lo
		if rel := (o.High - o.Low) / o.Low; rel < 0.5 {
			r.Width = math.Log1p(rel)
		}
		if r.Kind == IsExact {
			r.Jacobian = -r.Lo
		}
	}
	return r, nil
}

// Middle is a rough value on the line, to start from.
func (r Row) Middle() float64 {
	switch r.Kind {
	case IsAtMost:
		return r.Hi
	case IsBetween:
		return r.Lo + r.Width/2
	}
	return r.Lo
}

// Count counts rows by their kind.
func Count(rows []Row) (c Counts) {
	for _, r := range rows {
		switch r.Kind {
		case IsExact:
			c.Exact++
		case IsAtLeast:
			c.AtLeast++
		case IsAtMost:
			c.AtMost++
		case IsBetween:
			c.Between++
		}
	}
	return c
}
