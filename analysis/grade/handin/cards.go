package handin

import (
	"math"
	"slices"

	"foamfield/ingest/say"
)

// joined makes one table of those that are one log on several places: a card a trial,
// down a sheet or on a sheet each, and sheets with the same heads. A trial is then held
// against all others, as in a table.
func joined(tables []*Table) (out []*Table) {
	for _, t := range tables {
		i := slices.IndexFunc(out, func(o *Table) bool { return o.continues(t) })
		if i < 0 {
			out = append(out, t)
			continue
		}
		out[i].add(t)
	}
	return out
}

// continues reports a table that goes on in another: with the same heads, or, on cards,
// with most of them.
func (t *Table) continues(o *Table) bool {
	if t.Across != o.Across || len(t.Averages)+len(o.Averages) > 0 || t.At.File != o.At.File || t.headTwice() || o.headTwice() {
		return false
	}
	common := 0
	for _, c := range o.Columns {
		if t.alike(c) != nil {
			common++
		}
	}
	if len(o.Trials) == 1 {
		return 4*common >= 3*max(len(t.Columns), len(o.Columns))
	}
	return common == len(o.Columns) && common == len(t.Columns)
}

// headTwice reports two columns that nothing tells apart.
func (t *Table) headTwice() bool {
	return slices.ContainsFunc(t.Columns, func(c *Column) bool { return t.alike(c) != c })
}

// alike is the column with the head of another.
func (t *Table) alike(o *Column) *Column {
	for _, c := range t.Columns {
		if c.Role == o.Role && say.Fold(c.Header) == say.Fold(o.Header) {
			return c
		}
	}
	return nil
}

// add takes the trials of a table that goes on in another. A cell that a card does not
// have is blank, and stands where the card begins.
func (t *Table) add(o *Table) {
	for _, c := range o.Columns {
		if t.alike(c) == nil {
			more := *c
			more.table, more.Cells = t, nil
			for _, x := range t.Trials {
				more.Cells = append(more.Cells, t.noCell(x))
			}
			t.Columns = append(t.Columns, &more)
		}
	}
	n := len(t.Trials)
	for _, x := range o.Trials {
		for _, c := range t.Columns {
			cell := o.noCell(x)
			if from := o.alike(c); from != nil {
				cell = from.Cells[x.Index]
			}
			c.Cells = append(c.Cells, cell)
		}
	}
	for k, x := range o.Trials {
		x.Table, x.Index = t, n+k
		t.Trials = append(t.Trials, x)
	}
}

// noCell is a cell that a trial's card does not have.
func (t *Table) noCell(x *Trial) Cell {
	return Cell{At: t.Columns[0].Cells[x.Index].At, Low: math.Inf(-1), High: math.Inf(1), Scale: 1}
}
