package drawing

import (
	"math"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Spot is one place a label may stand: beside the point, gap away from it in
// the direction (dx, dy); each is from -1 to 1, and (0, 0) is on the point.
type Spot struct {
	At     vg.Point
	Dx, Dy float64
	Gap    vg.Length
}

// Around gives the four places beside a point, above and below first.
func Around(at vg.Point, gap vg.Length) []Spot {
	var spots []Spot
	for _, d := range [][2]float64{{0, 1}, {0, -1}, {1, 0}, {-1, 0}} {
		spots = append(spots, Spot{at, d[0], d[1], gap})
	}
	return spots
}

// Placer finds room for labels inside a frame: no label overlaps another, leaves
// the frame, or lies on a mark or a line.
type Placer struct {
	Frame vg.Rectangle
	Taken []vg.Rectangle
	Avoid []vg.Point   // marks
	Drawn vg.Length    // their radius where it is not the usual
	Lines [][]vg.Point // lines, each by its points

	// Refuse, where set, says of a free box that the label would be wrong there.
	Refuse func(vg.Rectangle) bool
}

const (
	labelPad = 1.5
	labelGap = 1.5
)

// place chooses the first box for the text that hides nothing; ok is false when
// there is none.
func (p *Placer) place(sty text.Style, s string, spots []Spot) (box vg.Rectangle, ok bool) {
	dim := Size(sty, s)
	w, h := dim.X+2*labelPad, dim.Y+2*labelPad
	for _, sp := range spots {
		x := sp.At.X + vg.Length(sp.Dx)*(w/2+sp.Gap)
		y := sp.At.Y + vg.Length(sp.Dy)*(h/2+sp.Gap)
		b := vg.Rectangle{Min: vg.Point{X: x - w/2, Y: y - h/2}, Max: vg.Point{X: x + w/2, Y: y + h/2}}
		if p.free(b) && !p.hides(b) && (p.Refuse == nil || !p.Refuse(b)) {
			p.Taken = append(p.Taken, b)
			return b, true
		}
	}
	return vg.Rectangle{}, false
}

// hides says whether a box would cover a mark or a line.
func (p *Placer) hides(b vg.Rectangle) bool {
	radius := p.Drawn
	if radius == 0 {
		radius = MarkRadius
	}
	for _, q := range p.Avoid {
		if Inside(b, q, radius) {
			return true
		}
	}
	for _, l := range p.Lines {
		for k := 1; k < len(l); k++ {
			if crosses(b, l[k-1], l[k]) {
				return true
			}
		}
	}
	return false
}

// crosses says whether a straight line passes through a box.
func crosses(b vg.Rectangle, from, to vg.Point) bool {
	enter, leave := vg.Length(0), vg.Length(1) // the part of the line within
	for _, side := range [][3]vg.Length{{from.X, to.X - from.X, 0}, {from.Y, to.Y - from.Y, 1}} {
		low, high := b.Min.X, b.Max.X
		if side[2] == 1 {
			low, high = b.Min.Y, b.Max.Y
		}
		at, run := side[0], side[1]
		if run == 0 {
			if at < low || at > high {
				return false
			}
			continue
		}
		first, last := (low-at)/run, (high-at)/run
		enter, leave = max(enter, min(first, last)), min(leave, max(first, last))
	}
	return enter <= leave
}

// Label places a text and writes it.
func (p *Placer) Label(c draw.Canvas, sty text.Style, s string, spots []Spot) bool {
	box, ok := p.place(sty, s, spots)
	if ok {
		p.write(c, sty, s, box)
	}
	return ok
}

// write writes a placed label.
func (p *Placer) write(c draw.Canvas, sty text.Style, s string, box vg.Rectangle) {
	Write(c, sty, vg.Point{X: box.Min.X + labelPad, Y: box.Min.Y + labelPad}, s)
}

// Along gives places on both sides of a level line, from its right end.
func Along(c draw.Canvas, y vg.Length) []Spot {
	var spots []Spot
	for s := 0.0; s <= 1; s += 0.02 {
		at := vg.Point{X: c.X(1 - s), Y: y}
		spots = append(spots, Spot{at, 0, 1, 1}, Spot{at, 0, -1, 1})
	}
	return spots
}

// Reserve keeps labels off a square around a point.
func (p *Placer) Reserve(at vg.Point, r vg.Length) {
	p.Taken = append(p.Taken, vg.Rectangle{
		Min: vg.Point{X: at.X - r, Y: at.Y - r}, Max: vg.Point{X: at.X + r, Y: at.Y + r}})
}

func (p *Placer) free(b vg.Rectangle) bool {
	if b.Min.X < p.Frame.Min.X || b.Min.Y < p.Frame.Min.Y || b.Max.X > p.Frame.Max.X || b.Max.Y > p.Frame.Max.Y {
		return false
	}
	for _, t := range p.Taken {
		if tooClose(b, t, labelGap) {
			return false
		}
	}
	return true
}

// tooClose says whether two boxes come closer than gap.
func tooClose(a, b vg.Rectangle, gap vg.Length) bool {
	return a.Min.X < b.Max.X+gap && b.Min.X < a.Max.X+gap && a.Min.Y < b.Max.Y+gap && b.Min.Y < a.Max.Y+gap
}

// Inside says whether a point lies in a box, or within a margin around it.
func Inside(b vg.Rectangle, q vg.Point, margin vg.Length) bool {
	return q.X > b.Min.X-margin && q.X < b.Max.X+margin && q.Y > b.Min.Y-margin && q.Y < b.Max.Y+margin
}

// Near says whether two points are closer than d.
func Near(a, b vg.Point, d vg.Length) bool {
	return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) < float64(d)
}
