// Package verdict holds a cell against what it should be: right, rounded, or wrong in a way
// that says how it came about. One cause is one finding, however many cells it explains.
package verdict

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
)

// Accepted is a value that is right, with its range where a constant may vary.
type Accepted struct{ Low, Value, High float64 }

func Exactly(x float64) Accepted { return Accepted{x, x, x} }

// Between is a value that may lie in a range.
func Between(low, value, high float64) Accepted { return Accepted{low, value, high} }

// Way is how a wrong value may have come about.
type Way struct {
	value float64
	words string // "the plain mean of 3.8 and 15"
	Class string // ways of one class in a column are one cause
	Weak  bool   // it explains much by chance: counts where no other way does
}

// By is a way that explains a value by itself.
func By(value float64, words, class string) Way { return Way{value, words, class, false} }

// Weakly is a way that explains much by chance.
func Weakly(value float64, words, class string) Way { return Way{value, words, class, true} }

// Either is a way that may be a weak one.
func Either(value float64, words, class string, weak bool) Way {
	return Way{value, words, class, weak}
}

// Expected is what a cell should hold, and the ways it may be wrong.
type Expected struct {
	Rights []Accepted
	Ways   []Way
	Within float64 // what rounding and the rules forgive
	How    string  // the calculation written out, without its result
	Digits int     // of the result in words
	Guess  bool    // the right value itself rests on a guess
}

// Verdict is what came of a cell.
type Verdict struct {
	Cell    handin.Cell
	trial   int
	right   float64
	Way     *Way
	rounded bool
	coarse  bool // the whole column is rounded so
	near    bool // it is right to the last digit that was typed
	exp     Expected
}

// Sum is a worked-out column with what its cells should hold.
type Sum struct {
	Col    *handin.Column
	Expect func(i int) (Expected, bool)
}

// Bench is a table whose cells are held against what they should be, with what was found.
type Bench struct {
	Table  *handin.Table
	Out    []finding.Found
	Tally  map[criteria.Look]Tally
	Gather *[]Sum // columns are gathered, and not judged
}

// Tally counts the cells of one kind that were worked out again, and the wrong ones.
type Tally struct{ Checked, Wrong int }

// Name is what a trial is called.
func (j *Bench) Name(i int) string {
	if id := j.Table.Trials[i].ID; id != "" {
		return id
	}
	return fmt.Sprint(i + 1)
}

