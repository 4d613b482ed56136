package taken

import (
	"fmt"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/cellname"
	"foamfield/ingest/criteria"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var (
	product = pattern.Of(aReference + `\s*\*\s*` + aReference)
	ofDry   = pattern.Of(`(?i)\b(?:dry (?:matter|basis|weight|mass)|f\.?i\.?d\.?m\.?|fdm|solids|i\.?\s?tr\.?|trockenmasse|trockensubstanz|matière sèche|extrait sec|extracto seco|materia seca|sostanza secca|droge stof)(?:[^\pL]|$)`)
	fatHead = pattern.Of(`(?i)\b(?:fat|fett\w*|gras\w*|grasa|grasso|vet)\b`)
)

// ofFat begins the class of what is wrong with a fat.
const ofFat = "fat|"

// constants finds grams that are multiplied by what a list says of another ingredient, or by a
// fat that is of the dry matter alone.
func (b *book) constants() (out []finding.Found) {
	done := map[string]int{}
	for _, c := range b.cells {
		for _, m := range product.FindAllStringSubmatch(c.Formula, -1) {
			words, class, ok := b.multiplied(c, m)
			if !ok {
				continue
			}
			if at, again := done[class]; again {
				out[at] = out[at].And(c.At)
				break // of one formula the first is the cause
			}
			done[class] = len(out)
			look := criteria.HLB
			if strings.HasPrefix(class, ofFat) {
				look = criteria.Fat
			}
			out = append(out, finding.Of(look, graded.Calculation, words, c).Kinds("constant of another").Surely())
			break
		}
	}
	return out
}

// multiplied says what is wrong with one product of two cells.
func (b *book) multiplied(c handin.Cell, m []string) (words, class string, wrong bool) {
	half := len(m)/2 + 1
	x, ok := spanOf(m[:half], c.At.Sheet)
	y, ok2 := spanOf(append([]string{""}, m[half:]...), c.At.Sheet)
	if !ok || !ok2 || !x.single() || !y.single() {
		return "", "", false
	}
	for range 2 {
		if words, class, wrong = b.constantOf(c, x, y); wrong {
			return words, class, true
		}
		x, y = y, x
	}
	return "", "", false
}

// constantOf looks at grams of one ingredient beside a constant of a list.
func (b *book) constantOf(c handin.Cell, grams, constant span) (words, class string, wrong bool) {
	col, x := b.work.At(trial.Place{File: c.At.File, Sheet: grams.on, Row: grams.row, Col: grams.col})
	p := b.pages[constant.on]
	if x == nil || p == nil || col.Field == nil || !col.Field.InGrams {
		return "", "", false
	}
	if _, y := b.work.At(trial.Place{File: c.At.File, Sheet: constant.on, Row: constant.row, Col: constant.col}); y != nil {
		return "", "", false
	}
	if words, class, wrong = b.slid(c, col, constant); wrong {
		return words, class, true
	}
	label, top := p.listed(constant.row, constant.col)
	used, known := p.number(constant.row, constant.col)
	if label == 0 || !known {
		return "", "", false
	}
	name := cellname.Of(constant.row, constant.col)
	own := 0 // the row of the list that the grams have
	for row := top + 1; p.word(row, label); row++ {
		if names(col, p.text(row, label)) {
			if own != 0 {
				return "", "", false
			}
			own = row
		}
	}
	if own == constant.row {
		return b.dry(c, p, constant, top)
	}
	theirs := p.text(constant.row, label)
	right, has := p.number(own, constant.col)
	if own == 0 || !has || !differs(used, right) || !anotherWeighed(x.Table, col, theirs) {
		return "", "", false
	}
	words = fmt.Sprintf("The formula =%s multiplies the grams of %s by %s, which is the %s of %s (%s). For %s it is %s (%s).",
		c.Formula, say.Quoted(col.Field.Called()), verdict.Num(used), p.text(top, constant.col), say.Quoted(theirs), name, say.Quoted(col.Field.Called()), verdict.Num(right), cellname.Of(own, constant.col))
	class = fmt.Sprint(col.Header, "|", theirs, "|", p.text(top, constant.col), "|", c.At.Sheet)
	if fatHead.MatchString(p.text(top, constant.col)) {
		class = ofFat + class
	}
	return words, class, true
}

// dry looks at a fat that is of the dry matter, where the list has that of the whole as well.
func (b *book) dry(c handin.Cell, p *page, constant span, top int) (words, class string, wrong bool) {
	head := p.text(top, constant.col)
	home := b.pages[c.At.Sheet]
	if !ofDry.MatchString(head) || ofDry.MatchString(home.text(home.headRow(c.At.Row, c.At.Col), c.At.Col)) {
		return "", "", false
	}
	if label := home.labelCol(c.At.Row, c.At.Col); label > 0 && ofDry.MatchString(home.text(c.At.Row, label)) {
		return "", "", false
	}
	used, _ := p.number(constant.row, constant.col)
	for _, col := range []int{constant.col - 1, constant.col + 1} {
		other, has := p.number(constant.row, col)
		if at := p.text(top, col); has && fatHead.MatchString(at) && !ofDry.MatchString(at) && differs(used, other) {
			return fmt.Sprintf("The formula =%s takes %s, which is %s. Of what was weighed it is %s (%s).", c.Formula, verdict.Num(used), say.Quoted(head), verdict.Num(other), cellname.Of(constant.row, col)),
				fmt.Sprint(ofFat, "dry|", c.At.Sheet), true
		}
	}
	return "", "", false
}

// listed are the column of the names and the row of the heads of the list in which a constant
// stands; 0 where it stands in none. A title right above the heads has nothing beside it.
func (p *page) listed(row, col int) (label, top int) {
	label = p.labelCol(row, col)
	if label == 0 {
		return 0, 0
	}
	for up := row - 1; p.word(up, label); up-- {
		if p.word(up, col) {
			top = up
		}
	}
	if top == 0 {
		return 0, 0
	}
	return label, top
}

// names reports that a list's name is that of an ingredient of the log.
func names(col *handin.Column, text string) bool {
	if say.Fold(text) == say.Fold(col.Field.Called()) || say.Fold(text) == say.Fold(col.Header) {
		return true
	}
	found, ok := ingredient.Lookup(text)
	return ok && found.Name == col.Field.What.Name
}

// anotherWeighed reports that a name is that of another ingredient of the table, and not of this one.
func anotherWeighed(t *handin.Table, col *handin.Column, text string) bool {
	another := false
	for _, o := range t.Weighed() {
		another = another || o != col && names(o, text)
	}
	return another && !names(col, text)
}
