package claim

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

var (
	gramsOf = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:g|grams?|gramm|grammes|gramos|grammi)\b\s+(?:more )?(?:of |de |d'|di |van |vom )?(?:the |my |both |le |la |les |el |los |las |het )?(\p{L}[\p{L}\d]*(?: [\p{L}\d]+){0,2})`)
	// rescaled are words of another batch than those that were made: grams of it may be any.
	rescaled = pattern.Of(`(?i)(\bkg\b|\bkilo\w*|\blit(?:re|er)s?\b|\d ?l\b|\bbatch of\b|\bscal\w+\b|\bportions?\b|\bguests?\b|\bper \d|\btotal mass\b)`)
	togive   = pattern.Of(`(?i)\b(würde\w*|wird|hielte|stünde|tiendrait|tiendra|serait|aguantaría|aguantará|duraría|terrebbe|durerebbe|zou|zal)\b`)
	inAll    = pattern.Of(`(?i)^(?:both|emulsifiers?|emulgator\w*|émulsifiants?|emulsionantes?|emulsionanti|altogether|in all|together|in total)\b`)
	each     = pattern.Of(`(?i)^(?:each|either)\b`)
	openSaid = pattern.Of(`(?i)(\bwhether\b|\bnobody knows\b|\bif \d)`)
	word     = pattern.Of(`[\p{L}\d]{2,}`)
)

// tooMuch finds grams of an ingredient, or of the emulsifiers together, that a conclusion speaks of and that
// are far from all that was weighed.
func (j *judge) tooMuch(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if ground.Planned.MatchString(s.Low) || asks.MatchString(s.Low) || s.Denied() || openSaid.MatchString(s.Low) || rescaled.MatchString(s.Low) || !outcome.MatchString(s.Low) && !togive.MatchString(s.Low) || !states.MatchString(s.Low) && !togive.MatchString(s.Low) {
		return f, false
	}
	d := j.DesignOf(s)
	if d == nil {
		return f, false
	}
	for _, m := range gramsOf.FindAllStringSubmatch(s.Text, -1) {
		v := ground.FirstNumber(m[1:2])
		low, high, name := weighedRange(d, m[2])
		if math.IsNaN(v) || name == "" || v <= 1.15*high+0.5 && v >= 0.85*low-0.5 {
			continue
		}
		return ground.About(fmt.Sprintf("“%s”: you weighed %s to %s g of %s, so nothing tells what happens with %s. Say it as a question to test, or keep to what you tried.",
			s.Said, say.Number(low), say.Number(high), name, m[1]+" g"), s, "outside what was tried"), true
	}
	return f, false
}

// alone is one emulsifier by itself.
var alone = pattern.Of(`(?i)\b(?:(?:only|just|pure|nothing but|nur|reines?|solo|seul(?:ement)? (?:le |du )?) ?((?:\p{L}[\p{L}\d]*)(?: \d+)?)|((?:\p{L}[\p{L}\d]*)(?: \d+)?) (?:alone|by itself|allein|da solo|seul|solo|alleen))\b`)

// byItself finds what a conclusion promises of one emulsifier by itself, which no trial had.
func (j *judge) byItself(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	m := alone.FindStringSubmatch(s.Text)
	if m == nil || !promises.MatchString(s.Low) && !togive.MatchString(s.Low) || ground.Planned.MatchString(s.Low) || asks.MatchString(s.Low) || s.Denied() {
		return f, false
	}
	d := j.DesignOf(s)
	if d == nil {
		return f, false
	}
	_, _, name := weighedRange(d, m[1]+m[2])
	if name == "" {
		return f, false
	}
	for _, x := range d.Trials {
		if g := gramsIn(x, name, false); g > 0 && math.Abs(gramsIn(x, "", true)-g) < 1e-9 {
			return f, false
		}
		if slices.ContainsFunc(x.Table.Weighed(), func(c *handin.Column) bool { return c.Field.Called() == name && !c.Field.What.WeighedAsEmulsifier() }) {
			return f, false
		}
	}
	return ground.About(fmt.Sprintf("“%s”: no trial has %s as its only emulsifier, so nothing tells what it does by itself. Say it as a question to test.", s.Said, name), s, "outside what was tried"), true
}

// weighedRange is the least and the most that was weighed of what a text names: of the one ingredient with
// most of its words, or of the emulsifiers together; "" for anything else. What a trial has none of, as a
// control, is no amount of it.
func weighedRange(d *method.Design, text string) (low, high float64, name string) {
	low, high = math.Inf(1), 0.0
	said := word.FindAllString(say.Fold(text), -1)
	all := inAll.MatchString(text)
	if each.MatchString(text) {
		for _, x := range d.Trials {
			for _, c := range x.Table.Weighed() {
				if g := c.Cells[x.Index].Value; c.Field.What.WeighedAsEmulsifier() && g > 0 {
					low, high = min(low, g), max(high, g)
				}
			}
		}
		return low, high, "an emulsifier"
	}
	most := 0
	for _, t := range d.Tables {
		for _, c := range t.Weighed() {
			n := 0
			names := word.FindAllString(say.Fold(c.Field.Called()+" "+c.Field.What.Name), -1)
			for k, w := range said {
				if slices.Contains(names, w) {
					n++
				}
				if what, known := ingredient.Lookup(strings.Join(said[:k+1], " ")); known && what.Name == c.Field.What.Name {
					n = max(n, k+1) // by another name of it
				}
			}
			switch {
			case all || n == 0:
			case n > most:
				most, name = n, c.Field.Called()
			case n == most && name != c.Field.Called():
				return 0, 0, ""
			}
		}
	}
	if all {
		name = "emulsifier"
	}
	for _, x := range d.Trials {
		if g := gramsIn(x, name, all); g > 0 {
			low, high = min(low, g), max(high, g)
		}
	}
	if high == 0 {
		return 0, 0, ""
	}
	return low, high, name
}

// gramsIn are the grams of an ingredient in a trial, or of its emulsifiers together.
func gramsIn(x *handin.Trial, name string, emulsifiers bool) (g float64) {
	for _, c := range x.Table.Weighed() {
		if emulsifiers && c.Field.What.WeighedAsEmulsifier() || !emulsifiers && c.Field.Called() == name {
			g += c.Cells[x.Index].Value
		}
	}
	return g
}
