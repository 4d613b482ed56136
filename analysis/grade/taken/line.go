package taken

import (
	"fmt"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/verdict"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
)

var (
	aLine     = pattern.Of(`(?i)\b(SLOPE|STEIGUNG|PENTE|PENDIENTE|PENDENZA|RICHTING|INTERCEPT|ACHSENABSCHNITT|ORDONNEE\.ORIGINE|INTERSECCION|INTERCETTA|SNIJPUNT)\(([^()]*)\)`)
	slopes    = pattern.Of(`(?i)^(?:SLOPE|STEIGUNG|PENTE|PENDIENTE|PENDENZA|RICHTING)$`)
	seenHead  = pattern.Of(`(?i)(\bmin\b|minutes|\bhold|\bheld\b|\bstand|\bstood|\blast(?:s|ed)\b|drain|drip|overrun|haltezeit|standzeit|\btenue\b|\baguant|\btenuta|\bhoudt|houdtijd|\by\b)`)
	setHead   = pattern.Of(`(?i)(\bdose\b|%|percent|\bg\b|grams?|\bfat\b|\bhlb\b|emulsifier|powder|dosis|dosierung|fett|emulgator|matière grasse|émulsifiant|grasa|emulsionante|grasso|\bvet\b|\bx\b)`)
	perMinute = pattern.Of(`(?i)(?:%|percent|\bg\b|grams?|hlb)\s*(?:per|/|pro|par|por|a|je)\s*(?:each |one )?(?:min|minute)`)
)

// lines finds slopes and intercepts with x and y exchanged: what was set belongs behind what was
// seen. It is sure where another formula of the same two columns has them the right way round.
func (b *book) lines() (out []finding.Found) {
	type pair struct{ y, x span }
	taken := map[pair]bool{}
	for _, c := range b.cells {
		for _, m := range aLine.FindAllStringSubmatch(c.Formula, -1) {
			if s := spansOf(m[2], c.At.Sheet); len(s) == 2 {
				taken[pair{s[0], s[1]}] = true
			}
		}
	}
	for _, c := range b.cells {
		m := aLine.FindStringSubmatch(c.Formula)
		if m == nil {
			continue
		}
		s := spansOf(m[2], c.At.Sheet)
		if len(s) != 2 || !b.set(s[0]) || !b.seen(s[1]) {
			continue
		}
		p := b.pages[c.At.Sheet]
		label := p.text(c.At.Row, p.labelCol(c.At.Row, c.At.Col)) + " " + p.text(p.headRow(c.At.Row, c.At.Col), c.At.Col)
		if perMinute.MatchString(label) {
			continue // the line is meant the other way round
		}
		none := func(string, int, int) bool { return false }
		ys, xs := b.valuesOf(s[1:], none), b.valuesOf(s[:1], none)
		if len(xs) != len(ys) || len(xs) < 2 {
			continue
		}
		right := slope(ys, xs)
		if !slopes.MatchString(m[1]) {
			right = intercept(ys, xs)
		}
		words := fmt.Sprintf("The formula =%s has x and y exchanged: %s is what was set, and belongs second, %s is what came of it, and belongs first. Then it is %s.", c.Formula, b.head(s[0]), b.head(s[1]), verdict.DigitsOf(right, 2))
		f := finding.Of(criteria.Means, graded.Calculation, words, c).Kinds("x and y exchanged")
		if strings.TrimSpace(aLine.ReplaceAllString(c.Formula, "")) == "" {
			f = f.ShouldBe(right)
		}
		out = append(out, f.Unless(!taken[pair{s[1], s[0]}]))
	}
	return out
}

func products(xs, ys []float64) (s float64) {
	mx, my := mean(xs), mean(ys)
	for i := range xs {
		s += (xs[i] - mx) * (ys[i] - my)
	}
	return s
}

// head is the words above the values of a span, or left of them.
func (b *book) head(s span) string {
	p := b.pages[s.on]
	if p == nil {
		return ""
	}
	if s.row == s.row2 && s.to > s.col {
		return p.text(s.row, p.labelCol(s.row, s.col))
	}
	return p.text(p.headRow(s.row, s.col), s.col)
}

func (b *book) set(s span) bool {
	head := b.head(s)
	return setHead.MatchString(head) && !seenHead.MatchString(head)
}

func (b *book) seen(s span) bool { return seenHead.MatchString(b.head(s)) }
