package plots

import (
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// spot is one place a label may stand: beside the point, gap away from it in
// the direction (dx, dy); each is from -1 to 1, and (0, 0) is on the point.
type spot struct {
	at     vg.Point
	dx, dy float64
	gap    vg.Length
}

// around gives the four places beside a point, above and below first.
func around(at vg.Point, gap vg.Length) []spot {
	var spots []spot
	for _, d := range [][2]float64{{0, 1}, {0, -1}, {1, 0}, {-1, 0}} {
		spots = append(spots, spot{at, d[0], d[1], gap})
	}
	return spots
}

// placer finds room for labels inside a frame: no label overlaps another, leaves
// the frame, or lies on a mark or a line.
type placer struct {
	frame vg.Rectangle
	taken []vg.Rectangle
	avoid []vg.Point   // marks
	drawn vg.Length    // their radius where it is not the usual
	lines [][]vg.Point // lines, each by its points

	// refuse, where set, says of a free box that the label would be wrong there.
	refuse func(vg.Rectangle) bool
}

const (
	labelPad = 1.5
	labelGap = 1.5
)

// place chooses the first box for the text that hides nothing; ok is false when
// there is none.
func (p *placer) place(sty text.Style, s string, spots []spot) (box vg.Rectangle, ok bool) {
	dim := size(sty, s)
	w, h := dim.X+2*labelPad, dim.Y+2*labelPad
	for _, sp := range spots {
		x := sp.at.X + vg.Length(sp.dx)*(w/2+sp.gap)
		y := sp.at.Y + vg.Length(sp.dy)*(h/2+sp.gap)
		b := vg.Rectangle{Min: vg.Point{X: x - w/2, Y: y - h/2}, Max: vg.Point{X: x + w/2, Y: y + h/2}}
		if p.free(b) && !p.hides(b) && (p.refuse == nil || !p.refuse(b)) {
			p.taken = append(p.taken, b)
			return b, true
		}
	}
	return vg.Rectangle{}, false
}

// hides says whether a box would cover a mark or a line.
func (p *placer) hides(b vg.Rectangle) bool {
	radius := p.drawn
	if radius == 0 {
		radius = markRadius
	}
	for _, q := range p.avoid {
		if inside(b, q, radius) {
			return true
		}
	}
	for _, l := range p.lines {
		for k := 1; k < len(l); k++ {
			if crosses(b, l[k-1], l[k]) {
				return true
			}
		}
	}
	return false
}

// keepOff keeps labels off marks as large as they are drawn.
func (p *placer) keepOff(marks []mark) {
	p.drawn = radiusOf(len(marks))
	for _, m := range marks {
		p.avoid = append(p.avoid, m.at)
	}
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

// label places a text and writes it.
func (p *placer) label(c draw.Canvas, sty text.Style, s string, spots []spot) bool {
	box, ok := p.place(sty, s, spots)
	if ok {
		p.write(c, sty, s, box)
	}
	return ok
}

// write writes a placed label.
func (p *placer) write(c draw.Canvas, sty text.Style, s string, box vg.Rectangle) {
	write(c, sty, vg.Point{X: box.Min.X + labelPad, Y: box.Min.Y + labelPad}, s)
}

// along gives places on both sides of a level line, from its right end.
func along(c draw.Canvas, y vg.Length) []spot {
	var spots []spot
	for s := 0.0; s <= 1; s += 0.02 {
		at := vg.Point{X: c.X(1 - s), Y: y}
		spots = append(spots, spot{at, 0, 1, 1}, spot{at, 0, -1, 1})
	}
	return spots
}

// reserve keeps labels off a square around a point.
func (p *placer) reserve(at vg.Point, r vg.Length) {
	p.taken = append(p.taken, vg.Rectangle{
		Min: vg.Point{X: at.X - r, Y: at.Y - r}, Max: vg.Point{X: at.X + r, Y: at.Y + r}})
}

func (p *placer) free(b vg.Rectangle) bool {
	if b.Min.X < p.frame.Min.X || b.Min.Y < p.frame.Min.Y || b.Max.X > p.frame.Max.X || b.Max.Y > p.frame.Max.Y {
		return false
	}
	for _, t := range p.taken {
		if overlap(b, t, labelGap) {
			return false
		}
	}
	return true
}

// overlap says whether two boxes come closer than gap.
func overlap(a, b vg.Rectangle, gap vg.Length) bool {
	return a.Min.X < b.Max.X+gap && b.Min.X < a.Max.X+gap && a.Min.Y < b.Max.Y+gap && b.Min.Y < a.Max.Y+gap
}

func inside(b vg.Rectangle, q vg.Point, margin vg.Length) bool {
	return q.X > b.Min.X-margin && q.X < b.Max.X+margin && q.Y > b.Min.Y-margin && q.Y < b.Max.Y+margin
}
