package recalc

import (
	"fmt"
	"math"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/units"
)

// drained holds drained percents against the grams that drained and the foam they
// drained from.
func (j *job) drained() {
	sample, constant := j.table.Find(column.SampleMass), j.sampleSaid()
	if sample == nil && constant == 0 {
		return
	}
	for _, role := range []column.Role{column.DrainedAmount, column.OilAmount} {
		grams, percents := j.inUnit(role, units.Mass), j.inUnit(role, units.Percent)
		for k, col := range percents {
			if len(grams) == 0 {
				break
			}
			g := grams[min(k, len(grams)-1)]
			j.column(col, criteria.Drained, func(i int) (expected, bool) {
				of := constant
				if sample != nil && sample.Cells[i].Known {
					of = sample.Cells[i].Value
				}
				if j.not[g.Cells[i].At] {
					return expected{}, false
				}
				e, ok := j.drainedOf(i, g.Cells[i], of)
				e.ways = append(e.ways, j.otherSamples(sample, g.Cells[i], of)...)
				return e, ok
			})
		}
	}
}

// inUnit are the columns of a role in one kind of unit.
func (j *job) inUnit(role column.Role, want units.Dimension) (out []*handin.Column) {
	for _, c := range j.table.All(role) {
		if c.Field != nil && c.Field.Want == want {
			out = append(out, c)
		}
	}
	return out
}

// otherSamples are the percents of the foams of other trials.
func (j *job) otherSamples(sample *handin.Column, g handin.Cell, of float64) (out []way) {
	if sample == nil {
		return nil
	}
	for k, o := range sample.Cells {
		if o.Known && o.Value > 0 && o.Value != of {
			out = append(out, way{100 * g.Value / o.Value, fmt.Sprintf("of the %s g of trial %s, not of %s g", num(o.Value), j.name(k), num(of)), "other sample", false})
		}
	}
	return out
}

// sampleSaid is the foam that every trial put to drain, as a line beside the table
// says; 0 = none does.
func (j *job) sampleSaid() float64 {
	for _, c := range j.table.Columns {
		if c.Field != nil && c.Role == column.DrainedAmount {
			return c.SampleGrams()
		}
	}
	return 0
}

func (j *job) drainedOf(i int, g handin.Cell, of float64) (e expected, ok bool) {
	if !g.Known || of <= 0 {
		return e, false
	}
	right := 100 * g.Value / of
	e = expected{rights: []accepted{exactly(right)}, within: max(0.06, 100*g.Half/of), digits: 1, how: fmt.Sprintf("%s / %s × 100", num(g.Value), num(of))}
	e.ways = append(e.ways, way{g.Value, "the grams, not the percent", "grams", false})
	for _, d := range j.mixes[i][0].denominators() {
		e.ways = append(e.ways, way{100 * g.Value / d, "of the whole mix, not of the foam put to drain", "of the mix", false})
	}
	if w := j.mixes[i][0].of(isWater); w > 0 {
		e.ways = append(e.ways, way{100 * g.Value / w, "of the water part, not of the foam put to drain", "of the water", false})
	}
	e.ways = append(e.ways, way{100 - right, "what stayed in the foam, not what drained", "stayed", false},
		way{100 * g.Value / (of - g.Value), "of what stayed in the foam, not of all of it", "of what stayed", false})
	if g.Value > 0 {
		e.ways = append(e.ways, way{of / g.Value, "the two the wrong way round", "inverted", false}, way{100 * of / g.Value, "the two the wrong way round", "inverted", false})
	}
	e.ways = append(e.ways, slips(right)...)
	return e, true
}

// overrun holds the overrun against the two cups: 100 (liquid − foam) / foam, of
// equal volumes.
func (j *job) overrun() {
	col, liquid, foam := j.table.Find(column.Overrun), j.table.Find(column.CupLiquid), j.table.Find(column.CupFoam)
	if col == nil || liquid == nil || foam == nil || liquid.Field == nil || liquid.Field.Want != units.Mass {
		return
	}
	j.column(col, criteria.Means, func(i int) (e expected, ok bool) {
		l, f := liquid.Cells[i], foam.Cells[i]
		if !l.Known || !f.Known || f.Value <= 0 || l.Value <= 0 {
			return e, false
		}
		right := 100 * (l.Value - f.Value) / f.Value
		e = expected{rights: []accepted{exactly(right)}, within: max(0.6, math.Abs(right)*(l.Half/l.Value+f.Half/f.Value)), digits: 0,
			how: fmt.Sprintf("(%s − %s) / %s × 100", num(l.Value), num(f.Value), num(f.Value))}
		e.ways = []way{{100 * (l.Value - f.Value) / l.Value, "over the liquid, not over the foam", "over the liquid", false},
			{100 * (f.Value - l.Value) / l.Value, "as by volumes: foam less liquid over liquid", "by volume", false},
			{100 * l.Value / f.Value, "the liquid over the foam, without taking the foam off", "ratio", false},
			{100 * f.Value / l.Value, "the foam over the liquid", "ratio the other way", false}}
		return e, true
	})
}
