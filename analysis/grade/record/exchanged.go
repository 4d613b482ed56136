package record

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
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
	r.exchangedCups(t)
	for i := range t.Trials {
		for _, cols := range [][]*handin.Column{t.Weighed(), worked, measured} {
			if slices.Equal(cols, measured) && slices.ContainsFunc(textsOf(t, t.Trials[i]), handin.Mishap.MatchString) {
				continue // a foam that held shorter and drained more, and the note says why
			}
			for a := range cols {
				for b := range a {
					r.exchangedPair(t, cols[b], cols[a], i)
				}
			}
		}
	}
}

// exchangedCups asks of a cup that weighs more full of foam than full of the mix, where the others weigh
// less by a quarter and more: foam has gas in it.
func (r *reader) exchangedCups(t *handin.Table) {
	liquid, foam := t.Find(column.CupLiquid), t.Find(column.CupFoam)
	if liquid == nil || foam == nil {
		return
	}
	var off []int
	right := 0
	for i, l := range liquid.Cells {
		switch f := foam.Cells[i]; {
		case !r.fresh(l) || !r.fresh(f):
		case l.Value < 0.75*f.Value:
			off = append(off, i)
		case f.Value < 0.75*l.Value:
			right++
		}
	}
	if right < 2 || 2*len(off) > right {
		return
	}
	for _, i := range off {
		r.askExchanged(liquid, foam, i)
	}
}

// exchangedPair asks of two cells of one row.
func (r *reader) exchangedPair(t *handin.Table, x, y *handin.Column, i int) {
	a, b := x.Cells[i], y.Cells[i]
	if !r.fresh(a) || !r.fresh(b) || a.Value == b.Value || !mayChange(x, y) {
		return
	}
	again, with := madeAgain(t, x, y, i)
	if again == turned {
		r.askTurned(t, x, y, i, with)
		return
	}
	if results(x, y) && r.resultsTurned(t, x, y, i) {
		r.askExchanged(x, y, i)
		return
	}
	if turnedTwin(t, x, y, i) {
		r.askExchanged(x, y, i)
		return
	}
	own, other := boundsOf(x, i), boundsOf(y, i)
	if own.n < 2 || other.n < 2 {
		return
	}
	// Two results may overlap and still be told apart in one row; amounts and what is
	// worked out only where their columns lie apart.
	if !own.apart(other) && !(results(x, y) && own.far(a.Value) && other.far(b.Value)) {
		return
	}
	if own.holds(a.Value, 0.1) || other.holds(b.Value, 0.1) || !own.holds(b.Value, 0.12) || !other.holds(a.Value, 0.12) {
		return
	}
	if stepsOn(x, i) || stepsOn(y, i) {
		return
	}
	if weakFoam(t, x, y, i) || x.Role == column.Hold && borneOut(t, x, i) || y.Role == column.Hold && borneOut(t, y, i) {
		return
	}
	if results(x, y) && (bestOfAll(t, x, y, i) || again == asTyped) {
		return
	}
	r.askExchanged(x, y, i)
}

// stepsOn reports a value that stands as far from the next of its column as these from one another, or two or
// three times as far: a step of a series.
func stepsOn(col *handin.Column, i int) bool {
	v := col.Cells[i].Value
	var levels []float64
	for k, c := range col.Cells {
		if k != i && c.Known && !slices.ContainsFunc(levels, func(l float64) bool { return math.Abs(l-c.Value) <= 0.02*max(l, c.Value) }) {
			levels = append(levels, c.Value)
		}
	}
	slices.Sort(levels)
	n := len(levels)
	if n < 2 {
		return false
	}
	step, gap := levels[1]-levels[0], levels[0]-v
	if v > levels[n-1] {
		step, gap = levels[n-1]-levels[n-2], v-levels[n-1]
	}
	steps := math.Round(gap / step)
	return steps >= 1 && steps <= 3 && math.Abs(gap-steps*step) <= 0.12*step
}

var praise = pattern.Of(`(?i)\b(best|longest|great|perfect|wow|super|lovely|stiff|firm|stood (?:well|long)|held (?:well|long)|very stable|hardly any (?:liquid|drain\w*)|almost dry|no liquid)\b`)

