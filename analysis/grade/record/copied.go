package record

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Two makings of a formula may well hold as long to the minute; all that was measured of them, with
// its decimals and at the same time of day, they seldom share.

// enough is how much two rows have to have in common before it is asked whether one was measured:
// about the decimal figures that agree, less one for what half of all rows have.
const enough = 3.4

// copied asks of two trials of one table of which all that was measured is the same, figure by figure.
func (r *reader) copied(t *handin.Table) {
	for i, x := range t.Trials {
		for k, y := range t.Trials[:i] {
			at, tells := alikeIn(t, k, i)
			if len(at) < 2 || tells < enough || r.said[at[0]] || x.CameOut == trial.No {
				continue
			}
			id := idOn(t, i, at[0])
			words := fmt.Sprintf("Trial %s has the very results of trial %s, to the last digit. Was it measured, or is the row a copy?", x.ID, y.ID)
			f := about(words, handin.Cell{At: id, Text: x.ID}, "copied row").And(at...)
			r.add(f, id)
			break
		}
	}
}

// idOn is the place of a trial's number on the sheet of its results.
func idOn(t *handin.Table, i int, results trial.Place) trial.Place {
	for _, c := range t.Columns {
		if c.Role == column.TrialID && c.Cells[i].At.Sheet == results.Sheet {
			return c.Cells[i].At
		}
	}
	return results
}

// alikeIn are the measured cells of a trial, where all of them are what another trial has, and how much
// that tells; none where one differs.
func alikeIn(t *handin.Table, a, b int) (at []trial.Place, tells float64) {
	of := map[column.Role]float64{} // a percent says what its grams do, an overrun what its cups do
	for _, c := range t.Results() {
		x, y := c.Cells[a], c.Cells[b]
		if c.Role == column.Hold && c.Mean() || x.Formula != "" || y.Formula != "" {
			continue // worked out, it says no more
		}
		switch {
		case x.Blank() && y.Blank():
		case !x.Known || !y.Known || x.Value != y.Value:
			return nil, 0
		default:
			at = append(at, y.At)
			role := c.Role
			switch role {
			case column.CupLiquid, column.Overrun:
				role = column.CupFoam
			case column.Hold:
				tells += figuresOf(c, y)
				continue
			}
			of[role] = max(of[role], figuresOf(c, y))
		}
	}
	for _, v := range of {
		tells += v
	}
	for _, c := range t.Columns {
		x, y := c.Cells[a], c.Cells[b]
		if c.Role == column.Day || timeHead.MatchString(c.Header) {
			switch clocked := clockTime.MatchString(y.Text); {
			case x.Text == y.Text && clocked:
				tells += 1.5 // nobody foams two siphons in one minute
			case x.Text != y.Text:
				tells-- // another day
			}
		}
		if c.Role == column.Note && x.Text == y.Text && len(strings.Fields(x.Text)) >= 3 {
			tells++
		}
	}
	switch {
	case len(t.Weighed()) < 2:
	case !sameGrams(t, a, b):
		tells += 0.5 // other mixes seldom do the same
	default:
		for _, c := range t.Weighed() {
			if y := c.Cells[b]; c.Cells[a].Value == y.Value && y.Value != math.Trunc(y.Value) && only(c, y.Value) {
				tells += 0.6 // weighed anew, parts of a gram seldom agree
			}
		}
	}
	return at, tells
}

// only reports a weight that no third trial has: else it is the planned one, or the balance is coarse.
func only(c *handin.Column, v float64) bool {
	n := 0
	for _, x := range c.Cells {
		if x.Known && x.Value == v {
			n++
		}
	}
	return n <= 2
}

var (
	timeHead  = pattern.Of(`(?i)\b(?:time of|clock|o'clock|at what time|start(?:ed)?(?: at)?)\b`)
	clockTime = pattern.Of(`\b\d{1,2}[:.]\d\d\b`)
)

// figuresOf is what a number tells that two trials share: little where it is round or one figure, nothing where
// most trials have it.
func figuresOf(c *handin.Column, x handin.Cell) float64 {
	n := 0
	for _, o := range c.Cells {
		if o.Known && o.Value == x.Value {
			n++
		}
	}
	if 2*n > c.Known() && n > 2 {
		return 0
	}
	v := math.Abs(x.Value / max(x.Scale, 1e-9))
	figures := strings.TrimLeft(strings.NewReplacer(".", "", ",", "", "-", "").Replace(say.Number(v)), "0")
	switch {
	case len(figures) <= 1:
		return 0.5
	case v == math.Trunc(v) && math.Mod(v, 5) == 0:
		return 0.7
	case len(figures) == 2:
		return 1
	}
	return math.Min(0.7*float64(len(figures)), 2.2)
}
