package record

import (
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/units"
)

// A trial that was held twice tells a slip that its column cannot: the two holds of a
// mix are alike, and one of them only fits in another unit, or in the place of what
// drained.
const (
	alikeWithin = 1.5 // as many times one hold is the other in most rows
	farApart    = 2.2 // as many times in a row that is asked of
)

// twins asks of holds that are far from the other hold of their trial, where the two are
// alike in the other trials.
func (r *reader) twins(t *handin.Table) {
	holds := t.Twins()
	if len(holds) == 0 || !pairsAlike(t, holds) {
		return
	}
	for i := range t.Trials {
		for _, h := range holds {
			c := h.Cells[i]
			other := otherHold(holds, h, i)
			if !r.fresh(c) || c.Value <= 0 || other.Value <= 0 || times(c.Value, other.Value) < farApart {
				continue
			}
			own := boundsOf(h, i) // the other one may be to be asked of
			usual := own.n >= 2 && own.holds(c.Value, 0.3) && !own.holds(other.Value, 0.3)
			if !usual && r.unitOfTwin(c, other) || r.twinForDrained(t, h, i, other) {
				r.withMean(t, i)
				break
			}
		}
	}
}

// withMean adds the mean of a trial's holds to what was just asked of one of them: it is
// rightly worked out of what was typed.
func (r *reader) withMean(t *handin.Table, i int) {
	for _, m := range t.All(column.Hold) {
		if c := m.Cells[i]; isMeanOfTwins(t, m, i) && !r.said[c.At] {
			k := len(r.out) - 1
			r.out[k] = r.out[k].And(c.At)
			r.said[c.At] = true
		}
	}
}

// meanOfSlip adds the mean of holds, of which one was asked of, to that question; false
// for any other cell.
func (r *reader) meanOfSlip(t *handin.Table, col *handin.Column, i int) bool {
	if !isMeanOfTwins(t, col, i) {
		return false
	}
	for _, h := range t.Twins() {
		at := h.Cells[i].At
		if k := slices.IndexFunc(r.out, func(f finding.Found) bool { return f.At == at }); r.said[at] && k >= 0 {
			r.out[k] = r.out[k].And(col.Cells[i].At)
			r.said[col.Cells[i].At] = true
			return true
		}
	}
	return false
}

// isMeanOfTwins reports a cell that is the mean of the holds of its trial.
func isMeanOfTwins(t *handin.Table, col *handin.Column, i int) bool {
	sum, n := 0.0, 0.0
	for _, h := range t.Twins() {
		if c := h.Cells[i]; c.Known {
			sum, n = sum+c.Value, n+1
		}
	}
	c := col.Cells[i]
	return n >= 2 && col.Mean() && c.Known && math.Abs(c.Value-sum/n) <= max(c.Half, 0.051)
}

// times is how many times the larger of two numbers is the smaller.
func times(a, b float64) float64 { return max(a/b, b/a) }

// pairsAlike reports that the holds of one trial are alike in most trials.
func pairsAlike(t *handin.Table, holds []*handin.Column) bool {
	near, all := 0, 0
	for i := range t.Trials {
		low, high := math.Inf(1), 0.0
		n := 0
		for _, h := range holds {
			if c := h.Cells[i]; c.Known && c.Value > 0 {
				low, high, n = min(low, c.Value), max(high, c.Value), n+1
			}
		}
		if n < 2 {
			continue
		}
		all++
		if high <= alikeWithin*low || high-low <= 2 {
			near++
		}
	}
	return near >= 3 && 3*near >= 2*all
}

// otherHold is the hold of a trial in another column than one.
func otherHold(holds []*handin.Column, but *handin.Column, i int) handin.Cell {
	for _, o := range holds {
		if c := o.Cells[i]; o != but && c.Known {
			return c
		}
	}
	return handin.Cell{}
}

// unitOfTwin asks of a hold that is as long as its trial's other one in another unit.
func (r *reader) unitOfTwin(c, other handin.Cell) bool {
	for _, u := range timeUnits {
		if v := c.Value * u.factor; times(v, other.Value) <= alikeWithin && times(c.Value, other.Value) > 10 {
			words := fmt.Sprintf("%s is far from the other hold of this trial (%s). Was it %s: %s?", c.Text, other.Text, u.words, num(v/c.Scale))
			r.add(about(words, c, "unit slip").ShouldBe(v/c.Scale), c.At)
			r.meant[c.At] = v
			return true
		}
	}
	return false
}

// twinForDrained asks of a hold and a drained percent that are exchanged: what stands as
// drained is as long as the other hold, and the hold is a percent as others drained.
func (r *reader) twinForDrained(t *handin.Table, h *handin.Column, i int, other handin.Cell) bool {
	c := h.Cells[i]
	for _, d := range t.All(column.DrainedAmount) {
		p := d.Cells[i]
		if !r.fresh(p) || p.Value <= 0 || d.Field == nil || d.Field.Want != units.Percent || times(p.Value, other.Value) > alikeWithin {
			continue
		}
		if percents := boundsOf(d, i); percents.n < 3 || c.Value < 0.88*percents.low || c.Value > 100 {
			continue // a control may well drain more than all others
		}
		words := fmt.Sprintf("%s and %s look exchanged: the other hold of this trial is %s (%s, %s). Which is which?", c.Text, p.Text, other.Text, h.Header, d.Header)
		r.add(about(words, c, "exchanged cells").And(p.At), c.At, p.At)
		r.meant[c.At], r.meant[p.At] = p.Value, c.Value
		return true
	}
	return false
}

// borneOut reports a hold that agrees with another hold of its trial, and so is no other
// column's.
func borneOut(t *handin.Table, hold *handin.Column, i int) bool {
	for _, o := range t.All(column.Hold) {
		if c := o.Cells[i]; o != hold && c.Known && c.Value > 0 && times(c.Value, hold.Cells[i].Value) <= alikeWithin {
			return true
		}
	}
	return false
}