// resultsTurned reports a hold and a drained amount that look exchanged by what lies around: the
// mixes with a little less and a little more fat of the same emulsifiers have both the other way
// round, or the note praises a foam that was gone soonest.
func (r *reader) resultsTurned(t *handin.Table, x, y *handin.Column, i int) bool {
	if y.Role == column.Hold {
		x, y = y, x
	}
	a, b := x.Cells[i].Value, y.Cells[i].Value
	if a <= 0 || b <= 0 || times(a, b) < 2 || t.Trials[i].Bare() {
		return false
	}
	turned := func(k int) bool {
		u, v := x.Cells[k].Value, y.Cells[k].Value
		return u > 0 && v > 0 && times(a, v) <= alikeWithin && times(b, u) <= alikeWithin && times(a, u) >= 2 && times(b, v) >= 2
	}
	below, above := nextInFat(t, i)
	if below >= 0 && above >= 0 && turned(below) && turned(above) {
		return true
	}
	low, high, n := othersOf(t, x, i)
	least, most, m := othersOf(t, y, i)
	if n < 3 || m < 3 || a >= low || b <= most || !within(b, low, high, 0.25) || !within(a, least, most, 0.25) {
		return false
	}
	return slices.ContainsFunc(textsOf(t, t.Trials[i]), praise.MatchString)
}

// nextInFat are the trials with the next less and the next more fat among those of the very same
// emulsifiers, -1 without one.
func nextInFat(t *handin.Table, i int) (below, above int) {
	below, above = -1, -1
	fat := func(k int) (g float64) {
		for _, c := range t.Weighed() {
			if c.Field.What.Kind == ingredient.Fat {
				g += c.Cells[k].Value
			}
		}
		return g
	}
	for k := range t.Trials {
		if k == i || fat(k) == fat(i) || slices.ContainsFunc(t.Weighed(), func(c *handin.Column) bool { return emulsifier(c) && c.Cells[k].Value != c.Cells[i].Value }) {
			continue
		}
		switch {
		case fat(k) < fat(i) && (below < 0 || fat(k) > fat(below)):
			below = k
		case fat(k) > fat(i) && (above < 0 || fat(k) < fat(above)):
			above = k
		}
	}
	return below, above
}

// askTurned asks of two results that another making of the formula has the other way round:
// of these alone where a third making bears the other out, or else of both.
func (r *reader) askTurned(t *handin.Table, x, y *handin.Column, i, with int) {
	if again, _ := madeAgain(t, x, y, with); again == asTyped {
		r.askExchanged(x, y, i)
		return
	}
	a, b, u, v := x.Cells[i], y.Cells[i], x.Cells[with], y.Cells[with]
	if !r.fresh(u) || !r.fresh(v) {
		return
	}
	words := fmt.Sprintf("Trials %s and %s weigh the same and look exchanged: %s and %s in one, %s and %s in the other (%s, %s). Which of the two is the right way round?",
		t.Trials[with].ID, t.Trials[i].ID, u.Text, v.Text, a.Text, b.Text, x.Header, y.Header)
	r.add(about(words, a, "exchanged cells").And(b.At, u.At, v.At), a.At, b.At, u.At, v.At)
}

// askExchanged asks of two cells of one row, and notes what was meant.
func (r *reader) askExchanged(x, y *handin.Column, i int) {
	a, b := x.Cells[i], y.Cells[i]
	words := fmt.Sprintf("%s and %s look exchanged: each fits the other's column (%s, %s). Which is which?", a.Text, b.Text, x.Header, y.Header)
	r.add(about(words, a, "exchanged cells").And(b.At), a.At, b.At)
	r.meant[a.At], r.meant[b.At] = b.Value, a.Value
}

// bestOfAll reports the longest hold of a table beside the least that drained, of a mix with
// emulsifier: the best foam has both, and nothing is exchanged.
func bestOfAll(t *handin.Table, x, y *handin.Column, i int) bool {
	if y.Role == column.Hold {
		x, y = y, x
	}
	return !t.Trials[i].Bare() && x.Cells[i].Value >= boundsOf(x, i).high && y.Cells[i].Value <= boundsOf(y, i).low
}

// other is what the other makings of a formula say of two results of one of them.
type other uint8

const (
	nothing other = iota
	asTyped       // they are alike as they stand
	turned        // they are only the other way round
)

// madeAgain holds two results of a trial against those of the trials with the same grams;
// with is the one that says so.
func madeAgain(t *handin.Table, x, y *handin.Column, i int) (says other, with int) {
	if !results(x, y) {
		return nothing, 0
	}
	a, b := x.Cells[i].Value, y.Cells[i].Value
	for k := range t.Trials {
		u, v := x.Cells[k].Value, y.Cells[k].Value
		if k == i || !sameGrams(t, i, k) || min(a, b, u, v) <= 0 {
			continue
		}
		switch {
		case times(a, u) <= alikeWithin && times(b, v) <= alikeWithin:
			return asTyped, k
		case times(a, v) <= alikeWithin && times(b, u) <= alikeWithin && times(a, u) >= farApart && times(b, v) >= farApart:
			says, with = turned, k
		}
	}
	return says, with
}

