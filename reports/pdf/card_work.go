package pdf

import (
	"fmt"

	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// The steps, with those that are critical on a tint.

func (c *card) step(i int, s document.CardStep, width float64) passage {
	t := append(strong(fmt.Sprint(i+1)+"  "), s.Text...)
	if s.Critical {
		t = append(strong(fmt.Sprint(i+1)+"  "), bolder(s.Text)...)
		if len(s.Limit) > 0 {
			t = append(append(t, plain(" – ")...), bolder(s.Limit)...)
		}
	}
	return c.passage(t, cardText, width-12*c.k, drawing.Ink)
}

const stepPad = 3.0 // above and below a step

func (c *card) heading(title string, width float64) passage {
	return c.passage(strong(title), cardText+2, width, drawing.Accent)
}

func (c *card) stepsTitle() string {
	if len(c.Steps) == 0 {
		return "Steps, to be written in"
	}
	return "Steps"
}

func (c *card) stepsHeight(width float64) float64 {
	h := c.height(c.heading(c.stepsTitle(), width)) + 2*c.k
	if len(c.Steps) == 0 {
		return h + linesToFill*cardRow*c.k
	}
	for i, s := range c.Steps {
		h += c.height(c.step(i, s, width)) + 2*stepPad*c.k
	}
	return h
}

func (c *card) drawSteps(x, width float64) {
	t := c.heading(c.stepsTitle(), width)
	c.need(c.height(t) + 3*cardRow*c.k)
	c.lines(t.lines, t.size, x, t.colour, nil)
	c.y += 2 * c.k
	if len(c.Steps) == 0 {
		for i := range linesToFill {
			c.need(cardRow * c.k)
			c.line(c.broken(plain(fmt.Sprint(i+1)), cardText*c.k, 1e6)[0], cardText*c.k, x, c.y+cardRow*c.k-cardText*c.k*c.leading-1, drawing.Quiet)
			c.y += cardRow * c.k
			c.rule(drawing.Quiet, 0.6, x+16*c.k, c.y-2, width-16*c.k)
		}
		return
	}
	for i, s := range c.Steps {
		b := c.step(i, s, width)
		pad := stepPad * c.k
		behind := func(y, h float64) {
			if s.Critical {
				c.fill(cautionTint, x, y, width, h+0.3) // no seam between lines
				c.fill(cautionColour, x, y, 3, h+0.3)
			}
		}
		if whole := c.height(b) + 2*pad; whole < c.bottom()-margin {
			c.need(whole)
		}
		behind(c.y, pad)
		c.y += pad
		c.lines(b.lines, b.size, x+9*c.k, b.colour, behind)
		behind(c.y, pad)
		c.y += pad
		if !s.Critical {
			c.rule(drawing.Faint, 0.4, x, c.y, width)
		}
	}
}

// What is critical, set apart.

func (c *card) minded(width float64) (out []passage) {
	for _, t := range c.Mind {
		out = append(out, c.passage(t, cardText-0.5, width-(10+cardBullet+8)*c.k, drawing.Ink))
	}
	return out
}

const mindAfter = 10.0

func (c *card) mindHeight(width float64) float64 {
	if len(c.Mind) == 0 {
		return 0
	}
	h := c.height(c.heading("Critical", width)) + (8+mindAfter)*c.k
	for _, s := range c.minded(width) {
		h += c.height(s) + 2.5*c.k
	}
	return h
}

func (c *card) drawMind(x, width float64) {
	if len(c.Mind) == 0 {
		return
	}
	behind := func(y, h float64) {
		c.fill(cautionTint, x, y, width, h+0.3)
		c.fill(cautionColour, x, y, 3, h+0.3)
	}
	gap := func(h float64) {
		behind(c.y, h)
		c.y += h
	}
	gap(4 * c.k)
	t := c.heading("Critical", width)
	c.lines(t.lines, t.size, x+10*c.k, cautionColour, behind)
	for _, s := range c.minded(width) {
		first := true
		c.lines(s.lines, s.size, x+(10+cardBullet)*c.k, s.colour, func(y, h float64) {
			behind(y, h)
			if first {
				c.line(line{runs: []run{{bold, "•"}}}, s.size, x+10*c.k, y, cautionColour)
			}
			first = false
		})
		gap(2.5 * c.k)
	}
	gap(4 * c.k)
	c.y += mindAfter * c.k
}

// What came of it, to be written in.

const blankRow = 25.0

// blankRows are the blanks by rows: two short ones share one.
func (c *card) blankRows() (rows [][]document.Blank) {
	short := func(b document.Blank) bool { return b.Line && b.Unit == "" && len(b.Choices) == 0 }
	for i := 0; i < len(c.Blanks); i++ {
		n := 1
		if i+1 < len(c.Blanks) && short(c.Blanks[i]) && short(c.Blanks[i+1]) {
			n = 2
		}
		rows = append(rows, c.Blanks[i:i+n])
		i += n - 1
	}
	return rows
}

func (c *card) blanksHeight() float64 {
	return c.height(c.heading("What came of it", 1e6)) + float64(len(c.blankRows()))*blankRow*c.k
}

func (c *card) drawBlanks(x, width float64) {
	t := c.heading("What came of it", width)
	c.lines(t.lines, t.size, x, t.colour, nil)
	for _, row := range c.blankRows() {
		each := (width - float64(len(row)-1)*8*c.k) / float64(len(row))
		for i, b := range row {
			c.drawBlank(b, x+float64(i)*(each+8*c.k), each)
		}
		c.y += blankRow * c.k
	}
}

func (c *card) drawBlank(b document.Blank, x, width float64) {
	size := cardText * c.k
	base := c.y + blankRow*c.k - size*c.leading - 2 // of the text's box
	label := c.broken(b.Label, size, 0.75*width)[0]
	c.line(label, size, x, base, drawing.Ink)
	at, end := x+c.wide(label, size), x+width
	for i := len(b.Choices) - 1; i >= 0 && b.Line; i-- { // behind the line
		end = c.choice(b.Choices[i], size, end, base, -1)
	}
	if b.Unit != "" {
		unit := c.broken(plain(b.Unit), size, 0.3*width)[0]
		end -= c.wide(unit, size)
		c.line(unit, size, end, base, drawing.Ink)
		end -= 4 * c.k
	}
	if b.Line {
		if len(b.Label) > 0 {
			at += 5 * c.k
		}
		c.rule(drawing.Quiet, 0.7, at, c.y+blankRow*c.k-3, end-at)
	}
	for i := 0; i < len(b.Choices) && !b.Line; i++ {
		at = c.choice(b.Choices[i], size, at, base, 1)
	}
}

func (c *card) notesHeight(lines int) float64 { return float64(lines) * blankRow * c.k }

const mostNotes = 8 // lines

// drawNotes leaves lines for them down to the foot of the page.
func (c *card) drawNotes(x, width float64) {
	for i := range min(int(c.room()/(blankRow*c.k)), mostNotes) {
		one := document.Blank{Line: true}
		if i == 0 {
			one.Label = plain("notes")
		}
		c.drawBlank(one, x, width)
		c.y += blankRow * c.k
	}
}

// choice sets a box to tick and its word from a place towards the right, or with way
// -1 to the left, and gives the place behind it.
func (c *card) choice(word string, size, at, base, way float64) float64 {
	l := c.broken(plain(word), size, 1e6)[0]
	side, gap := size*0.95, 4*c.k
	whole := 2*gap + side + gap + c.wide(l, size)
	if way < 0 {
		at -= whole
	}
	c.box(at+2*gap, base+(size*c.leading-side)/2, side, side)
	c.line(l, size, at+2*gap+side+gap, base, drawing.Ink)
	if way < 0 {
		return at
	}
	return at + whole
}
