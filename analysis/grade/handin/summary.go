package handin

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/trial"
)

// parted tells the tables of trials from those that sum them up: without any grams, and
// with means or with formulas that point at another sheet.
func parted(tables []*Table) (trials, sums []*Table) {
	if !slices.ContainsFunc(tables, func(t *Table) bool { return len(t.Weighed()) > 1 }) {
		return tables, nil
	}
	for _, t := range tables {
		if t.isSummary() {
			sums = append(sums, t)
		} else {
			trials = append(trials, t)
		}
	}
	return trials, sums
}

func (t *Table) isSummary() bool {
	if len(t.Weighed()) > 0 {
		return false
	}
	return slices.ContainsFunc(t.Columns, func(c *Column) bool {
		if c.Role != column.Hold && c.Role != column.DrainedAmount {
			return false
		}
		return c.Mean() || slices.ContainsFunc(c.Cells, func(x Cell) bool { return strings.Contains(x.Formula, "!") })
	})
}

// At is the cell of the work's trials at a place, with its column; nil where none stands.
func (w *Work) At(at trial.Place) (*Column, *Trial) {
	for _, t := range w.Tables {
		for _, c := range t.Columns {
			for i := range c.Cells {
				if c.Cells[i].At == at {
					return c, t.Trials[i]
				}
			}
		}
	}
	return nil, nil
}
