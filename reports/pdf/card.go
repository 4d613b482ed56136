package pdf

import (
	"fmt"
	"strings"

	"foamfield/plots"
	"foamfield/reports"
)

// A card is read across a bench and written on with wet hands: it takes the largest
// type at which it keeps to one page. One too long for that goes on over pages.
var cardScales = []float64{1.3, 1.22, 1.15, 1.07, 1, 0.94, 0.88, 0.84, 0.8}

const (
	cardFlows   = 0.94 // the scale of a card of several pages
	cardLeading = 1.22
	nameMost    = 6 // lines of an ingredient's name; the other tables have the whole of it
	linesToFill = 8 // for steps, where the log has none; more where there is room
	mostToFill  = 14
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
	cardHeads = [cardColumns]string{"", "ingredient", "grams", "ounces", "weigh to", "share", "weighed, g"}
	cardTypes = [cardColumns]float64{11.5, 13.5, 21, 13, 13, 10, 10}
)

// card is one card at one scale.
type card struct {
	*press
	reports.Card
	k      float64
	widths [cardColumns]float64 // 0: the column is not there
	rows   []weighRow
}

// weighRow is a row of what is weighed: an ingredient, or the band over a part or
// under all of them.
type weighRow struct {
	cells [cardColumns]reports.Text
	band  bool
	blank bool // to be written in
}

// setCard lays a card out from the place reached.
func (p *press) setCard(c reports.Card) {
	p.leading = cardLeading
	defer p.setBody(usual)
	for _, k := range cardScales {
		one := p.cardAt(c, k)
		if one.fits() {
			one.onePage()
			return
		}
	}
	p.running = "Bench card · " + upper(c.Title) + ", continued · " + c.Log
	p.cardAt(c, cardFlows).flow()
	p.running = ""
}

