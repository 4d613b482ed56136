package recalc

import (
	"fmt"
	"foamfield/analysis/grade/mixture"
	"foamfield/analysis/grade/verdict"
	"math"
	"slices"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

// drained holds drained percents against the grams that drained and the foam they
// drained from.
func (j *job) drained() {
	sample, constant := j.Table.Find(column.SampleMass), j.sampleSaid()
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
			j.Column(col, criteria.Drained, func(i int) (verdict.Expected, bool) {
				of := constant
				if sample != nil && sample.Cells[i].Known {
					of = sample.Cells[i].Value
				}
				if j.not[g.Cells[i].At] {
					return verdict.Expected{}, false
				}
				e, ok := j.drainedOf(i, g.Cells[i], of)
				e.Ways = append(e.Ways, j.otherSamples(sample, g.Cells[i], of)...)
				return e, ok
			})
		}
	}
}

// inUnit are the columns of a role in one kind of unit.
func (j *job) inUnit(role column.Role, want units.Dimension) (out []*handin.Column) {
	for _, c := range j.Table.All(role) {
		if c.Field != nil && c.Field.Want == want {
			out = append(out, c)
		}
	}
	return out
}

// otherSamples are the percents of the foams of other trials.
func (j *job) otherSamples(sample *handin.Column, g handin.Cell, of float64) (out []verdict.Way) {
	if sample == nil {
		return nil
	}
	for k, o := range sample.Cells {
		if o.Known && o.Value > 0 && o.Value != of {
			out = append(out, verdict.By(100*g.Value/o.Value, fmt.Sprintf("of the %s g of trial %s, not of %s g", verdict.Num(o.Value), j.Name(k), verdict.Num(of)), "other sample"))
		}
	}
	return out
}

// sampleSaid is the foam that every trial put to drain, as a line beside the table
// says; 0 = none does.
func (j *job) sampleSaid() float64 {
	for _, c := range j.Table.Columns {
		if c.Field != nil && c.Role == column.DrainedAmount {
			return c.SampleGrams
		}
	}
	return 0
}

func (j *job) drainedOf(i int, g handin.Cell, of float64) (e verdict.Expected, ok bool) {
	if !g.Known || of <= 0 {
		return e, false
	}
	right := 100 * g.Value / of
	e = verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(right)}, Within: max(0.06, 100*g.Half/of), Digits: 1, How: fmt.Sprintf("%s / %s × 100", verdict.Num(g.Value), verdict.Num(of))}
	e.Ways = append(e.Ways, verdict.By(g.Value, "the grams, not the percent", "grams"))
	for _, d := range j.mixes[i][0].Denominators() {
		e.Ways = append(e.Ways, verdict.By(100*g.Value/d, "of the whole mix, not of the foam put to drain", "of the mix"))
	}
	if w := j.mixes[i][0].Of(mixture.IsWater); w > 0 {
		e.Ways = append(e.Ways, verdict.By(100*g.Value/w, "of the water part, not of the foam put to drain", "of the water"))
	}
	e.Ways = append(e.Ways, verdict.By(100-right, "what stayed in the foam, not what drained", "stayed"),
		verdict.By(100*g.Value/(of-g.Value), "of what stayed in the foam, not of all of it", "of what stayed"))
	if g.Value > 0 {
		e.Ways = append(e.Ways, verdict.By(of/g.Value, "the two the wrong way round", "inverted"), verdict.By(100*of/g.Value, "the two the wrong way round", "inverted"))
	}
	e.Ways = append(e.Ways, verdict.Slips(right)...)
	return e, true
}

// overrun holds the overrun against the two cups: 100 (liquid − foam) / foam, of
// equal volumes.
func (j *job) overrun() {
	col, liquid, foam := j.Table.Find(column.Overrun), j.Table.Find(column.CupLiquid), j.Table.Find(column.CupFoam)
	if col != nil && liquid == nil && foam != nil {
		liquid = fullCup(col, foam)
	}
	if col == nil || liquid == nil || foam == nil || liquid.Field == nil || liquid.Field.Want != units.Mass {
		return
	}
	from, empty := len(j.Out), j.emptyCups(col, liquid, foam)
	j.Column(col, criteria.Means, func(i int) (e verdict.Expected, ok bool) {
		l, f := liquid.Cells[i], foam.Cells[i]
		if !l.Known || !f.Known || f.Value <= 0 || l.Value <= 0 {
			return e, false
		}
		if cup := empty[i]; cup > 0 && f.Value > cup {
			return withCup(l, f, cup), true
		}
		asTyped := verdict.Exactly(100 * (l.Value - f.Value) / f.Value) // of cups that look exchanged it is right
		if v, ok := j.meant[l.At]; ok {
			l.Value = v
		}
		if v, ok := j.meant[f.At]; ok {
			f.Value = v
		}
		right := 100 * (l.Value - f.Value) / f.Value
		e = verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(right), asTyped}, Within: max(0.6, math.Abs(right)*(l.Half/l.Value+f.Half/f.Value)), Digits: 0,
			How: fmt.Sprintf("(%s − %s) / %s × 100", verdict.Num(l.Value), verdict.Num(f.Value), verdict.Num(f.Value))}
		e.Ways = []verdict.Way{verdict.By(100*(l.Value-f.Value)/l.Value, "over the liquid, not over the foam", "over the liquid"),
			verdict.By(100*(f.Value-l.Value)/l.Value, "as by volumes: foam less liquid over liquid", "by volume"),
			verdict.By(100*l.Value/f.Value, "the liquid over the foam, without taking the foam off", "ratio"),
			verdict.By(100*f.Value/l.Value, "the foam over the liquid", "ratio the other way")}
		return e, true
	})
	for k := from; k < len(j.Out) && j.said.overMix; k++ {
		j.Out[k].Certain = false // by a definition of the student's own it is right
	}
}