// turnedTwin reports two amounts that another mix has the other way round, all else alike, where the student
// works out the same fat for both, which is that of the other.
func turnedTwin(t *handin.Table, x, y *handin.Column, i int) bool {
	fat := t.Find(column.FatPercent)
	if fat == nil || results(x, y) || x.Role != column.IngredientAmount || y.Role != column.IngredientAmount || !fat.Cells[i].Known || fat.Cells[i].Formula != "" {
		return false
	}
	near := func(a, b float64) bool { return a > 0 && b > 0 && times(a, b) <= 1.02 }
	for k := range t.Trials {
		a, b, u, v := x.Cells[i].Value, y.Cells[i].Value, x.Cells[k].Value, y.Cells[k].Value
		if k == i || !near(a, v) || !near(b, u) || near(a, b) || math.Abs(fat.Cells[i].Value-fat.Cells[k].Value) > 0.3 {
			continue
		}
		if slices.ContainsFunc(t.Weighed(), func(c *handin.Column) bool {
			return c != x && c != y && math.Abs(c.Cells[i].Value-c.Cells[k].Value) > 0.02*c.Cells[k].Value
		}) {
			continue
		}
		mine, other := shippedFat(t, i), shippedFat(t, k)
		return math.Abs(other-fat.Cells[i].Value) <= 2 && math.Abs(mine-fat.Cells[i].Value) > 4
	}
	return false
}

// shippedFat is the fat percent of a mix by what its ingredients are known for, NaN where one is not.
func shippedFat(t *handin.Table, i int) float64 {
	fat, sum := 0.0, 0.0
	for _, c := range t.Weighed() {
		v := c.Cells[i].Value
		sum += v
		switch what := &c.Field.What; {
		case what.FatPercent != nil:
			fat += v * what.FatPercent.Value
		case what.Kind == ingredient.Fat:
			return math.NaN()
		}
	}
	return fat / sum
}

// sameGrams reports two trials of one formula by what was weighed.
func sameGrams(t *handin.Table, i, k int) bool {
	weighed := t.Weighed()
	return len(weighed) >= 2 && !slices.ContainsFunc(weighed, func(c *handin.Column) bool {
		return c.Cells[i].Known != c.Cells[k].Known || math.Abs(c.Cells[i].Value-c.Cells[k].Value) > 0.01*max(c.Cells[i].Value, c.Cells[k].Value)
	})
}

// weakFoam reports a short hold beside much drained, of a mix without emulsifier or of grams that
// bear the percent out: such foams are, and nothing is exchanged.
func weakFoam(t *handin.Table, x, y *handin.Column, i int) bool {
	if y.Role == column.Hold {
		x, y = y, x
	}
	if !results(x, y) || !(boundsOf(x, i).low > x.Cells[i].Value && boundsOf(y, i).high < y.Cells[i].Value) {
		return false
	}
	return t.Trials[i].Bare() || drainedBornOut(t, y, i)
}

// drainedBornOut reports a percent that is what drained of the foam, in grams of its own.
func drainedBornOut(t *handin.Table, percent *handin.Column, i int) bool {
	sample := t.Find(column.SampleMass)
	return sample != nil && sample.Cells[i].Value > 0 && slices.ContainsFunc(t.All(column.DrainedAmount), func(g *handin.Column) bool {
		return g != percent && g.Cells[i].Known && math.Abs(100*g.Cells[i].Value/sample.Cells[i].Value-percent.Cells[i].Value) < 0.3
	})
}

// mayChange reports two columns whose cells can be told apart at all.
func mayChange(x, y *handin.Column) bool {
	return (x.Role != y.Role || x.Role == column.IngredientAmount) && !(emulsifier(x) && emulsifier(y))
}

// fresh reports a typed number of which nothing was said yet.
func (r *reader) fresh(c handin.Cell) bool { return c.Known && c.Formula == "" && !r.said[c.At] }

// bounds are the lowest and highest of some numbers.
type bounds struct {
	low, high float64
	n         int
}

// boundsOf are the bounds of a column without one of its cells.
func boundsOf(c *handin.Column, i int) bounds {
	low, high, n := others(c, i)
	return bounds{low, high, n}
}

// holds reports a number within the bounds, or nearly.
func (b bounds) holds(v, slack float64) bool { return within(v, b.low, b.high, slack) }

