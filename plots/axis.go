package plots

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
)

// scale maps an axis to its length, leaving a share free below and above the
// values for strips of their own. A value that has no place on a logarithmic
// axis lands on its low end.
type scale struct {
	log          bool
	below, above float64
}

// Normalize implements plot.Normalizer.
func (s scale) Normalize(lo, hi, v float64) float64 {
	if s.log {
		lo, hi, v = math.Log(lo), math.Log(hi), math.Log(math.Max(v, lo))
	}
	return s.below + (1-s.below-s.above)*(v-lo)/(hi-lo)
}

// axisRange is what an axis shows.
type axisRange struct {
	lo, hi float64
	log    bool
	whole  bool // it counts: there is nothing between two numbers
}

func newRange(log bool) axisRange { return axisRange{lo: math.Inf(1), hi: math.Inf(-1), log: log} }

// leastOnLog is the smallest value that a logarithmic axis shows.
const leastOnLog = 1e-6

// take widens the range to hold v.
func (a *axisRange) take(v float64) {
	if !finite(v) || (a.log && v < leastOnLog) {
		return
	}
	a.lo, a.hi = math.Min(a.lo, v), math.Max(a.hi, v)
}

func (a axisRange) empty() bool { return a.lo > a.hi }

// Shares of a range left free at each end; bounds on a hold need room for their
// arrows.
const (
	air     = 0.035
	holdAir = 0.1
)

// padded is the range with some air, and never without length.
func (a axisRange) padded(share float64) axisRange {
	if a.empty() {
		a.lo, a.hi = 1, 10
	}
	if a.log {
		f := math.Pow(a.hi/a.lo, share)
		if a.hi/a.lo < 1.05 {
			f = 1.2
		}
		return axisRange{lo: a.lo / f, hi: a.hi * f, log: true}
	}
	free := share * (a.hi - a.lo)
	if free < 1e-6*math.Max(1, math.Abs(a.hi)) {
		free = math.Max(0.5, 0.1*math.Abs(a.hi))
	}
	return axisRange{lo: a.lo - free, hi: a.hi + free, whole: a.whole}
}

// ticks chooses as many round values as leave room for their labels; room is
// what a label takes of the axis's length.
func (a axisRange) ticks(length vg.Length, room func(label string) vg.Length) plot.ConstantTicks {
	var marks plot.ConstantTicks
	if a.log {
		for _, steps := range [][]float64{{1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8}, {1, 1.5, 2, 3, 4, 6}, {1, 2, 3, 5}, {1, 2, 5}, {1, 3}, {1}} {
			if marks = a.decades(steps); len(marks) < 2 {
				break
			}
			if len(marks) <= mostTicks && a.roomy(marks, length, room) {
				return marks
			}
		}
	}
	for n := mostTicks - 1; n > 1; n-- {
		if marks = a.round(n); a.roomy(marks, length, room) {
			break
		}
	}
	return marks
}

const mostTicks = 8

// decades are the given steps of every power of ten within the range.
func (a axisRange) decades(steps []float64) plot.ConstantTicks {
	var marks plot.ConstantTicks
	for e := math.Floor(math.Log10(a.lo)); e <= math.Log10(a.hi); e++ {
		for _, s := range steps {
			if v := s * math.Pow(10, e); v >= a.lo && v <= a.hi {
				marks = append(marks, plot.Tick{Value: v, Label: number(v, int(math.Max(0, 1-e)))})
			}
		}
	}
	return marks
}

// round are about n evenly spaced values.
func (a axisRange) round(n int) plot.ConstantTicks {
	raw := (a.hi - a.lo) / float64(n)
	e := math.Floor(math.Log10(raw))
	step := math.Pow(10, e+1)
	for _, s := range []float64{1, 2, 5} {
		if s*math.Pow(10, e) >= raw*0.9 {
			step = s * math.Pow(10, e)
			break
		}
	}
	if a.whole {
		step = math.Max(step, 1)
	}
	var marks plot.ConstantTicks
	first := math.Ceil(a.lo/step - 1e-9)
	for i := range 2 * n {
		v := (first + float64(i)) * step
		if v > a.hi+1e-9*step {
			break
		}
		marks = append(marks, plot.Tick{Value: v, Label: number(v, int(math.Max(0, 2-e)))})
	}
	return marks
}

// roomy says whether no label comes too close to the next.
func (a axisRange) roomy(marks plot.ConstantTicks, length vg.Length, room func(string) vg.Length) bool {
	end := vg.Length(math.Inf(-1))
	for _, k := range marks {
		at := length * vg.Length(scale{log: a.log}.Normalize(a.lo, a.hi, k.Value))
		half := room(k.Label) / 2
		if at-half < end {
			return false
		}
		end = at + half
	}
	return true
}
