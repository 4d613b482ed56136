package record

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
)

// exchangedCells asks of two cells of a row that each fit the other's column, and not
// their own.
func (r *reader) exchangedCells(t *handin.Table) {
	var worked, measured []*handin.Column
	for _, role := range []column.Role{column.FatPercent, column.EmulsifierAmount, column.BlendHLB} {
		worked = append(worked, t.All(role)...)
	}
	for _, role := range []column.Role{column.Hold, column.DrainedAmount} {
		measured = append(measured, t.All(role)...)
	}
	for i := range t.Trials {
		for _, cols := range [][]*handin.Column{t.Weighed(), worked, measured} {
			for a := range cols {
				for b := range a {
					r.exchangedPair(cols[b], cols[a], i)
				}
			}
		}
	}
}

func (r *reader) exchangedPair(x, y *handin.Column, i int) {
	a, b := x.Cells[i], y.Cells[i]
	if !a.Known || !b.Known || r.said[a.At] || r.said[b.At] || a.Value == b.Value || a.Formula != "" || b.Formula != "" {
		return
	}
	lowA, highA, n := others(x, i)
	lowB, highB, m := others(y, i)
	if n < 2 || m < 2 || x.Role == y.Role && x.Role != column.IngredientAmount || emulsifier(x) && emulsifier(y) {
		return
	}
	// Two results may overlap and still be told apart in one row; amounts and what is
	// worked out only where their columns lie apart.
	if !apart(lowA, highA, lowB, highB) && !(results(x, y) && strays(a.Value, lowA, highA, b.Value, lowB, highB)) {
		return
	}
	if within(a.Value, lowA, highA, 0.1) || within(b.Value, lowB, highB, 0.1) || !within(b.Value, lowA, highA, 0.12) || !within(a.Value, lowB, highB, 0.12) {
		return
	}
	words := fmt.Sprintf("%s and %s look exchanged: each fits the other's column (%s, %s). Which is which?", a.Text, b.Text, x.Header, y.Header)
	f := about(words, a, "exchanged cells").And(b.At)
	r.add(f, a.At, b.At)
	r.meant[a.At], r.meant[b.At] = b.Value, a.Value
}

// emulsifier reports an emulsifier's grams: two of them may well change places by plan,
// and only a blend HLB can tell.
func emulsifier(c *handin.Column) bool {
	return c.Role == column.IngredientAmount && c.Field.What.WeighedAsEmulsifier()
}

// results reports the two columns of results that change places most easily.
func results(x, y *handin.Column) bool {
	return x.Role == column.Hold && y.Role == column.DrainedAmount || x.Role == column.DrainedAmount && y.Role == column.Hold
}

// apart reports two columns whose values lie apart, so that each tells its own.
func apart(lowA, highA, lowB, highB float64) bool { return highA < 0.8*lowB || highB < 0.8*lowA }

// strays reports two values that both lie well out of their own columns.
func strays(a, lowA, highA, b, lowB, highB float64) bool {
	return (a < 0.8*lowA || a > 1.25*highA) && (b < 0.8*lowB || b > 1.25*highB)
}

func within(v, low, high, slack float64) bool { return v >= low*(1-slack) && v <= high*(1+slack) }

// exchangedHeads asks of two ingredients whose headers look exchanged: what the
// student worked out agrees with the grams only if they are.
func (r *reader) exchangedHeads(t *handin.Table) {
	fats := t.All(column.FatPercent)
	if len(fats) == 0 || fats[0].Field == nil || fats[0].Field.InGrams {
		return
	}
	var fat, water *handin.Column
	for _, c := range t.Weighed() {
		switch {
		case c.Field.What.Kind == ingredient.Fat && fat == nil:
			fat = c
		case c.Field.What.Kind == ingredient.Water && water == nil:
			water = c
		case c.Field.What.Kind == ingredient.Fat || c.Field.What.Kind == ingredient.Water:
			return
		}
	}
	if fat == nil || water == nil || fat.Field.What.FatPercent == nil {
		return
	}
	share := fat.Field.What.FatPercent.Value / 100
	var rows []int // whose fat percent agrees only if the two are exchanged
	as, exchanged, n := 0, 0, 0
	for i, c := range fats[0].Cells {
		a, b := fat.Cells[i], water.Cells[i]
		if !c.Known || !a.Known || !b.Known || math.Abs(a.Value-b.Value) < 10 {
			continue
		}
		sum := 0.0
		for _, o := range t.Weighed() {
			if o.Cells[i].Known {
				sum += o.Cells[i].Value
			}
		}
		n++
		if math.Abs(c.Value-100*share*a.Value/sum) < 1.5 {
			as++
		}
		if math.Abs(c.Value-100*share*b.Value/sum) < 1.5 {
			exchanged++
			rows = append(rows, i)
		}
	}
	if as >= 2 && exchanged <= as/2 {
		r.exchangedGrams(fat, water, fats[0], rows)
		return
	}
	if n < 3 || as > 0 || 4*exchanged < 3*n {
		return
	}
	f := finding.New(criteria.Record, graded.Record, fmt.Sprintf("The headers “%s” and “%s” look exchanged: your fat percents agree with the grams only if they are. Which column is which?", fat.Header, water.Header),
		fat.Heading, water.Heading).Kinds("exchanged columns").And(fats[0].Heading)
	for i := range t.Trials {
		a, b := fat.Cells[i], water.Cells[i]
		if a.Known && b.Known {
			r.meant[a.At], r.meant[b.At] = b.Value, a.Value
			f = f.And(a.At, b.At)
			r.said[a.At], r.said[b.At] = true, true
		}
	}
	r.add(f, fat.Heading, water.Heading)
}

