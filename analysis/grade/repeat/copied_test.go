package repeat

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestCopied: rows alike in all they have, and rows that may well be alike.
func TestCopied(t *testing.T) {
	for _, c := range []struct {
		name                string
		lard, milk          []float64
		gms                 []float64
		hold, drained, foam []float64
		want                int
	}{
		{"all of it", []float64{120.3, 120.3, 119.8}, []float64{280.2, 280.2, 279.9}, []float64{3.02, 3.02, 4.11}, []float64{14, 14, 19}, []float64{9, 9, 6}, []float64{71.2, 71.2, 66.8}, 1},
		{"but the hold", []float64{120.3, 120.3, 119.8}, []float64{280.2, 280.2, 279.9}, []float64{3.02, 3.02, 4.11}, []float64{14, 15, 19}, []float64{9, 9, 6}, []float64{71.2, 71.2, 66.8}, 0},
		{"but a weight", []float64{120.3, 120.4, 119.8}, []float64{280.2, 280.2, 279.9}, []float64{3.02, 3.02, 4.11}, []float64{14, 14, 19}, []float64{9, 9, 6}, []float64{71.2, 71.2, 66.8}, 0},
		{"whole grams of a coarse balance", []float64{120, 120, 120}, []float64{280, 280, 280}, []float64{3, 3, 4}, []float64{14, 14, 19}, []float64{9, 9, 6}, []float64{71, 71, 66}, 0},
		{"as planned in every row, and one result", []float64{120.3, 120.3, 120.3}, []float64{280.2, 280.2, 280.2}, []float64{3.02, 3.02, 4.11}, []float64{14, 14, 19}, nil, nil, 0},
	} {
		cells := func(role column.Role, half float64, xs []float64) *handin.Column {
			col := &handin.Column{Role: role, Field: &scheme.Field{InGrams: true}}
			for i, x := range xs {
				col.Cells = append(col.Cells, handin.Cell{At: trial.Place{Row: i + 1, Col: int(role)}, Kind: sheet.Number, Value: x, Known: true, Half: half})
			}
			return col
		}
		tab := &handin.Table{Columns: []*handin.Column{cells(column.IngredientAmount, 0.05, c.lard), cells(column.IngredientAmount, 0.05, c.milk), cells(column.IngredientAmount, 0.005, c.gms), cells(column.Hold, 0.5, c.hold)}}
		if c.drained != nil {
			tab.Columns = append(tab.Columns, cells(column.DrainedAmount, 0.5, c.drained), cells(column.CupFoam, 0.05, c.foam))
		}
		for i := range c.lard {
			tab.Trials = append(tab.Trials, &handin.Trial{Trial: &trial.Trial{}, Index: i, Table: tab})
		}
		if got := copied(tab); len(got) != c.want {
			t.Errorf("%s: %d", c.name, len(got))
		}
	}
}
