package record

import (
	"slices"
	"testing"

	"foamfield/ingest/column"
	"foamfield/ingest/trial"
)

// TestFarFirst: the largest number is looked at first, and what it was meant to be is what the others are
// held against.
func TestFarFirst(t *testing.T) {
	c := numbers(2, column.Hold, 1, 5, 720, 17)
	if got := farFirst(c); !slices.Equal(got, []int{2, 3, 1, 0}) {
		t.Error(got)
	}
	r := fresh()
	r.meant[trial.Place{File: "a.xlsx", Row: 4, Col: 2}] = 12
	if got := r.asMeant(c); got.Cells[2].Value != 12 || c.Cells[2].Value != 720 {
		t.Error(got.Cells)
	}
}