// far reports a number well out of the bounds.
func (b bounds) far(v float64) bool { return v < 0.8*b.low || v > 1.25*b.high }

// apart reports bounds that lie apart, so that each tells its own.
func (b bounds) apart(o bounds) bool { return b.high < 0.8*o.low || o.high < 0.8*b.low }

// emulsifier reports an emulsifier's grams: two of them may well change places by plan,
// and only a blend HLB can tell.
func emulsifier(c *handin.Column) bool {
	return c.Role == column.IngredientAmount && c.Field.What.WeighedAsEmulsifier()
}

// results reports the two columns of results that change places most easily.
func results(x, y *handin.Column) bool {
	return x.Role == column.Hold && y.Role == column.DrainedAmount || x.Role == column.DrainedAmount && y.Role == column.Hold
}

// within reports a number between two, or nearly.
func within(v, low, high, slack float64) bool { return v >= low*(1-slack) && v <= high*(1+slack) }

// exchangedHeads asks of two ingredients whose headers look exchanged: what the
// student worked out agrees with the grams only if they are.
func (r *reader) exchangedHeads(t *handin.Table) {
	percents := t.All(column.FatPercent)
	fat, water := onlyFatAndWater(t)
	if len(percents) == 0 || percents[0].Field == nil || percents[0].Field.InGrams || fat == nil || fat.Field.What.FatPercent == nil {
		return
	}
	if worksItself(percents[0]) {
		return // its formula says which column it takes, and is held against it
	}
	right, turned := 0, []int{}
	for i, c := range percents[0].Cells {
		as, other, ok := fatEitherWay(t, fat, water, i)
		switch {
		case !ok || !c.Known:
		case math.Abs(c.Value-as) < 1.5:
			right++
		case math.Abs(c.Value-other) < 1.5:
			turned = append(turned, i)
		}
	}
	switch n := len(turned); {
	case right >= 2 && n <= right/2:
		r.exchangedGrams(fat, water, percents[0], turned)
	case right == 0 && n >= 3 && 4*n >= 3*percents[0].Known():
		r.headsTurned(t, fat, water, percents[0])
	}
}

// worksItself reports a column that is worked out by formulas.
func worksItself(col *handin.Column) bool {
	n := 0
	for _, c := range col.Cells {
		if c.Formula != "" {
			n++
		}
	}
	return 2*n > len(col.Cells)
}

// onlyFatAndWater are the one column of fat and the one of water of a table, nil where
// there are several.
func onlyFatAndWater(t *handin.Table) (fat, water *handin.Column) { // both or none
	for _, c := range t.Weighed() {
		into := &fat
		switch c.Field.What.Kind {
		case ingredient.Water:
			into = &water
		case ingredient.Fat:
		default:
			continue
		}
		if *into != nil {
			return nil, nil
		}
		*into = c
	}
	if fat == nil || water == nil {
		return nil, nil
	}
	return fat, water
}

// fatEitherWay is a trial's fat percent as its grams stand, and with fat and water
// exchanged; false where the two would hardly differ.
func fatEitherWay(t *handin.Table, fat, water *handin.Column, i int) (as, other float64, ok bool) {
	a, b := fat.Cells[i], water.Cells[i]
	sum := 0.0
	for _, o := range t.Weighed() {
		if o.Cells[i].Known {
			sum += o.Cells[i].Value
		}
	}
	share, beside := fat.Field.What.FatPercent.Value, 0.0
	if p := water.Field.What.FatPercent; p != nil {
		beside = p.Value
	}
	return (share*a.Value + beside*b.Value) / sum, (share*b.Value + beside*a.Value) / sum, a.Known && b.Known && math.Abs(a.Value-b.Value) >= 10
}

