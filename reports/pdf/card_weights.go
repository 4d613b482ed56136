package pdf

import (
	"fmt"

	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// What of a card is weighed, in the order of addition, with a box for what was weighed.

// The columns of what is weighed.
const (
	atNumber = iota
	atName
	atGrams
	atOunces
	atWithin
	atShare
	atWeighed
	cardColumns
)

var (
	cardHeads = [cardColumns]string{"", "ingredient", "grams", "ounces", "may be off", "share", "weighed, g"}
	cardTypes = [cardColumns]float64{11.5, 13.5, 21, 13, 13, 10, 10}
)

// weighRow is a row of what is weighed: an ingredient, or the band over a part or
// under all of them.
type weighRow struct {
	cells [cardColumns]document.Text
	band  bool
	blank bool // to be written in
}

func (c *card) setRows() {
	n := 0
	for _, p := range c.Parts {
		c.rows = append(c.rows, weighRow{band: true, cells: [cardColumns]document.Text{
			atName: strong(p.Title), atGrams: bolder(p.Grams), atOunces: bolder(p.Ounces), atShare: bolder(shares(p.OfMix, nil))}})
		for _, l := range p.Lines {
			n++
			c.rows = append(c.rows, weighRow{blank: len(l.Name) == 0, cells: [cardColumns]document.Text{
				atNumber: plain(fmt.Sprint(n)), atName: l.Name, atGrams: bolder(l.Grams), atOunces: l.Ounces, atWithin: l.Within, atShare: shares(l.OfMix, l.OfPart)}})
		}
	}
	if len(c.Total) > 0 {
		c.rows = append(c.rows, weighRow{band: true, cells: [cardColumns]document.Text{
			atName: strong("In all"), atGrams: bolder(c.Total), atOunces: bolder(c.TotalOunces)}})
	}
}

// shares are percents of the mix and of the part, one under the other where the
// column is as narrow as the wider of them.
func shares(ofMix, ofPart document.Text) document.Text {
	if len(ofMix) == 0 {
		return ofPart
	}
	t := append(append(document.Text{}, ofMix...), plain(" of mix")...)
	if len(ofPart) > 0 {
		t = append(append(t, plain(", ")...), ofPart...)
	}
	return t
}

// setWidths gives every column what its text needs and the names what is left; what
// no row fills is left out.
func (c *card) setWidths() {
	pad := 2 * cardPad * c.k
	wide := func(t document.Text, size float64) float64 { return c.wide(c.broken(t, size, 1e6)[0], size) + 0.5 }
	blank := false
	for _, r := range c.rows {
		blank = blank || r.blank
		for i, t := range r.cells {
			if i == atName || len(t) == 0 {
				continue
			}
			for _, piece := range pieces(i, t) {
				c.widths[i] = max(c.widths[i], min(wide(piece, c.typeOf(i, r)), 0.25*c.measure())+pad)
			}
		}
	}
	if blank {
		c.widths[atGrams] = max(c.widths[atGrams], 90*c.k)
	}
	for i, w := range c.widths {
		if w > 0 {
			c.widths[i] = max(w, wide(strong(cardHeads[i]), cardSmall*c.k)+pad)
		}
	}
	c.widths[atWeighed] = 88 * c.k
	c.widths[atName] = c.measure()
	for i, w := range c.widths {
		if i != atName {
			c.widths[atName] -= w
		}
	}
}

// pieces are what of a cell has to keep to one line.
func pieces(column int, t document.Text) []document.Text {
	if column != atShare {
		return []document.Text{t}
	}
	for i, s := range t {
		if s.Text == ", " {
			return []document.Text{append(append(document.Text{}, t[:i]...), plain(",")...), t[i+1:]}
		}
	}
	return []document.Text{t}
}

func (c *card) typeOf(column int, r weighRow) float64 {
	if r.band && column != atShare {
		return cardBand * c.k
	}
	return cardTypes[column] * c.k
}

// cellsOf are a row's texts in lines.
func (c *card) cellsOf(r weighRow) (cells [cardColumns][]line, height float64) {
	height = cardRow * c.k * min(c.k, 1) // where room is short, first between the rows
	if r.band {
		height = cardBand * 1.6 * c.k
	}
	for i, t := range r.cells {
		if c.widths[i] == 0 || len(t) == 0 {
			continue
		}
		width := c.widths[i] - 2*cardPad*c.k
		if r.band && i == atName { // the number's column is free, and what its smaller grams leave
			size := c.typeOf(atGrams, r)
			width += c.widths[atNumber] + max(0, c.widths[atGrams]-2*cardPad*c.k-c.wide(c.broken(r.cells[atGrams], size, 1e6)[0], size))
		}
		for _, piece := range pieces(i, t) {
			cells[i] = append(cells[i], c.broken(piece, c.typeOf(i, r), width)...)
		}
		cells[i] = cells[i][:min(len(cells[i]), nameMost)]
		height = max(height, float64(len(cells[i])-1)*c.typeOf(i, r)*c.leading+c.typeOf(i, r)*1.1+2)
	}
	return cells, height
}

func (c *card) headRow() float64 { return cardSmall * 1.5 * c.k }

func (c *card) weightsHeight() float64 {
	h := c.headRow() + c.noteHeight()
	for _, r := range c.rows {
		_, height := c.cellsOf(r)
		h += height
	}
	return h
}

func (c *card) note() passage { return c.passage(c.Note, cardSmall, c.measure(), drawing.Quiet) }

func (c *card) noteHeight() float64 {
	if len(c.Note) == 0 {
		return 8 * c.k
	}
	return c.height(c.note()) + 10*c.k
}

func (c *card) drawWeights() {
	if len(c.rows) == 0 {
		return
	}
	heads := weighRow{}
	for i, h := range cardHeads {
		if h != "" && c.widths[i] > 0 {
			heads.cells[i] = strong(h)
		}
	}
	setHead := func() {
		x := c.left()
		for i, t := range heads.cells {
			if len(t) > 0 {
				l := c.broken(t, cardSmall*c.k, 1e6)[0]
				c.line(l, cardSmall*c.k, c.across(i, x, l, cardSmall*c.k), c.y, drawing.Quiet)
			}
			x += c.widths[i]
		}
		c.y += c.headRow()
	}
	setHead()
	for i, r := range c.rows {
		cells, h := c.cellsOf(r)
		room := h
		if r.band && i+1 < len(c.rows) { // a part's head never stands alone at the foot
			_, next := c.cellsOf(c.rows[i+1])
			room += next
		}
		if c.room() < room && !c.atTop() {
			c.newPage()
			setHead()
		}
		c.drawRow(r, cells, h)
	}
	if len(c.Note) > 0 {
		c.y += 3 * c.k
		n := c.note()
		c.lines(n.lines, n.size, c.left(), n.colour, nil)
		c.y += 7 * c.k
	} else {
		c.y += 8 * c.k
	}
}

func (c *card) drawRow(r weighRow, cells [cardColumns][]line, h float64) {
	if r.band {
		c.fill(drawing.Pale, c.left(), c.y, c.measure(), h)
	} else {
		c.rule(drawing.Faint, 0.6, c.left(), c.y+h, c.measure())
	}
	x := c.left()
	for i, lines := range cells {
		size := c.typeOf(i, r)
		from := x
		if r.band && i == atName {
			from = c.left()
		}
		top := c.y + (h-float64(len(lines))*size*c.leading)/2
		for k, l := range lines {
			colour := drawing.Ink
			if i == atShare || i == atNumber {
				colour = drawing.Quiet
			}
			c.line(l, size, c.across(i, from, l, size), top+float64(k)*size*c.leading, colour)
		}
		switch {
		case r.band:
		case i == atWeighed:
			c.box(x+3, c.y+3*c.k, c.widths[i]-3, h-6*c.k)
		case r.blank && i == atGrams:
			c.box(x+3, c.y+3*c.k, c.widths[i]-9, h-6*c.k)
		}
		x += c.widths[i]
	}
	c.y += h
}

// across is where a line begins in a column at x: numbers stand to the right.
func (c *card) across(column int, x float64, l line, size float64) float64 {
	pad := cardPad * c.k
	if column == atGrams || column == atOunces {
		return x + c.widths[column] - pad - c.wide(l, size)
	}
	return x + pad
}

// box is a place to write in.
func (c *card) box(x, y, w, h float64) {
	c.doc.SetDrawColor(rgb(drawing.Quiet))
	c.doc.SetLineWidth(0.9)
	c.doc.Rect(x, y, w, h, "D")
}
