package claim

import (
	"foamfield/ingest/pattern"
	"math"
	"slices"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/record"
	"foamfield/ingest/column"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// measure is what foams are compared by.
type measure uint8

// The measures.
const (
	noMeasure measure = iota
	hold
	drained
)

// String is the measure with its unit.
func (m measure) unit() string { return [...]string{"", "min", "%"}[m] }

// judge holds claims against trials.
type judge struct {
	work    *handin.Work
	designs []method.Design
	slips   record.Slips
}

var meanHeader = pattern.Of(`(?i)(mean|average|avg|moyenne|media|mittel|promedio|ø)`)

// seen is a trial's result: bounds of what is known, false where it has none. A foam
// that did not come out has none.
func (j *judge) seen(x *handin.Trial, m measure) (low, high float64, ok bool) {
	if x.CameOut == trial.No {
		return 0, 0, false
	}
	if cells := j.cellsOf(x, m); len(cells) > 0 {
		low, high, ok = j.bounds(cells)
		if m == hold && len(cells) == 1 {
			// By a mean that was worked out wrong a student may conclude, and by the holds.
			if twins := j.twinsOf(x); len(twins) > 1 {
				l, h, _ := j.bounds(twins)
				low, high = min(low, l), max(high, h)
			}
		}
		return low, high, ok
	}
	switch {
	case m == drained && x.Drained != nil && !j.slipped(x, column.DrainedAmount):
		return x.Drained.Low, x.Drained.High, true
	case m == hold && x.Hold != nil && !j.slipped(x, column.Hold):
		return x.Hold.Low, x.Hold.High, true
	}
	return 0, 0, false
}

// cellsOf are the cells of a trial that hold a measure: a mean alone, where there is one.
func (j *judge) cellsOf(x *handin.Trial, m measure) (cells []handin.Cell) {
	for _, col := range x.Table.Columns {
		c := col.Cells[x.Index]
		if j.slips.Not[c.At] || !c.Number() || !holdsMeasure(col, m) {
			continue
		}
		if m == hold && meanHeader.MatchString(col.Header) {
			if j.ofSlips(x) {
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
func (j *judge) twinsOf(x *handin.Trial) (cells []handin.Cell) {
	mean := x.Table.Hold()
	if mean == nil || !mean.Mean() {
		return nil
	}
	sum := 0.0
	cells = j.twinsIn(x)
	for _, c := range cells {
		sum += c.Value
	}
	if c := mean.Cells[x.Index]; c.Known && math.Abs(c.Value-sum/float64(len(cells))) <= max(c.Half, 0.051) {
		return nil
	}
	return cells
}

// twinsIn are the single holds of a trial.
func (j *judge) twinsIn(x *handin.Trial) (cells []handin.Cell) {
	for _, col := range x.Table.Twins() {
		if c := col.Cells[x.Index]; c.Known && !j.slips.Not[c.At] {
			cells = append(cells, c)
		}
	}
	return cells
}

// ofSlips reports a trial of which one hold is a slip, so that the student's mean of them
// is none of what was meant.
func (j *judge) ofSlips(x *handin.Trial) bool {
	return slices.ContainsFunc(x.Table.Twins(), func(c *handin.Column) bool {
		at := c.Cells[x.Index].At
		_, meant := j.slips.Meant[at]
		return meant || j.slips.Not[at]
	})
}

// holdsMeasure reports a column of a measure.
func holdsMeasure(col *handin.Column, m measure) bool {
	if m == hold {
		return col.Role == column.Hold
	}
	return m == drained && col.Role == column.DrainedAmount && (col.Field == nil || col.Field.Want == units.Percent)
}

// slipped reports a trial whose result cannot be.
func (j *judge) slipped(x *handin.Trial, role column.Role) bool {
	for _, col := range x.Table.All(role) {
		if j.slips.Not[col.Cells[x.Index].At] {
			return true
		}
	}
	return false
}

// bounds is the mean of the bounds of some cells.
func (j *judge) bounds(cells []handin.Cell) (low, high float64, ok bool) {
	for _, c := range cells {
		l, h := c.Low, c.High
		if v, meant := j.slips.Meant[c.At]; meant {
			l, h = v, v
		}
		low, high = low+max(l, 0), high+h
	}
	n := float64(len(cells))
	return low / n, high / n, n > 0
}

// margin is how far two results may be apart by chance: what the makings of one
// formula differ by, or a sixth where nothing was made twice.
func (j *judge) margin(d *method.Design, m measure) float64 {
	most, largest, repeated := 0.0, 0.0, false
	for _, g := range d.Groups() {
		low, high := math.Inf(1), math.Inf(-1)
		n := 0
		for _, i := range g {
			if l, h, ok := j.seen(d.Trials[i], m); ok && l == h {
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

// repeats reports whether any formula has a measure twice.
func (j *judge) repeats(d *method.Design, m measure) bool {
	for _, g := range d.Groups() {
		n := 0
		for _, i := range g {
			if _, _, ok := j.seen(d.Trials[i], m); ok {
				n++
			}
		}
		if n >= 2 {
			return true
		}
	}
	return false
}

// design is the design of the table that a trial stands in.
func (j *judge) design(t *handin.Table) *method.Design {
	for i := range j.designs {
		if j.designs[i].Has(t) {
			return &j.designs[i]
		}
	}
	return &j.designs[0]
}

// ofFormula is the mean result of the trials of one formula with a trial.
func (j *judge) ofFormula(x *handin.Trial, m measure) (mean float64, n int) {
	d := j.design(x.Table)
	at := slices.Index(d.Trials, x)
	for i, o := range d.Trials {
		if i != at && !d.Same(i, at) {
			continue
		}
		if l, h, ok := j.seen(o, m); ok && l == h {
			mean, n = mean+l, n+1
		}
	}
	if n == 0 {
		return math.NaN(), 0
	}
	return mean / float64(n), n
}
