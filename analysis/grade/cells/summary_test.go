package cells

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestIsPlan: tables of what was meant to be made, beside the table where it was weighed.
func TestIsPlan(t *testing.T) {
	table := func(weighed, results int, ids ...string) *handin.Table {
		tab := &handin.Table{}
		for i, id := range ids {
			tab.Trials = append(tab.Trials, &handin.Trial{Trial: &trial.Trial{ID: id}, Index: i, Table: tab})
		}
		for k := range weighed + results {
			c := &handin.Column{Role: column.IngredientAmount, Field: &scheme.Field{InGrams: true}}
			if k >= weighed {
				c.Role = column.Hold
			}
			for range ids {
				c.Cells = append(c.Cells, handin.Cell{Kind: sheet.Number, Known: true, Value: 1})
			}
			tab.Columns = append(tab.Columns, c)
		}
		return tab
	}
	log := table(4, 1, "1", "2", "3")
	for _, c := range []struct {
		what string
		t    *handin.Table
		want bool
	}{
		{"one column of the same trials", table(1, 0, "1", "2"), true},
		{"no grams at all", table(0, 0, "T1", "T2", "T3"), true},
		{"with results of its own", table(1, 1, "1", "2"), false},
		{"weighed as well", table(3, 0, "1", "2"), false},
		{"a trial more", table(1, 0, "1", "2", "4"), false},
		{"without numbers", table(1, 0, "", ""), false},
	} {
		if got := isPlan(c.t, []*handin.Table{c.t, log}); got != c.want {
			t.Errorf("%s: %v", c.what, got)
		}
	}
}
