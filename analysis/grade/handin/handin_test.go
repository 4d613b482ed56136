package handin

import (
	"testing"

	"foamfield/ingest/trial"
)

func TestNamesControl(t *testing.T) {
	for text, want := range map[string]bool{
		"control": true, "Ctrl 2": true, "C": true, "K": true, "témoin": true, "Kontrolle": true, "base recipe": true, "ref": true, "0": true, "controls": true,
		"": false, "3": false, "T1": false, "no control": false, "better than control": false, "without a control": false, "remote-controlled": false, "reflux": false,
	} {
		if got := NamesControl(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

func TestIDKey(t *testing.T) {
	for _, same := range [][2]string{{"T4", "4"}, {"trial 4", "4"}, {"Trial #04", "4"}, {"Versuch 3", "3"}, {"a1", "A1"}, {"No. 7", "7"}, {"1)", "1"}} {
		if a, b := IDKey(same[0]), IDKey(same[1]); a != b {
			t.Errorf("%q is %q, %q is %q", same[0], a, same[1], b)
		}
	}
	if IDKey("T4") == IDKey("T5") || IDKey("test") == "" {
		t.Error("two trials are one")
	}
}

// TestInOrder: a C1 behind a B1 is the next mix, and one by itself a control.
func TestInOrder(t *testing.T) {
	for _, c := range []struct {
		ids     []string // the last is asked of
		control bool
	}{
		{[]string{"A1", "A2", "B1", "B2", "C1"}, false},
		{[]string{"B1", "C1"}, false},
		{[]string{"1", "2", "C1"}, true},
		{[]string{"A", "B", "C"}, false},
		{[]string{"1", "2", "C"}, true},
		{[]string{"S1", "S2", "C2"}, true},
		{[]string{"L1", "C3", "C1"}, false}, // the centre of a plan, in the order of the lot
		{[]string{"C3", "C1", "C2"}, false},
	} {
		table := &Table{}
		for i, id := range c.ids {
			table.Trials = append(table.Trials, &Trial{Trial: &trial.Trial{ID: id}, Index: i, Table: table})
		}
		if got := table.Trials[len(c.ids)-1].IsControl(); got != c.control {
			t.Errorf("%v: %v", c.ids, got)
		}
	}
}
