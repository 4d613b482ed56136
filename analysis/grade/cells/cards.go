package cells

import (
	"math"
	"slices"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/say"
)

// Joined makes one table of those that are one log on several places: a card a trial,
// down a sheet or on a sheet each, and sheets with the same heads. A trial is then held
// against all others, as in a table.
func Joined(tables []*handin.Table) (out []*handin.Table) {
	for _, t := range tables {
		i := slices.IndexFunc(out, func(o *handin.Table) bool { return continues(o, t) })
		if i < 0 {
			out = append(out, t)
			continue
		}
		add(out[i], t)
	}
	return out
}

// continues reports a table that goes on in another: with the same heads, or, on cards,
// with most of them.
func continues(t, o *handin.Table) bool {
	if t.Across != o.Across || len(t.Averages)+len(o.Averages) > 0 || t.At.File != o.At.File || headTwice(t) || headTwice(o) {
		return false
	}
	common := 0
	for _, c := range o.Columns {
		if alike(t, c) != nil {
			common++
		}
	}
	if len(o.Trials) == 1 {
		return 4*common >= 3*max(understood(t), understood(o))
	}
	return common == len(o.Columns) && common == len(t.Columns)
}

// understood counts the columns of a table that are something: the title of every card, "Card
// 4", may have become one of its own.
func understood(t *handin.Table) (n int) {
	for _, c := range t.Columns {
		if c.Role != column.None && c.Role != column.Unused {
			n++
		}
	}
	return n
}

// headTwice reports two columns that nothing tells apart.
func headTwice(t *handin.Table) bool {
	return slices.ContainsFunc(t.Columns, func(c *handin.Column) bool { return alike(t, c) != c })
}

// alike is the column with the head of another.
func alike(t *handin.Table, o *handin.Column) *handin.Column {
	for _, c := range t.Columns {
		if c.Role == o.Role && say.Fold(c.Header) == say.Fold(o.Header) {
			return c
		}
	}
	return nil
}

// add takes the trials of a table that goes on in another. A cell that a card does not
// have is blank, and stands where the card begins.
func add(t, o *handin.Table) {
	for _, c := range o.Columns {
		if alike(t, c) == nil {
			more := *c
			more.Cells = nil
			for _, x := range t.Trials {
				more.Cells = append(more.Cells, noCell(t, x))
			}
			t.Columns = append(t.Columns, &more)
		}
	}
	n := len(t.Trials)
	for _, x := range o.Trials {
		for _, c := range t.Columns {
			cell := noCell(o, x)
			if from := alike(o, c); from != nil {
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
func noCell(t *handin.Table, x *handin.Trial) handin.Cell {
	return handin.Cell{At: t.Columns[0].Cells[x.Index].At, Low: math.Inf(-1), High: math.Inf(1), Scale: 1}
}