// exchangedGrams asks of single rows in which the grams of fat and water look exchanged.
func (r *reader) exchangedGrams(fat, water, percent *handin.Column, rows []int) {
	for _, i := range rows {
		a, b := fat.Cells[i], water.Cells[i]
		if r.said[a.At] || r.said[b.At] || a.Formula != "" || b.Formula != "" || percent.Cells[i].Formula != "" {
			continue
		}
		words := fmt.Sprintf("%s and %s look exchanged: your fat percent of %s agrees with the grams only if they are. Which is which?", a.Text, b.Text, percent.Cells[i].Text)
		r.add(about(words, a, "exchanged cells").And(b.At, percent.Cells[i].At), a.At, b.At)
		r.meant[a.At], r.meant[b.At] = b.Value, a.Value
	}
}

// mend asks of the one cell of grams that would make a sum its total again, if a slip
// of the finger explains it.
func (r *reader) mend(t *handin.Table) {
	total := t.Find(column.BatchMass)
	if total == nil {
		return
	}
	for i := range t.Trials {
		tc := total.Cells[i]
		if !tc.Known || tc.Formula != "" {
			continue
		}
		sum, open := 0.0, false
		for _, c := range t.Weighed() {
			if v, ok := r.meant[c.Cells[i].At]; ok {
				sum += v
			} else if c.Cells[i].Known {
				sum += c.Cells[i].Value
			} else if !c.Cells[i].Blank() {
				open = true
			}
		}
		if open || math.Abs(sum-tc.Value) <= max(2, 0.02*tc.Value) || !usualTotal(total, i) {
			continue
		}
		r.mendRow(t, i, sum-tc.Value)
	}
}

// usualTotal reports that another trial has the very total.
func usualTotal(total *handin.Column, i int) bool {
	low, high, n := others(total, i)
	return n >= 2 && within(total.Cells[i].Value, low, high, 0.005)
}

func (r *reader) mendRow(t *handin.Table, i int, off float64) {
	var suspect *handin.Column
	needed := 0.0
	for _, c := range t.Weighed() {
		x := c.Cells[i]
		if !x.Known || x.Formula != "" || r.said[x.At] || x.Value <= 0 {
			continue
		}
		need := x.Value - off
		low, high, n := others(c, i)
		if n < 2 || need <= 0 || !within(need, low, high, 0.3) || !slipOfFinger(x.Value, need) {
			continue
		}
		if suspect != nil {
			return
		}
		suspect, needed = c, need
	}
	if suspect == nil {
		return
	}
	c := suspect.Cells[i]
	r.add(about(fmt.Sprintf("The grams add up to the total only if this is %s, not %s. Did a finger slip?", num(needed), c.Text), c, "slip of the finger").ShouldBe(needed), c.At)
	r.meant[c.At] = needed
}

// slipOfFinger reports two figures exchanged, a figure wrong, or the point moved.
func slipOfFinger(typed, meant float64) bool {
	for _, f := range []float64{10, 0.1, 100, 0.01, 1000, 0.001} {
		if math.Abs(typed*f-meant) <= 0.02*meant {
			return true
		}
	}
	a, b := fmt.Sprintf("%.1f", typed), fmt.Sprintf("%.1f", meant)
	if len(a) != len(b) {
		return false
	}
	differ := 0
	for k := range a {
		if a[k] != b[k] {
			differ++
		}
	}
	return differ == 2 && sameFigures(a, b)
}

func sameFigures(a, b string) bool {
	for _, d := range "0123456789" {
		if strings.Count(a, string(d)) != strings.Count(b, string(d)) {
			return false
		}
	}
	return true
}
