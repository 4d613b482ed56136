package record

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// numbers is a column of a role in its own place of a sheet.
func numbers(col int, role column.Role, xs ...float64) *handin.Column {
	c := &handin.Column{Role: role, Header: "x"}
	for i, x := range xs {
		c.Cells = append(c.Cells, handin.Cell{At: trial.Place{File: "a.xlsx", Row: i + 2, Col: col}, Kind: sheet.Number, Value: x, Low: x, High: x, Known: true, Scale: 1, Text: "n"})
	}
	return c
}

func tableOf(cols ...*handin.Column) *handin.Table {
	t := &handin.Table{Columns: cols}
	for i := range cols[0].Cells {
		t.Trials = append(t.Trials, &handin.Trial{Trial: &trial.Trial{}, Index: i, Table: t})
	}
	return t
}

func fresh() *reader {
	return &reader{meant: map[trial.Place]float64{}, said: map[trial.Place]bool{}, not: map[trial.Place]bool{}}
}

// TestCupsTurned: a vessel that is heavier with foam in one row, and in most.
func TestCupsTurned(t *testing.T) {
	for _, c := range []struct {
		mix, foam []float64
		want      int
	}{
		{[]float64{98, 98, 36, 98}, []float64{62, 47, 98, 36}, 1},
		{[]float64{98, 98, 98, 98}, []float64{62, 47, 36, 36}, 0},
		{[]float64{62, 47, 36, 98}, []float64{98, 98, 98, 36}, 0},
	} {
		r := fresh()
		r.cupsTurned(tableOf(numbers(2, column.CupLiquid, c.mix...), numbers(3, column.CupFoam, c.foam...)))
		if len(r.out) != c.want {
			t.Errorf("%v %v: %v", c.mix, c.foam, r.out)
		}
	}
}

// TestSplitOrNot: notes that speak against a "no", and notes that do not.
func TestSplitOrNot(t *testing.T) {
	for note, want := range map[string]bool{
		"split at once, fat on top": true, "curdled in the siphon": true,
		"did not split": false, "nearly split": false, "smooth and shiny": false, "held until it split into two heaps": false,
	} {
		broke := &handin.Column{Role: column.Broke, Cells: []handin.Cell{{At: trial.Place{Row: 2, Col: 2}, Kind: sheet.Text, Text: "no"}}}
		notes := &handin.Column{Role: column.Note, Cells: []handin.Cell{{At: trial.Place{Row: 2, Col: 3}, Kind: sheet.Text, Text: note}}}
		r := fresh()
		r.splitOrNot(tableOf(broke, notes))
		if got := len(r.out) > 0; got != want {
			t.Errorf("%q: %v", note, got)
		}
	}
}

// TestLongerThanWatched: lines that say how long was watched, beside holds of 9, 15, 31 and 12 min.
func TestLongerThanWatched(t *testing.T) {
	for line, want := range map[string]bool{
		"Watched for 20 min, then stopped.":        true,
		"I observed each foam for at most 25 min":  true,
		"Watched until it fell.":                   false,
		"Watched for 40 min.":                      false,
		"Stopped the blender after 2 min.":         false,
		"Looked at it at 10 min for the drainage.": false, // two of four are longer
		"Blended for 2 min, chilled for 20 min.":   false,
	} {
		r := fresh()
		r.longerThanWatched(&handin.Work{Words: []handin.Phrase{{Text: line}}}, tableOf(numbers(2, column.Hold, 9, 15, 31, 12)))
		if got := len(r.out) > 0; got != want {
			t.Errorf("%q: %v", line, got)
		}
	}
}
