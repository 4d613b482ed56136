package pdf

import (
	"fmt"
	"slices"

	"codeberg.org/go-pdf/fpdf"

	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// Measures of the page, in points.
const (
	margin     = 42.0
	footerRoom = 26.0
	small      = 8.5
	asideLeft  = 0.6  // share of the page that a figure at the right leaves
	gutter     = 14.0 // between the two
)

// A caution is red on a tint of it; the other colours are those of the figures.
const (
	cautionColour = drawing.CloggedColour
	cautionTint   = "#FBEEF0"
)

// press is the page being laid out and the place reached on it. It counts down
// from the upper edge, as the PDF library does.
type press struct {
	doc           *fpdf.Fpdf
	fonts         fonts
	figures       map[string]drawing.Figure
	width, height float64
	y             float64
	body, gap     float64 // type size of running text; space between blocks
	between       float64 // space between the items of a list
	rowPad        float64 // space above and below the rows of a table
	leading       float64 // line height over type size
	images        int
	largest       float64 // scale of the figures that follow
	aside         float64 // where the figure at the right ends
	running       string  // over the pages that go on with what began before
}

func (p *press) left() float64 { return margin }

// measure is the width of text: less beside a figure at the right.
func (p *press) measure() float64 {
	whole := p.width - 2*margin
	if p.y < p.aside {
		return asideLeft*whole - gutter
	}
	return whole
}

func (p *press) bottom() float64 { return p.height - margin - footerRoom }
func (p *press) room() float64   { return p.bottom() - p.y }
func (p *press) atTop() bool     { return p.y <= margin }

func (p *press) newPage() {
	p.doc.AddPage()
	p.y, p.aside = margin, 0
	if p.running != "" {
		p.line(p.broken(plain(p.running), small, p.measure())[0], small, p.left(), margin-small*1.6, drawing.Quiet)
	}
}

// need starts a new page unless h is left on this one.
func (p *press) need(h float64) {
	if p.room() < h && !p.atTop() {
		p.newPage()
	}
}

// space leaves h open, except at the top of a page.
func (p *press) space(h float64) {
	if !p.atTop() {
		p.y += h
	}
}

func rgb(hex string) (r, g, b int) {
	if _, err := fmt.Sscanf(hex, "#%02X%02X%02X", &r, &g, &b); err != nil {
		panic("pdf: " + hex + " is not a colour")
	}
	return r, g, b
}

// text writes clean text with its base line at y.
func (p *press) text(f face, size float64, colour string, x, y float64, s string) {
	p.fonts.cut(f)
	p.doc.SetTextColor(rgb(colour))
	p.doc.SetFont(f.family, f.style, size)
	p.doc.Text(x, y, s)
}

func (p *press) fill(colour string, x, y, w, h float64) {
	p.doc.SetFillColor(rgb(colour))
	p.doc.Rect(x, y, w, h, "F")
}

func (p *press) rule(colour string, thick, x, y, w float64) {
	p.fill(colour, x, y-thick/2, w, thick)
}

// lines sets broken lines from the place reached, a page after another; beside
// is drawn with each line, under it.
func (p *press) lines(broken []line, size, x float64, colour string, beside func(y, h float64)) {
	h := size * p.leading
	for _, l := range broken {
		p.need(h)
		if beside != nil {
			beside(p.y, h)
		}
		p.line(l, size, x, p.y, colour)
		p.y += h
	}
}

// line sets one broken line with its box's upper edge at y.
func (p *press) line(l line, size, x, y float64, colour string) {
	base := y + size*(p.leading-1)/2 + size*0.82
	for _, r := range l.runs {
		p.text(r.face, size, colour, x, base, r.text)
		x += p.fonts.width(r.face, size, r.text)
	}
}

func (p *press) title(title, subtitle string) {
	p.lines(p.broken(strong(title), 19, p.measure()), 19, p.left(), drawing.Ink, nil)
	if subtitle != "" {
		p.lines(p.broken(plain(subtitle), p.body, p.measure()), p.body, p.left(), drawing.Quiet, nil)
	}
	p.y += 4
	p.rule(drawing.Accent, 1.6, p.left(), p.y, p.measure())
	p.y += 8
}

func (p *press) section(s document.Section) error {
	if s.Alone && !p.atTop() {
		p.newPage()
	}
	if isCard(s) { // which has a head of its own
		p.bookmark(s.Title, 0)
		return p.blocks(s)
	}
	p.space(12)
	const size = 14.0
	head := p.broken(strong(s.Title), size, p.measure())
	p.need(float64(len(head))*size*p.leading + p.leastOf(s.Blocks)) // a head never stands alone at the foot
	p.bookmark(s.Title, 0)
	p.lines(head, size, p.left(), drawing.Accent, nil)
	p.y += 2
	return p.blocks(s)
}

// isCard says whether a section is a card for the bench.
func isCard(s document.Section) bool {
	return s.Alone && slices.ContainsFunc(s.Blocks, func(b document.Block) bool { _, card := b.(document.Card); return card })
}

func (p *press) blocks(s document.Section) error {
	second := false // of two figures that share a page
	for i, b := range s.Blocks {
		if head, ok := b.(document.Paragraph); ok && head.Head {
			p.need((p.body+1.5)*p.leading + p.leastOf(s.Blocks[i+1:]))
		}
		if !second {
			p.largest = p.pairScale(s.Blocks[i:])
		}
		second = !second && p.largest < 1
		if err := p.block(b); err != nil {
			return fmt.Errorf("section %s: %w", s.ID, err)
		}
	}
	return nil
}

func (p *press) block(b document.Block) error {
	switch b := b.(type) {
	case document.Paragraph:
		p.paragraph(b)
	case document.List:
		const indent = 13
		if b.Small && p.body < usual && p.columns(b.Items) {
			break
		}
		for _, item := range b.Items {
			first := true
			p.lines(p.broken(item, p.body, p.measure()-indent), p.body, p.left()+indent, drawing.Ink, func(y, h float64) {
				if first {
					p.line(line{runs: []run{{regular, "•"}}}, p.body, p.left()+3, y, drawing.Accent)
				}
				first = false
			})
			p.y += p.between
		}
		p.y += p.gap - p.between
	case document.Callout:
		p.callout(b)
	case document.Table:
		p.table(b)
	case document.Formula:
		return p.formula(b)
	case document.Card:
		p.setCard(b)
	case document.FigureRef:
		if f, ok := p.figures[b.Name]; ok && b.Beside {
			return p.atRight(f)
		}
		return p.figure(b.Name)
	default:
		return fmt.Errorf("a %T cannot be laid out", b)
	}
	return nil
}

// columns sets a list as small print in two columns, unless it is too long for a page.
func (p *press) columns(items []document.Text) bool {
	const size, indent, gap, between = 7.5, 8.0, 14.0, 1.5
	width := (p.measure() - gap) / 2
	var broken [][]line
	whole := 0.0
	tall := func(l []line) float64 { return float64(len(l))*size*p.leading + between }
	for _, item := range items {
		broken = append(broken, p.broken(item, size, width-indent))
		whole += tall(broken[len(broken)-1])
	}
	// The left column takes items until it is as high as the right one.
	left, cut := 0.0, 0
	for cut < len(broken) && left+tall(broken[cut])/2 <= whole/2 {
		left += tall(broken[cut])
		cut++
	}
	deepest := max(left, whole-left)
	if deepest > p.bottom()-margin {
		return false
	}
	p.need(deepest)
	for i, part := range [][][]line{broken[:cut], broken[cut:]} {
		x, y := p.left()+float64(i)*(width+gap), p.y
		for _, item := range part {
			p.line(line{runs: []run{{regular, "•"}}}, size, x, y, drawing.Accent)
			for k, l := range item {
				p.line(l, size, x+indent, y+float64(k)*size*p.leading, drawing.Ink)
			}
			y += tall(item)
		}
	}
	p.y += deepest + p.gap
	return true
}

func (p *press) paragraph(b document.Paragraph) {
	size, colour, after := p.body, drawing.Ink, p.gap
	switch {
	case b.Head:
		size, colour, after = p.body+1.5, drawing.Accent, 2
		b.Text = bolder(b.Text)
		p.space(3)
		p.need(size*p.leading + 40)
		p.bookmark(b.Text.String(), 1)
	case b.Lead:
		size = p.body + 2
	}
	p.lines(p.broken(b.Text, size, p.measure()), size, p.left(), colour, nil)
	p.y += after
}

func (p *press) bookmark(s string, level int) {
	p.doc.SetFont(regular.family, regular.style, p.body) // the library writes it as the font at hand is coded
	p.doc.Bookmark(p.fonts.clean(regular, s), level, p.y)
}

// callout is set on a tint with a bar at its left.
func (p *press) callout(c document.Callout) {
	const indent, pad = 12.0, 5.0
	bar, tint := drawing.Accent, drawing.Pale
	if c.Caution {
		bar, tint = cautionColour, cautionTint
	}
	text, measure := c.Text, p.measure()
	if c.Title != "" {
		text = append(strong(c.Title+" "), text...)
	}
	broken := p.broken(text, p.body, measure-2*indent)
	if whole := float64(len(broken))*p.body*p.leading + 2*pad; whole < p.bottom()-margin {
		p.need(whole)
	}
	behind := func(y, h float64) {
		p.fill(tint, p.left(), y, measure, h+0.3) // no seam between lines
		p.fill(bar, p.left(), y, 3, h+0.3)
	}
	behind(p.y, pad)
	p.y += pad
	p.lines(broken, p.body, p.left()+indent, drawing.Ink, behind)
	behind(p.y, pad)
	p.y += pad + p.gap
}

// footers go on last, when the number of pages is known.
func (p *press) footers(title string) {
	n := p.doc.PageCount()
	y := p.height - margin
	for page := 1; page <= n; page++ {
		p.doc.SetPage(page)
		right := fmt.Sprintf("page %d of %d", page, n)
		w := p.fonts.width(regular, small, right)
		left := p.broken(plain("foamfield · "+title), small, p.measure()-w-30)[0]
		p.rule(drawing.Faint, 0.5, p.left(), y-12, p.measure())
		p.line(left, small, p.left(), y-small*p.leading/2, drawing.Quiet)
		end := p.left()
		for _, r := range left.runs {
			end += p.fonts.width(r.face, small, r.text)
		}
		p.line(line{runs: []run{{regular, " · " + right}}}, small, end, y-small*p.leading/2, drawing.Quiet)
	}
}
