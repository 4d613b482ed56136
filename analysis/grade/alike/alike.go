// Package alike finds rows that two students have in common digit by digit. It says
// that they are alike, never who has them from whom; it is for the teacher to look at.
package alike

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/cellname"
	"foamfield/ingest/column"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// enough is how unlikely it has to be, as a power of ten, that any two students of the
// class have so much in common by chance, before rows are shown.
const enough = 1.0

// row is what one trial measured, and what it weighed with decimals.
type row struct {
	work   *handin.Work
	trial  *handin.Trial
	values []value
}

// value is one number of a row, by what it is.
type value struct {
	of       column.Role
	name     string
	x        float64
	text     string
	at       trial.Place
	measured bool
	dose     bool // grams of an emulsifier, which go by plan and make up one sum
}

// Of finds the rows alike. second says of each trial that is the same as another's that
// it is counted once, in a declared pair too.
func Of(works []*handin.Work, declared func(a, b *handin.Work) bool) (out []graded.SameData, second map[*handin.Trial]bool) {
	second = map[*handin.Trial]bool{}
	var rows []row
	often := map[string]int{}
	for _, w := range works {
		for _, x := range w.Trials() {
			r := rowOf(w, x)
			for _, v := range r.values {
				often[v.key()]++
			}
			rows = append(rows, r)
		}
	}
	byResults := map[string]map[*handin.Work]bool{}
	for _, r := range rows {
		key := r.results()
		if byResults[key] == nil {
			byResults[key] = map[*handin.Work]bool{}
		}
		byResults[key][r.work] = true
	}
	all := len(rows)
	// What three students and more have in common is common.
	rows = slices.DeleteFunc(rows, func(r row) bool { return len(byResults[r.results()]) > 2 })
	byWork := map[*handin.Work][]row{}
	for _, r := range rows {
		byWork[r.work] = append(byWork[r.work], r)
	}
	least := enough + math.Log10(max(1, float64(len(works)*(len(works)-1))/2))
	for a := range works {
		for b := a + 1; b < len(works); b++ {
			if s, ok := pair(byWork[works[a]], byWork[works[b]], often, all, least, second); ok {
				s.Students = []string{works[a].Student, works[b].Student}
				if !declared(works[a], works[b]) { // a pair that said so is exempt
					out = append(out, s)
				}
			}
		}
	}
	return out, second
}

func (v value) key() string { return fmt.Sprintf("%d %s %.6g", v.of, v.name, v.x) }

// rowOf gathers the numbers of a trial that nobody hands out: what was measured, and
// grams with decimals.
func rowOf(w *handin.Work, x *handin.Trial) row {
	r := row{work: w, trial: x}
	results, holds, twins := x.Table.Results(), 0, x.Table.Twins()
	for _, col := range x.Table.Columns {
		c := col.Cells[x.Index]
		if len(twins) > 0 && col.Role == column.Hold && col.Mean() {
			continue // it says nothing that the holds do not
		}
		measured := slices.Contains(results, col)
		weighed := col.Role == column.IngredientAmount && col.Field != nil && col.Field.InGrams && c.Value != math.Trunc(c.Value)
		if !c.Known || c.Formula != "" || !measured && !weighed || measured && c.Value == 0 || measured && col.Role == column.SampleMass && c.Value == math.Trunc(c.Value) {
			continue
		}
		name := ""
		switch {
		case weighed:
			name = col.Field.What.Name
		case col.Role == column.Hold && !col.Mean(): // the first hold, the second
			name = strings.Repeat("I", holds)
			holds++
		case col.Role == column.DrainedAmount && col.Field != nil: // grams are none of the percents
			if name = "weighed"; col.Field.Want == units.Percent {
				name = "percent"
			}
		}
		r.values = append(r.values, value{col.Role, name, c.Value, c.Text, c.At, measured, weighed && col.Field.What.WeighedAsEmulsifier()})
	}
	return r
}

