// Package evidence is what a student's trials show: results as they may have been, and what
// makings of one formula differ by.
package evidence

import (
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/record"
	"foamfield/ingest/column"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Measure is what foams are compared by.
type Measure uint8

// The measures.
const (
	NoMeasure Measure = iota
	Hold
	Drained
	Overrun
)

// Trials are the trials of a work, with its designs and slips.
type Trials struct {
	Work    *handin.Work
	Designs []method.Design
	Slips   record.Slips
}

// Unit is what a measure is in: what drained, in percent, or as most of the work has it.
func (j *Trials) Unit(m Measure) string {
	if m != Drained {
		return [...]string{"", "min", "%", "%"}[m]
	}
	for _, t := range j.Work.Tables {
		if j.percents(t) {
			return "%"
		}
		for _, c := range t.All(column.DrainedAmount) {
			if unit := volume.FindString(c.Whole + " " + c.UnitBelow); unit != "" {
				return strings.ToLower(unit)
			}
		}
	}
	return "%"
}

var volume = pattern.Of(`(?i)\b(ml|g|oz)\b`)

// percents reports drainage in percent in a table.
func (j *Trials) percents(t *handin.Table) bool {
	return slices.ContainsFunc(t.Columns, func(c *handin.Column) bool { return holdsMeasure(c, Drained) && c.Known() > 0 })
}

var meanHeader = pattern.Of(`(?i)(mean|average|avg|moyenne|media|mittel|promedio|ø)`)

// Seen is a trial's result: bounds of what is known, false where it has none. A foam
// that did not come out has none.
func (j *Trials) Seen(x *handin.Trial, m Measure) (low, high float64, ok bool) {
	if x.CameOut == trial.No {
		return 0, 0, false
	}
	if cells := j.cellsOf(x, m); len(cells) > 0 {
		low, high, ok = j.Bounds(cells)
		if m == Hold && len(cells) == 1 {
			// By a mean that was worked out wrong a student may conclude, and by the holds.
			if twins := j.twinsOf(x); len(twins) > 1 {
				l, h, _ := j.Bounds(twins)
				low, high = min(low, l), max(high, h)
			}
		}
		return low, high, ok
	}
	if drains := x.Table.All(column.DrainedAmount); m == Drained && len(drains) == 1 && !j.percents(x.Table) && j.Unit(m) != "%" { // as logged, in its own unit
		if c := drains[0].Cells[x.Index]; c.Known && !j.Slips.Not[c.At] {
			if low, high, ok = j.Bounds([]handin.Cell{c}); c.Scale != 0 && c.Scale != 1 {
				if _, meant := j.Slips.Meant[c.At]; !meant {
					low, high = low/c.Scale, high/c.Scale
				}
			}
			return low, high, ok
		}
	}
	switch {
	case m == Drained && x.Drained != nil && !j.slipped(x, column.DrainedAmount):
		return x.Drained.Low, x.Drained.High, true
	case m == Hold && x.Hold != nil && !j.slipped(x, column.Hold):
		return x.Hold.Low, x.Hold.High, true
	}
	return 0, 0, false
}

// cellsOf are the cells of a trial that hold a measure: a mean alone, where there is one.
func (j *Trials) cellsOf(x *handin.Trial, m Measure) (cells []handin.Cell) {
	for _, col := range x.Table.Columns {
		c := col.Cells[x.Index]
		if j.Slips.Not[c.At] || !c.Number() || !holdsMeasure(col, m) {
			continue
		}
		if m == Hold && meanHeader.MatchString(col.Header) {
			if j.OfSlips(x) {
				continue
			}
			return []handin.Cell{c}
		}
		cells = append(cells, c)
	}
	return cells
}

// twinsOf are the single holds of a trial, where it has its mean beside them and it is not
// theirs.
func (j *Trials) twinsOf(x *handin.Trial) (cells []handin.Cell) {
	mean := x.Table.Hold()
	if mean == nil || !mean.Mean() {
		return nil
	}
	sum := 0.0
	cells = j.TwinsIn(x)
	for _, c := range cells {
		sum += c.Value
	}
	if c := mean.Cells[x.Index]; c.Known && math.Abs(c.Value-sum/float64(len(cells))) <= max(c.Half, 0.051) {
		return nil
	}
	return cells
}

// TwinsIn are the single holds of a trial.
func (j *Trials) TwinsIn(x *handin.Trial) (cells []handin.Cell) {
	for _, col := range x.Table.Twins() {
		if c := col.Cells[x.Index]; c.Known && !j.Slips.Not[c.At] {
			cells = append(cells, c)
		}
	}
	return cells
}

// OfSlips reports a trial of which one hold is a slip, so that the student's mean of them
// is none of what was meant.
func (j *Trials) OfSlips(x *handin.Trial) bool {
	return slices.ContainsFunc(x.Table.Twins(), func(c *handin.Column) bool {
		at := c.Cells[x.Index].At
		_, meant := j.Slips.Meant[at]
		return meant || j.Slips.Not[at]
	})
}

// holdsMeasure reports a column of a measure.
func holdsMeasure(col *handin.Column, m Measure) bool {
	switch m {
	case Hold:
		return col.Role == column.Hold
	case Overrun:
		return col.Role == column.Overrun
	}
	return m == Drained && col.Role == column.DrainedAmount && (col.Field == nil || col.Field.Want == units.Percent)
}

// slipped reports a trial whose result cannot be.
func (j *Trials) slipped(x *handin.Trial, role column.Role) bool {
	for _, col := range x.Table.All(role) {
		if j.Slips.Not[col.Cells[x.Index].At] {
			return true
		}
	}
	return false
}

// Bounds is the mean of the bounds of some cells.
func (j *Trials) Bounds(cells []handin.Cell) (low, high float64, ok bool) {
	for _, c := range cells {
		l, h := c.Low, c.High
		if v, meant := j.Slips.Meant[c.At]; meant {
			l, h = v, v
		}
		low, high = low+max(l, 0), high+h
	}
	n := float64(len(cells))
	return low / n, high / n, n > 0
}

// Margin is how far two results may be apart by chance: what the makings of one
// formula differ by, or a sixth where nothing was made twice.
func (j *Trials) Margin(d *method.Design, m Measure) float64 {
	most, largest, repeated := 0.0, 0.0, false
	for _, g := range d.Groups() {
		low, high := math.Inf(1), math.Inf(-1)
		n := 0
		for _, i := range g {
			if l, h, ok := j.Seen(d.Trials[i], m); ok && l == h && !handin.Mishap.MatchString(d.Trials[i].Note) { // a leak is no scatter
				low, high, n = min(low, l), max(high, h), n+1
				largest = max(largest, h)
			}
		}
		if n >= 2 {
			most, repeated = max(most, high-low), true
		}
	}
	if !repeated {
		return largest / 6
	}
	return max(most, 0.02*largest)
}

// Repeats reports whether any formula has a measure twice.
func (j *Trials) Repeats(d *method.Design, m Measure) bool {
	for _, g := range d.Groups() {
		n := 0
		for _, i := range g {
			if _, _, ok := j.Seen(d.Trials[i], m); ok {
				n++
			}
		}
		if n >= 2 {
			return true
		}
	}
	return false
}

// Design is the design of the table that a trial stands in.
func (j *Trials) Design(t *handin.Table) *method.Design {
	for i := range j.Designs {
		if j.Designs[i].Has(t) {
			return &j.Designs[i]
		}
	}
	return &j.Designs[0]
}

// OfFormula is the mean result of the trials of one formula with a trial.
func (j *Trials) OfFormula(x *handin.Trial, m Measure) (mean float64, n int) {
	d := j.Design(x.Table)
	at := slices.Index(d.Trials, x)
	for i, o := range d.Trials {
		if i != at && !d.Same(i, at) {
			continue
		}
		if l, h, ok := j.Seen(o, m); ok && l == h {
			mean, n = mean+l, n+1
		}
	}
	if n == 0 {
		return math.NaN(), 0
	}
	return mean / float64(n), n
}

// BoundsOfFormula are the means of the bounds of all trials of one formula with a trial; n counts those
// with a result.
func (j *Trials) BoundsOfFormula(x *handin.Trial, m Measure) (low, high float64, n int) {
	d := j.Design(x.Table)
	at := slices.Index(d.Trials, x)
	for i, o := range d.Trials {
		if i != at && !d.Same(i, at) {
			continue
		}
		if l, h, ok := j.Seen(o, m); ok {
			low, high, n = low+l, high+h, n+1
		}
	}
	return low / float64(n), high / float64(n), n
}
