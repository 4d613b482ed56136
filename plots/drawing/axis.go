package drawing

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"

	"foamfield/plots/wording"
)

// Scale maps an axis to its length, leaving a share free below and above the
// values for strips of their own. A value that has no place on a logarithmic
// axis lands on its low end.
type Scale struct {
	Log          bool
	Below, Above float64
}

// Normalize implements plot.Normalizer.
func (s Scale) Normalize(lo, hi, v float64) float64 {
	if s.Log {
		lo, hi, v = math.Log(lo), math.Log(hi), math.Log(math.Max(v, lo))
	}
	return s.Below + (1-s.Below-s.Above)*(v-lo)/(hi-lo)
}

// Range is what an axis shows.
type Range struct {
	Lo, Hi float64
	Log    bool
	Whole  bool // it counts: there is nothing between two numbers
}

// NewRange is a range that holds nothing yet.
func NewRange(log bool) Range { return Range{Lo: math.Inf(1), Hi: math.Inf(-1), Log: log} }

// LeastOnLog is the smallest value that a logarithmic axis shows.
const LeastOnLog = 1e-6

// Take widens the range to hold v.
func (a *Range) Take(v float64) {
	if !wording.Finite(v) || (a.Log && v < LeastOnLog) {
		return
	}
	a.Lo, a.Hi = math.Min(a.Lo, v), math.Max(a.Hi, v)
}

// Empty says whether the range holds nothing.
func (a Range) Empty() bool { return a.Lo > a.Hi }

// Shares of a range left free at each end; bounds on a hold need room for their
// arrows.
const (
	Air     = 0.035
	HoldAir = 0.1
)

// Padded is the range with some air, and never without length.
func (a Range) Padded(share float64) Range {
	if a.Empty() {
		a.Lo, a.Hi = 1, 10
	}
	if a.Log {
		f := math.Pow(a.Hi/a.Lo, share)
		if a.Hi/a.Lo < 1.05 {
			f = 1.2
		}
		return Range{Lo: a.Lo / f, Hi: a.Hi * f, Log: true}
	}
	free := share * (a.Hi - a.Lo)
	if free < 1e-6*math.Max(1, math.Abs(a.Hi)) {
		free = math.Max(0.5, 0.1*math.Abs(a.Hi))
	}
	return Range{Lo: a.Lo - free, Hi: a.Hi + free, Whole: a.Whole}
}

// ticks chooses as many round values as leave room for their labels; room is
// what a label takes of the axis's length.
func (a Range) ticks(length vg.Length, room func(label string) vg.Length) plot.ConstantTicks {
	var marks plot.ConstantTicks
	if a.Log {
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
func (a Range) decades(steps []float64) plot.ConstantTicks {
	var marks plot.ConstantTicks
	for e := math.Floor(math.Log10(a.Lo)); e <= math.Log10(a.Hi); e++ {
		for _, s := range steps {
			if v := s * math.Pow(10, e); v >= a.Lo && v <= a.Hi {
				marks = append(marks, plot.Tick{Value: v, Label: wording.Number(v, int(math.Max(0, 1-e)))})
			}
		}
	}
	return marks
}

// round are about n evenly spaced values.
func (a Range) round(n int) plot.ConstantTicks {
	raw := (a.Hi - a.Lo) / float64(n)
	e := math.Floor(math.Log10(raw))
	step := math.Pow(10, e+1)
	for _, s := range []float64{1, 2, 5} {
		if s*math.Pow(10, e) >= raw*0.9 {
			step = s * math.Pow(10, e)
			break
		}
	}
	if a.Whole {
		step = math.Max(step, 1)
	}
	var marks plot.ConstantTicks
	first := math.Ceil(a.Lo/step - 1e-9)
	for i := range 2 * n {
		v := (first + float64(i)) * step
		if v > a.Hi+1e-9*step {
			break
		}
		marks = append(marks, plot.Tick{Value: v, Label: wording.Number(v, int(math.Max(0, 2-e)))})
	}
	return marks
}

// roomy says whether no label comes too close to the next.
func (a Range) roomy(marks plot.ConstantTicks, length vg.Length, room func(string) vg.Length) bool {
	end := vg.Length(math.Inf(-1))
	for _, k := range marks {
		at := length * vg.Length(Scale{Log: a.Log}.Normalize(a.Lo, a.Hi, k.Value))
		half := room(k.Label) / 2
		if at-half < end {
			return false
		}
		end = at + half
	}
	return true
}

// TimesInTen are the ticks of an axis of chances.
func TimesInTen() plot.ConstantTicks {
	var marks []plot.Tick
	for i := 0; i <= 10; i += 2 {
		marks = append(marks, plot.Tick{Value: float64(i) / 10, Label: wording.Number(float64(i), 0)})
	}
	return marks
}

// Rising says whether values can be laid along an axis, each after the one before.
func Rising(v []float64) bool {
	for i := range v {
		if !wording.Finite(v[i]) || (i > 0 && v[i] <= v[i-1]) {
			return false
		}
	}
	return len(v) >= 2
}
