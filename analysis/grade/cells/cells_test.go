package cells

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestBeside: what stands next to the only trial of a card, in how many of its five rows.
func TestBeside(t *testing.T) {
	for _, c := range []struct {
		id     string
		filled int
		across bool
		want   bool
	}{
		{"", 1, true, true},
		{"", 3, true, false},
		{"", 1, false, false},
		{"T4", 1, true, false},
	} {
		tab := &handin.Table{Across: c.across}
		for i, id := range []string{"T3", c.id} {
			tab.Trials = append(tab.Trials, &handin.Trial{Trial: &trial.Trial{ID: id}, Index: i, Table: tab})
		}
		for k := range 5 {
			cells := []handin.Cell{{Kind: sheet.Number, Known: true}, {}}
			if k < c.filled {
				cells[1] = handin.Cell{Kind: sheet.Number, Known: true}
			}
			tab.Columns = append(tab.Columns, &handin.Column{Cells: cells})
		}
		if got := beside(tab); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}
