package pdf

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/reports"
)

// benchCard is a card with so many ingredients and steps, in words as a kitchen uses.
func benchCard(ingredients, steps int) reports.Card {
	c := reports.Card{Title: "surest start", Log: "week.xlsx", Mix: words("37.4 % fat, 2.4 % emulsifier, HLB 8.9"), Aim: words("Works about 19 in 20."),
		Made: words("Predicted, not yet made: make it twice first."), Total: words("300.0 g"),
		Note: words("Weigh to: all weights may be off by this much at once, and the mix works nearly as often."),
		Mind: []reports.Text{words("Steps 1 and 5."), words("With 1 charger and rest 10 min in a canister of 0.5 L, as in the log; to your canister's marking."),
			words("Strain the mix. Fill and charge to your canister's marking, whatever stands here."),
			words("Before you open it, vent all gas, nozzle up and under a cloth. Clogged: do not open, vent first. Thick mix: wear eye protection."),
			words("Hot fat burns. Cool the mix to what your canister is rated for before you fill it.")},
		Blanks: []reports.Blank{{Label: words("day"), Line: true}, {Label: words("made by"), Line: true}, {Label: words("canister"), Line: true}, {Label: words("chargers"), Line: true},
			{Label: words("came out"), Choices: []string{"yes", "partly", "no"}}, {Label: words("split"), Choices: []string{"yes", "no"}},
			{Label: words("hold"), Line: true, Unit: "min", Choices: []string{"still standing"}},
			{Label: words("drained at minute 20"), Line: true, Unit: "%"}}}
	names := []string{"clarified butter", "glycerol monostearate", "hazelnut oil", "cider, reduced by half", "sucrose ester 15", "roasted squash stock", "xanthan"}
	for k, title := range []string{"Fat part, emulsifier melted in", "Water part, emulsifier dispersed in"} {
		part := reports.CardPart{Title: title, Grams: words("116.9 g"), OfMix: words("39.0 %")}
		for i := k; i < ingredients; i += 2 {
			part.Lines = append(part.Lines, reports.CardLine{Name: words(fmt.Sprint(names[i%len(names)], " no", i)), Grams: words("112.9 g"), Within: words("± 5.6 g"),
				OfMix: words("37.6 %"), OfPart: words("100 % of water")})
		}
		c.Parts = append(c.Parts, part)
	}
	method := []string{"Melt the butter with the GMS to 70 °C and hold it there until it is clear.", "Warm the cider to 60 °C.",
		"Whisk the sucrose ester into the cider until nothing lies at the bottom.", "Blend the fat into the water part for one minute, in a thin stream.", "Strain through a fine sieve."}
	for i := range steps {
		c.Steps = append(c.Steps, reports.CardStep{Text: words(fmt.Sprint(method[i%len(method)], " step", i, ".")), Critical: i%4 == 0})
		if i == 4 {
			c.Steps[i].Limit = words("55 °C at most in the canister")
		}
	}
	return c
}

func carded(c ...reports.Card) reports.Document {
	d := document()
	s := []reports.Section{d.Sections[0]}
	for i, one := range c {
		s = append(s, reports.Section{ID: fmt.Sprint("card-", i), Title: "Bench card: " + one.Title, Alone: true, Blocks: []reports.Block{one}})
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
	_ = strings.Repeat
}
