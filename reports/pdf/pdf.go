// Package pdf lays a Document out on pages: the summary first, then the rest,
// with figures as paths and text, and fonts embedded. It computes nothing but
// positions, and the same Document gives the same bytes.
package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// Paper is the size of the pages.
type Paper uint8

// The papers.
const (
	A4 Paper = iota
	Letter
)

// written is the date in every file: a clock would make each one different.
var written = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Render lays the document out.
func Render(d document.Document, paper Paper) ([]byte, error) {
	p, err := lay(d, paper)
	if err != nil {
		return nil, err
	}
	if p.spills() { // a few lines on a page of their own: set the rest a little closer
		if closer, err := layCloser(d, paper, 0.95); err == nil && !closer.spills() {
			p = closer
		}
	}
	var b bytes.Buffer
	if err := p.doc.Output(&b); err != nil {
		return nil, fmt.Errorf("the PDF could not be laid out: %w", err)
	}
	return b.Bytes(), nil
}

// spills says whether the last page of several is nearly empty.
func (p *press) spills() bool {
	return p.doc.PageCount() > 2 && p.y < margin+0.15*(p.bottom()-margin)
}

func lay(d document.Document, paper Paper) (*press, error) { return layCloser(d, paper, 1) }

// layCloser lays the pages out, those behind the divider with so much of the usual space
// between lines.
func layCloser(d document.Document, paper Paper, spacing float64) (*press, error) {
	size, sections := firstPage(d, paper)
	p := newPress(d, paper)
	p.setBody(size)
	p.newPage()
	p.title(d.Title, d.Subtitle)
	for i, s := range sections {
		if s.Reader == document.Scientist && i > 0 && sections[i-1].Reader != document.Scientist {
			p.divide(sections[i:])
			p.leading, p.gap = p.leading*spacing, p.gap*spacing
		}
		if i == 1 {
			p.setBody(usual)
			if p.doc.PageCount() == 1 {
				p.newPage() // the first page may travel alone
			}
		}
		if err := p.section(s); err != nil {
			return nil, err
		}
		if s.Alone && i+1 < len(sections) && !p.atTop() {
			p.newPage()
		}
	}
	if p.fonts.lacked {
		p.lines(p.broken(strong(notPrinted), small, p.measure()), small, p.left(), drawing.Ink, nil)
	}
	p.footers(d.Title)
	return p, nil
}

// divide begins the part for the other readers on a page of its own, with what is in it.
func (p *press) divide(rest []document.Section) {
	if !p.atTop() {
		p.newPage()
	}
	const size, pad = 17.0, 9.0
	var titles []string
	for _, s := range rest {
		titles = append(titles, s.Title)
	}
	head := p.broken(strong(document.Divider), size, p.measure()-2*pad)
	list := p.broken(plain(strings.Join(titles, " · ")), small, p.measure()-2*pad)
	high := float64(len(head))*size*p.leading + float64(len(list))*small*p.leading + 2*pad
	p.fill(drawing.Pale, p.left(), p.y, p.measure(), high)
	p.rule(drawing.Accent, 1.6, p.left(), p.y, p.measure())
	p.bookmark(document.Divider, 0)
	p.y += pad
	p.lines(head, size, p.left()+pad, drawing.Accent, nil)
	p.lines(list, small, p.left()+pad, drawing.Quiet, nil)
	p.y += pad
}

// notPrinted ends a document in which some letters have no glyph.
const notPrinted = "Some letters could not be printed and stand here as " + string(missing) + "; report.html has them."

// usual is the size of running text.
const usual = 10.0

// firstPage is the largest size at which the first section keeps to one page, and the
// sections with it. One too long for a page gives its last parts up, to follow the
// cards for the bench: those stand on page two, or on the back of page one. Where there
// are no cards it simply goes on.
func firstPage(d document.Document, paper Paper) (float64, []document.Section) {
	if len(d.Sections) == 0 {
		return usual, nil
	}
	fits := func(s document.Section) float64 {
		for _, size := range []float64{usual, 9.5, 9, 8.6} {
			p := newPress(d, paper)
			p.setBody(size)
			p.newPage()
			p.title(d.Title, d.Subtitle)
			if p.section(s) == nil && p.doc.PageCount() == 1 {
				return size
			}
		}
		return 0
	}
	first := d.Sections[0]
	if size := fits(first); size > 0 {
		return size, d.Sections
	}
	cards := 1
	for cards < len(d.Sections) && isCard(d.Sections[cards]) {
		cards++
	}
	if cards == 1 {
		return usual, d.Sections
	}
	var moved []string
	for n := len(first.Blocks) - 1; n > 0; n-- {
		head, ok := first.Blocks[n].(document.Paragraph)
		if !ok || !head.Head {
			continue
		}
		moved = append([]string{head.Text.String()}, moved...)
		kept, rest := first, first
		kept.Blocks = append(append([]document.Block{}, first.Blocks[:n]...), document.Paragraph{Text: plain("After the bench cards: " + strings.Join(moved, "; ") + ".")})
		if size := fits(kept); size > 0 {
			rest.Title, rest.Blocks = first.Title+", continued", first.Blocks[n:]
			return size, slices.Concat([]document.Section{kept}, d.Sections[1:cards], []document.Section{rest}, d.Sections[cards:])
		}
	}
	return usual, d.Sections
}

// setBody sets running text; a size below the usual also sets it closer.
func (p *press) setBody(size float64) {
	p.body, p.gap, p.between, p.rowPad, p.leading = size, 0.7*size, 2.5, 2.2, 1.38
	if size < usual {
		p.gap, p.between, p.rowPad, p.leading = 0.45*size, 1, 1.2, 1.27
	}
}

func newPress(d document.Document, paper Paper) *press {
	size := "A4"
	if paper == Letter {
		size = "Letter"
	}
	doc := fpdf.New("P", "pt", size, "")
	doc.SetCreationDate(written)
	doc.SetModificationDate(written)
	doc.SetCatalogSort(true)
	doc.SetAutoPageBreak(false, 0)
	doc.SetMargins(margin, margin, margin)
	doc.SetLang("en")

	p := &press{doc: doc, fonts: fonts{doc: doc, cuts: map[face]*cut{}}, figures: d.Figures}
	p.setBody(usual)
	p.width, p.height = doc.GetPageSize()
	doc.SetTitle(p.fonts.clean(bold, d.Title), true)
	doc.SetSubject(p.fonts.clean(regular, d.Subtitle), true)
	doc.SetCreator("foamfield", true)
	doc.SetProducer("foamfield", true)
	return p
}

var errNoFigure = errors.New("the report names a figure that it does not carry")
