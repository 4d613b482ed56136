// Package mark draws trials: one mark a trial, by what became of it, or a sign for how
// long it held; side by side where they would hide each other, and as fewer, larger
// marks where there are thousands.
package mark

import (
	"image/color"
	"slices"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/plots/drawing"
)

// Sizes of marks, by how many of them a picture has.
const (
	busyRadius   = 2.9 // marks when there are more than Busy of them
	Busy         = 80
	farMarkScale = 0.72 // marks of trials away from the plane shown
	rimWidth     = 0.9
	crowdRadius  = 2.0 // marks when there are more than crowd of them
	crowd        = 250
)

// Mark is one trial at its place on the canvas, or the number of trials that a
// cell holds; far marks are drawn smaller and paler.
type Mark struct {
	At     vg.Point
	Fate   Fate
	Far    bool
	Trials int // 0 where each trial has a mark of its own
}

// radiusOf is the radius of the marks of a picture of so many.
func radiusOf(marks int) vg.Length {
	switch {
	case marks > crowd:
		return crowdRadius
	case marks > Busy:
		return busyRadius
	}
	return drawing.MarkRadius
}

// Draw draws all marks, the far ones first, then the larger, then the
// commoner; one path for each kind so that a drawing of many trials stays small.
func Draw(c draw.Canvas, marks []Mark) {
	r := radiusOf(len(marks))
	type kind struct {
		far  bool
		step int
		fate Fate
	}
	kinds := map[kind][]Mark{}
	var total [Fates]int
	for _, m := range marks {
		k := kind{m.Far, swollen(m.Trials), m.Fate}
		kinds[k] = append(kinds[k], m)
		total[m.Fate] += m.Trials
	}
	var order []Fate
	for f := Fates - 1; f >= 0; f-- {
		order = append(order, f)
	}
	slices.SortStableFunc(order, func(a, b Fate) int { return total[b] - total[a] })
	for _, far := range []bool{true, false} {
		for step := len(swelling) - 1; step >= 0; step-- {
			for _, f := range order {
				radius, colour := r, f.colour()
				if total[f] > 0 {
					radius = crowdRadius * swelling[step].times
				}
				if far {
					radius, colour = radius*farMarkScale, drawing.Lighter(colour, 0.45)
				}
				var p, rim vg.Path
				for _, m := range kinds[kind{far, step, f}] {
					if m.Trials > 0 && f == Worked {
						disc(&p, m.At, radius)
						disc(&rim, m.At, radius+rimWidth)
						continue
					}
					f.outline(&p, m.At, radius)
					f.outline(&rim, m.At, radius+rimWidth)
				}
				if len(marks) > crowd {
					rim = nil
				}
				if len(p) > 0 {
					paintMark(c, f, p, rim, colour, radius*0.5)
				}
			}
		}
	}
}

// paintMark draws the path of one kind of mark over a rim of paper that keeps
// neighbours apart.
func paintMark(c draw.Canvas, f Fate, p, rim vg.Path, colour color.RGBA, width vg.Length) {
	c.SetLineDash(nil, 0)
	switch {
	case f.hollow() && rim != nil:
		c.SetLineStyle(draw.LineStyle{Color: drawing.Colour(drawing.Paper), Width: width + 2*rimWidth})
		c.Stroke(p)
	case rim != nil:
		c.SetColor(drawing.Colour(drawing.Paper))
		c.Fill(rim)
	}
	if f == Unknown {
		c.SetColor(drawing.Colour(drawing.Paper))
		c.Fill(p)
	}
	if f.hollow() {
		c.SetLineStyle(draw.LineStyle{Color: colour, Width: width})
		c.Stroke(p)
		return
	}
	c.SetColor(colour)
	c.Fill(p)
}

// keyMark is one mark of a key.
func keyMark(f Fate) drawing.Sign {
	return func(c draw.Canvas, at vg.Point) { Draw(c, []Mark{{At: at, Fate: f}}) }
}
