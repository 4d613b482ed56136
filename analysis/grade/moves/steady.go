package moves

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
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// "The more butter, the longer" is said of every step, and so of the last one too.

var (
	everyStep = pattern.Of(`(?i)(\bthe (?:more|higher|less|lower|richer|fatter|fewer)\b[^.;]*?\bthe (?:longer|shorter|more|less|better|drier|wetter|firmer|stabler|higher|lower)\b|\b(?:with|at) (?:each|every) (?:step|gram|percent|extra|further|addition)\b|\bsteadily\b|\ball the way\b|\bright (?:up )?to the (?:end|top|last)\b|\bstep by step\b|\balways (?:more|longer|less|shorter)\b|\bevery (?:step|extra|more)\b|\bje (?:mehr|höher|weniger)\b.*\b(?:desto|umso)\b|\bplus\b.*\bplus (?:elle|la mousse|longtemps)\b|\bcuant[oa] más\b.*\bmás\b|\bpiù\b.*\bpiù (?:a lungo|tiene|dura)\b|\bhoe (?:meer|hoger)\b.*\bhoe\b)`)
	// asFarAs is the trial, or the level, to which a statement goes.
	asFarAs = pattern.Of(`(?i)\b(?:(?:right |all the way |up |down |as far as )+(?:to )?|(?:until|till|bis(?: zu)?|jusqu['’]à(?: l['’])?|hasta(?: el)?|fino a(?:l)?|tot) )\s*(?:and including\s+)?(?:(?:trial|test|run|no\.?|nr\.?|mix|foam|card|essai|ensayo|prova|proef|versuch)\s*)?([A-Za-z]{0,2}\d{1,3}(?:[.,]\d+)?[a-z]?)(\s*(?:%|g\b|grams?\b))?`)
	turned  = pattern.Of(`(?i)\b(?:then|after that|beyond|from there|again|peak|maximum|optimum|at first|first|but|except|only|(?:above|over) (?:that|this|it|trial|hlb|about|\d)|dann|danach|puis|después|poi|daarna)\b`)
)

// Steady asks of what is said to grow with every step, where the trial at the far end did less than one before
// it by more than makings of one formula differ by.
func Steady(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	if !everyStep.MatchString(s.Low) && !asFarAs.MatchString(s.Text) || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Planned.MatchString(s.Low) || turned.MatchString(s.Low) {
		return f, false
	}
	factor, up, known := change(s.Low)
	if !known {
		factor, up, _, _, known = driverOf(s)
	}
	m, grew := moved(s)
	d := j.DesignOf(s)
	if !known {
		factor, up, known = namedAlone(s)
	}
	if m == evidence.NoMeasure && longerElse.MatchString(s.Low) {
		m, grew = evidence.Hold, true
	}
	if d != nil && !known {
		if factor, up, known = oneOfTwo(s, d); !known {
			return f, false
		}
	}
	if m == evidence.NoMeasure || d == nil || !d.Varies(factor) {
		return f, false
	}
	if said := asFarAs.FindStringSubmatch(s.Text); said != nil && said[2] == "" {
		if x := j.Only(s, "trial "+said[1]); x != nil && x.CameOut == trial.No {
			return ground.About(fmt.Sprintf("“%s”: trial %s did not come out.", s.Said, x.ID), s, "not to the end"), true
		}
	}
	far := j.farEnd(s, d, factor, m, up)
	if far < 0 {
		return f, false
	}
	sign := 1.0
	if !grew {
		sign = -1
	}
	last, n := j.OfFormula(d.Trials[far], m)
	if n == 0 {
		return f, false
	}
	beats, by := -1, j.Margin(d, m)
	for i, x := range d.Trials {
		before := d.At(i, factor) < d.At(far, factor)
		if !up {
			before = d.At(i, factor) > d.At(far, factor)
		}
		mean, n := j.OfFormula(x, m)
		if before && n > 0 && d.Differ(i, far, factor) && d.Alone(i, far, factor) && sign*(mean-last) > by+1e-9 {
			beats, by = i, sign*(mean-last)
		}
	}
	if beats < 0 {
		return f, false
	}
	low, _, _ := j.Seen(d.Trials[beats], m)
	end, _, _ := j.Seen(d.Trials[far], m)
	words := fmt.Sprintf("“%s”: not to the end: trial %s (%s %s) has %s %s, and trial %s (%s) %s. From where does it turn?", s.Said, d.Trials[beats].ID, factor, say.Number(math.Round(100*d.At(beats, factor))/100), say.Number(low), j.Unit(m),
		d.Trials[far].ID, say.Number(math.Round(100*d.At(far, factor))/100), say.Number(end))
	return ground.About(words, s, "not to the end"), true
}

