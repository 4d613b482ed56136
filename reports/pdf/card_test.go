package pdf

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"foamfield/reports/document"
)

// benchCard is a card with so many ingredients and steps, in words as a kitchen uses.
func benchCard(ingredients, steps int) document.Card {
	c := document.Card{Title: "surest start", Log: "week.xlsx", Mix: words("37.4 % fat, 2.4 % emulsifier, HLB 8.9"), Aim: words("Works about 19 in 20."),
		Made: words("Predicted, not yet made: make it twice first."), Total: words("300.0 g"),
		Note: words("Weigh to: all weights may be off by this much at once, and the mix works nearly as often."),
		Mind: []document.Text{words("Steps 1 and 5."), words("With 1 charger and rest 10 min in a canister of 0.5 L, as in the log; to your canister's marking."),
			words("Strain the mix. Fill and charge to your canister's marking, whatever stands here."),
			words("Before you open it, vent all gas, nozzle up and under a cloth. Clogged: do not open, vent first. Thick mix: wear eye protection."),
			words("Hot fat burns. Cool the mix to what your canister is rated for before you fill it.")},
		Blanks: []document.Blank{{Label: words("day"), Line: true}, {Label: words("made by"), Line: true}, {Label: words("canister"), Line: true}, {Label: words("chargers"), Line: true},
			{Label: words("came out"), Choices: []string{"yes", "partly", "no"}}, {Label: words("split"), Choices: []string{"yes", "no"}},
			{Label: words("hold"), Line: true, Unit: "min", Choices: []string{"still standing"}},
			{Label: words("drained at minute 20"), Line: true, Unit: "%"}}}
	names := []string{"clarified butter", "glycerol monostearate", "hazelnut oil", "cider, reduced by half", "sucrose ester 15", "roasted squash stock", "xanthan"}
	for k, title := range []string{"Fat part: melt the emulsifier in", "Water part: disperse together"} {
		part := document.CardPart{Title: title, Grams: words("116.9 g"), OfMix: words("39.0 %")}
		for i := k; i < ingredients; i += 2 {
			part.Lines = append(part.Lines, document.CardLine{Name: words(fmt.Sprint(names[i%len(names)], " no", i)), Grams: words("112.9 g"), Within: words("± 5.6 g"),
				OfMix: words("37.6 %"), OfPart: words("100 % of water")})
		}
		c.Parts = append(c.Parts, part)
	}
	method := []string{"Melt the butter with the GMS to 70 °C and hold it there until it is clear.", "Warm the cider to 60 °C.",
		"Whisk the sucrose ester into the cider until nothing lies at the bottom.", "Blend the fat into the water part for one minute, in a thin stream.", "Strain through a fine sieve."}
	for i := range steps {
		c.Steps = append(c.Steps, document.CardStep{Text: words(fmt.Sprint(method[i%len(method)], " step", i, ".")), Critical: i%4 == 0})
		if i == 4 {
			c.Steps[i].Limit = words("55 °C at most in the canister")
		}
	}
	return c
}

func carded(c ...document.Card) document.Document {
	d := everyBlock()
	s := []document.Section{d.Sections[0]}
	for i, one := range c {
		s = append(s, document.Section{ID: fmt.Sprint("card-", i), Title: "Bench card: " + one.Title, Alone: true, Blocks: []document.Block{one}})
	}
	d.Sections = append(s, d.Sections[1:]...)
	return d
}

