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
		case isSummary(t), len(t.Results()) > 0 && ofLevels(t, tables):
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
			return key == "" || len(handin.LevelIn([]*handin.Table{o}, x.ID)) == 0 && !slices.ContainsFunc(o.Trials, func(y *handin.Trial) bool { return handin.IDKey(y.ID) == key })
		})
	})
}

// ofLevels reports a table that weighs less than two things, each row of which is named by what makings
// that stand weighed in another table have in common: it gives the means of P3.1 and P3.2 as P3, with the
// grams of butter that were varied. What was made but once has a row of its own name, and what was worked
// out of all of them may stand in rows below.
func ofLevels(t *handin.Table, tables []*handin.Table) bool {
	if len(t.Weighed()) > 1 {
		return false
	}
	levels := 0
	for _, x := range t.Trials {
		name := firstOf(x)
		found := slices.ContainsFunc(tables, func(o *handin.Table) bool {
			if o == t || len(o.Weighed()) < 2 {
				return false
			}
			if len(handin.LevelIn([]*handin.Table{o}, name)) > 0 {
				levels++
				return true
			}
			return slices.ContainsFunc(o.Trials, func(y *handin.Trial) bool {
				return handin.IDKey(y.ID) == handin.IDKey(name) && handin.IDKey(name) != ""
			})
		})
		below := len(strings.Fields(name)) > 1 && !slices.ContainsFunc(t.Weighed(), func(c *handin.Column) bool { return !c.Cells[x.Index].Blank() })
		if !found && !below {
			return false
		}
	}
	return levels >= 2
}

// firstOf is what a row is called, by its number or by what stands first in it.
func firstOf(x *handin.Trial) string {
	if x.ID == "" && len(x.Table.Columns) > 0 {
		return x.Table.Columns[0].Cells[x.Index].Text
	}
	return x.ID
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