// headsTurned asks of two headers that look exchanged over the whole table.
func (r *reader) headsTurned(t *handin.Table, fat, water, percent *handin.Column) {
	f := finding.New(criteria.Record, graded.Record, fmt.Sprintf("The headers “%s” and “%s” look exchanged: your fat percents agree with the grams only if they are. Which column is which?", fat.Header, water.Header),
		fat.Heading, water.Heading).Kinds("exchanged columns").And(percent.Heading)
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

// outOfOrder asks of the grams of two emulsifiers that leave the order of both columns in
// one row, and would keep it in each other's place. No total and no formula shows it.
func (r *reader) outOfOrder(t *handin.Table) {
	var of []*handin.Column
	for _, c := range t.Weighed() {
		if emulsifier(c) {
			of = append(of, c)
		}
	}
	if len(of) != 2 || ordered(of[0], nil, -1) || ordered(of[1], nil, -1) {
		return
	}
	at := -1
	for i := range t.Trials {
		a, b := of[0].Cells[i], of[1].Cells[i]
		if !r.fresh(a) || !r.fresh(b) || a.Value == b.Value || a.Value <= 0 || b.Value <= 0 || !ordered(of[0], of[1], i) || !ordered(of[1], of[0], i) || pairAgain(of, i) {
			continue
		}
		if at >= 0 {
			return // either of two rows would do
		}
		at = i
	}
	if at < 0 {
		return
	}
	a, b := of[0].Cells[at], of[1].Cells[at]
	r.add(about(fmt.Sprintf("%s and %s look exchanged: the other trials go step by step (%s, %s), and this one does only the other way round. Which is which?", a.Text, b.Text, of[0].Header, of[1].Header), a, "exchanged cells").And(b.At), a.At, b.At)
	r.meant[a.At], r.meant[b.At] = b.Value, a.Value
}

// pairAgain reports grams of both emulsifiers that another trial has the same way round, or nearly: the
// mix was made again.
func pairAgain(of []*handin.Column, i int) bool {
	near := func(c *handin.Column, k int) bool {
		a, b := c.Cells[i], c.Cells[k]
		return a.Known && b.Known && math.Abs(a.Value-b.Value) <= 0.02*max(a.Value, b.Value)
	}
	for k := range of[0].Cells {
		if k != i && near(of[0], k) && near(of[1], k) {
			return true
		}
	}
	return false
}

// ordered reports five grams and more that only ever rise, or only ever fall, from trial to
// trial; in one row those of another column may stand instead.
func ordered(col, other *handin.Column, row int) bool {
	up, down, last, n := true, true, math.NaN(), 0
	for i, c := range col.Cells {
		if i == row && other != nil {
			c = other.Cells[i]
		}
		if !c.Known || c.Value == 0 {
			continue
		}
		up, down = up && !(c.Value <= last), down && !(c.Value >= last)
		last, n = c.Value, n+1
	}
	return n >= 5 && (up || down)
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
		within := max(2, 0.02*tc.Value)
		if othersAddUp(t, total, i) {
			within = 1
		}
		if open || math.Abs(sum-tc.Value) <= within || !usualTotal(total, i) {
			continue
		}
		r.mendRow(t, i, sum-tc.Value)
	}
}

// othersAddUp reports that the grams of all other trials, four and more, come to their totals.
func othersAddUp(t *handin.Table, total *handin.Column, but int) bool {
	n := 0
	for i := range t.Trials {
		tc := total.Cells[i]
		if i == but || !tc.Known {
			continue
		}
		sum := 0.0
		for _, c := range t.Weighed() {
			if c.Cells[i].Known {
				sum += c.Cells[i].Value
			}
		}
		if math.Abs(sum-tc.Value) > 0.6 {
			return false
		}
		n++
	}
	return n >= 4
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
		if n < 2 || need <= 0 || !within(need, low, high, 0.3) || !slipOfFinger(x.Value, need) && !(oneFigure(x.Value, need) && othersHave(c, i, need)) && !restAlike(t, c, i, need) {
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

// restAlike reports that two and more other trials have a number in a column, and beside it the very
// fat and water of this one, with as much emulsifier in all.
func restAlike(t *handin.Table, col *handin.Column, i int, v float64) bool {
	n := 0
	for k := range t.Trials {
		same, powders := k != i && col.Cells[k].Known && math.Abs(col.Cells[k].Value-v) < 1e-9, 0.0
		for _, c := range t.Weighed() {
			a, b := c.Cells[i], c.Cells[k]
			switch {
			case c == col:
			case emulsifier(c):
				powders += a.Value - b.Value
			default:
				same = same && a.Known == b.Known && math.Abs(a.Value-b.Value) < 1e-9
			}
		}
		if same && math.Abs(powders) < 1e-9 {
			n++
		}
	}
	return n >= 2 && !emulsifier(col)
}

// oneFigure reports two numbers of as many figures that differ in one of them.
func oneFigure(typed, meant float64) bool {
	a, b := num(typed), num(meant)
	if len(a) != len(b) {
		return false
	}
	differ := 0
	for k := range a {
		if a[k] != b[k] {
			differ++
		}
	}
	return differ == 1
}

// othersHave reports a number that another trial has in a column.
func othersHave(col *handin.Column, i int, v float64) bool {
	for k, o := range col.Cells {
		if k != i && o.Known && math.Abs(o.Value-v) < 1e-9 {
			return true
		}
	}
	return false
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
