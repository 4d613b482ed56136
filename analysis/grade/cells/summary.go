package cells

import (
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
)

// Parted tells the tables of trials from those that sum them up: without any grams, and
// with means or with formulas that point at another sheet.
func Parted(tables []*handin.Table) (trials, sums []*handin.Table) {
	if !slices.ContainsFunc(tables, func(t *handin.Table) bool { return len(t.Weighed()) > 1 }) {
		return tables, nil
	}
	for _, t := range tables {
		if isSummary(t) {
			sums = append(sums, t)
		} else {
			trials = append(trials, t)
		}
	}
	return trials, sums
}

func isSummary(t *handin.Table) bool {
	if len(t.Weighed()) > 0 {
		return false
	}
	return slices.ContainsFunc(t.Columns, func(c *handin.Column) bool {
		if c.Role != column.Hold && c.Role != column.DrainedAmount {
			return false
		}
		return c.Mean() || slices.ContainsFunc(c.Cells, func(x handin.Cell) bool { return strings.Contains(x.Formula, "!") })
	})
}
