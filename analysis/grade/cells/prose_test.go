package cells

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/trial"
)

// TestToldInNotes: trials noted line by line, as on a phone, each number with the place of its line.
func TestToldInNotes(t *testing.T) {
	var words []handin.Phrase
	for i, text := range []string{
		"my foam notes", "N1: lard 120 g, stock 80 g, GMS 0 g, total 200 g (control)", "N1 result: came out yes, held 3 min, split yes",
		"N2: lard 120 g, stock 76 g, GMS 4 g, total 210 g", "N2 worked out: fat 60 % of mix, emulsifier 2 % of mix, HLB 3.8", "N2 result: clogged, nothing to time",
		"N1 and N2: the fat was too much", "Conclusion: less lard next time",
	} {
		words = append(words, handin.Phrase{At: trial.Place{File: "a.csv", Row: i + 1, Col: 1}, Text: text})
	}
	tab := Told(words, "a.csv")
	if tab == nil || len(tab.Trials) != 2 {
		t.Fatalf("%v", tab)
	}
	for _, c := range []struct {
		role column.Role
		of   int
		v    float64
		row  int
	}{
		{column.Hold, 0, 3, 3}, {column.BatchMass, 1, 210, 4}, {column.FatPercent, 1, 60, 5}, {column.EmulsifierAmount, 1, 2, 5}, {column.BlendHLB, 1, 3.8, 5},
	} {
		col := tab.Find(c.role)
		if col == nil || col.Cells[c.of].Value != c.v || col.Cells[c.of].At.Row != c.row {
			t.Errorf("%s of trial %d: %v", c.role, c.of+1, col)
		}
	}
	if x, y := tab.Trials[0], tab.Trials[1]; x.CameOut != trial.Yes || x.Broke != trial.Yes || y.CameOut != trial.No {
		t.Errorf("%v %v %v", x.CameOut, x.Broke, y.CameOut)
	}
	for i, want := range []bool{false, true, true, true, true, true, false, false} {
		if got := IsNote(tab, words[i]); got != want {
			t.Errorf("%q: %v", words[i].Text, got)
		}
	}
	if Told(words[:3], "a.csv") != nil {
		t.Error("one trial is no log")
	}
}
