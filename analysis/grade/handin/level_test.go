package handin

import (
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestLevel: names that several makings have in common, and names that are a trial's own, or of a series.
func TestLevel(t *testing.T) {
	for _, c := range []struct{ ids, name, want string }{
		{"0 1a 1b 2a 2b", "1", "1a 1b"},
		{"0 1a 1b 2a 2b", "level 2", "2a 2b"},
		{"0 1a 1b 2a 2b", "Stufe 2", "2a 2b"},
		{"0 1a 1b 2a 2b", "0", ""}, // a trial itself
		{"K0 K1.1 K1.2 K1.3", "K1", "K1.1 K1.2 K1.3"},
		{"K0 K1.1 K1.2 K1.3", "k1", "K1.1 K1.2 K1.3"},
		{"K0 K1.1 K1.2 K1.3", "K", ""},
		{"F2-1 F2-2 F3-1", "F2", "F2-1 F2-2"},
		{"F2-1 F2-2 F3-1", "F3", ""}, // made once
		{"4 4a 4b", "4", ""},
		{"1 10 11 12", "1", ""},
		{"A1 A2 B1 B2", "A", ""}, // as likely the trials of a series
		{"T4a T4b", "4", "T4a T4b"},
		{"R1 R2", "", ""},
	} {
		tab := &Table{}
		for i, id := range strings.Fields(c.ids) {
			tab.Trials = append(tab.Trials, &Trial{Trial: &trial.Trial{ID: id}, Index: i, Table: tab})
		}
		var got []string
		for _, x := range (&Work{Tables: []*Table{tab}}).Level(c.name) {
			got = append(got, x.ID)
		}
		if !slices.Equal(got, strings.Fields(c.want)) {
			t.Errorf("%s: %q is %v, want %q", c.ids, c.name, got, c.want)
		}
	}
}
