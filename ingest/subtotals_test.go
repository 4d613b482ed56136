package ingest

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestSubtotals: the batch of the first of four trials in which a phase is added up beside its
// ingredients, or something that only looks so is not; -1 where it is not known.
func TestSubtotals(t *testing.T) {
	for _, c := range []struct {
		name, log string
		batch     float64
	}{
		{"each phase has its total", "no|oil g|GMS g|fat phase total g|cider g|PS80 g|water phase total g|held min\n1|120|3|123|170|2|172|20\n2|130|3|133|160|2|162|22\n3|140|4|144|150|3|153|25", 295},
		{"in German", "Nr|Öl g|Butter g|Summe Fettphase g|Wasser g|GMS g|gehalten min\n1|80|40|120|170|4|20\n2|90|40|130|160|4|22\n3|95|45|140|150|4|25", 294},
		{"a total of all is the batch", "no|oil g|cider g|GMS g|total g|held min\n1|120|170|3|293|20\n2|130|160|3|293|22\n3|140|150|4|294|25", 293},
		{"the total of something else is weighed", "no|butter g|oil g|total cider g|GMS g|held min\n1|80|40|160|3|20\n2|90|40|150|3|22\n3|95|45|150|4|25", 283},
		{"weights with their unit", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80 g|40 g|120 g|170|4|20\n2|90 g|40 g|130 g|160|4|22\n3|95 g|45 g|140 g|150|4|25", 294},
		{"one row is not understood", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80|40|120|170|4|20\n2|90|40|130|160|4|22\n3|95|45|140|150|4|25\n4|95|a knob|155|150|4|25", 294},
		{"no row is understood: counted", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80|40|some|170|4|20\n2|90|40|some|160|4|22\n3|95|45|some|150|4|25", -1},
		{"one row is off: counted, as its head says", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80|40|120|170|4|20\n2|90|40|131|160|4|22\n3|95|45|150|150|4|25", 414},
	} {
		t.Run(c.name, func(t *testing.T) {
			read := mustRead(t, strings.ReplaceAll(c.log, "|", ";"))
			if b := gramsOf(read.Trials[0].BatchGrams); b != c.batch {
				t.Errorf("the batch is %v g, want %v", b, c.batch)
			}
		})
	}
}

// gramsOf are grams as a test compares them: -1 where they are not known.
func gramsOf(known *float64) float64 {
	if known == nil {
		return -1
	}
	return *known
}

// TestCopiesOfAnAmount: a column that is a copy of another or a sum of others stays so when the
// kitchen's Ingredients sheet names its ingredient; only a sheet Columns says that it is more.
func TestCopiesOfAnAmount(t *testing.T) {
	const copied = "no | oil g | cider g | GMS g | held min | GMS g\n1 | 120 | 170 | 4 | 20 | 4\n2 | 130 | 160 | 4 | 22 | 4\n3 | 140 | 150 | 4 | 25 | 4"
	const summed = "no | oil g | butter g | total cream g | cider g | GMS g | held min\n1 | 80 | 40 | 120 | 170 | 4 | 20\n2 | 90 | 40 | 130 | 160 | 4 | 22\n3 | 95 | 45 | 140 | 150 | 4 | 25"
	for _, c := range []struct {
		name, log         string
		said              sheetText
		emulsifier, batch float64 // of the first trial, in grams; -1 = not known, 0 = not asked
		twice             bool    // a column is said not to be counted
	}{
		{"copied", copied, sheetText{"Ingredients", "Name in the log | What it is | HLB\nGMS | emulsifier | 3.9"}, 4, 294, true},
		{"copied, but for one cell", copied + " \n4 | 140 | 150 | 4 | 25 | 5", sheetText{"Ingredients", "Name in the log | What it is | HLB\nGMS | emulsifier | 3.9"}, -1, 0, false},
		{"summed", summed, sheetText{"Ingredients", "Name in the log | What it is | Fat %\ntotal cream | fat | 35"}, 4, 294, true},
		{"summed, but something else by Columns", summed, sheetText{"Columns", "Header in the log | Meaning\ntotal cream g | sunflower oil"}, 4, 414, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.log}, c.said))
			x := log.Trials[0]
			if e, b := gramsOf(x.EmulsifierGrams), gramsOf(x.BatchGrams); e != c.emulsifier || c.batch > 0 && b != c.batch {
				t.Errorf("emulsifier %v g of %v, want %v of %v", e, b, c.emulsifier, c.batch)
			}
			if said := slices.ContainsFunc(log.Problems, func(p trial.Problem) bool { return p.Kind == "column twice" }); said != c.twice {
				t.Errorf("said to stand twice: %v", said)
			}
		})
	}
}
