package record

import (
	"strings"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestOffScale: a score that the scale of its head, or of the one line on scores, does not have.
func TestOffScale(t *testing.T) {
	for _, c := range []struct {
		head, line string
		role       column.Role
		values     []float64
		asked      int
	}{
		{"Smooth, score 1 to 5", "", column.Score, []float64{1, 2, 3, 4, 7, 5}, 1},
		{"Wobble (1-5)", "", column.None, []float64{1, 2, 3, 0, 4, 5}, 1},
		{"taste /10", "", column.Score, []float64{3, 7, 8, 10, 11}, 1},
		{"off taste (0 = none, 3 = strong)", "", column.None, []float64{0, 0, 1, 3, 5}, 1},
		{"taste", "All scores from 0 to 9", column.Score, []float64{3, 7, 8, 9, 12}, 1},
		{"Smooth, score 1 to 5", "", column.Score, []float64{1, 2.5, 3, 4, 5}, 0},
		{"taste", "", column.Score, []float64{3, 7, 8, 9, 12}, 0},               // no scale is said
		{"taste (1-5)", "", column.Score, []float64{6, 7, 8, 9, 3}, 0},          // another scale than its head says
		{"read after 1 to 5 min", "", column.None, []float64{1, 2, 3, 4, 7}, 0}, // minutes are no scale
		{"trial 1 to 5", "", column.TrialID, []float64{1, 2, 3, 4, 7}, 0},
	} {
		col := &handin.Column{Header: c.head, Whole: c.head, Role: c.role}
		for i, v := range c.values {
			col.Cells = append(col.Cells, handin.Cell{At: trial.Place{Row: i + 2, Col: 3}, Value: v, Known: true, Scale: 1})
		}
		r := &reader{meant: map[trial.Place]float64{}, said: map[trial.Place]bool{}, not: map[trial.Place]bool{}}
		w := &handin.Work{Words: []handin.Phrase{{Text: c.line}}}
		r.offScale(w, &handin.Table{Columns: []*handin.Column{col}})
		if len(r.out) != c.asked {
			t.Errorf("%q %v: %d asked, want %d", c.head, c.values, len(r.out), c.asked)
		}
	}
}

// TestUnderEffects: numbers below nothing beside an HLB or a fat percent, and where they may be so.
func TestUnderEffects(t *testing.T) {
	for _, c := range []struct {
		lines string
		asked int
	}{
		{"HLB|-2", 1},
		{"mono HLB|24", 1},
		{"butter fat %|-4", 1},
		{"Ingredients;butter fat %|118", 1},
		{"Effect on hold, min;butter|5;HLB|-2", 0},
		{"Effekte;Butter|5;HLB|-2", 0},
		{"what each change did, min;fat %|-3", 0},
		{"Effect on hold;butter|5;;HLB|-2", 1}, // another list
		{"HLB, difference|-2", 0},
	} {
		w := &handin.Work{}
		for row, line := range strings.Split(c.lines, ";") {
			if label, number, _ := strings.Cut(line, "|"); label != "" {
				w.Words = append(w.Words, handin.Phrase{At: trial.Place{Row: row + 1, Col: 1}, Text: label, Right: number, RightAt: trial.Place{Row: row + 1, Col: 2}})
			}
		}
		r := fresh()
		if r.constants(w); len(r.out) != c.asked {
			t.Errorf("%s: %v", c.lines, r.out)
		}
	}
}

// TestOffScaleOfMean: marks beside a mean that says their scale, and numbers beside one that says none.
func TestOffScaleOfMean(t *testing.T) {
	for head, want := range map[string]int{"Mean of the panel (1 to 9)": 1, "Mean of the panel": 0, "Panel (1 to 9)": 0} {
		w := &handin.Work{}
		row := func(n int, cells ...handin.Cell) {
			r := handin.Row{At: trial.Place{File: "a.xlsx", Sheet: "Panel", Row: n, Col: 1}}
			for k, c := range cells {
				c.At = trial.Place{File: "a.xlsx", Sheet: "Panel", Row: n, Col: k + 1}
				r.Cells = append(r.Cells, c)
			}
			w.Rest = append(w.Rest, r)
		}
		text := func(s string) handin.Cell { return handin.Cell{Kind: sheet.Text, Text: s} }
		mark := func(v float64) handin.Cell { return handin.Cell{Kind: sheet.Number, Value: v, Known: true} }
		mean := func(f string) handin.Cell { return handin.Cell{Kind: sheet.Number, Value: 6, Known: true, Formula: f} }
		row(1, text("Trial"), text("Ada"), text("Ben"), text("Cy"), text(head))
		row(2, mark(40), mark(5), mark(6), mark(7), mean("AVERAGE(B2:D2)"))
		row(3, mark(41), mark(5), mark(12), mark(7), mean("AVERAGE(B3:D3)"))
		r := &reader{said: map[trial.Place]bool{}, meant: map[trial.Place]float64{}}
		r.offScaleOfMean(w)
		if len(r.out) != want || want == 1 && r.out[0].At.Row != 3 {
			t.Errorf("%s: %d", head, len(r.out))
		}
	}
}