// fullCup is the one weight of the mix that filled the cup in all trials and has no column: the one that most
// of the overruns are right with, or, where all are over the mix, with that; nil if none is.
func fullCup(col, foam *handin.Column) *handin.Column {
	for _, of := range []func(f, overrun float64) float64{
		func(f, overrun float64) float64 { return f * (1 + overrun/100) },
		func(f, overrun float64) float64 { return f / (1 - overrun/100) },
	} {
		var all []float64
		for i, c := range col.Cells {
			if f := foam.Cells[i]; c.Known && f.Known && f.Value > 0 && c.Value > 0 {
				all = append(all, of(f.Value, c.Value))
			}
		}
		slices.Sort(all)
		if len(all) < 4 {
			return nil
		}
		mass, hits := all[len(all)/2], 0
		for _, v := range all {
			if math.Abs(v-mass) <= 0.01*mass {
				hits++
			}
		}
		if mass <= 0 || 3*hits < 2*len(all) {
			continue
		}
		mass = math.Round(mass)
		out := &handin.Column{Role: column.CupLiquid, Header: "cup of mix", Field: &scheme.Field{Want: units.Mass, Bare: units.Gram}}
		for range col.Cells {
			out.Cells = append(out.Cells, handin.Cell{Value: mass, Known: true, Half: 0.5})
		}
		return out
	}
	return nil
}

// withCup is an overrun of two weights that both are with their cup.
func withCup(l, f handin.Cell, cup float64) verdict.Expected {
	right := 100 * (l.Value - f.Value) / (f.Value - cup)
	e := verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(right)}, Within: max(0.6, math.Abs(right)*(l.Half+f.Half)/(f.Value-cup)), Digits: 0,
		How: fmt.Sprintf("(%s − %s) / (%s − %s) × 100", verdict.Num(l.Value), verdict.Num(f.Value), verdict.Num(f.Value), verdict.Num(math.Round(10*cup)/10))}
	e.Ways = []verdict.Way{verdict.By(100*(l.Value-f.Value)/f.Value, "without taking off the empty cup", "with the cup"),
		verdict.By(100*(l.Value-f.Value)/(l.Value-cup), "over the liquid, not over the foam", "over the liquid"),
		verdict.By(100*(l.Value-cup)/(f.Value-cup), "the liquid over the foam, without taking the foam off", "ratio")}
	return e
}

// emptyCups are what the empty cups weigh that a student takes off in an overrun, by trial: of a column of its
// own, or the one weight that most of the overruns are right with; 0 where nothing is taken off.
func (j *job) emptyCups(col, liquid, foam *handin.Column) []float64 {
	out := make([]float64, len(col.Cells))
	solved := make([]float64, len(col.Cells))
	var all []float64
	net, n := 0, 0
	for i, c := range col.Cells {
		l, f := liquid.Cells[i], foam.Cells[i]
		if !c.Known || !l.Known || !f.Known || c.Value <= 0 || l.Value <= f.Value {
			continue
		}
		n++
		if math.Abs(c.Value-100*(l.Value-f.Value)/f.Value) <= 1.5 {
			net++
		}
		if cup := f.Value - 100*(l.Value-f.Value)/c.Value; cup > 1 {
			solved[i], all = cup, append(all, cup)
		}
	}
	if n < 3 || 2*net > n || 2*len(all) <= n {
		return out
	}
	for _, c := range j.Table.Columns {
		if !emptyHead.MatchString(c.Header) {
			continue
		}
		hits := 0
		for i, x := range c.Cells {
			if x.Known && solved[i] > 0 && math.Abs(x.Value-solved[i]) <= 0.5 {
				hits++
			}
		}
		if 2*hits > n {
			for i, x := range c.Cells {
				out[i] = x.Value
			}
			return out
		}
	}
	slices.Sort(all)
	cup, hits := all[len(all)/2], 0
	for _, v := range all {
		if math.Abs(v-cup) <= 0.5 {
			hits++
		}
	}
	if 2*hits > n {
		for i := range out {
			out[i] = cup
		}
	}
	return out
}

// emptyHead is a column of what the cup weighs by itself.
var emptyHead = pattern.Of(`(?i)\b(?:empty|tare|alone|leer|vide|vac[ií]o|vuot[oa]|leeg|tara|lege?)\b`)

// overMix are words that define an overrun as what stands over the mix.
var overMix = pattern.Of(`(?i)\boverrun\b[^.;=]*=[^.;]*/\s*(?:the |of |cup |glass |weight |mass |g |100 ml |\()*(?:mix|mixture|liquid|unwhipped|mezcla|mélange|mischung|mengsel)\b`)
