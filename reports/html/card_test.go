package html

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	browserpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	xhtml "golang.org/x/net/html"

	"foamfield/analysis"
	"foamfield/ingest/thorough"
	"foamfield/reports/document"
)

func said(s string) document.Text { return document.Text{{Text: s}} }

// longCard is a card of so many ingredients and steps.
func longCard(ingredients, steps int) document.Card {
	c := document.Card{Title: "surest start", Log: "week.xlsx", Mix: said("37.4 % fat, 2.4 % emulsifier, HLB 8.9"), Aim: said("Works about 19 in 20."),
		Made: said("Predicted, not yet made: make it twice first."), Total: said("300.0 g"), TotalOunces: said("10.582 oz"), Note: said("Weigh to: all weights may be off by this much at once."),
		Mind: []document.Text{said("Strain the mix. Fill and charge to your canister's marking, whatever stands here."),
			said("Before you open it, vent all gas, nozzle up and under a cloth. Clogged: do not open, vent first. Thick mix: wear eye protection."),
			said("Hot fat burns. Cool the mix to what your canister is rated for before you fill it.")},
		Parts: []document.CardPart{{Title: "Fat part: melt the emulsifier in", Grams: said("116.9 g"), Ounces: said("4.124 oz"), OfMix: said("39.0 %")},
			{Title: "Water part: disperse together", Grams: said("183.1 g"), Ounces: said("6.459 oz"), OfMix: said("61.0 %")}},
		Blanks: []document.Blank{{Label: said("day"), Line: true}, {Label: said("made by"), Line: true}, {Label: said("canister"), Line: true}, {Label: said("chargers"), Line: true},
			{Label: said("came out"), Choices: []string{"yes", "partly", "no"}}, {Label: said("split"), Choices: []string{"yes", "no"}},
			{Label: said("hold"), Line: true, Unit: "min", Choices: []string{"still standing"}}, {Label: said("drained at minute 20"), Line: true, Unit: "%"}}}
	for i := range ingredients {
		p := &c.Parts[2*i/ingredients]
		p.Lines = append(p.Lines, document.CardLine{Name: said(fmt.Sprint("glycerol monostearate no", i)), Grams: said("112.9 g"), Ounces: said("3.982 oz"), Within: said("± 5.6 g"),
			OfMix: said("37.6 %"), OfPart: said("100 % of water")})
	}
	for i := range steps {
		c.Steps = append(c.Steps, document.CardStep{Text: said(fmt.Sprint("Whisk the sucrose ester into the cider until nothing lies at the bottom, step", i, ".")), Critical: i%4 == 0, Limit: said("60 °C")})
	}
	return c
}

func carded(c document.Card) document.Document {
	return document.Document{Title: "week.xlsx", Sections: []document.Section{
		{ID: "start", Title: "Start from this", Blocks: []document.Block{document.Paragraph{Text: said("summary")}}},
		{ID: "card", Title: "Bench card: surest start", Alone: true, Blocks: []document.Block{c}},
		{ID: "region", Title: "Where it works", Blocks: []document.Block{document.Paragraph{Text: said("after the card")}}}}}
}

// The card holds a row with a box for every ingredient, in order, every step, and text
// from the log as text.
func TestCard(t *testing.T) {
	for _, c := range []struct {
		name    string
		card    func() document.Card
		columns int
	}{
		{"whole", func() document.Card { return longCard(4, 3) }, 7},
		{"without ounces", func() document.Card {
			c := longCard(4, 3)
			c.TotalOunces = nil
			return c
		}, 6},
		{"to be written in", func() document.Card {
			c := longCard(0, 0)
			c.Total, c.TotalOunces = nil, nil
			for i := range c.Parts {
				c.Parts[i].Lines = make([]document.CardLine, 3)
			}
			return c
		}, 4},
		{"hostile", func() document.Card {
			c := longCard(2, 2)
			c.Title, c.Log, c.Mix, c.Parts[0].Title = hostile, hostile, said(hostile), hostile
			c.Parts[0].Lines[0].Name, c.Steps[0].Text, c.Steps[0].Limit, c.Mind[0] = said(hostile), said(strings.Repeat(hostile, 60)), said("\u202E"+hostile), said(hostile)
			c.Blanks[0].Label = said(hostile)
			return c
		}, 7},
	} {
		card := c.card()
		b, err := Render(carded(card))
		if err != nil {
			t.Fatal(err)
		}
		root, err := xhtml.Parse(strings.NewReader(string(b)))
		if err != nil {
			t.Fatal(err)
		}
		var boxes, rows, steps, critical int
		var names []string
		walk(root, func(n *xhtml.Node) {
			if !allowed.MatchString(n.Data) {
				t.Errorf("%s: an element %s", c.name, n.Data)
			}
			class, _ := attribute(n, "class")
			switch {
			case n.Data == "tr" && strings.Contains(words(n.Parent.Parent), "Fat part") || n.Data == "tr" && c.name == "hostile":
				cells := 0
				for x := n.FirstChild; x != nil; x = x.NextSibling {
					if x.Type == xhtml.ElementNode {
						cells++
						if span, _ := attribute(x, "colspan"); span == "2" {
							cells++
						}
					}
				}
				if cells != c.columns {
					t.Errorf("%s: a row of %d columns, want %d: %q", c.name, cells, c.columns, words(n))
				}
				rows++
			case n.Data == "td" && class == "box" && n.Parent.Parent.Data == "tbody":
				if part, _ := attribute(n.Parent, "class"); part != "part" {
					boxes++
				}
			case n.Data == "th" && n.Parent.Parent.Data == "tbody":
				names = append(names, words(n))
			case n.Data == "li" && n.Parent.Data == "ol":
				if list, _ := attribute(n.Parent, "class"); list == "steps" {
					steps++
					if class == "critical" {
						critical++
					}
				}
			}
		})
		wantBoxes, wantSteps, wantCritical, order := 0, max(len(card.Steps), 0), 0, []string{}
		for _, p := range card.Parts {
			order = append(order, p.Title)
			for _, l := range p.Lines {
				wantBoxes++
				order = append(order, l.Name.String())
			}
		}
		for _, s := range card.Steps {
			if s.Critical {
				wantCritical++
			}
		}
		if wantSteps == 0 {
			wantSteps = 8 // lines to write on
		}
		if boxes != wantBoxes || steps != wantSteps || critical != wantCritical || rows < wantBoxes {
			t.Errorf("%s: %d boxes, %d steps, %d critical, want %d, %d, %d", c.name, boxes, steps, critical, wantBoxes, wantSteps, wantCritical)
		}
		if got := strings.Join(names, "|"); got != strings.Join(order, "|") {
			t.Errorf("%s: the rows are %q, want %q", c.name, got, order)
		}
	}
}

