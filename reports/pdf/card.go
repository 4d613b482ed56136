package pdf

import (
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
	"foamfield/reports/document"
)

// A card is read across a bench and written on with wet hands: it takes the largest
// type at which it keeps to one page. One too long for that goes on over pages.
var cardScales = []float64{1.3, 1.22, 1.15, 1.07, 1, 0.94, 0.88, 0.84, 0.8}

const (
	cardFlows   = 0.94 // the scale of a card of several pages
	cardLeading = 1.22
	nameMost    = 6    // lines of an ingredient's name; the other tables have the whole of it
	linesToFill = 8    // for steps, where the log has none
	cardLeft    = 0.56 // of the width, for the steps
	cardGap     = 18.0
)

// Types and heights of a card at scale 1, in points.
const (
	cardTitle  = 23.0
	cardText   = 11.5
	cardSmall  = 10.0
	cardBand   = 12.0
	cardRow    = 30.0 // least height of a row to weigh or to write on
	cardPad    = 4.0  // at each side of a cell
	cardBullet = 10.0
)

// card is one card at one scale.
type card struct {
	*press
	document.Card
	k      float64
	widths [cardColumns]float64 // 0: the column is not there
	rows   []weighRow
}

// setCard lays a card out from the place reached.
func (p *press) setCard(c document.Card) {
	p.leading = cardLeading
	defer p.setBody(usual)
	for _, k := range cardScales {
		one := p.cardAt(c, k)
		if one.fits() {
			one.onePage()
			return
		}
	}
	p.running = "Bench card · " + wording.Capital(c.Title) + ", continued · " + c.Log
	p.cardAt(c, cardFlows).flow()
	p.running = ""
}

func (p *press) cardAt(c document.Card, k float64) *card {
	one := &card{press: p, Card: c, k: k}
	one.setRows()
	one.setWidths()
	return one
}

// besides are the widths of the two columns under what is weighed.
func (c *card) besides() (left, right float64) {
	left = (c.measure() - cardGap) * cardLeft
	return left, c.measure() - cardGap - left
}

// fits says whether all of it keeps to what is left of the page, with a line for
// notes under the shorter column.
func (c *card) fits() bool {
	left, right := c.besides()
	under := c.room() - c.headHeight() - c.weightsHeight()
	l, r := c.stepsHeight(left), c.mindHeight(right)+c.blanksHeight()
	return max(l, r) <= under && min(l, r)+c.notesHeight(1) <= under
}

func (c *card) onePage() {
	c.drawHead()
	c.drawWeights()
	left, right := c.besides()
	top, x := c.y, c.left()+left+cardGap
	c.drawMind(x, right)
	c.drawBlanks(x, right)
	besides := c.y
	c.y = top
	if c.drawSteps(c.left(), left); c.y <= besides {
		c.drawNotes(c.left(), left)
		return
	}
	c.y = besides
	c.drawNotes(x, right)
}

// flow sets a card of several pages: what is critical comes before the steps, which
// go on to the end.
func (c *card) flow() {
	c.drawHead()
	c.drawWeights()
	half := (c.measure() - cardGap) / 2
	if h := max(c.mindHeight(half), c.blanksHeight()); h < (c.bottom()-margin)/2 {
		c.need(h)
		top := c.y
		c.drawMind(c.left(), half)
		end := c.y
		c.y = top
		c.drawBlanks(c.left()+half+cardGap, half)
		c.y = max(c.y, end) + 6
	} else {
		c.drawMind(c.left(), c.measure())
		c.need(c.blanksHeight())
		c.drawBlanks(c.left(), c.measure())
	}
	c.drawSteps(c.left(), c.measure())
	c.need(c.notesHeight(2))
	c.drawNotes(c.left(), c.measure())
}

// passage is broken text in one size and colour.
type passage struct {
	lines  []line
	size   float64
	colour string
}

func (c *card) passage(t document.Text, size, width float64, colour string) passage {
	return passage{c.broken(t, size*c.k, width), size * c.k, colour}
}

func (c *card) height(s passage) float64 { return float64(len(s.lines)) * s.size * c.leading }

// head says what this is, how sure, and whether it was ever made.
func (c *card) head() []passage {
	out := []passage{
		c.passage(plain("Bench card · "+c.Log), cardSmall, c.measure(), drawing.Quiet),
		c.passage(strong(wording.Capital(c.Title)), cardTitle, c.measure(), drawing.Accent),
	}
	sure := append(append(append(document.Text{}, c.Aim...), plain(" ")...), bolder(c.Made)...)
	for _, t := range []document.Text{bolder(c.Mix), sure, c.NoGrams} {
		if len(t) > 0 {
			out = append(out, c.passage(t, cardText, c.measure(), drawing.Ink))
		}
	}
	return out
}

const headAfter = 7.0

func (c *card) headHeight() float64 {
	h := headAfter * c.k
	for _, s := range c.head() {
		h += c.height(s)
	}
	return h
}

func (c *card) drawHead() {
	for _, s := range c.head() {
		c.lines(s.lines, s.size, c.left(), s.colour, nil)
	}
	c.y += headAfter * c.k
}
