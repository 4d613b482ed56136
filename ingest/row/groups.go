package row

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/reply"
	"foamfield/ingest/say"
)

// Groups yields the rows of each trial: one, or all that share their key when
// there is a row for each reading or squirt.
func Groups(t *grid.Table) func(yield func([]int) bool) {
	return func(yield func([]int) bool) {
		switch squirt := t.Find(column.Squirt); {
		case t.PerReading:
			readings(t, yield)
		case squirt >= 0 && t.Find(column.TrialID) >= 0:
			squirts(t, squirt, yield)
		default:
			for n := range t.Rows {
				if !yield([]int{n}) {
					return
				}
			}
		}
	}
}

// readings yields the rows with one key.
func readings(t *grid.Table, yield func([]int) bool) {
	var keys []string
	rows := map[string][]int{}
	for n := range t.Rows {
		k := keyOf(t, n)
		if rows[k] == nil {
			keys = append(keys, k)
		}
		rows[k] = append(rows[k], n)
	}
	for _, k := range keys {
		if !yield(rows[k]) {
			return
		}
	}
}

// keyOf is what tells a row's trial from the others.
func keyOf(t *grid.Table, n int) string {
	var key strings.Builder
	for _, h := range t.Key {
		c, _ := t.Cell(n, h)
		key.WriteString(t.Sheet.Display(c))
		key.WriteByte(0)
	}
	return key.String()
}

// squirts yields the rows of each trial of a table with a column of squirts:
// neighbours with one key and each its own squirt. A canister is squirted more than
// once, and some kitchens log the first and the last; they are one trial.
func squirts(t *grid.Table, squirt int, yield func([]int) bool) {
	var rows []int
	var key string
	var seen []string
	for n := range t.Rows {
		c, _ := t.Cell(n, squirt)
		which, own := say.Fold(t.Sheet.Display(c)), keyOf(t, n)
		if r, err := reply.Parse(which); err == nil && r.Sense == reply.Affirms {
			which = "" // whether it came out, not which of them
		}
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