func TestLookAtCards(t *testing.T) {
	if *look == "" {
		t.Skip("only with -look DIR")
	}
	for name, paper := range map[string]Paper{"a4": A4, "letter": Letter} {
		for _, n := range [][2]int{{4, 0}, {4, 6}, {12, 12}, {30, 12}, {4, 40}, {1, 1}} {
			if err := os.WriteFile(filepath.Join(*look, fmt.Sprintf("card-%d-%d-%s.pdf", n[0], n[1], name)), render(t, carded(benchCard(n[0], n[1])), paper), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// wordOn is a word that another program reads on a page, and where.
type wordOn struct {
	page           int
	x0, y0, x1, y1 float64
	text           string
}

var boxed = regexp.MustCompile(`<page |<word xMin="([-0-9.]+)" yMin="([-0-9.]+)" xMax="([-0-9.]+)" yMax="([-0-9.]+)">(.*?)</word>`)

func wordsOn(t *testing.T, b []byte) (out []wordOn) {
	t.Helper()
	page := 0
	for _, m := range boxed.FindAllStringSubmatch(said(t, b, "-bbox"), -1) {
		if m[1] == "" {
			page++
			continue
		}
		w := wordOn{page: page, text: m[5]}
		for i, to := range []*float64{&w.x0, &w.y0, &w.x1, &w.y1} {
			*to, _ = strconv.ParseFloat(m[i+1], 64)
		}
		// What is inked of a letter: its box has room for accents above and tails below.
		h := w.y1 - w.y0
		w.y0, w.y1 = w.y0+0.2*h, w.y1-0.25*h
		out = append(out, w)
	}
	return out
}

var stroked = regexp.MustCompile(`(?m)^([-0-9.]+) ([-0-9.]+) ([-0-9.]+) ([-0-9.]+) re S$`)

// boxesOn are the boxes to write in, as the pages draw them.
func boxesOn(t *testing.T, d document.Document, paper Paper) (out []wordOn) {
	t.Helper()
	p, err := lay(d, paper)
	if err != nil {
		t.Fatal(err)
	}
	p.doc.SetCompression(false)
	var b bytes.Buffer
	if err := p.doc.Output(&b); err != nil {
		t.Fatal(err)
	}
	for i, content := range strings.Split(b.String(), "endstream")[:p.doc.PageCount()] {
		for _, m := range stroked.FindAllStringSubmatch(content, -1) {
			var v [4]float64
			for k := range v {
				v[k], _ = strconv.ParseFloat(m[k+1], 64)
			}
			y := p.height - v[1]
			out = append(out, wordOn{i + 1, v[0], y, v[0] + v[2], y - v[3], "a box"})
		}
	}
	return out
}

// laidWell says whether nothing leaves the page and nothing lies on another thing.
func laidWell(t *testing.T, d document.Document, paper Paper, first, last int) {
	t.Helper()
	p := newPress(d, paper)
	boxes := boxesOn(t, d, paper)
	all := append(wordsOn(t, render(t, d, paper)), boxes...)
	const touch = 0.3
	for i, a := range all {
		if a.page < first || a.page > last {
			continue
		}
		if a.x0 < margin-1 || a.x1 > p.width-margin+1.5 || a.y0 < 20 || a.y1 > p.height-20 {
			t.Errorf("paper %d, page %d: %q leaves the page: %v", paper, a.page, a.text, a)
		}
		for _, o := range all[:i] {
			if o.page == a.page && min(a.x1, o.x1)-max(a.x0, o.x0) > touch && min(a.y1, o.y1)-max(a.y0, o.y0) > touch {
				t.Errorf("paper %d, page %d: %q lies on %q: %v, %v", paper, a.page, a.text, o.text, a, o)
			}
		}
	}
}

func withOunces(c document.Card) document.Card {
	c.TotalOunces = words("10.582 oz")
	for i := range c.Parts {
		c.Parts[i].Ounces = words("4.124 oz")
		for k := range c.Parts[i].Lines {
			c.Parts[i].Lines[k].Ounces = words("3.982 oz")
		}
	}
	return c
}

func unnamed() document.Card {
	c := benchCard(0, 0)
	c.Total, c.Note, c.NoGrams = nil, nil, words("The log has no grams of each ingredient.")
	for i := range c.Parts {
		c.Parts[i].Grams, c.Parts[i].OfMix, c.Parts[i].Lines = nil, nil, make([]document.CardLine, 3)
	}
	return c
}

// A card keeps to one page up to 12 ingredients and 12 steps, and goes on over pages
// beyond; on either paper nothing lies on another thing.
func TestCardsOnPaper(t *testing.T) {
	var without [2]int // pages, by paper
	for _, paper := range []Paper{A4, Letter} {
		p, err := lay(everyBlock(), paper)
		if err != nil {
			t.Fatal(err)
		}
		without[paper] = p.doc.PageCount()
	}
	for _, c := range []struct {
		name  string
		card  document.Card
		pages [2]int // by paper
	}{
		{"the usual", benchCard(4, 9), [2]int{1, 1}},
		{"one of each", benchCard(1, 1), [2]int{1, 1}},
		{"no method", benchCard(4, 0), [2]int{1, 1}},
		{"no grams", unnamed(), [2]int{1, 1}},
		{"ounces", withOunces(benchCard(6, 6)), [2]int{1, 1}},
		{"12 and 12", benchCard(12, 12), [2]int{1, 1}},
		{"12 and 12 in ounces", withOunces(benchCard(12, 12)), [2]int{1, 1}},
		{"30 ingredients", benchCard(30, 12), [2]int{2, 3}},
		{"40 steps", benchCard(4, 40), [2]int{2, 2}},
		{"30 and 40", withOunces(benchCard(30, 40)), [2]int{3, 3}},
	} {
		for _, paper := range []Paper{A4, Letter} {
			d := carded(c.card)
			p, err := lay(d, paper)
			if err != nil {
				t.Fatal(err)
			}
			if got := p.doc.PageCount() - without[paper]; got != c.pages[paper] {
				t.Errorf("%s on paper %d takes %d pages, want %d", c.name, paper, got, c.pages[paper])
			}
			laidWell(t, d, paper, 2, 1+c.pages[paper])
			boxes := 0
			for _, b := range boxesOn(t, d, paper) {
				if b.x1-b.x0 > 40 {
					boxes++
				}
			}
			want := 0
			for _, p := range c.card.Parts {
				for _, l := range p.Lines {
					want++
					if len(l.Name) == 0 {
						want++ // grams are to be written in too
					}
				}
			}
			if boxes != want {
				t.Errorf("%s on paper %d has %d boxes to write weights in, want %d", c.name, paper, boxes, want)
			}
		}
	}
}

// Page two is the card, every step on it comes once and in order, and what follows has
// pages of its own.
func TestCardIsPageTwo(t *testing.T) {
	d := carded(benchCard(4, 6), benchCard(3, 40))
	b := render(t, d, A4)
	all := strings.Split(said(t, b, "-layout"), "\f")
	for _, want := range []string{"Bench card · week.xlsx", "Surest start", "112.9 g", "may be off", "weighed, g", "What came of it", "still standing", "drained at minute 20", "Critical", "page 2 of"} {
		if !strings.Contains(all[1], want) {
			t.Errorf("page two does not say %q:\n%s", want, all[1])
		}
	}
	if strings.Contains(all[1], "continued") || !strings.Contains(all[3], "Bench card · Surest start, continued · week.xlsx") {
		t.Error("a card of one page goes on, or the second does not")
	}
	at := -1
	raw := strings.Join(strings.Fields(said(t, b, "-raw", "-f", "3", "-l", "4")), " ")
	for i := range 40 {
		k := strings.Index(raw, fmt.Sprintf("step%d.", i))
		if k <= at || strings.Count(raw, fmt.Sprintf("step%d.", i)) != 1 {
			t.Errorf("step %d is lost, doubled or out of order", i+1)
		}
		at = k
	}
	if !strings.Contains(all[4], "Where it works") {
		t.Errorf("page five is not the section after the cards:\n%s", all[4])
	}
	for _, title := range []string{"Bench card: surest start", "Where it works"} {
		if !bytes.Contains(b, utf16Of(title)) {
			t.Errorf("%q has no bookmark", title)
		}
	}
}

// utf16Of is how the file writes the words of a bookmark.
func utf16Of(s string) []byte {
	out := []byte{}
	for _, r := range s {
		out = append(out, 0, byte(r))
	}
	return out
}

// Whatever a log's steps hold, they are words on the card, and none is lost.
func TestHostileCard(t *testing.T) {
	long := strings.TrimSpace(strings.Repeat("whisk ", 834)) // 5 000 letters
	c := benchCard(3, 0)
	c.Log = strings.Repeat("x", 300) + ".xlsx"
	for _, s := range []string{hostileWords, long, strings.Repeat("y", 5000), "=HYPERLINK(\"http://example.invalid\")", "לערבב את החמאה", "\U0001F9C8 melt", "</script><b>chill</b>"} {
		c.Steps = append(c.Steps, document.CardStep{Text: words(s), Limit: words(s), Critical: len(c.Steps)%2 == 0})
	}
	c.Parts[0].Lines[0].Name = words(strings.Repeat("butter ", 700))
	c.Parts[1].Lines[0].Name = words(strings.Repeat("z", 5000))
	c.Mind = append(c.Mind, words(hostileWords), words(long))
	for _, paper := range []Paper{A4, Letter} {
		d := carded(c)
		b := render(t, d, paper)
		joined := strings.Join(strings.Fields(said(t, b, "-raw")), "")
		for _, want := range []string{"=HYPERLINK(\"http://example.invalid\")", "</script><b>chill</b>", "<script>alert(1)</script>", "□melt"} {
			if !strings.Contains(joined, want) {
				t.Errorf("the card does not show %q", want)
			}
		}
		if n := strings.Count(joined, "whisk"); n != 2*834 { // a step, and a thing to mind
			t.Errorf("%d of the long step's words", n)
		}
		laidWell(t, d, paper, 2, pages(b)-4)
	}
}

// A summary too long for its page gives its last parts up, so that the card is page two.
func TestLongSummaryLeavesPageTwoToTheCard(t *testing.T) {
	d := carded(benchCard(4, 4))
	first := &d.Sections[0]
	for i, title := range []string{"How sure", "What to check", "Cautions"} {
		first.Blocks = append(first.Blocks, document.Paragraph{Head: true, Text: words(title)},
			document.Paragraph{Text: words(strings.Repeat(fmt.Sprint("mind", i, " "), 250))})
	}
	b := render(t, d, A4)
	all := strings.Split(said(t, b, "-layout"), "\f")
	if !strings.Contains(all[0], "After the bench cards: What to check; Cautions.") && !strings.Contains(all[0], "After the bench cards: Cautions.") {
		t.Errorf("page one does not say where the rest is:\n%s", all[0])
	}
	if !strings.Contains(all[1], "Bench card") || !strings.Contains(all[2], "Start from this, continued") {
		t.Errorf("the card is not page two, or the rest not page three:\n%s\n%s", all[1], all[2])
	}
	for i := range 3 {
		if n := strings.Count(strings.Join(all, " "), fmt.Sprint("mind", i)); n != 250 {
			t.Errorf("%d of 250 words of part %d", n, i)
		}
	}
}
