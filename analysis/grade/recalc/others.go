package recalc

import (
	"fmt"
	"math"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
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
func (j *job) others() {
	for _, col := range j.table.Columns {
		if col.Known() < 4 || !unknownRole(col) || !telling(col) || meanWord.MatchString(col.Header) && len(j.sourcesOf(col)) > 0 || diffWord.MatchString(col.Header) {
			continue
		}
		if r, a, b, ok := j.relationOf(col); ok {
			j.column(col, criteria.Means, func(i int) (e expected, ok bool) {
				x, y := a.Cells[i], b.Cells[i]
				if !x.Known || !y.Known {
					return e, false
				}
				e = expected{rights: []accepted{exactly(r.of(x.Value, y.Value))}, within: max(halfOf(col), 1e-6), digits: 2, guess: true,
					how: "as in the other rows " + fmt.Sprintf(r.write, num(x.Value), num(y.Value))}
				if math.IsNaN(e.rights[0].value) || math.IsInf(e.rights[0].value, 0) {
					return e, false
				}
				for k := range a.Cells {
					if k != i && a.Cells[k].Known && b.Cells[k].Known {
						e.ways = append(e.ways, way{r.of(a.Cells[k].Value, b.Cells[k].Value), "what trial " + j.name(k) + " has", "row of " + j.name(k), true},
							way{r.of(x.Value, b.Cells[k].Value), "reckoned with a value of trial " + j.name(k), "half row of " + j.name(k), true})
					}
				}
				e.ways = append(e.ways, slips(e.rights[0].value)...)
				return e, true
			})
		}
	}
}

// ratios holds the columns that are most often a fixed multiple of another: grams times
// an HLB, minutes in hours.
func (j *job) ratios() {
	for _, col := range j.table.Columns {
		if col.Known() < 4 || !unknownRole(col) || !telling(col) {
			continue
		}
		if _, _, _, ok := j.relationOf(col); ok {
			continue
		}
		of, k, ok := j.multipleOf(col)
		if !ok {
			continue
		}
		j.column(col, criteria.Means, func(i int) (e expected, ok bool) {
			x := of.Cells[i]
			if !x.Known {
				return e, false
			}
			e = expected{rights: []accepted{exactly(k * x.Value)}, within: max(halfOf(col), 1e-6), digits: 2, guess: true, how: fmt.Sprintf("as in the other rows %s × %s", num(x.Value), num(k))}
			for n, o := range of.Cells {
				if n != i && o.Known {
					e.ways = append(e.ways, way{k * o.Value, "what trial " + j.name(n) + " has", "row of " + j.name(n), true})
				}
			}
			e.ways = append(e.ways, slips(e.rights[0].value)...)
			return e, true
		})
	}
}

// multipleOf finds the column of which all cells but one or two are one multiple.
func (j *job) multipleOf(col *handin.Column) (of *handin.Column, k float64, ok bool) {
	most := 0
	for _, x := range j.table.Columns {
		if x == col || x.Known() < 4 || x.Role == column.TrialID {
			continue
		}
		for i, c := range col.Cells {
			if !c.Known || !x.Cells[i].Known || x.Cells[i].Value == 0 || c.Value == 0 {
				continue
			}
			ratio := c.Value / x.Cells[i].Value
			n, first, differ := 0, math.NaN(), false
			for m, o := range col.Cells {
				if o.Known && x.Cells[m].Known && o.Value != 0 && math.Abs(ratio*x.Cells[m].Value-o.Value) <= o.Half+slack(o.Value)+0.01*math.Abs(o.Value) {
					n++
					differ = differ || !math.IsNaN(first) && o.Value != first
					if math.IsNaN(first) {
						first = o.Value
					}
				}
			}
			if differ && n > most {
				most, of, k = n, x, ratio
			}
		}
	}
	return of, k, most >= 3 && most >= col.Known()-2 && 4*most >= 3*col.Known()
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
func (j *job) relationOf(col *handin.Column) (r relation, a, b *handin.Column, ok bool) {
	most, varied := 0, false
	for _, x := range j.table.Columns {
		for _, y := range j.table.Columns {
			if x == y || x == col || y == col || x.Known() < 4 || y.Known() < 4 || x.Role == column.TrialID || y.Role == column.TrialID {
				continue
			}
			for _, rel := range relations {
				n, differ := agree(col, x, y, rel)
				if n > most && differ {
					most, r, a, b, varied = n, rel, x, y, differ
				}
			}
		}
	}
	return r, a, b, varied && most >= 3 && most >= col.Known()-2 && 4*most >= 3*col.Known()
}

// agree counts the cells that are a sum of two others, and reports whether they
// differ among each other.
func agree(col, x, y *handin.Column, r relation) (n int, differ bool) {
	first := math.NaN()
	for i, c := range col.Cells {
		if !c.Known || !x.Cells[i].Known || !y.Cells[i].Known || c.Value == 0 {
			continue
		}
		if v := r.of(x.Cells[i].Value, y.Cells[i].Value); math.Abs(v-c.Value) <= max(c.Half, 1e-6)+slack(v) {
			n++
			differ = differ || !math.IsNaN(first) && c.Value != first
			if math.IsNaN(first) {
				first = c.Value
			}
		}
	}
	return n, differ
}
