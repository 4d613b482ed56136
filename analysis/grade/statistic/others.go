package statistic

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/cellname"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
)

// A column that no rule knows may still be worked out from others: then most of its
// cells agree with one simple sum, and the few that do not are worth a question.

// relation is one simple sum of two columns.
type relation struct {
	of    func(a, b float64) float64
	write string // "%s / %s × 100"
}

var relations = []relation{
	{func(a, b float64) float64 { return 100 * a / b }, "%s / %s × 100"},
	{func(a, b float64) float64 { return a * b }, "%s × %s"},
	{func(a, b float64) float64 { return a - b }, "%s − %s"},
	{func(a, b float64) float64 { return a + b }, "%s + %s"},
	{func(a, b float64) float64 { return a / b }, "%s / %s"},
	{func(a, b float64) float64 { return (a + b) / 2 }, "the mean of %s and %s"},
}

// others holds the columns that no rule knows against what most of their cells are.
func (j *results) others() {
	for _, col := range j.Table.Columns {
		if !j.mayFollow(col) {
			continue
		}
		if r, a, b, ok := j.relationOf(col); ok {
			j.Column(col, criteria.Means, func(i int) (verdict.Expected, bool) { return j.related(col, r, a, b, i) })
		} else if of, k, ok := j.multipleOf(col); ok {
			j.Column(col, criteria.Means, func(i int) (verdict.Expected, bool) { return j.multiple(col, of, k, i) })
		}
	}
}

// mayFollow reports a column of unknown meaning whose numbers may be worked out from
// others.
func (j *results) mayFollow(col *handin.Column) bool {
	if col.Known() < 4 || !unknownRole(col) || !telling(col) || diffWord.MatchString(col.Header) {
		return false
	}
	return !meanWord.MatchString(col.Header) || len(j.sourcesOf(col)) == 0
}

// related is a simple sum of two cells of one row.
func (j *results) related(col *handin.Column, r relation, a, b *handin.Column, i int) (e verdict.Expected, ok bool) {
	x, y := a.Cells[i], b.Cells[i]
	if !x.Known || !y.Known {
		return e, false
	}
	right := r.of(x.Value, y.Value)
	e = verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(right)}, Within: max(halfOf(col), 1e-6), Digits: 2, Guess: true,
		How: "as in the other rows " + fmt.Sprintf(r.write, verdict.Num(x.Value), verdict.Num(y.Value)), Ways: verdict.Slips(right)}
	for k := range a.Cells {
		if k != i && a.Cells[k].Known && b.Cells[k].Known {
			e.Ways = append(e.Ways, verdict.Weakly(r.of(a.Cells[k].Value, b.Cells[k].Value), "what trial "+j.Name(k)+" has", "row of "+j.Name(k)),
				verdict.Weakly(r.of(x.Value, b.Cells[k].Value), "reckoned with a value of trial "+j.Name(k), "half row of "+j.Name(k)))
		}
	}
	return e, !math.IsNaN(right) && !math.IsInf(right, 0)
}

// multiple is a fixed multiple of a cell of the row: grams times an HLB, minutes in
// hours.
func (j *results) multiple(col, of *handin.Column, k float64, i int) (e verdict.Expected, ok bool) {
	x := of.Cells[i]
	if !x.Known {
		return e, false
	}
	e = verdict.Expected{Rights: []verdict.Accepted{verdict.Exactly(k * x.Value)}, Within: max(halfOf(col), 1e-6), Digits: 2, Guess: true,
		How: fmt.Sprintf("as in the other rows %s × %s", verdict.Num(x.Value), verdict.Num(k)), Ways: verdict.Slips(k * x.Value)}
	for n, o := range of.Cells {
		if n != i && o.Known {
			e.Ways = append(e.Ways, verdict.Weakly(k*o.Value, "what trial "+j.Name(n)+" has", "row of "+j.Name(n)))
		}
	}
	return e, true
}

