// Package html lays a Document out as one page: a single file without anything
// from elsewhere, for a telephone, a desk, the dark and a printer.
package html

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

var (
	//go:embed page.html
	pageSource string
	//go:embed page.css
	style string

	// page is made when the first page is, so that commands that write none start sooner.
	page = sync.OnceValue(func() *template.Template {
		return template.Must(template.New("page").Funcs(template.FuncMap{
			"kind": kind, "cell": cell, "pair": pair, "bench": bench, "few": few, "unbroken": unbroken, "sixteens": sixteens, "short": short,
			"number": func(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) },
		}).Parse(pageSource))
	})
)

// Render returns the page. Every text is escaped by its place in it; only the
// figures, which plots wrote, go in as markup.
func Render(d document.Document) ([]byte, error) {
	p := press{Document: d, Style: template.CSS(palette() + style), drawn: map[string]int{}}
	p.makeLive()
	var b bytes.Buffer
	if err := page().Execute(&b, &p); err != nil {
		return nil, fmt.Errorf("report.html: %w", err)
	}
	return b.Bytes(), nil
}

// press is one page being made.
type press struct {
	document.Document
	Style  template.CSS
	Policy string // what the page may load and run
	Script template.HTML
	drawn  map[string]int
	tables int
}

// palette names the colours of the figures for the page around them; the dark
// page turns the same few over.
func palette() string {
	vars := func(paper, ink, quiet, faint, accent, pale string) string {
		return fmt.Sprintf("--paper:%s;--ink:%s;--quiet:%s;--faint:%s;--accent:%s;--pale:%s", paper, ink, quiet, faint, accent, pale)
	}
	return ":root{color-scheme:light dark;--card:" + drawing.Paper + ";--card-ink:" + drawing.Ink + ";--warn:" + drawing.CloggedColour +
		";--sans:" + drawing.FontFamily + ";--frame:" + drawing.Quiet + ";--hatch:" + drawing.Faint + ";--mark:" + drawing.Accent + bands() + ";" + vars(drawing.Paper, drawing.Ink, drawing.Quiet, drawing.Faint, drawing.Accent, drawing.Pale) + "}\n" +
		"@media screen and (prefers-color-scheme:dark){:root{--warn:" + drawing.Faint + ";" +
		vars(drawing.Ink, drawing.Pale, drawing.Faint, drawing.Quiet, drawing.Bands[4], "#273234") + "}}\n"
}

// bands are the colours of the chance in the maps.
func bands() string {
	s := ""
	for i, colour := range drawing.Bands {
		s += fmt.Sprintf(";--band%d:%s", i, colour)
	}
	return s
}

// kind names a block for the template.
func kind(b document.Block) string {
	return strings.TrimPrefix(fmt.Sprintf("%T", b), "document.")
}

// First is the summary page.
func (p *press) First() []document.Section { return p.Sections[:min(1, len(p.Sections))] }

// Rest says whether there is more than the summary.
func (p *press) Rest() bool { return len(p.Sections) > 1 }

// Cooks are the other sections before the divider.
func (p *press) Cooks() []document.Section { return p.Sections[min(1, len(p.Sections)):p.divide()] }

// Others are the sections behind the divider.
func (p *press) Others() []document.Section { return p.Sections[p.divide():] }

// Divider stands between them.
func (p *press) Divider() string { return document.Divider }

func (p *press) divide() int {
	for i, s := range p.Sections {
		if i > 0 && s.Reader == document.Scientist {
			return i
		}
	}
	return len(p.Sections)
}

// Table numbers the tables, for their captions' ids.
func (p *press) Table() int {
	p.tables++
	return p.tables
}

// Figure is a figure by name.
func (p *press) Figure(name string) (drawing.Figure, error) {
	f, ok := p.Figures[name]
	if !ok {
		return f, fmt.Errorf("there is no figure %q", name)
	}
	return f, nil
}

