package mark

import (
	"math"

	"gonum.org/v1/plot/vg"

	"foamfield/plots/drawing"
)

// Repeats lie at one place; drawn there they would be one mark. Marks that would
// hide each other are moved side by side, two marks' widths at most.

// ApartWords is what a caption says of it.
const ApartWords = "Marks that would hide each other stand side by side."

// ring are the places around a mark, in rows as close as discs can lie.
var ring = func() (out []vg.Point) {
	for _, turns := range []int{1, 2} {
		for k := range 6 * turns {
			side, along := float64(k/turns), float64(k%turns)/float64(turns)
			corner := func(n float64) (x, y float64) {
				y, x = math.Sincos(n * math.Pi / 3)
				return float64(turns) * x, float64(turns) * y
			}
			x0, y0 := corner(side)
			x1, y1 := corner(side + 1)
			out = append(out, vg.Point{X: vg.Length(x0 + along*(x1-x0)), Y: vg.Length(y0 + along*(y1-y0))})
		}
	}
	return out
}()

// gapOf is how far apart the middles of so many marks are drawn.
func gapOf(marks int) vg.Length {
	if marks > crowd { // which have no rim
		return 2 * radiusOf(marks)
	}
	return 2*radiusOf(marks) + rimWidth
}

// Apart moves marks that would hide each other, within the frame; where all places
// around are taken a mark stays.
func Apart(marks []Mark, frame vg.Rectangle) []Mark {
	gap := gapOf(len(marks))
	out := make([]Mark, 0, len(marks))
	clear := func(at vg.Point) bool {
		for _, m := range out {
			if drawing.Near(m.At, at, 0.95*gap) {
				return false
			}
		}
		return true
	}
	for _, m := range marks {
		if !clear(m.At) {
			for _, step := range ring {
				at := m.At.Add(step.Scale(gap))
				if drawing.Inside(frame, at, -gap/2) && clear(at) {
					m.At = at
					break
				}
			}
		}
		out = append(out, m)
	}
	return out
}

// Apart moves the signs of holds that would hide each other, to the left and right.
func (m Holds) Apart(frame vg.Rectangle) Holds {
	out := make(Holds, 0, len(m))
	clear := func(at vg.Point, k holdSign) bool {
		low, high := k.reach(at)
		for _, o := range out {
			from, to := o.kind.reach(o.at)
			if math.Abs(float64(o.at.X-at.X)) < holdWide && low < to && from < high {
				return false
			}
		}
		return true
	}
	for _, s := range m {
		for _, step := range []vg.Length{0, 1, -1, 2, -2, 3, -3} {
			at := s.at.Add(vg.Point{X: step * holdWide})
			if (step == 0 || drawing.Inside(frame, at, -holdWide/2)) && clear(at, s.kind) {
				s.at = at
				break
			}
		}
		out = append(out, s)
	}
	return out
}

// holdWide is the width of the sign of a hold.
const holdWide = 6.5

// reach is from where to where a sign goes upward.
func (s holdSign) reach(at vg.Point) (low, high vg.Length) {
	switch s.kind {
	case AtLeast:
		return at.Y - 1, at.Y + boundLength
	case AtMost:
		return at.Y - boundLength, at.Y + 1
	case Between:
		return at.Y - 1, at.Y + s.rise + 1
	}
	return at.Y - dotRadius, at.Y + dotRadius
}
