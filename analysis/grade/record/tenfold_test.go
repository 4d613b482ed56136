package record

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/trial"
)

// TestTenfold: measures ten times all others of their column, and those that may well be so.
func TestTenfold(t *testing.T) {
	for _, c := range []struct {
		role   column.Role
		values []float64
		note   string // of the last row
		asked  int    // the row, -1 for none
	}{
		{column.Temperature, []float64{4, 5, 4, 40}, "", 3},
		{column.Temperature, []float64{68, 6.8, 70, 69}, "", 1},
		{column.Chargers, []float64{2, 20, 2, 2, 2}, "", 1},
		{column.Rest, []float64{120, 12, 120, 120}, "", 1},
		{column.Shakes, []float64{8, 8, 8, 80}, "tastes of lemon", 3},
		{column.Temperature, []float64{4, 5, 4, 40}, "warm from the water bath", -1},
		{column.Rest, []float64{2, 2, 2, 20}, "overnight this time", -1},
		{column.Temperature, []float64{4, 40, 4, 40}, "", -1},  // two of them: a series
		{column.Temperature, []float64{4, 12, 20, 40}, "", -1}, // it is what was tried
		{column.Temperature, []float64{4, 5, 4, 22}, "", -1},   // out of the room
		{column.Temperature, []float64{4, 4, 40}, "", -1},      // too few to tell
		{column.Hold, []float64{3, 3, 3, 30}, "", -1},          // holds truly differ
	} {
		col := numbers(2, c.role, c.values...)
		notes := numbers(3, column.Note, c.values...)
		for i := range notes.Cells {
			notes.Cells[i] = handin.Cell{At: trial.Place{Row: i + 2, Col: 3}}
		}
		notes.Cells[len(c.values)-1].Text = c.note
		r, got := fresh(), -1
		r.tenfold(tableOf(col, notes))
		for i, cell := range col.Cells {
			if r.said[cell.At] {
				got = i
			}
		}
		if got != c.asked || len(r.out) > 1 {
			t.Errorf("%v %q: row %d, want %d: %v", c.values, c.note, got, c.asked, r.out)
		}
	}
}