// pair holds the rows of two students against each other.
func pair(a, b []row, often map[string]int, all int, least float64, second map[*handin.Trial]bool) (s graded.SameData, ok bool) {
	total, digits := 0.0, 0
	sameDay, otherDay := 0, 0
	used := map[*handin.Trial]bool{}
	type match struct{ x, y row }
	var matches []match
	for _, x := range a {
		for _, y := range b {
			if used[y.trial] {
				continue
			}
			rare, n := rarity(x, y, often, all)
			if n == 0 || rare < 0.8 {
				continue
			}
			used[y.trial] = true
			// Every row of one was held against every row of the other, or against the one
			// of its number.
			tried := float64(len(a) * len(b))
			if id := handin.IDKey(x.trial.ID); id != "" && id == handin.IDKey(y.trial.ID) {
				tried = float64(max(len(a), len(b)))
			}
			total, digits = total+rare-math.Log10(tried)+math.Log10(float64(len(matches)+1)), digits+n
			matches = append(matches, match{x, y})
			if x.trial.Day != "" && x.trial.Day == y.trial.Day {
				sameDay++
			} else if x.trial.Day != "" && y.trial.Day != "" {
				otherDay++
			}
			break
		}
	}
	if total < least || len(matches) == 0 {
		return s, false
	}
	for _, m := range matches {
		second[m.y.trial] = true
		s.Rows = append(s.Rows, placed(m.x, m.y), placed(m.y, m.x))
	}
	s.Digits = digits
	s.Words = fmt.Sprintf("%d rows alike, %d digits that match; %d on the same day, %d on different days.", len(matches), digits, sameDay, otherDay)
	return s, true
}

// rarity is how unlikely two rows are to agree by chance, with how many digits they
// share; 0 where what both measured is not all the same.
func rarity(x, y row, often map[string]int, all int) (rare float64, digits int) {
	measured, held, drained, doses := 0, false, false, 0.0
	for _, v := range x.values {
		o, ok := y.find(v)
		if !ok {
			continue
		}
		if o.x != v.x {
			if v.measured {
				return 0, 0
			}
			continue
		}
		if v.measured {
			measured++
		}
		others := max(often[v.key()]-2, 0)
		tells := min(math.Log10(float64(all+1)/float64(others+1)), usual(v.x))
		switch {
		case v.dose: // 4 g of one is 2 g of the other
			tells, doses = max(tells-doses, 0), max(tells, doses)
		case drained && v.of == column.DrainedAmount: // its percent says what its grams do
			tells = 0
		case held && v.of == column.Hold:
			tells = min(tells, secondHold)
		case held && v.of == column.DrainedAmount:
			tells = min(tells, drainedBeside)
		}
		held, drained = held || v.of == column.Hold, drained || v.of == column.DrainedAmount
		rare += tells
		digits += figures(v.text)
	}
	if measured < 2 {
		return 0, 0
	}
	if otherMix(x.trial, y.trial) {
		rare -= alikeOfOthers // results are seldom copied to another mix
	}
	return rare, digits
}

// alikeOfOthers is what results that are alike lose where the mixes are not.
const alikeOfOthers = 0.7

// otherMix reports two trials that have no weight of some grams in common.
func otherMix(a, b *handin.Trial) bool {
	grams := map[float64]bool{}
	for _, c := range a.Table.Weighed() {
		grams[math.Round(c.Cells[a.Index].Value)] = true
	}
	for _, c := range b.Table.Weighed() {
		if v := math.Round(c.Cells[b.Index].Value); v >= 50 && grams[v] {
			return false
		}
	}
	return len(grams) > 0
}

// What a number can tell beside a hold that is the same: the second hold of a foam is
// within some minutes of the first, and what drains goes with how long it holds.
var secondHold, drainedBeside = math.Log10(4), math.Log10(30)

// usual bounds what one number can tell: whole minutes and percents come in some
// fifteen kinds, tenths in some hundred and fifty.
func usual(x float64) float64 {
	if x == math.Trunc(x) {
		return math.Log10(15)
	}
	return math.Log10(150)
}

// results are what a row measured, as one text.
func (r row) results() string {
	var b strings.Builder
	for _, v := range r.values {
		if v.measured {
			b.WriteString(v.key() + "|")
		}
	}
	return b.String()
}

func (r row) find(v value) (value, bool) {
	for _, o := range r.values {
		if o.of == v.of && o.name == v.name {
			return o, true
		}
	}
	return value{}, false
}

func figures(text string) (n int) {
	for _, r := range strings.TrimLeft(text, "0.,") {
		if r >= '0' && r <= '9' {
			n++
		}
	}
	return n
}

// placed is a row with the cells that agree.
func placed(x, with row) graded.Row {
	r := graded.Row{File: x.trial.At.File, Day: x.trial.Day, Cells: []string{}}
	if x.trial.At.Sheet != "" {
		s := x.trial.At.Sheet
		r.Sheet = &s
	}
	for _, v := range x.values {
		if o, ok := with.find(v); ok && o.x == v.x {
			r.Cells = append(r.Cells, cellname.Of(v.at.Row, v.at.Col))
		}
	}
	return r
}