// Drawing is a figure's SVG; drawn a second time its ids are others.
func (p *press) Drawing(name string) (template.HTML, error) { return p.draw(name, p.Figures[name]) }

// NarrowDrawing is the same for a telephone.
func (p *press) NarrowDrawing(name string) (template.HTML, error) {
	return p.draw(name, p.Figures[name].Narrow())
}

func (p *press) draw(name string, f drawing.Figure) (template.HTML, error) {
	svg, err := f.SVG()
	if err != nil {
		return "", err
	}
	p.drawn[name]++
	if n := p.drawn[name]; n > 1 {
		again := fmt.Sprintf("%s-again%d", name, n)
		head, body, _ := strings.Cut(string(svg), "</desc>")
		head = strings.NewReplacer(name+"-title", again+"-title", name+"-desc", again+"-desc").Replace(head)
		svg = []byte(head + "</desc>" + body)
	}
	return template.HTML(svg), nil
}

// cell is one cell of a table's row.
func cell(t document.Table, column int) struct{ Row, Numeric bool } {
	return struct{ Row, Numeric bool }{column == 0, column < len(t.Numeric) && t.Numeric[column]}
}

// benchCard is a card for the template: its lines numbered, and which columns it has.
type benchCard struct {
	document.Card
	Numbered              []numberedPart
	Ounces, Within, Named bool
	Roomy                 bool // leaves paper over: set larger there
}

type numberedPart struct {
	document.CardPart
	Lines []numberedLine
}

type numberedLine struct {
	document.CardLine
	Number int
}

// ToFill are the lines to write steps on, where the log has none.
func (benchCard) ToFill() []struct{} { return make([]struct{}, 8) }

func bench(c document.Card) benchCard {
	out := benchCard{Card: c, Ounces: len(c.TotalOunces) > 0}
	n := 0
	for _, p := range c.Parts {
		part := numberedPart{CardPart: p}
		for _, l := range p.Lines {
			n++
			part.Lines = append(part.Lines, numberedLine{l, n})
			out.Within = out.Within || len(l.Within) > 0
			out.Named = out.Named || len(l.OfMix) > 0
		}
		out.Numbered = append(out.Numbered, part)
	}
	out.Roomy = n+max(len(c.Steps), len(out.ToFill())) <= 16
	return out
}

// part is a section with the page it stands on.
type part struct {
	Page    *press
	Section document.Section
}

func pair(p *press, s document.Section) part { return part{p, s} }

// few says whether a table can be read on a telephone without moving it sideways:
// the longest cells of its columns, one beside the other, take a few lines.
func few(t document.Table) bool {
	widest := make([]int, len(t.Head))
	for _, row := range t.Rows {
		for i, c := range row {
			if i < len(widest) {
				widest[i] = max(widest[i], utf8.RuneCountInString(c.String()))
			}
		}
	}
	sum := 0
	for _, w := range widest {
		sum += w
	}
	return len(t.Head) <= 2 && sum <= 180 || len(t.Head) <= 5 && sum <= 140
}

// unbroken says whether a text has a word wider than a column of a telephone, such as
// a checksum: it may then be broken anywhere.
func unbroken(t document.Text) bool {
	return slices.ContainsFunc(strings.Fields(t.String()), func(word string) bool { return utf8.RuneCountInString(word) > 24 })
}

// sixteens are the pieces of such a word, between which its lines may end; none of another text.
func sixteens(t document.Text) (pieces []string) {
	const piece = 16
	if !unbroken(t) || len(t) != 1 || t[0].Num != nil || len(strings.Fields(t[0].Text)) > 1 {
		return nil
	}
	letters := []rune(t[0].Text)
	for ; len(letters) > piece; letters = letters[piece:] {
		pieces = append(pieces, string(letters[:piece]))
	}
	return append(pieces, string(letters))
}

// short says whether a text is so short that its line does not end in it, except on a telephone.
func short(t document.Text) bool { return utf8.RuneCountInString(t.String()) <= 14 }
