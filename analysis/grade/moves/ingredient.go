package moves

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// A claim may be on the grams of one ingredient: "the more lecithin, the longer". It is held against the
// mixes in which only these were changed, and the water that gave way.

// moreOf are words by which there was more or less of something.
var moreOf = pattern.Of(`(?i)\b(?:more|less|extra|higher|lower|adding|increasing|rising|fewer|with the|with rising)\b`)

// Ingredient asks of what is said to move with the grams of one ingredient, where the mix with the most of
// it did less than another by more than makings of one formula differ by.
func Ingredient(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	d := j.DesignOf(s)
	m, grew := moved(s)
	if d == nil || m == evidence.NoMeasure || !moreOf.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Planned.MatchString(s.Low) || turned.MatchString(s.Low) || asFarAs.MatchString(s.Text) {
		return f, false
	}
	if _, _, n := changes(s.Low); n > 0 || len(sentence.Mentions(j.Work, s)) > 0 {
		return f, false
	}
	name := namedIn(d, s.Low)
	if name == "" {
		return f, false
	}
	up := !lessOf.MatchString(s.Low)
	sign := 1.0
	if !grew {
		sign = -1
	}
	far, most := -1, math.Inf(-1)
	for i, x := range d.Trials {
		v, known := gramsOf(x, name)
		if !up {
			v = -v
		}
		if _, _, seen := j.Seen(x, m); seen && known && v > most && j.aloneOfSome(d, i, name) {
			far, most = i, v
		}
	}
	if far < 0 {
		return f, false
	}
	last, _ := j.OfFormula(d.Trials[far], m)
	beats, by := -1, j.Margin(d, m)
	for i, x := range d.Trials {
		mean, n := j.OfFormula(x, m)
		if n > 0 && only(d, i, far, name) && sign*(mean-last) > by+1e-9 {
			beats, by = i, sign*(mean-last)
		}
	}
	if beats < 0 {
		return f, false
	}
	words := func(i int) string {
		grams, _ := gramsOf(d.Trials[i], name)
		low, _, _ := j.Seen(d.Trials[i], m)
		return fmt.Sprintf("trial %s (%s g of it) has %s %s", d.Trials[i].ID, say.Number(grams), say.Number(low), j.Unit(m))
	}
	return ground.About(fmt.Sprintf("“%s”: not to the end: %s, and %s. From where does it turn?", s.Said, words(beats), words(far)), s, "not to the end"), true
}

// namedIn is the one ingredient of a design that a sentence names by the first word of its column, that is no
// fat and no water; "" for none or several.
func namedIn(d *method.Design, low string) (name string) {
	words := strings.FieldsFunc(low, func(r rune) bool { return !unicode.IsLetter(r) })
	for _, t := range d.Tables {
		for _, c := range t.Weighed() {
			first := strings.FieldsFunc(strings.ToLower(c.Header), func(r rune) bool { return !unicode.IsLetter(r) })
			if len(first) == 0 || len([]rune(first[0])) < 3 || c.Field.What.Kind == ingredient.Fat || c.Field.What.Kind == ingredient.Water || !slices.ContainsFunc(words, func(w string) bool { return w == first[0] || w == first[0]+"s" || w+"e" == first[0] }) {
				continue
			}
			if name != "" && name != c.Header {
				return ""
			}
			name = c.Header
		}
	}
	return name
}

// gramsOf is how much of a column a trial has.
func gramsOf(x *handin.Trial, header string) (g float64, known bool) {
	for _, c := range x.Table.Weighed() {
		if c.Header == header {
			return c.Cells[x.Index].Value, c.Cells[x.Index].Known
		}
	}
	return 0, false
}

// aloneOfSome reports a mix beside which there is another that differs in one ingredient only.
func (j *judge) aloneOfSome(d *method.Design, at int, name string) bool {
	for i := range d.Trials {
		if only(d, i, at, name) {
			return true
		}
	}
	return false
}

// only reports two mixes with emulsifiers that differ in the grams of one ingredient, and of water, and in
// no setting.
func only(d *method.Design, a, b int, name string) bool {
	x, y := d.Trials[a], d.Trials[b]
	if a == b || x.Table != y.Table || x.Bare() || y.Bare() {
		return false
	}
	things, known := d.Changed(a, b)
	if !known || slices.ContainsFunc(things, func(t method.Thing) bool { return t.Setting != "" }) {
		return false
	}
	differs := false
	for _, c := range x.Table.Weighed() {
		g, h := c.Cells[x.Index], c.Cells[y.Index]
		apart := math.Abs(g.Value-h.Value) > max(0.05, 0.02*max(g.Value, h.Value))
		switch {
		case c.Role != column.IngredientAmount || c.Field.What.Kind == ingredient.Water:
		case c.Header == name:
			differs = apart
		case apart:
			return false
		}
	}
	return differs
}
