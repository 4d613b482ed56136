package outcome

import "math"

// drainage is a drainage curve: the percent drained at t minutes is
//
//	V(t) = most · tⁿ/(tⁿ + halfⁿ)
//
// with n the power (Food Sci. Technol. Int. 2007, 10.1177/1082013207087815);
// n = 1 is the second-order law.
type drainage struct {
	most  float64 // percent, in the end
	half  float64 // minutes to half of it
	power float64
}

func hill(minute, half, power float64) float64 { return 1 / (1 + math.Pow(half/minute, power)) }

const (
	fewestReadings   = 3   // for a curve with its power at 1
	readingsForPower = 6   // for a power of its own
	finestPercent    = 0.1 // no kitchen reads drainage finer
)

// fitDrainage fits a drainage curve by least squares to percents read at
// different minutes above 0. The power is 1 unless the readings carry one of
// their own, by the corrected information criterion of Hurvich and Tsai (1989).
// It is false where they do not bend enough to show a half-time within them.
func fitDrainage(minutes, percents []float64) (drainage, bool) {
	n := float64(len(minutes))
	if len(minutes) < fewestReadings {
		return drainage{}, false
	}
	first, last := math.Inf(1), 0.0
	for _, t := range minutes {
		first, last = min(first, t), max(last, t)
	}
	low, high := math.Log(first/20), math.Log(20*last)
	halfFor := func(power float64) float64 {
		return math.Exp(lowest(low, high, func(lnHalf float64) float64 {
			return misfit(minutes, percents, math.Exp(lnHalf), power)
		}))
	}
	d := drainage{half: halfFor(1), power: 1}
	if len(minutes) >= readingsForPower {
		power := math.Exp(lowest(math.Log(0.3), math.Log(8), func(lnPower float64) float64 {
			p := math.Exp(lnPower)
			return misfit(minutes, percents, halfFor(p), p)
		}))
		criterion := func(parameters, half, power float64) float64 {
			spread := misfit(minutes, percents, half, power)/n + finestPercent*finestPercent/12
			k := parameters + 1 // the spread is one too
			return n*math.Log(spread) + 2*k + 2*k*(k+1)/(n-k-1)
		}
		if half := halfFor(power); criterion(3, half, power) < criterion(2, d.half, 1) {
			d = drainage{half: half, power: power}
		}
	}
	d.most = mostOf(minutes, percents, d.half, d.power)
	return d, d.most > 0 && d.half >= first/4 && d.half <= last
}

// mostOf is the end of the curve that fits best for a half-time and a power.
func mostOf(minutes, percents []float64, half, power float64) float64 {
	var up, down float64
	for i, t := range minutes {
		h := hill(t, half, power)
		up += h * percents[i]
		down += h * h
	}
	if down == 0 {
		return 0
	}
	return min(max(up/down, 0), 100)
}

// misfit is the sum of squares the best end of the curve leaves.
func misfit(minutes, percents []float64, half, power float64) float64 {
	most, sum := mostOf(minutes, percents, half, power), 0.0
	for i, t := range minutes {
		off := percents[i] - most*hill(t, half, power)
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