// alike counts the cells of a column with one number.
func alike(col *handin.Column, c handin.Cell) (n int) {
	for _, o := range col.Cells {
		if o.Known && o.Value == c.Value {
			n++
		}
	}
	return n
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

// Judge holds a cell against what is expected; false where it is right.
func Judge(c handin.Cell, e Expected) (v Verdict, wrong bool) {
	if len(e.Rights) == 0 || math.IsNaN(e.Rights[0].Value) {
		return v, false
	}
	v = Verdict{Cell: c, exp: e, right: e.Rights[0].Value}
	best := math.Inf(1)
	for _, a := range e.Rights {
		best = min(best, max(a.Low-c.Value, c.Value-a.High, 0))
	}
	if best <= e.Within+Slack(c.Value) {
		return v, false
	}
	// A way that explains much by chance counts only where nothing better does, mere
	// rounding included.
	rounds := c.Half > 0 && best <= c.Half+Slack(c.Value)
	v.near = rounds
	if v.Way = e.wayTo(c, false); v.Way != nil && !(rounds && best <= math.Abs(v.Way.value-c.Value)) {
		return v, true
	}
	v.Way = nil
	if v.rounded = rounds; !v.rounded {
		v.Way = e.wayTo(c, true)
	}
	return v, true
}

// wayTo is the first way, strong or weak, that gives what a cell holds.
func (e *Expected) wayTo(c handin.Cell, weak bool) *Way {
	near := c.Half
	if near == 0 {
		near = 1e-6 * math.Abs(c.Value)
	}
	for i := range e.Ways {
		w := &e.Ways[i]
		if w.Weak == weak && math.Abs(w.value-c.Value) <= near+Slack(c.Value) && !CloseToRight(w.value, *e) {
			return w
		}
	}
	return nil
}

// Slack is the noise of binary arithmetic.
func Slack(x float64) float64 { return 1e-7 * max(1, math.Abs(x)) }

// CloseToRight reports a way that gives what is right as well, and so explains
// nothing.
func CloseToRight(x float64, e Expected) bool {
	return slices.ContainsFunc(e.Rights, func(a Accepted) bool { return x >= a.Low-e.Within && x <= a.High+e.Within })
}

// Slips are the slips of a finger that any cell can have.
func Slips(right float64) (out []Way) {
	for _, f := range []float64{10, 0.1, 100, 0.01, 1000, 0.001} {
		out = append(out, Weakly(right*f, "the right value with its decimal point moved", "point"))
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

// Column judges the cells of a column, and makes one finding of each cause.
func (j *Bench) Column(col *handin.Column, look criteria.Look, expect func(i int) (Expected, bool)) {
	if j.Gather != nil {
		*j.Gather = append(*j.Gather, Sum{Col: col, Expect: expect})
		return
	}
	var wrong []Verdict
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
		if v, bad := Judge(c, e); bad {
			v.trial = i
			if v.Way != nil && v.Way.Weak && 2*alike(col, c) > col.Known() {
				v.Way = nil // what all others have is not taken from one of them
			}
			finer := finerThan(col, c)
			if v.rounded && 2*finer < col.Known()-1 && look != criteria.HLB && look != criteria.Emulsifier {
				continue // the whole column is typed so
			}
			v.coarse = 2*finer < col.Known()-1
			j.explain(&v, col)
			wrong = append(wrong, v)
		}
	}
	allRounded(wrong)
	n := j.Tally[look]
	j.Tally[look] = Tally{n.Checked + checked, n.Wrong + len(wrong)}
	j.causes(look, wrong, checked)
}

// allRounded takes the wrong cells of a column for rounded where all of them are right to the last digit:
// of a 0 for 0.4 nobody looks for another way.
func allRounded(wrong []Verdict) {
	for _, v := range wrong {
		if !v.near || !v.coarse {
			return
		}
	}
	for i := range wrong {
		if len(wrong) >= 3 {
			wrong[i].Way, wrong[i].rounded = nil, true
		}
	}
}

// explain looks at the formulas of the column, and at the other rows, for how a value
// came about.
func (j *Bench) explain(v *Verdict, col *handin.Column) {
	if v.Way != nil && !v.Way.Weak && v.Cell.Formula == "" && !overwritten(col, v.Cell) {
		return
	}
	if v.Cell.Formula != "" {
		if other, ok := strayFormula(col, v.Cell, j.Table.Across); ok {
			words := "its formula is not that of the other cells: " + other
			if v.Way != nil && !v.Way.Weak {
				words += ", and so it is " + v.Way.words
			}
			v.Way, v.rounded = &Way{v.Cell.Value, words, "formula", false}, false
		}
		return
	}
	if overwritten(col, v.Cell) {
		words := "a number typed over the formula that the other cells have"
		if v.Way != nil {
			words += ": it is " + v.Way.words
		}
		v.Way, v.rounded = &Way{v.Cell.Value, words, "overwritten" + v.Cell.At.String(), false}, false
		return
	}
	if v.Way == nil && !v.rounded && swapped(v.Cell.Text, v.right/v.Cell.Scale, decimalsOf(v.Cell)) {
		v.Way = &Way{v.Cell.Value, "the right value with two figures exchanged", "swapped", false}
	}
}

func decimalsOf(c handin.Cell) int {
	if i := strings.IndexAny(c.Text, ".,"); i >= 0 {
		return len(c.Text) - i - 1
	}
	return 0
}

// causes makes one finding of the cells that one cause explains.
func (j *Bench) causes(look criteria.Look, wrong []Verdict, checked int) {
	done := map[string]int{}
	for _, v := range wrong {
		class := v.Cell.At.String()
		switch {
		case v.rounded:
			class = "rounded"
		case v.Way != nil:
			class = v.Way.Class
		}
		class += "|" + v.Cell.At.Sheet // a finding has one sheet
		if at, again := done[class]; again {
			j.Out[at] = j.Out[at].And(v.Cell.At)
			continue
		}
		done[class] = len(j.Out)
		j.Out = append(j.Out, j.Finding(look, v))
	}
	for class, at := range done {
		f := &j.Out[at]
		// What is left out in every row may be left out on purpose.
		if len(f.Cells) >= 3 && len(f.Cells) == checked && strings.Contains(class, "without") && !strings.Contains(class, "formula") {
			f.Certain = false
			f.Words += ". It is so in every row: is it left out on purpose? Then say so in the header."
		}
		// A column of fives and tens alone may be of what was planned.
		if len(f.Cells) == checked && strings.HasPrefix(class, "rounded to") {
			f.Certain = false
			f.Words += ". It is so in every row: is it what was planned? Then say so in the header."
		}
		// Where no cell of a column is right, and most are not for one reason, the column is of
		// something else, or something in the mix was not understood.
		if f.Certain && checked >= 4 && len(wrong) == checked && 2*len(f.Cells) <= checked && !strings.HasPrefix(class, "overwritten") {
			f.Certain = false
		}
		// Where nobody can say how most of a column came about, the column is of
		// something else than it was taken for.
		if n := len(f.Cells); f.Certain && n == 1 && look != criteria.HLB && checked >= 4 && 2*len(done) > checked {
			f.Certain = false
		}
	}
}

// Finding says what is wrong at a cell, and how it came about.
func (j *Bench) Finding(look criteria.Look, v Verdict) finding.Found {
	typed := finding.Typed(v.Cell).String()
	right := v.right / NonZero(v.Cell.Scale)
	digits := v.exp.Digits
	if v.Cell.Formula == "" { // what a formula shows has no digits of its own
		digits = max(digits, decimalsOf(v.Cell))
	}
	sum := fmt.Sprintf("%s = %s", v.exp.How, DigitsOf(right, digits))
	var words string
	switch {
	case v.rounded:
		words = fmt.Sprintf("%s is rounded too far: %s", typed, sum)
	case v.Way != nil && strings.HasPrefix(v.Way.words, "its formula"):
		words = fmt.Sprintf("%s: %s; %s", typed, v.Way.words, sum)
	case v.Way != nil:
		words = fmt.Sprintf("%s is %s; %s", typed, v.Way.words, sum)
	default:
		words = fmt.Sprintf("%s was typed, and %s. How did you get %s?", typed, sum, typed)
	}
	if v.exp.Guess && !strings.HasSuffix(words, "?") {
		words += ". Which did you mean?"
	}
	f := finding.Of(look, graded.Calculation, words, v.Cell).ShouldBe(right)
	switch {
	case v.exp.Guess:
	case v.rounded:
		f.Certain = !v.coarse
		f.Kind = "rounding"
	case v.Way != nil:
		f.Certain = true
	}
	return f
}

func NonZero(x float64) float64 {
	if x == 0 {
		return 1
	}
	return x
}

// DigitsOf writes a number with at most some decimals.
func DigitsOf(x float64, digits int) string {
	s := fmt.Sprintf("%.*f", digits, x)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// Num writes a number as it may be typed.
func Num(x float64) string { return DigitsOf(x, 3) }

// Rounded reports a value that is right but for its last digits.
func (v Verdict) Rounded() bool { return v.rounded }
