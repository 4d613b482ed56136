package cells

import (
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// A log has what was weighed and seen, and another sheet what follows of it: a row or a column for each
// of the same trials, with their totals, percents and blends. These are columns of the log.

// Workings gives the tables of a work the columns that are worked out elsewhere.
func Workings(w *handin.Work) {
	w.Tables = slices.DeleteFunc(w.Tables, func(t *handin.Table) bool { return takenUp(w, t) })
	for _, block := range blocksOf(w.Rest) {
		if planned.MatchString(block[0].At.Sheet) {
			continue
		}
		if !downTrials(w, block) {
			acrossTrials(w, block)
		}
	}
}

// takenUp gives the columns of a table that was read as trials of its own, and in which nothing was
// weighed or seen, to the log of these trials; false for any other table.
func takenUp(w *handin.Work, t *handin.Table) bool {
	if len(t.Weighed()) > 0 || len(t.Trials) < leastWorked || planned.MatchString(t.At.Sheet) || slices.ContainsFunc(t.Columns, func(c *handin.Column) bool { return seen(c) }) {
		return false
	}
	own := map[*handin.Trial]*handin.Trial{} // by that of the log
	var log *handin.Table
	for _, x := range t.Trials {
		found := slices.DeleteFunc(w.ByID(x.ID), func(y *handin.Trial) bool { return y.Table == t })
		if len(found) != 1 || log != nil && found[0].Table != log || own[found[0]] != nil || len(found[0].Table.Weighed()) < 2 {
			return false
		}
		log, own[found[0]] = found[0].Table, x
	}
	for _, c := range t.Columns {
		cells := map[*handin.Trial]handin.Cell{}
		for x, y := range own {
			cells[x] = c.Cells[y.Index]
		}
		attach(log, handin.Cell{Text: c.Whole, At: c.Heading}, cells)
	}
	return true
}

// seen reports a column of what was weighed of a foam, or seen of it.
func seen(c *handin.Column) bool {
	switch c.Role {
	case column.TrialID, column.None, column.Unused, column.Note, column.Day, column.Order, column.BatchMass, column.FatPercent, column.BlendHLB, column.Overrun, column.Declared, column.Measure:
		return false
	case column.EmulsifierAmount, column.DrainedAmount:
		return c.Field == nil || c.Field.Want != units.Percent
	}
	return c.Filled()
}

// planned are words of what was meant, and did not come of the log.
var planned = pattern.Of(`(?i)\b(?:plan\w*|targets?|goals?|aims?|wanted|meant|wished|soll|ziel\w*|vorgabe|visé\w*|cible|prévu\w*|objetivo\w*|previst\w*|obiettiv\w*|gepland|doel\w*|theor\w*|example)\b`)

// blocksOf are the rows of the rest that stand right below each other.
func blocksOf(rest []handin.Row) (out [][]handin.Row) {
	for i, r := range rest {
		if i == 0 || r.At.File != rest[i-1].At.File || r.At.Sheet != rest[i-1].At.Sheet || r.At.Row != rest[i-1].At.Row+1 {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], r)
	}
	return out
}

// leastWorked are the trials that make a row or a column of them one of the log.
const leastWorked = 3

// downTrials takes a block with a row for each trial, below a row of heads.
func downTrials(w *handin.Work, block []handin.Row) bool {
	for k := range block {
		var trials []*handin.Trial
		for _, r := range block[k+1:] {
			x := theTrial(w, r.Cells[0], block[k].Cells[0])
			if x == nil || len(trials) > 0 && x.Table != trials[0].Table || r.Cells[0].At.Col != block[k].Cells[0].At.Col {
				break
			}
			trials = append(trials, x)
		}
		if len(trials) < leastWorked || !allTexts(block[k]) {
			continue
		}
		for _, head := range block[k].Cells[1:] {
			cells := map[*handin.Trial]handin.Cell{}
			for i, x := range trials {
				for _, c := range block[k+1+i].Cells {
					if c.At.Col == head.At.Col {
						cells[x] = c
					}
				}
			}
			attach(trials[0].Table, head, cells)
		}
		return true
	}
	return false
}

// acrossTrials takes a block with a column for each trial, under a row of their names.
func acrossTrials(w *handin.Work, block []handin.Row) {
	for k, r := range block {
		trials := map[int]*handin.Trial{}
		var table *handin.Table
		for _, c := range r.Cells[1:] {
			if x := theTrial(w, c, r.Cells[0]); x != nil && (table == nil || x.Table == table) {
				trials[c.At.Col], table = x, x.Table
			}
		}
		if len(trials) < leastWorked || len(trials) < len(r.Cells)-1 {
			continue
		}
		for _, row := range block[k+1:] {
			if row.Cells[0].Kind != sheet.Text || row.Cells[0].At.Col != r.Cells[0].At.Col {
				return
			}
			cells := map[*handin.Trial]handin.Cell{}
			for _, c := range row.Cells[1:] {
				if x := trials[c.At.Col]; x != nil {
					cells[x] = c
				}
			}
			attach(table, row.Cells[0], cells)
		}
		return
	}
}

// theTrial is the one trial of the log that a cell names; a number does so only under the word for it.
func theTrial(w *handin.Work, c, head handin.Cell) *handin.Trial {
	found := w.ByID(c.Text)
	if len(found) != 1 || len(found[0].Table.Weighed()) < 2 || c.Known && column.Read(head.Text).Role != column.TrialID {
		return nil
	}
	return found[0]
}

func allTexts(r handin.Row) bool {
	for _, c := range r.Cells {
		if c.Kind != sheet.Text || c.Known {
			return false
		}
	}
	return len(r.Cells) >= 2
}

// attach adds a column that is worked out to a table which has none of its kind.
func attach(t *handin.Table, head handin.Cell, cells map[*handin.Trial]handin.Cell) {
	m := column.Read(head.Text)
	field := &scheme.Field{Meaning: m, Header: head.Text}
	switch d := m.Unit.Dimension(); {
	case m.Aim == column.Planned || planned.MatchString(head.Text):
		return
	case m.Role == column.BatchMass && (d == units.Mass || d == units.Any) && m.Unit != units.Kilogram:
		field.Want, field.Bare, field.InGrams = units.Mass, units.Gram, true
	case (m.Role == column.FatPercent || m.Role == column.EmulsifierAmount || m.Role == column.DrainedAmount) && d == units.Percent, m.Role == column.Overrun:
		field.Want, field.Bare = units.Percent, units.PercentUnit
	case m.Role == column.BlendHLB:
	default:
		return
	}
	for _, c := range t.All(m.Role) {
		if c.Known() > 0 && (c.Field == nil || m.Role != column.DrainedAmount && m.Role != column.EmulsifierAmount || c.Field.Want == field.Want) {
			return
		}
	}
	c := &handin.Column{Header: head.Text, Whole: head.Text, Heading: head.At, Field: field, Role: m.Role}
	for _, x := range t.Trials {
		cell, ok := cells[x]
		if !ok {
			cell = handin.Cell{At: t.Columns[0].Cells[x.Index].At, Low: math.Inf(-1), High: math.Inf(1), Scale: 1}
		}
		c.Cells = append(c.Cells, cell)
	}
	if c.Known() >= leastWorked && !strings.Contains(head.Text, "?") {
		t.Columns = append(t.Columns, c)
	}
}