// multipleOf finds the column of which all cells but one or two are one multiple.
func (j *results) multipleOf(col *handin.Column) (of *handin.Column, k float64, ok bool) {
	most := 0
	for _, x := range j.Table.Columns {
		if !canBeSource(x, col) {
			continue
		}
		for i, c := range col.Cells {
			if !c.Known || !x.Cells[i].Known || x.Cells[i].Value == 0 || c.Value == 0 {
				continue
			}
			ratio := c.Value / x.Cells[i].Value
			n, levels := agree(col, x, x, relation{of: func(a, _ float64) float64 { return ratio * a }}, 0.01)
			if levels >= 3 && n > most { // 180 g of cream in every row is 100 g of anything, nearly
				most, of, k = n, x, ratio
			}
		}
	}
	return of, k, nearlyAll(most, col)
}

// canBeSource reports a column that another may be worked out from.
func canBeSource(x, col *handin.Column) bool {
	return x != col && x.Known() >= 4 && x.Role != column.TrialID && !follows(x, col)
}

// follows reports a column whose formulas reckon with another: that other is none of its sums.
func follows(x, col *handin.Column) bool {
	return slices.ContainsFunc(x.Cells, func(c handin.Cell) bool {
		return c.Formula != "" && slices.ContainsFunc(reference.FindAllString(strings.ReplaceAll(strings.ToUpper(c.Formula), "$", ""), -1), func(ref string) bool {
			return slices.ContainsFunc(col.Cells, func(o handin.Cell) bool { return ref == cellname.Of(o.At.Row, o.At.Col) })
		})
	})
}

var reference = pattern.Of(`\b[A-Z]{1,3}\d{1,7}\b`)

// nearlyAll reports as many cells as make the others odd.
func nearlyAll(n int, col *handin.Column) bool {
	return n >= 3 && n >= col.Known()-2 && 4*n >= 3*col.Known()
}

// telling reports a column most of whose numbers have three figures and more: a score
// from 1 to 5 agrees with much by chance.
func telling(col *handin.Column) bool {
	n := 0
	for _, c := range col.Cells {
		if c.Known && (c.Formula != "" || math.Abs(c.Value) >= 100*c.Half*2) {
			n++
		}
	}
	return 2*n > col.Known()
}

// unknownRole reports a column whose role says nothing of how it came about.
func unknownRole(col *handin.Column) bool {
	switch col.Role {
	case column.None, column.Unused, column.Measure, column.Declared:
		return true
	}
	return false
}

// relationOf finds the sum that all cells but one or two of a column agree with, and
// which varies.
func (j *results) relationOf(col *handin.Column) (r relation, a, b *handin.Column, ok bool) {
	most := 0
	for _, x := range j.Table.Columns {
		for _, y := range j.Table.Columns {
			if x == y || !canBeSource(x, col) || !canBeSource(y, col) {
				continue
			}
			for _, rel := range relations {
				if n, levels := agree(col, x, y, rel, 0); n > most && levels >= 2 {
					most, r, a, b = n, rel, x, y
				}
			}
		}
	}
	return r, a, b, nearlyAll(most, col)
}

// agree counts the cells that are a sum of two others, within a share of their value,
// and how many numbers these are worked out from that are further apart than what agrees:
// what hardly varies is a multiple of anything that hardly varies.
func agree(col, x, y *handin.Column, r relation, within float64) (n, levels int) {
	var seen []float64
	for i, c := range col.Cells {
		if !c.Known || !x.Cells[i].Known || !y.Cells[i].Known || c.Value == 0 {
			continue
		}
		v := r.of(x.Cells[i].Value, y.Cells[i].Value)
		near := max(c.Half, 1e-6) + verdict.Slack(v) + within*math.Abs(c.Value)
		if math.Abs(v-c.Value) > near {
			continue
		}
		n++
		if !slices.ContainsFunc(seen, func(s float64) bool { return math.Abs(s-v) <= near }) {
			seen = append(seen, v)
		}
	}
	return n, len(seen)
}
