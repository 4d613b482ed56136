package ingest

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/layout"
	"foamfield/ingest/trial"
)

// A canister is squirted more than once, and some kitchens log the first and the
// last. They are one trial: the first is the foam as it was made, what came
// later goes into the note.

// squirts yields the rows of each trial of a table with a column of squirts:
// neighbours with one key and each its own squirt.
func squirts(t *layout.Table, squirt int, yield func([]int) bool) {
	var rows []int
	var key string
	var seen []string
	for n := range t.Rows {
		c, _ := t.Cell(n, squirt)
		which, own := fold(t.Sheet.Display(c)), keyOf(t, n)
		if len(rows) > 0 && own == key && which != "" && seen[0] != "" && !slices.Contains(seen, which) {
			rows, seen = append(rows, n), append(seen, which)
			continue
		}
		if len(rows) > 0 && !yield(rows) {
			return
		}
		rows, key, seen = append(rows[:0], n), own, append(seen[:0], which)
	}
	if len(rows) > 0 {
		yield(rows)
	}
}

// laterSquirt writes what a later squirt did into the trial's note.
func (b *row) laterSquirt(t *trial.Trial) {
	which := ""
	var said []string
	for i := range b.table.fields {
		f := &b.table.fields[i]
		text := b.text(f.col)
		switch {
		case text == "":
		case f.Role == column.Squirt:
			which = text
		case f.Role == column.Note:
			said = append(said, text)
		case perReading(f.Role) || f.Role == column.Hold || f.Role == column.Spits || f.extra != "":
			said = append(said, f.header+" "+text)
		}
	}
	note := "squirt " + which + ": " + strings.Join(said, ", ")
	if len(said) == 0 {
		note = "squirt " + which + ": nothing logged"
	}
	if t.Note != "" {
		note = t.Note + "; " + note
	}
	t.Note = b.book.same(note)
	b.book.told("later squirt", b.at(0), "squirts of one trial are one trial: the first is used, what is logged of a later one stands in its note",
		"nothing to do; give it a trial number of its own if it was another mix")
}
