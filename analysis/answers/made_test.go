package answers

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"foamfield/analysis/formula"
	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
)

func TestSameGrams(t *testing.T) {
	five := 5.0
	lines := []result.FormulaLine{{Name: "oil", Grams: 150, WithinGrams: &five}, {Name: "water", Grams: 147}, {Name: "ester", Grams: 3}}
	recipe := func(grams ...float64) (out []formula.Part) {
		for i, g := range grams {
			out = append(out, formula.Part{Name: []string{"oil", "water", "ester", "salt"}[i], Grams: g})
		}
		return out
	}
	batch := result.Batch{Grams: 300, ScaleStepGrams: 0.1}
	for _, c := range []struct {
		what        string
		recipe      []formula.Part
		same, known bool
	}{
		{"the very grams", recipe(150, 147, 3), true, true},
		{"half the batch", recipe(75, 73.5, 1.5), true, true},
		{"half the batch, on the scale", recipe(75, 73.4, 1.6), true, true},
		{"two steps off", recipe(150, 147.2, 3.2), true, true},
		{"more than two steps off", recipe(150, 146.6, 3.4), false, true},
		{"what the formula forgives", recipe(154, 143.1, 3), false, true}, // water moved more than it may
		{"an ingredient more", recipe(150, 147, 3, 1), false, true},
		{"an ingredient of another name", []formula.Part{{Name: "oil", Grams: 150}, {Name: "water", Grams: 147}, {Name: "sugar ester", Grams: 3}}, false, false},
		{"none used of it", recipe(150, 147, 3, 0), true, true},
		{"no grams", nil, false, false},
	} {
		if same, known := sameGrams(c.recipe, lines, batch); same != c.same || known != c.known {
			t.Errorf("%s: same %v, known %v", c.what, same, known)
		}
	}
}

// A start that was made twice and worked twice is the start again, and stays it; one that
// failed once is made no start by that.
func TestProvenStartStays(t *testing.T) {
	thorough.NotShort(t, "studies many logs")
	kept, unclear, all := 0, 0, thorough.Of(t, 2, 5)
	for seed := range uint64(all) {
		k := kitchen.New(kitchen.Easy, 4500+seed)
		var b strings.Builder
		if err := kitchen.WriteCSV(&b, k.Log(kitchen.Scattered, 24, kitchen.Stream(seed, "proven"))); err != nil {
			t.Fatal(err)
		}
		log := b.String()
		study := func(text string) result.Start {
			read, err := ingest.Read([]string{written(t, text)}, ingest.Options{})
			if err != nil {
				t.Fatal(err)
			}
			found := grounded(t, read).findStarts()
			if len(found.starts) == 0 {
				t.Fatalf("kitchen %d: no start", seed)
			}
			return found.starts[0]
		}
		first := study(log)
		row := func(no int, off float64, outcome string) string {
			g := first.Ingredients
			return fmt.Sprintf("%d,2024-03-%02d,%g,%g,%g,%g,%s\n", no, no, g[0].Grams+off, g[1].Grams-off, g[2].Grams, g[3].Grams, outcome)
		}
		again := study(log + row(25, 0, "y,n,30+,2") + row(26, 0.2, "y,n,30+,2")) // two steps of the scale off
		if again.MadeTimes == 2 && again.MadeWorked == 2 {
			kept++
			for i, l := range again.Ingredients {
				if math.Abs(l.Grams-first.Ingredients[i].Grams) > 0.2001 {
					t.Errorf("kitchen %d: made twice with %v g of %s, kept with %v", seed, first.Ingredients[i].Grams, l.Name, l.Grams)
				}
			}
		}
		if failed := study(log + row(25, 0, "y,n,30+,2") + row(26, 0, "n,,n/a,")); failed.MadeTimes > 0 && failed.MadeWorked == failed.MadeTimes {
			t.Errorf("kitchen %d: a start that clogged once is said to have always worked", seed)
		}
		// nobody looked whether it split, nor drained it: it neither worked nor failed
		if open := study(log + row(25, 0, "y,,30+,") + row(26, 0, "y,,30+,")); open.MadeTimes > 0 {
			unclear += open.MadeUnclear
			if open.MadeUnclear != open.MadeTimes || open.MadeWorked > 0 {
				t.Errorf("kitchen %d: made %d times and unclear, said to be unclear %d times", seed, open.MadeTimes, open.MadeUnclear)
			}
		}
	}
	if unclear == 0 {
		t.Error("no start was made with an unclear outcome: nothing is told")
	}
	if kept < all-1 {
		t.Errorf("the start made twice is the start again in %d of %d kitchens", kept, all)
	}
}