func (p *press) cardAt(c reports.Card, k float64) *card {
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

// set is broken text in one size and colour.
type set struct {
	lines  []line
	size   float64
	colour string
}

func (c *card) set(t reports.Text, size, width float64, colour string) set {
	return set{c.broken(t, size*c.k, width), size * c.k, colour}
}

func (c *card) height(s set) float64 { return float64(len(s.lines)) * s.size * c.leading }

// head says what this is, how sure, and whether it was ever made.
func (c *card) head() []set {
	out := []set{
		c.set(plain("Bench card · "+c.Log), cardSmall, c.measure(), plots.Quiet),
		c.set(strong(upper(c.Title)), cardTitle, c.measure(), plots.Accent),
	}
	sure := append(append(append(reports.Text{}, c.Aim...), plain(" ")...), bolder(c.Made)...)
	for _, t := range []reports.Text{bolder(c.Mix), sure, c.NoGrams} {
		if len(t) > 0 {
			out = append(out, c.set(t, cardText, c.measure(), plots.Ink))
		}
	}
	return out
}

func upper(s string) string {
	letters := []rune(s)
	if len(letters) == 0 {
		return s
	}
	return strings.ToUpper(string(letters[:1])) + string(letters[1:])
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

func (c *card) setRows() {
	n := 0
	for _, p := range c.Parts {
		c.rows = append(c.rows, weighRow{band: true, cells: [cardColumns]reports.Text{
			atName: strong(p.Title), atGrams: bolder(p.Grams), atOunces: bolder(p.Ounces), atShare: bolder(shares(p.OfMix, nil))}})
		for _, l := range p.Lines {
			n++
			c.rows = append(c.rows, weighRow{blank: len(l.Name) == 0, cells: [cardColumns]reports.Text{
				atNumber: plain(fmt.Sprint(n)), atName: l.Name, atGrams: bolder(l.Grams), atOunces: l.Ounces, atWithin: l.Within, atShare: shares(l.OfMix, l.OfPart)}})
		}
	}
	if len(c.Total) > 0 {
		c.rows = append(c.rows, weighRow{band: true, cells: [cardColumns]reports.Text{
			atName: strong("In all"), atGrams: bolder(c.Total), atOunces: bolder(c.TotalOunces)}})
	}
}

// shares are percents of the mix and of the part, one under the other where the
// column is as narrow as the wider of them.
func shares(ofMix, ofPart reports.Text) reports.Text {
	if len(ofMix) == 0 {
		return ofPart
	}
	t := append(append(reports.Text{}, ofMix...), plain(" of mix")...)
	if len(ofPart) > 0 {
		t = append(append(t, plain(", ")...), ofPart...)
	}
	return t
}

// setWidths gives every column what its text needs and the names what is left; what
// no row fills is left out.
func (c *card) setWidths() {
	pad := 2 * cardPad * c.k
	wide := func(t reports.Text, size float64) float64 { return c.wide(c.broken(t, size, 1e6)[0], size) + 0.5 }
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
func pieces(column int, t reports.Text) []reports.Text {
	if column != atShare {
		return []reports.Text{t}
	}
	for i, s := range t {
		if s.Text == ", " {
			return []reports.Text{append(append(reports.Text{}, t[:i]...), plain(",")...), t[i+1:]}
		}
	}
	return []reports.Text{t}
}

func (c *card) typeOf(column int, r weighRow) float64 {
	if r.band && column != atShare {
		return cardBand * c.k
	}
	return cardTypes[column] * c.k
}

// cells are a row's texts in lines.
func (c *card) cells(r weighRow) (cells [cardColumns][]line, height float64) {
	height = cardRow * c.k * min(c.k, 1) // where room is short, first between the rows
	if r.band {
		height = cardBand * 1.6 * c.k
	}
	for i, t := range r.cells {
		if c.widths[i] == 0 || len(t) == 0 {
			continue
		}
		width := c.widths[i] - 2*cardPad*c.k
		if r.band && i == atName { // the number's column is free
			width += c.widths[atNumber]
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
		_, height := c.cells(r)
		h += height
	}
	return h
}

func (c *card) note() set { return c.set(c.Note, cardSmall, c.measure(), plots.Quiet) }

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
				c.line(l, cardSmall*c.k, c.across(i, x, l, cardSmall*c.k), c.y, plots.Quiet)
			}
			x += c.widths[i]
		}
		c.y += c.headRow()
	}
	setHead()
	for i, r := range c.rows {
		cells, h := c.cells(r)
		room := h
		if r.band && i+1 < len(c.rows) { // a part's head never stands alone at the foot
			_, next := c.cells(c.rows[i+1])
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
		c.fill(plots.Pale, c.left(), c.y, c.measure(), h)
	} else {
		c.rule(plots.Faint, 0.6, c.left(), c.y+h, c.measure())
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
			colour := plots.Ink
			if i == atShare || i == atNumber {
				colour = plots.Quiet
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
	c.doc.SetDrawColor(rgb(plots.Quiet))
	c.doc.SetLineWidth(0.9)
	c.doc.Rect(x, y, w, h, "D")
}

// The steps, with those that are critical on a tint.

func (c *card) step(i int, s reports.CardStep, width float64) set {
	t := append(strong(fmt.Sprint(i+1)+"  "), s.Text...)
	if s.Critical {
		t = append(strong(fmt.Sprint(i+1)+"  "), bolder(s.Text)...)
		if len(s.Limit) > 0 {
			t = append(append(t, plain(" – ")...), bolder(s.Limit)...)
		}
	}
	return c.set(t, cardText, width-12*c.k, plots.Ink)
}

const stepPad = 3.0 // above and below a step

func (c *card) heading(title string, width float64) set {
	return c.set(strong(title), cardText+2, width, plots.Accent)
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
			c.line(c.broken(plain(fmt.Sprint(i+1)), cardText*c.k, 1e6)[0], cardText*c.k, x, c.y+cardRow*c.k-cardText*c.k*c.leading-1, plots.Quiet)
			c.y += cardRow * c.k
			c.rule(plots.Quiet, 0.6, x+16*c.k, c.y-2, width-16*c.k)
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
			c.rule(plots.Faint, 0.4, x, c.y, width)
		}
	}
}

// What is critical, set apart.

func (c *card) minded(width float64) (out []set) {
	for _, t := range c.Mind {
		out = append(out, c.set(t, cardText-0.5, width-(10+cardBullet+8)*c.k, plots.Ink))
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
func (c *card) blankRows() (rows [][]reports.Blank) {
	short := func(b reports.Blank) bool { return b.Line && b.Unit == "" && len(b.Choices) == 0 }
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

func (c *card) drawBlank(b reports.Blank, x, width float64) {
	size := cardText * c.k
	base := c.y + blankRow*c.k - size*c.leading - 2 // of the text's box
	label := c.broken(b.Label, size, 0.75*width)[0]
	c.line(label, size, x, base, plots.Ink)
	at, end := x+c.wide(label, size), x+width
	for i := len(b.Choices) - 1; i >= 0 && b.Line; i-- { // behind the line
		end = c.choice(b.Choices[i], size, end, base, -1)
	}
	if b.Unit != "" {
		unit := c.broken(plain(b.Unit), size, 0.3*width)[0]
		end -= c.wide(unit, size)
		c.line(unit, size, end, base, plots.Ink)
		end -= 4 * c.k
	}
	if b.Line {
		if len(b.Label) > 0 {
			at += 5 * c.k
		}
		c.rule(plots.Quiet, 0.7, at, c.y+blankRow*c.k-3, end-at)
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
		one := reports.Blank{Line: true}
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
	c.line(l, size, at+2*gap+side+gap, base, plots.Ink)
	if way < 0 {
		return at
	}
	return at + whole
}
