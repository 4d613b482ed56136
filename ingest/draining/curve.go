// Package draining knows how liquid leaves foams over the minutes, and nothing else. The percent
// drained at t minutes is
//
//	most · tⁿ/(tⁿ + halfⁿ)
//
// with n the power (Food Sci. Technol. Int. 2007, 10.1177/1082013207087815); n = 1 is the
// second-order law. Foams of one log drain by one law: each has an end and a half-time of its own,
// the power is that of all: a few readings of one foam hardly tell a power from a longer half-time,
// those of all foams do.
package draining

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Readings are percents drained of one foam, at different minutes above 0.
type Readings struct{ Minutes, Percents []float64 }

// Curve is how one foam drained.
type Curve struct {
	Most float64 // percent, in the end
	Half float64 // minutes to half of it
}

// At is the percent drained at a minute.
func (c Curve) At(minute, power float64) float64 { return c.Most * share(minute, c.Half, power) }

func share(minute, half, power float64) float64 { return 1 / (1 + math.Pow(half/minute, power)) }

const (
	// Fewest is how many readings a curve takes.
	Fewest = 3
	// finest is what no kitchen reads drainage finer than, in percent.
	finest = 0.1
	// mostFoams is of how many foams at most the power is found.
	mostFoams = 60
	// takesPower is how rare by chance alone a better fit must be for a power of its own. A power that
	// is missed puts half-times far off, one that is not there only widens their limits.
	takesPower = 0.1
)

// Power is that of all foams, by least squares. It is 1 unless readings would by chance alone ask for
// another as clearly as these in fewer than one log in ten, by the tail of F.
func Power(foams []Readings) float64 {
	var of []Readings
	n := 0.0
	every := (len(foams) + mostFoams - 1) / mostFoams
	for i, f := range foams {
		if i%every == 0 && drained(f) {
			of = append(of, f)
			n += float64(len(f.Minutes))
		}
	}
	own := 2 * float64(len(of)) // an end and a half-time each
	if n-own < 2 {
		return 1
	}
	misfits := func(power float64) (sum float64) {
		for _, f := range of {
			sum += misfit(f, halfOf(f, power), power)
		}
		return sum
	}
	power := math.Exp(lowest(math.Log(0.3), math.Log(8), func(ln float64) float64 { return misfits(math.Exp(ln)) }))
	// A kitchen reads in steps, so that no fit is finer than these.
	least := n * finest * finest / 12
	with, without := misfits(power)+least, misfits(1)+least
	free := n - own - 1
	if (distuv.F{D1: 1, D2: free}).Survival(free*math.Max(0, without-with)/with) < takesPower {
		return power
	}
	return 1
}

// drained says whether a foam was read often enough, and drained at all.
func drained(f Readings) bool {
	most := 0.0
	for _, p := range f.Percents {
		most = max(most, p)
	}
	return len(f.Minutes) >= Fewest && most > 0
}

// Fit is the curve of one foam whose power is known, by least squares. It is false where its
// readings do not bend enough to show a half-time within them.
func Fit(f Readings, power float64) (Curve, bool) {
	if !drained(f) {
		return Curve{}, false
	}
	first, last := ends(f)
	c := Curve{Half: halfOf(f, power)}
	c.Most = mostOf(f, c.Half, power)
	return c, c.Most > 0 && c.Half >= first/4 && c.Half <= last
}

func ends(f Readings) (first, last float64) {
	first = math.Inf(1)
	for _, t := range f.Minutes {
		first, last = min(first, t), max(last, t)
	}
	return first, last
}

// halfOf is the half-time that fits best.
func halfOf(f Readings, power float64) float64 {
	first, last := ends(f)
	return math.Exp(lowest(math.Log(first/20), math.Log(20*last), func(ln float64) float64 { return misfit(f, math.Exp(ln), power) }))
}

// mostOf is the end of the curve that fits best for a half-time and a power.
func mostOf(f Readings, half, power float64) float64 {
	var up, down float64
	for i, t := range f.Minutes {
		h := share(t, half, power)
		up += h * f.Percents[i]
		down += h * h
	}
	if down == 0 {
		return 0
	}
	return min(max(up/down, 0), 100)
}

// misfit is the sum of squares the best end of the curve leaves.
func misfit(f Readings, half, power float64) (sum float64) {
	most := mostOf(f, half, power)
	for i, t := range f.Minutes {
		off := f.Percents[i] - most*share(t, half, power)
		sum += off * off
	}
	return sum
}

// lowest finds where f is least: the best of a grid, then golden sections
// around it.
func lowest(low, high float64, f func(float64) float64) float64 {
	const steps, cuts = 24, 30
	step := (high - low) / steps
	at, least := low, math.Inf(1)
	for i := range steps + 1 {
		x := low + float64(i)*step
		if y := f(x); y < least {
			at, least = x, y
		}
	}
	golden := (math.Sqrt(5) - 1) / 2
	a, b := max(at-step, low), min(at+step, high)
	c, d := b-golden*(b-a), a+golden*(b-a)
	fc, fd := f(c), f(d)
	for range cuts {
		if fc < fd {
			b, d, fd = d, c, fc
			c = b - golden*(b-a)
			fc = f(c)
		} else {
			a, c, fc = c, d, fd
			d = a + golden*(b-a)
			fd = f(d)
		}
	}
	return (a + b) / 2
}
