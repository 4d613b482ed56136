package formal

import (
	"testing"

	"foamfield/analysis/grade/cells"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

// One weight beside a card is a correction of it, and no mix that lacks its day.
func TestWeighed(t *testing.T) {
	var told []handin.Phrase
	for i, text := range []string{
		"Trial 1: 120 g butter, 180 g cider. It held 3 min.",
		"Trial 2: 100 g butter, 194 g cider, 6 g GMS. It held 22 min.",
		"Trial 3: 100 g butter, 194 g cider, 6 g GMS. It held 20 min.",
	} {
		told = append(told, handin.Phrase{At: trial.Place{File: "a.xlsx", Sheet: "Log", Row: i + 1, Col: 1}, Text: text})
	}
	table := cells.Told(told, "a.xlsx")
	left := 0
	for _, c := range table.Weighed() {
		if left++; left > 1 {
			c.Cells[2] = handin.Cell{}
		}
	}
	for i, want := range []bool{true, true, false} {
		if got := weighed(table, i); got != want {
			t.Errorf("trial %d: %v", i+1, got)
		}
	}
}
