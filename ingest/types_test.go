package ingest

import (
	"math"
	"strings"
	"testing"
)

// TestTypesOfWhichAmount: a column that names an ingredient is of the amount of its kind, whose
// header says so in any language or whose cells do; the fat percent of the first trial, -1 = not known.
func TestTypesOfWhichAmount(t *testing.T) {
	for _, c := range []struct {
		types string // its head and its four cells
		fat   float64
	}{
		{"oil type|colza oil|olive oil|olive oil|colza oil", 40},
		{"fat type|butter|butter|ghee|butter", 32.8},
		{"fat type|cider|juice|water|cider", -1}, // which is no fat
		{"Flüssigkeit Sorte|Apfelwein|Apfelsaft|Wasser|Apfelwein", 40},
		{"eau type|cidre|cidre|jus de pomme|cidre", 40},
	} {
		cells := strings.Split(c.types, "|")
		log := mustRead(t, "no;oil g;"+cells[0]+";water g;GMS g;held min\n"+
			"1;200;"+cells[1]+";296;4;20\n2;210;"+cells[2]+";286;4;22\n3;220;"+cells[3]+";275;5;25\n4;230;"+cells[4]+";266;4;25\n")
		fat := -1.0
		if p := log.Trials[0].FatPercent; p != nil {
			fat = *p
		}
		if math.Abs(fat-c.fat) > 1e-9 {
			t.Errorf("%s: %g %% fat, want %g", cells[0], fat, c.fat)
		}
	}
}
