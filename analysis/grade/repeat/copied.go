package repeat

import (
	"fmt"
	"math"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
)

// A mix that is weighed anew and judged anew comes near the first, and is hardly ever like it in
// every figure: such a row may have been copied.

// unlikely is how much has to agree: by a point for each weight to a part of a gram and each result, two for a
// result of three figures and more.
const unlikely = 5

// copied asks of rows that repeat another to the last figure.
func copied(t *handin.Table) (out []finding.Found) {
	for i, x := range t.Trials {
		for k := range i {
			cells, alike := sameFigures(t, k, i)
			if alike < unlikely {
				continue
			}
			words := fmt.Sprintf("Trials %s and %s are alike in every weight and every result, to the last figure. Was %s weighed and made anew, or is it a copy of the row?", t.Trials[k].ID, x.ID, x.ID)
			f := finding.Of(criteria.Repeats, graded.Record, words, cells[0]).Kinds("copied row")
			for _, c := range cells[1:] {
				f = f.And(c.At)
			}
			out = append(out, f.And(t.Columns[0].Cells[i].At))
			break
		}
	}
	return out
}

// sameFigures are the cells of trial i that are those of trial k, and how unlikely that is; none where
// any of what was weighed or seen differs, or fewer than two results are known.
func sameFigures(t *handin.Table, k, i int) (cells []handin.Cell, points int) {
	weighed, results := 0, 0
	add := func(c *handin.Column, result bool) bool {
		a, b := c.Cells[k], c.Cells[i]
		if a.Formula != "" && b.Formula != "" {
			return true // worked out from the others
		}
		if a.Blank() && b.Blank() {
			return true
		}
		if !a.Known || !b.Known {
			return a.Known == b.Known && a.Text == b.Text // "clogged", twice
		}
		if a.Value != b.Value {
			return false
		}
		if b.Value == 0 {
			return true
		}
		cells = append(cells, b)
		switch figures := b.Half > 0 && math.Abs(b.Value) >= 199*b.Half; {
		case result && figures:
			results, points = results+1, points+2
		case result:
			results, points = results+1, points+1
		default:
			weighed++
			if part := math.Abs(b.Value - math.Round(b.Value)); part > 1e-9 && !common(c, b.Value) {
				points++
			}
		}
		return true
	}
	for _, c := range t.Weighed() {
		if !add(c, false) {
			return nil, 0
		}
	}
	for _, c := range t.Results() {
		if !add(c, true) {
			return nil, 0
		}
	}
	if weighed < 2 || results < 2 {
		return nil, 0
	}
	return cells, points
}

// common reports a weight that a third trial has too: it is the planned one, or the balance is coarse.
func common(c *handin.Column, v float64) bool {
	n := 0
	for _, x := range c.Cells {
		if x.Known && x.Value == v {
			n++
		}
	}
	return n > 2
}
