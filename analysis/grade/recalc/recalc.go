// Package recalc works out again, from the student's own earlier cells, what a
// student worked out; and where it differs, how the typed value came about. One
// cause is one finding, however many cells it explains.
package recalc

import (
	"fmt"
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Meant are cells that the record shows to be slips, with what was meant.
type Meant map[trial.Place]float64

// Tally counts the cells of one kind that were worked out again, and the wrong ones.
type Tally struct{ Checked, Wrong int }

// Of finds what was worked out wrong in a work, and counts what was looked at.
// not are cells that cannot be: what is worked out from them is not to blame.
func Of(w *handin.Work, rules criteria.Rules, meant Meant, not map[trial.Place]bool) (out []finding.Found, tally map[criteria.Look]Tally) {
	said := saidOf(w)
	tally = map[criteria.Look]Tally{}
	for _, t := range w.Tables {
		j := &job{table: t, rules: rules, said: said, tally: tally, meant: meant, not: not}
		for i := range t.Trials {
			j.mixes = append(j.mixes, mixesOf(t, i, rules, meant))
		}
		j.otherFat(w)
		j.repairs()
		j.totals()
		j.fats()
		j.emulsifiers()
		j.partPercents()
		j.blends()
		j.drained()
		j.overrun()
		j.means()
		j.differences()
		j.others()
		j.averages()
		j.lines(w, meant)
		out = append(out, j.out...)
	}
	return append(out, summaries(w)...), tally
}

// said is what the words beside the trials declare of percents.
type said struct{ ofFat, asWeighed bool }

func saidOf(w *handin.Work) (s said) {
	for _, p := range w.Words {
		s.ofFat = s.ofFat || ofFatWords.MatchString(p.Text)
		text := " " + say.Fold(p.Text) + " "
		for _, of := range []string{"% of fat", "% of the fat", "% of butter", "% of the butter", "percent of fat", "percent of the fat", "percent of the butter", "% of oil", "% of the oil", "percent of the oil"} {
			s.ofFat = s.ofFat || strings.Contains(text, of)
		}
		for _, of := range []string{"counted as fat", "counted as all fat", "as 100 % fat", "as 100% fat", "fat as weighed", "butter as weighed", "taken as pure fat", "as pure fat"} {
			s.asWeighed = s.asWeighed || strings.Contains(text, of)
		}
	}
	return s
}

// ofFatWords declare percents of the fat in other words.
var ofFatWords = pattern.Of(`(?i)((per 100 ?g|based on|relative to|in % of|% of|percent of|referred to)( of)?( the| my)? (fat|butter|oil|ghee|fat phase|fat part|oil phase)\b|% (vom|des) (fett|butter)|% (de la|du) (matière grasse|beurre)|% (de la )?(grasa|mantequilla)|% (del )?(grasso|burro))`)

// job is one table being worked out again.
type job struct {
	table *handin.Table
	rules criteria.Rules
	said  said
	mixes [][]mixture // by trial: as typed, and with what was meant
	out   []finding.Found
	tally map[criteria.Look]Tally
	meant Meant
	not   map[trial.Place]bool

	gather *[]sum // columns are gathered, and not judged
}

// accepted is a value that is right, with its range where a constant may vary.
type accepted struct{ low, value, high float64 }

func exactly(x float64) accepted { return accepted{x, x, x} }

// way is how a wrong value may have come about.
type way struct {
	value float64
	words string // "the plain mean of 3.8 and 15"
	class string // ways of one class in a column are one cause
	weak  bool   // it explains much by chance: counts where no other way does
}

// expected is what a cell should hold, and the ways it may be wrong.
type expected struct {
	rights []accepted
	ways   []way
	within float64 // what rounding and the rules forgive
	how    string  // the calculation written out, without its result
	digits int     // of the result in words
	guess  bool    // the right value itself rests on a guess
}

// verdict is what came of a cell.
type verdict struct {
	cell    handin.Cell
	trial   int
	right   float64
	way     *way
	rounded bool
	coarse  bool // the whole column is rounded so
	exp     expected
}

// finerThan counts the cells of a column that are typed with more digits than one.
func finerThan(col *handin.Column, c handin.Cell) (n int) {
	for _, o := range col.Cells {
		if o.Known && (o.Half < c.Half || o.Formula != "") {
			n++
		}
	}
	return n
}

// judge holds a cell against what is expected; false where it is right.
func judge(c handin.Cell, e expected) (v verdict, wrong bool) {
	if len(e.rights) == 0 || math.IsNaN(e.rights[0].value) {
		return v, false
	}
	v = verdict{cell: c, exp: e, right: e.rights[0].value}
	best := math.Inf(1)
	for _, a := range e.rights {
		best = min(best, max(a.low-c.Value, c.Value-a.high, 0))
	}
	if best <= e.within+slack(c.Value) {
		return v, false
	}
	// A way that explains much by chance counts only where nothing better does, mere
	// rounding included.
	rounds := c.Half > 0 && best <= c.Half+slack(c.Value)
	if v.way = e.wayTo(c, false); v.way != nil && !(rounds && best <= math.Abs(v.way.value-c.Value)) {
		return v, true
	}
	v.way = nil
	if v.rounded = rounds; !v.rounded {
		v.way = e.wayTo(c, true)
	}
	return v, true
}

// wayTo is the first way, strong or weak, that gives what a cell holds.
func (e *expected) wayTo(c handin.Cell, weak bool) *way {
	near := c.Half
	if near == 0 {
		near = 1e-6 * math.Abs(c.Value)
	}
	for i := range e.ways {
		w := &e.ways[i]
		if w.weak == weak && math.Abs(w.value-c.Value) <= near+slack(c.Value) && !closeToRight(w.value, *e) {
			return w
		}
	}
	return nil
}

// slack is the noise of binary arithmetic.
func slack(x float64) float64 { return 1e-7 * max(1, math.Abs(x)) }

// closeToRight reports a way that gives what is right as well, and so explains
// nothing.
func closeToRight(x float64, e expected) bool {
	return slices.ContainsFunc(e.rights, func(a accepted) bool { return x >= a.low-e.within && x <= a.high+e.within })
}

// slips are the slips of a finger that any cell can have.
func slips(right float64) (out []way) {
	for _, f := range []float64{10, 0.1, 100, 0.01, 1000, 0.001} {
		out = append(out, way{right * f, "the right value with its decimal point moved", "point", true})
	}
	return out
}

// swapped reports two figures of a number exchanged: 82.3 and 83.2.
func swapped(typed string, right float64, digits int) bool {
	want := fmt.Sprintf("%.*f", digits, right)
	if len(typed) != len(want) || typed == want {
		return false
	}
	for i := range len(want) - 1 {
		if want[:i] == typed[:i] && want[i] == typed[i+1] && want[i+1] == typed[i] && want[i+2:] == typed[i+2:] && want[i] != '.' && want[i+1] != '.' {
			return true
		}
	}
	return false
}

// column judges the cells of a column, and makes one finding of each cause.
func (j *job) column(col *handin.Column, look criteria.Look, expect func(i int) (expected, bool)) {
	if j.gather != nil {
		*j.gather = append(*j.gather, sum{col, expect})
		return
	}
	var wrong []verdict
	checked := 0
	for i, c := range col.Cells {
		if !c.Known {
			continue
		}
		e, ok := expect(i)
		if !ok {
			continue
		}
		checked++
		if v, bad := judge(c, e); bad {
			v.trial = i
			finer := finerThan(col, c)
			if v.rounded && 2*finer < col.Known()-1 && look != criteria.HLB && look != criteria.Emulsifier {
				continue // the whole column is typed so
			}
			v.coarse = 2*finer < col.Known()-1
			j.explain(&v, col)
			wrong = append(wrong, v)
		}
	}
	n := j.tally[look]
	j.tally[look] = Tally{n.Checked + checked, n.Wrong + len(wrong)}
	j.causes(look, wrong, checked)
}

// explain looks at the formulas of the column, and at the other rows, for how a value
// came about.
func (j *job) explain(v *verdict, col *handin.Column) {
	if v.way != nil && !v.way.weak && v.cell.Formula == "" && !overwritten(col, v.cell) {
		return
	}
	if v.cell.Formula != "" {
		if other, ok := strayFormula(col, v.cell, j.table.Across); ok {
			words := "its formula is not that of the other cells: " + other
			if v.way != nil && !v.way.weak {
				words += ", and so it is " + v.way.words
			}
			v.way, v.rounded = &way{v.cell.Value, words, "formula", false}, false
		}
		return
	}
	if overwritten(col, v.cell) {
		words := "a number typed over the formula that the other cells have"
		if v.way != nil {
			words += ": it is " + v.way.words
		}
		v.way, v.rounded = &way{v.cell.Value, words, "overwritten" + v.cell.At.String(), false}, false
		return
	}
	if v.way == nil && !v.rounded && swapped(v.cell.Text, v.right/v.cell.Scale, decimalsOf(v.cell)) {
		v.way = &way{v.cell.Value, "the right value with two figures exchanged", "swapped", false}
	}
}

func decimalsOf(c handin.Cell) int {
	if i := strings.IndexAny(c.Text, ".,"); i >= 0 {
		return len(c.Text) - i - 1
	}
	return 0
}

// causes makes one finding of the cells that one cause explains.
func (j *job) causes(look criteria.Look, wrong []verdict, checked int) {
	done := map[string]int{}
	for _, v := range wrong {
		class := v.cell.At.String()
		switch {
		case v.rounded:
			class = "rounded"
		case v.way != nil:
			class = v.way.class
		}
		class += "|" + v.cell.At.Sheet // a finding has one sheet
		if at, again := done[class]; again {
			j.out[at] = j.out[at].And(v.cell.At)
			continue
		}
		done[class] = len(j.out)
		j.out = append(j.out, j.finding(look, v))
	}
	for class, at := range done {
		f := &j.out[at]
		// What is left out in every row may be left out on purpose.
		if len(f.Cells) >= 3 && len(f.Cells) == checked && strings.Contains(class, "without") && !strings.Contains(class, "formula") {
			f.Certain = false
			f.Words += ". It is so in every row: is it left out on purpose? Then say so in the header."
		}
		// Where nobody can say how most of a column came about, the column is of
		// something else than it was taken for.
		if n := len(f.Cells); f.Certain && n == 1 && look != criteria.HLB && checked >= 4 && 2*len(done) > checked {
			f.Certain = false
		}
	}
}

// finding says what is wrong at a cell, and how it came about.
func (j *job) finding(look criteria.Look, v verdict) finding.Found {
	typed := finding.Typed(v.cell).String()
	right := v.right / nonZero(v.cell.Scale)
	sum := fmt.Sprintf("%s = %s", v.exp.how, digitsOf(right, max(v.exp.digits, decimalsOf(v.cell))))
	var words string
	switch {
	case v.rounded:
		words = fmt.Sprintf("%s is rounded too far: %s", typed, sum)
	case v.way != nil && strings.HasPrefix(v.way.words, "its formula"):
		words = fmt.Sprintf("%s: %s; %s", typed, v.way.words, sum)
	case v.way != nil:
		words = fmt.Sprintf("%s is %s; %s", typed, v.way.words, sum)
	default:
		words = fmt.Sprintf("%s was typed, and %s. How did you get %s?", typed, sum, typed)
	}
	f := finding.Of(look, graded.Calculation, words, v.cell).ShouldBe(right)
	switch {
	case v.exp.guess:
	case v.rounded:
		f.Certain = !v.coarse
		f.Kind = "rounding"
	case v.way != nil:
		f.Certain = true
	}
	return f
}

func nonZero(x float64) float64 {
	if x == 0 {
		return 1
	}
	return x
}

// digitsOf writes a number with at most some decimals.
func digitsOf(x float64, digits int) string {
	s := fmt.Sprintf("%.*f", digits, x)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// num writes a number as it may be typed.
func num(x float64) string { return digitsOf(x, 3) }
