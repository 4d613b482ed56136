package pdf

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// figured is a document's figures with their names in order.
func figured() (map[string]drawing.Figure, []string) {
	figures := map[string]drawing.Figure{}
	var names []string
	for _, f := range drawn() {
		figures[f.Name] = f
		names = append(names, f.Name)
	}
	return figures, names
}

// Wherever on a page a figure comes, its caption stands under it.
func TestCaptionStaysWithItsPicture(t *testing.T) {
	figures, names := figured()
	names = thorough.Glance(t, 4, names)
	turned := 0
	for _, name := range names {
		for y := margin; y < 760; y += 23 {
			p := newPress(document.Document{Figures: figures}, A4)
			p.largest = 1
			p.newPage()
			p.y = y
			if err := p.figure(name); err != nil {
				t.Fatal(err)
			}
			if p.doc.PageCount() == 1 {
				continue
			}
			turned++
			if least := margin + legible*float64(figures[name].Height); p.doc.PageCount() != 2 || p.y < least {
				t.Errorf("%s from %v: on %d pages, the caption ends at %v", name, y, p.doc.PageCount(), p.y)
			}
		}
	}
	if turned < len(names) {
		t.Errorf("only %d figures turned a page", turned)
	}
}

// Two figures that follow each other share a page where they stay legible.
func TestTwoFiguresShareAPage(t *testing.T) {
	figures, names := figured()
	d := document.Document{Title: "x", Figures: figures, Sections: []document.Section{{Title: "first"}, {Title: "Where it works",
		Blocks: []document.Block{document.FigureRef{Name: names[0]}, document.FigureRef{Name: names[1]}}}}}
	for _, paper := range []Paper{A4, Letter} {
		if n := pages(render(t, d, paper)); n != 2 {
			t.Errorf("paper %d: %d pages", paper, n)
		}
	}
}

func TestSmallPrintLosesNothing(t *testing.T) {
	for _, n := range []int{0, 1, 2, 3, 9, 400} {
		var items []document.Text
		for i := range n {
			items = append(items, words(fmt.Sprintf("caution%d. %s", i, strings.Repeat("mind this ", i%7))))
		}
		p := newPress(document.Document{}, A4)
		p.setBody(usual - 1) // where the page is short of room
		p.newPage()
		if err := p.block(document.List{Items: items, Small: true}); err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := p.doc.Output(&b); err != nil {
			t.Fatal(err)
		}
		text := said(t, b.Bytes(), "-raw")
		for i := range n {
			if want := fmt.Sprintf("caution%d.", i); strings.Count(text, want) != 1 {
				t.Errorf("of %d items, %s is there %d times", n, want, strings.Count(text, want))
			}
		}
	}
}

func TestLettersThatCannotBePrinted(t *testing.T) {
	for _, c := range []struct {
		note string
		told bool
	}{{"crème brûlée", false}, {"泡の試験", true}} {
		b := render(t, document.Document{Title: "x", Sections: []document.Section{{Title: "first", Blocks: []document.Block{document.Paragraph{Text: words(c.note)}}}}}, A4)
		if got := strings.Contains(said(t, b, "-raw"), "Some letters could not be printed"); got != c.told {
			t.Errorf("%s: told %v", c.note, got)
		}
	}
}

// Rows of one result stand on one page, wherever on a page their table begins; where they
// would take most of a page, they are cut.
func TestRowsKeepTogether(t *testing.T) {
	for _, c := range []struct {
		rows  int // of a group
		whole bool
	}{{1, true}, {8, true}, {20, true}, {60, false}} {
		table := document.Table{Of: "result", Head: []string{"", "result", "value"}, Numeric: []bool{false, false, true}}
		for g := range 160 / c.rows {
			for range c.rows {
				table.Rows = append(table.Rows, []document.Text{nil, words(fmt.Sprintf("group%d.", g)), words("1.0")})
			}
		}
		for _, lines := range []int{0, 3, 5, 9} {
			d := document.Document{Title: "x", Sections: []document.Section{{Title: "first"}, {Title: "second",
				Blocks: []document.Block{document.Paragraph{Text: words(strings.Repeat("before ", 70*lines))}, table}}}}
			all := strings.Split(said(t, render(t, d, A4), "-layout"), "\f")
			cut := 0
			for g := range 160 / c.rows {
				on, rows := 0, 0
				for _, page := range all {
					if n := strings.Count(page, fmt.Sprintf("group%d.", g)); n > 0 {
						on, rows = on+1, rows+n
					}
				}
				if rows != c.rows {
					t.Errorf("groups of %d after %d lines: group %d has %d rows", c.rows, lines, g, rows)
				}
				if on > 1 {
					cut++
				}
			}
			if cut > 0 == c.whole {
				t.Errorf("groups of %d after %d lines: %d are cut", c.rows, lines, cut)
			}
		}
	}
}

// What has paper of its own says whose it is, and nothing comes between the first page and
// the rest of its section.
func TestPagesOfTheirOwnAreNamed(t *testing.T) {
	long := document.Section{Title: "the class"}
	for i := range 6 {
		long.Blocks = append(long.Blocks, document.Paragraph{Head: true, Text: words(fmt.Sprint("part", i))}, document.Paragraph{Text: words(strings.Repeat("word ", 300))})
	}
	d := document.Document{Title: "x", Sections: []document.Section{long}}
	for _, name := range []string{"Ada Quill", "Bo Reed"} {
		d.Sections = append(d.Sections, document.Section{Title: name, Alone: true, Blocks: []document.Block{document.Paragraph{Text: words("4 trials")}}})
	}
	all := strings.Split(strings.TrimSuffix(said(t, render(t, d, A4), "-layout"), "\f"), "\f")
	class := strings.Join(all[:max(0, len(all)-2)], "")
	if len(all) < 4 || !strings.Contains(class, "part5") || strings.Contains(class, "bench cards") {
		t.Errorf("%d pages, of which those of the class:\n%s", len(all), class)
	}
	for i, name := range []string{"Ada Quill", "Bo Reed"} {
		if page := all[len(all)-2+i]; !strings.Contains(page, name) || !strings.Contains(page, "4 trials") {
			t.Errorf("a page does not say whose it is:\n%s", page)
		}
	}
}

// A checksum stands on one line where the page has room for it.
func TestChecksumKeepsToALine(t *testing.T) {
	sum := strings.Repeat("0123456789abcdef", 4)
	d := document.Document{Title: "x", Sections: []document.Section{{Title: "first", Blocks: []document.Block{
		document.Table{Head: []string{"file", "SHA-256"}, Numeric: make([]bool, 2), Rows: [][]document.Text{{words("a long name of a log, sheet and all.xlsx"), words(sum)}}}}}}}
	for _, paper := range []Paper{A4, Letter} {
		if all := said(t, render(t, d, paper), "-layout"); !strings.Contains(all, sum) {
			t.Errorf("paper %d: it is cut:\n%s", paper, all)
		}
	}
}