// Printed, a card of up to 12 ingredients and 12 steps has one sheet to itself on either
// paper; a longer one goes on.
func printsCards(t *testing.T, ctx context.Context) {
	tool := thorough.Program(t, "pdftotext", "the printed card is not read back here")
	for _, paper := range []struct {
		name          string
		width, height float64 // inches
	}{{"A4", 8.27, 11.69}, {"Letter", 8.5, 11}} {
		for _, n := range [][2]int{{4, 0}, {4, 9}, {12, 12}, {30, 40}} {
			b, err := Render(carded(longCard(n[0], n[1])))
			if err != nil {
				t.Fatal(err)
			}
			open(t, ctx, b)
			printed, err := chromedp.Call(ctx, browserpage.PrintToPDF, browserpage.PrintToPDFParams{PaperWidth: paper.width, PaperHeight: paper.height})
			if err != nil {
				t.Fatal(err)
			}
			file := filepath.Join(t.TempDir(), "printed.pdf")
			if err := os.WriteFile(file, printed.Data, 0o644); err != nil {
				t.Fatal(err)
			}
			out, err := exec.Command(tool, "-layout", file, "-").Output()
			if err != nil {
				t.Fatal(err)
			}
			sheets := strings.Split(strings.TrimSuffix(string(out), "\f"), "\f")
			if !strings.Contains(sheets[0], "summary") || strings.Contains(sheets[0], "Bench card:") || !strings.Contains(sheets[len(sheets)-1], "after the card") {
				t.Errorf("%s, %v: the card shares a sheet", paper.name, n)
			}
			whole := len(sheets) == 3 && strings.Contains(sheets[1], "Bench card: surest start") && strings.Contains(sheets[1], "drained at minute 20") && strings.Contains(sheets[1], "notes")
			if n[0] <= 12 && n[1] <= 12 && !whole {
				t.Errorf("%s, %v: the card is not on a sheet of its own, of %d:\n%s", paper.name, n, len(sheets), strings.Join(sheets[2:], "\n---\n"))
			}
			for i := range n[1] {
				if c := strings.Count(string(out), fmt.Sprintf("step%d.", i)); c != 1 {
					t.Errorf("%s, %v: step %d is printed %d times", paper.name, n, i, c)
				}
			}
		}
	}
}

// Where ounces are asked for, the live grams have them too: those of the report, and of
// any other batch.
func answersInOunces(t *testing.T, ctx context.Context) {
	_, r := study(t, demo, analysis.Settings{Ounces: true})
	open(t, ctx, paged(t, r))
	line := r.Starts[0].Ingredients[0]
	shown := func() string {
		return evaluate[string](t, ctx, `document.querySelector("#own-grams td").textContent + " / " + document.getElementById("own-total").textContent`)
	}
	weight := func(grams float64) string { return fmt.Sprintf("%.1f g (%.2f oz)", grams, grams/28.349523125) }
	if got, want := shown(), weight(line.Grams)+" / "+weight(r.Batch.Grams); got != want {
		t.Errorf("the page shows %q, want %q", got, want)
	}
	evaluate[int](t, ctx, `(() => { const e = document.getElementById("own-batch"); e.value = "600"; e.dispatchEvent(new Event("input", { bubbles: true })); return 0; })()`)
	if got, want := shown(), weight(2*line.Grams)+" / "+weight(2*r.Batch.Grams); got != want {
		t.Errorf("twice the batch, the page shows %q, want %q", got, want)
	}
}
