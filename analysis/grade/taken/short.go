package taken

import (
	"fmt"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

var (
	counter = pattern.Of(`(?i)[\s._#-]*(?:\d{1,2}|[a-h]|i{1,3}|iv|v)\s*$`)
	leaves  = pattern.Of(`(?i)\b(?:without|excl\w*|except|not|first|best|of \d|only|ohne|nur|sans|sauf|sin|senza|zonder|alleen)\b`)
)

// shortRanges asks of means and sums along numbered cells, "taster A" to "taster D", that stop
// before the last of them or begin behind the first.
func (b *book) shortRanges() (out []finding.Found) {
	done := map[string]int{}
	for _, c := range b.cells {
		words, right, ok := b.short(c)
		if !ok {
			continue
		}
		class := fmt.Sprint(c.At.Sheet, "|", verdict.Relative(c.Formula, c))
		if at, again := done[class]; again {
			out[at] = out[at].And(c.At)
			continue
		}
		done[class] = len(out)
		out = append(out, finding.Of(criteria.Means, graded.Calculation, words, c).ShouldBe(right).Kinds("range too short"))
	}
	return out
}

// short says which cell a range leaves out.
func (b *book) short(c handin.Cell) (words string, right float64, ok bool) {
	name, of, args := statisticOf(c.Formula)
	spans := spansOf(args, c.At.Sheet)
	p := b.pages[c.At.Sheet]
	if of == nil || len(spans) != 1 || spans[0].on != c.At.Sheet || !c.Known {
		return "", 0, false
	}
	s := spans[0]
	along := s.row == s.row2 && s.row == c.At.Row
	if !along && !(s.col == s.to && s.col == c.At.Col) || s.single() {
		return "", 0, false
	}
	heads := p.labelCol(s.row, s.col)
	own := p.text(c.At.Row, p.labelCol(c.At.Row, c.At.Col))
	if along {
		heads = p.headRow(c.At.Row, c.At.Col)
		own = p.text(heads, c.At.Col)
	}
	head := func(row, col int) string {
		if along {
			return p.text(heads, col)
		}
		return p.text(row, heads)
	}
	if heads == 0 || leaves.MatchString(own) {
		return "", 0, false
	}
	stem := stemOf(head(s.row, s.col))
	alike := stem != ""
	s.each(func(row, col int) { alike = alike && stemOf(head(row, col)) == stem })
	if !alike {
		return "", 0, false
	}
	down, right2 := 1, 0
	if along {
		down, right2 = 0, 1
	}
	for _, at := range [][2]int{{s.row - down, s.col - right2}, {s.row2 + down, s.to + right2}} {
		v, has := p.number(at[0], at[1])
		if !has || stemOf(head(at[0], at[1])) != stem || at[0] == c.At.Row && at[1] == c.At.Col {
			continue
		}
		xs := append(b.valuesOf(spans, func(string, int, int) bool { return false }), v)
		if right = of(xs); differs(c.Value, right) {
			words = fmt.Sprintf("The formula =%s leaves out %s (%s): with it %s gives %s. Is it left out on purpose?", c.Formula, say.Quoted(head(at[0], at[1])), verdict.Num(v), name, verdict.DigitsOf(right, 2))
			return words, right, true
		}
	}
	return "", 0, false
}

// stemOf is a head without the number or the letter at its end; "" for one that has none.
func stemOf(head string) string {
	if !counter.MatchString(head) {
		return ""
	}
	return strings.TrimSpace(say.Fold(counter.ReplaceAllString(head, "")))
}
