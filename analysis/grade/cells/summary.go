package cells

import (
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// Parted tells the tables of trials from those that sum them up: without any grams, and
// with means or with formulas that point at another sheet.
func Parted(tables []*handin.Table) (trials, sums []*handin.Table) {
	if !slices.ContainsFunc(tables, func(t *handin.Table) bool { return len(t.Weighed()) > 1 }) {
		return tables, nil
	}
	for _, t := range tables {
		switch {
		case isSummary(t):
			sums = append(sums, t)
		case !isPlan(t, tables) && !isList(t):
			trials = append(trials, t)
		}
	}
	return trials, sums
}

// isPlan reports a table without any result that weighs less than two things, of trials that all stand
// weighed in another table: what was meant to be made, and is made there.
func isPlan(t *handin.Table, tables []*handin.Table) bool {
	if len(t.Weighed()) > 1 || len(t.Results()) > 0 || len(t.Trials) == 0 {
		return false
	}
	return slices.ContainsFunc(tables, func(o *handin.Table) bool {
		if o == t || len(o.Weighed()) < 2 {
			return false
		}
		return !slices.ContainsFunc(t.Trials, func(x *handin.Trial) bool {
			key := handin.IDKey(x.ID)
			return key == "" || !slices.ContainsFunc(o.Trials, func(y *handin.Trial) bool { return handin.IDKey(y.ID) == key })
		})
	})
}

// isList reports a table in which nothing is weighed and nothing was seen: ingredients with their fat.
func isList(t *handin.Table) bool {
	return len(t.Weighed()) == 0 && len(t.Results()) == 0 && !slices.ContainsFunc(t.Trials, func(x *handin.Trial) bool {
		return x.CameOut != trial.Unknown || x.Broke != trial.Unknown || len(x.Parts) > 0
	}) && slices.ContainsFunc(t.Columns, func(c *handin.Column) bool {
		return slices.ContainsFunc(c.Cells, func(x handin.Cell) bool { _, known := ingredient.Lookup(x.Text); return known })
	})
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