// longerElse is a longer hold in other languages.
var longerElse = pattern.Of(`(?i)(\blänger\b|\blongtemps\b|\ba lungo\b|\bmás (?:tiempo|aguant\w+)\b|\baguant\w+ más\b|\blanger\b)`)

// otherTongue is "the more" in other languages.
var otherTongue = pattern.Of(`(?i)(^|[\s,])(je (?:mehr|höher|weniger)|plus (?:le|la|il|on|de|d['’])|moins (?:le|la|il|on|de|d['’])|più (?:alto|burro|grasso|emulsionante)|meno|cuant[oa] (?:más|menos)|hoe (?:meer|hoger|minder))`)

// namedAlone is the one thing that may be changed of which a sentence in another language speaks.
func namedAlone(s sentence.Sentence) (f method.Factor, up, ok bool) {
	if !otherTongue.MatchString(s.Low) {
		return f, false, false
	}
	n := 0
	for _, one := range subjects {
		if regexpFor(`\b` + one.words + `\b`).MatchString(s.Low) {
			f, n = one.factor, n+1
		}
	}
	return f, !lessOf.MatchString(s.Low), n == 1
}

// oneOfTwo is what a sentence says was changed where it names one of two emulsifiers that share one sum: the
// blend, whichever way that one moves it.
func oneOfTwo(s sentence.Sentence, d *method.Design) (f method.Factor, up, ok bool) {
	hlb := map[string]float64{}
	named := ""
	for _, t := range d.Tables {
		for _, c := range t.Weighed() {
			if !c.Field.What.WeighedAsEmulsifier() {
				continue
			}
			if c.Field.What.HLB == nil {
				return f, false, false
			}
			name := c.Field.Called()
			hlb[name] = c.Field.What.HLB.Value
			if strings.Contains(s.Low, " "+strings.ToLower(name)) && name != named {
				if named != "" {
					return f, false, false
				}
				named = name
			}
		}
	}
	if named == "" || len(hlb) != 2 || !d.Separates(method.HLB) {
		return f, false, false
	}
	up = true
	for name, v := range hlb {
		if name != named {
			up = hlb[named] > v
		}
	}
	if lessOf.MatchString(s.Low) {
		up = !up
	}
	return method.HLB, up, true
}

var lessOf = pattern.Of(`(?i)\b(?:less|fewer|lower|decreas\w+|weniger|moins|menos|meno|minder)\b`)

// farEnd is the trial with the most of a factor, or the least, of all with a result or as far as a sentence
// goes; -1 where nobody can say how far that is.
func (j *judge) farEnd(s sentence.Sentence, d *method.Design, f method.Factor, m evidence.Measure, up bool) (far int) {
	limit := math.NaN()
	if said := asFarAs.FindStringSubmatch(s.Text); said != nil {
		if limit = j.levelOf(s, said[1], strings.TrimSpace(said[2]), d, f); math.IsNaN(limit) {
			return -1
		}
	}
	far = -1
	for i, x := range d.Trials {
		v := d.At(i, f)
		_, _, seen := j.Seen(x, m)
		if !seen || math.IsNaN(v) || up && v > limit+0.3 || !up && v < limit-0.3 {
			continue
		}
		if far < 0 || up && v > d.At(far, f) || !up && v < d.At(far, f) {
			far = i
		}
	}
	return far
}

// levelOf is the level that a sentence goes to: of a trial by its number, of the trials with so many grams,
// or a percent or an HLB itself.
func (j *judge) levelOf(s sentence.Sentence, said, unit string, d *method.Design, f method.Factor) float64 {
	x := j.Only(s, "trial "+said)
	switch {
	case unit == "%" || x == nil && unit == "" && f == method.HLB:
		return ground.FirstNumber([]string{said})
	case unit == "" && x != nil && d.Has(x.Table):
		return d.At(slices.Index(d.Trials, x), f)
	case unit != "":
		g := ground.FirstNumber([]string{said})
		for i, x := range d.Trials {
			if slices.ContainsFunc(x.Table.Weighed(), func(c *handin.Column) bool {
				return c.Cells[x.Index].Known && math.Abs(c.Cells[x.Index].Value-g) < 0.05
			}) {
				return d.At(i, f)
			}
		}
	}
	return math.NaN()
}
