package pdf

import (
	"fmt"
	"strconv"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// legible is the least scale at which a figure is set to save a page.
const legible = 0.7

// captionRoom is the height of a figure's caption, with a point to spare, so
// that rounding parts none from its picture; a long one may run over.
func (p *press) captionRoom(caption []line) float64 {
	return min(float64(len(caption))*small*p.leading+5, (p.bottom()-margin)/3)
}

// pairScale is the scale at which two figures that follow each other fit what is
// left of the page, or a page; 1 where there are not two or they would be too small.
func (p *press) pairScale(blocks []document.Block) float64 {
	high, below := 0.0, 0.0
	for i := range 2 {
		if i >= len(blocks) {
			return 1
		}
		ref, ok := blocks[i].(document.FigureRef)
		f, there := p.figures[ref.Name]
		if !ok || !there || !(f.Height > 0) {
			return 1
		}
		high += float64(f.Height)
		below += p.captionRoom(p.broken(plain(f.Caption), small, p.measure())) + p.gap + 3
	}
	for _, room := range []float64{p.room(), p.bottom() - margin} {
		if scale := (room - below) / high; scale >= legible {
			return min(scale, 1)
		}
	}
	return 1
}

// leastOf is the room that the first of some blocks asks for under its head.
func (p *press) leastOf(blocks []document.Block) float64 {
	const few = 70 // some lines
	if len(blocks) == 0 {
		return few
	}
	switch b := blocks[0].(type) {
	case document.Table:
		return max(few, p.leastOfTable(b))
	case document.Paragraph: // a short one leads to what follows
		if lines := p.broken(b.Text, p.body, p.measure()); len(blocks) > 1 && len(lines) <= 4 {
			return min(float64(len(lines))*p.body*p.leading+p.gap+p.leastOf(blocks[1:]), (p.bottom()-margin)/2)
		}
	}
	ref, ok := blocks[0].(document.FigureRef)
	f, there := p.figures[ref.Name]
	if !ok || !there || !(f.Width > 0) {
		return few
	}
	below := p.captionRoom(p.broken(plain(f.Caption), small, p.measure()))
	return min(legible*min(1, p.measure()/float64(f.Width))*float64(f.Height)+below+4, (p.bottom()-margin)/2)
}

// beside draws a figure narrow at the right of what is set from y on, and gives where it ends.
func (p *press) beside(f drawing.Figure, x, y, width float64) (float64, error) {
	n := f.Narrow()
	w, h := float64(n.Width), float64(n.Height)
	scale := width / w
	err := drawInto(p.doc, &p.fonts, &p.images, x, y, w, h, scale,
		func(c vg.CanvasSizer) error { return n.Draw(draw.New(c)) })
	return y + h*scale, err
}

// atRight draws a figure at the right of what follows.
func (p *press) atRight(f drawing.Figure) error {
	whole := p.width - 2*margin
	n := f.Narrow()
	p.need(float64(n.Height) / float64(n.Width) * (1 - asideLeft) * whole)
	end, err := p.beside(f, p.left()+asideLeft*whole, p.y, (1-asideLeft)*whole)
	p.aside = end + p.gap
	return err
}

// figure is drawn at its own size, smaller only where the page is.
func (p *press) figure(name string) error {
	f, ok := p.figures[name]
	if !ok {
		return fmt.Errorf("%s: %w", strconv.Quote(name), errNoFigure)
	}
	w, h := float64(f.Width), float64(f.Height)
	if !(w > 0 && h > 0) {
		return fmt.Errorf("figure %s has no size", name)
	}
	caption := p.broken(plain(f.Caption), small, p.measure())
	below := p.captionRoom(caption)
	scale := min(p.largest, p.measure()/w, (p.bottom()-margin-below)/h)
	if left := (p.room() - below) / h; left < scale && left >= legible*scale {
		scale = left // a little smaller rather than half a page of nothing
	}
	p.need(h*scale + below)
	err := drawInto(p.doc, &p.fonts, &p.images, p.left()+(p.measure()-w*scale)/2, p.y, w, h, scale,
		func(c vg.CanvasSizer) error { return f.Draw(draw.New(c)) })
	if err != nil {
		return err
	}
	p.y += h*scale + 4
	p.lines(caption, small, p.left(), drawing.Quiet, nil)
	p.y += p.gap + 3
	return nil
}
