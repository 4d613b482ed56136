package taken

import (
	"fmt"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/cellname"
	"foamfield/ingest/say"
)

// slid looks at grams times a constant that has moved away from its list row by row: the same
// formula further up takes the ingredient's own, and this one what stands as many rows below it,
// which may be nothing at all.
func (b *book) slid(c handin.Cell, col *handin.Column, constant span) (words, class string, wrong bool) {
	p := b.pages[constant.on]
	if label, top := p.listed(constant.row, constant.col); constant.fixed || label > 0 && top < constant.row && names(col, p.text(constant.row, label)) {
		return "", "", false // another pack of the same
	}
	same := verdict.Relative(c.Formula, c)
	for up := 1; up < constant.row; up++ {
		above := b.formulaAt(c.At.Sheet, c.At.Row-up, c.At.Col)
		if above == nil || verdict.Relative(above.Formula, *above) != same {
			continue
		}
		row := constant.row - up
		label, top := p.listed(row, constant.col)
		right, known := p.number(row, constant.col)
		if label == 0 || !known || !names(col, p.text(row, label)) {
			continue
		}
		if taken, _ := p.number(constant.row, constant.col); !differs(taken, right) {
			return "", "", false
		}
		words = fmt.Sprintf("The formula =%s takes %s for %s, and the same formula in %s takes %s, the %s of %s: without $ before its row number a reference moves down with the formula.",
			c.Formula, cellname.Of(constant.row, constant.col), say.Quoted(col.Field.Called()), cellname.Of(above.At.Row, above.At.Col), cellname.Of(row, constant.col), p.text(top, constant.col), say.Quoted(p.text(row, label)))
		class = fmt.Sprint("slid|", c.At.Sheet, "|", c.At.Col)
		if fatHead.MatchString(p.text(top, constant.col)) {
			class = ofFat + class
		}
		return words, class, true
	}
	return "", "", false
}
