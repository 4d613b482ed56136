package handin

import (
	"testing"

	"foamfield/ingest/column"
	"foamfield/ingest/trial"
)

// TestUnder: the trials of a code under its header, and texts that are no code of several.
func TestUnder(t *testing.T) {
	tab := &Table{}
	id, code := &Column{Header: "no", Role: column.TrialID}, &Column{Header: "Blend"}
	for i, text := range []string{"A", "A", "B", "a", "twice as long"} {
		tab.Trials = append(tab.Trials, &Trial{Trial: &trial.Trial{ID: text}, Index: i, Table: tab})
		id.Cells = append(id.Cells, Cell{Text: text})
		code.Cells = append(code.Cells, Cell{Text: text})
	}
	tab.Columns = []*Column{id, code}
	w := &Work{Tables: []*Table{tab}}
	for _, c := range []struct {
		header, text string
		n            int
	}{{"blend", "A", 3}, {"Blend ", "b", 1}, {"Blend", "C", 0}, {"no", "A", 0}, {"", "A", 0}, {"Blend", "", 0}, {"blend", "twice as long", 0}} {
		if got := w.Under(c.header, c.text); len(got) != c.n {
			t.Errorf("%s %s: %d", c.header, c.text, len(got))
		}
	}
}
