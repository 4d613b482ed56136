package taken

import (
	"fmt"
	"math"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/cellname"
	"foamfield/ingest/criteria"
	"foamfield/ingest/look"
)

// ownMeans finds means, sums and standard deviations that count what sums the others up as one
// more value.
func (b *book) ownMeans() (out []finding.Found) {
	for _, c := range b.cells {
		name, of, args := statisticOf(c.Formula)
		if of == nil {
			continue
		}
		spans := spansOf(args, c.At.Sheet)
		what := ""
		sumsUp := func(on string, row, col int) bool {
			ok := b.sumsUp(spans, on, row, col)
			if ok {
				what = cellname.Of(row, col)
			}
			return ok
		}
		rest := b.valuesOf(spans, sumsUp)
		all := b.valuesOf(spans, func(string, int, int) bool { return false })
		if what == "" || len(rest) < 2 || len(rest) < len(all)-1 {
			continue // of several such it may be the mean of means
		}
		right := of(rest)
		if !c.Known || !differs(c.Value, right) || differs(c.Value, of(all)) {
			continue
		}
		words := fmt.Sprintf("The formula =%s takes %s as one more value, and that cell already sums the others up: without it %s gives %s.", c.Formula, what, name, verdict.DigitsOf(right, 2))
		out = append(out, finding.Of(criteria.Means, graded.Calculation, words, c).ShouldBe(right).Kinds("its own mean taken in").Surely())
	}
	return out
}

// sumsUp reports a cell that is a statistic of other cells of the spans: by its formula, of which
// all values are among them; or by its label, and by its number.
func (b *book) sumsUp(spans []span, on string, row, col int) bool {
	c := b.formulaAt(on, row, col)
	if c != nil {
		_, of, args := statisticOf(c.Formula)
		inner := spansOf(args, on)
		return of != nil && len(inner) > 0 && b.among(inner, spans, *c)
	}
	p := b.pages[on]
	if p == nil {
		return false
	}
	label := p.labelCol(row, col)
	v, known := p.number(row, col)
	rest := b.valuesOf(spans, func(other string, r, c int) bool { return other == on && r == row && c == col })
	if label == 0 || !known || len(rest) < 2 {
		return false
	}
	right := mean(rest)
	switch kind, _ := look.Summary(p.text(row, label)); kind {
	case look.Total:
		right = sum(rest)
	case look.Mean:
	default:
		return false
	}
	return math.Abs(v-right) <= max(0.051, 0.005*math.Abs(right))
}

// among reports that some values all stand in spans, beside the cell that sums them up.
func (b *book) among(inner, spans []span, but handin.Cell) bool {
	all, n := true, 0
	for _, s := range inner {
		s.each(func(row, col int) {
			in := false
			for _, o := range spans {
				in = in || o.on == s.on && o.has(row, col)
			}
			all, n = all && in && (row != but.At.Row || col != but.At.Col), n+1
		})
	}
	return all && n >= 2
}
