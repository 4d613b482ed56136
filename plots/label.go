package plots

import (
	"math"

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

// placer finds room for labels inside a frame: no label overlaps another or
// leaves the frame, and of the places left the one that hides least is taken.
type placer struct {
	frame vg.Rectangle
	taken []vg.Rectangle
	avoid []vg.Point // marks that are better not covered
	lines []vg.Point // points of lines, which may be covered where a mark may not

	// refuse, where set, says of a free box that the label would be wrong there.
	refuse func(vg.Rectangle) bool
}

const (
	labelPad = 1.5
	labelGap = 1.5
)

// place chooses a box for the text; ok is false when there is no room at all.
func (p *placer) place(sty text.Style, s string, spots []spot) (box vg.Rectangle, ok bool) {
	dim := size(sty, s)
	w, h := dim.X+2*labelPad, dim.Y+2*labelPad
	best := math.Inf(1)
	for _, sp := range spots {
		x := sp.at.X + vg.Length(sp.dx)*(w/2+sp.gap)
		y := sp.at.Y + vg.Length(sp.dy)*(h/2+sp.gap)
		b := vg.Rectangle{Min: vg.Point{X: x - w/2, Y: y - h/2}, Max: vg.Point{X: x + w/2, Y: y + h/2}}
		if !p.free(b) || (p.refuse != nil && p.refuse(b)) {
			continue
		}
		if hides := p.hides(b); hides < best {
			best, box = hides, b
		}
		if best == 0 {
			break
		}
	}
	if math.IsInf(best, 1) {
		return vg.Rectangle{}, false
	}
	p.taken = append(p.taken, box)
	return box, true
}

// hides is what a box would cover: each mark counts, a line once and less.
func (p *placer) hides(b vg.Rectangle) float64 {
	n := 0.0
	for _, q := range p.avoid {
		if inside(b, q, markRadius+1) {
			n++
		}
	}
	for _, q := range p.lines {
		if inside(b, q, 1) {
			return n + 0.5
		}
	}
	return n
}

// label places a text and writes it on a plate of paper.
func (p *placer) label(c draw.Canvas, sty text.Style, s string, spots []spot) bool {
	box, ok := p.place(sty, s, spots)
	if !ok {
		return false
	}
	plate(c, sty, s, box)
	return true
}

// plate writes a placed label on paper.
func plate(c draw.Canvas, sty text.Style, s string, box vg.Rectangle) {
	c.SetColor(hex(Paper))
	c.Fill(box.Path())
	write(c, sty, vg.Point{X: box.Min.X + labelPad, Y: box.Min.Y + labelPad}, s)
}

// along gives places on both sides of a level line, from its right end.
func along(c draw.Canvas, y vg.Length) []spot {
	var spots []spot
	for s := 0.0; s <= 1; s += 0.02 {
		at := vg.Point{X: c.X(1 - s), Y: y}
		spots = append(spots, spot{at, 0, 1, 2}, spot{at, 0, -1, 2})
	}
	return spots
}

// labelIfClear writes a label only where it hides no mark.
func (p *placer) labelIfClear(c draw.Canvas, sty text.Style, s string, spots []spot) bool {
	q := *p
	q.refuse = func(b vg.Rectangle) bool { return p.hides(b) >= 1 }
	ok := q.label(c, sty, s, spots)
	p.taken = q.taken
	return ok
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
