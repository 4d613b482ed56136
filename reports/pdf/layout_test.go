package pdf

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"foamfield/plots"
	"foamfield/plots/drawing"
	"foamfield/reports/document"
)

// figured is a document's figures with their names in order.
func figured() (map[string]drawing.Figure, []string) {
	figures := map[string]drawing.Figure{}
	var names []string
	for _, f := range plots.All(kitchen()) {
		figures[f.Name] = f
		names = append(names, f.Name)
	}
	return figures, names
}

// Wherever on a page a figure comes, its caption stands under it.
func TestCaptionStaysWithItsPicture(t *testing.T) {
	figures, names := figured()
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
