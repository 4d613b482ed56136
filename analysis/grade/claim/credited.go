package claim

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// credits are words by which one thing is given the credit for a difference: "the HLB is
// what matters", "the second charger made the difference", "thanks to the butter".
const (
	creditAfter  = `\b[^.,;]{0,24}?\b(?:is what (?:matters|counts|made|makes|did|does|gave|decides|decided)|are what (?:matters?|counts?|made|makes?|did|does|gave)|(?:is|are|was|were) (?:the (?:reason|cause|key|secret)|responsible|to thank|decisive|what made)|made (?:all )?the difference|makes (?:all )?the difference|made it (?:hold|stand|last|stable|work)|did (?:it|the trick)|decides?|decided|matters? most|caused (?:it|this|the))\b`
	creditBefore = `\b(?:because of|thanks to|due to|down to|caused by|the reason (?:is|was)|comes? from|came from|owing to|it (?:is|was) (?:only )?)(?: the| its| my| our| more| less| higher| lower| second| extra)*\s+(?:\w+\s+)?`
)

// creditable are the things that a student may give the credit to.
var creditable = []struct {
	name, words string
	varied      method.Thing
}{
	{"fat", `(?:butter|fat|ghee|oil|cream)`, method.Thing{Factor: method.Fat}},
	{"emulsifier", `(?:emulsifiers?|dose|amount of emulsifier)`, method.Thing{Factor: method.Emulsifier}},
	{"HLB", `(?:blend|hlb|ratio)`, method.Thing{Factor: method.HLB}},
	{"chargers", `(?:chargers?|gas|n2o|cartridges?)`, method.Thing{Setting: "chargers"}},
	{"rest", `(?:rest(?:ing)?|chill(?:ing)?|fridge|waiting)`, method.Thing{Setting: "rest_minutes"}},
	{"temperature", `(?:temperature|cold|warmth|heat)`, method.Thing{Setting: "temperature_c"}},
	{"shakes", `(?:shak(?:es|ing))`, method.Thing{Setting: "shakes"}},
}

var (
	creditedBy = map[string]*pattern.Pattern{}
	creditNear = map[string]*pattern.Pattern{}
	itOnly     = pattern.Of(`(?i)\b(together|both|(?:butter|fat|oil|ghee|cream|blend|hlb|emulsifiers?|chargers?|gas|rest|temperature) and (?:the|its|more|less)|as well|either|or the|may|partly)\b`)
)

func init() {
	for _, c := range creditable {
		creditNear[c.name] = pattern.Of(`(?i)\b` + c.words + `\b`)
		creditedBy[c.name] = pattern.Of(`(?i)\b` + c.words + creditAfter + `|` + creditBefore + c.words + `\b`)
	}
}

// owed are words that give something near them the credit for what two trials differ by.
var owed = pattern.Of(`(?i)(\bowed (?:only |all |purely )?to\b|\b(?:all |only |purely |entirely |mainly )?the (?:work|doing|effect|merit|result|fault) of\b|\bdue (?:only |purely )?to\b|\bbecause of\b|\bbecause\b[^.;]{0,30}\b(?:has|had|contains|contained|got) (?:much |far |a lot )?(?:more|less|a higher|a lower|the higher|the lower)\b|\bthanks to\b|\bdown to\b|\bcaused by\b|\bcom(?:es?|ing) from\b|\bcame from\b|\b(?:has|had) to do with\b|\b(?:is|was) (?:the )?(?:\w+ )?\w+['’]s (?:doing|work|merit|effect|fault)\b|\bstems? from\b|\bis explained by\b|\bcan be (?:the|put down)\b|\bput(?:s|ting)? (?:it|this|that) down to\b|\bshow(?:s|ed|ing)? (?:us )?(?:what|that|how)\b|\bprove[sd]? (?:what|that|how)\b|\bexplain(?:s|ed)?\b|\bis what\b|\bby itself\b|\balone\b|\bthe reason\b|\bmust be\b|\bso (?:it|that) is\b|\bgives? it\b|\bthat is what\b|\bcredit)`)

// stress stands between the words of a credit and changes none of it: "comes only from", "is surely due to".
var stress = pattern.Of(`(?i)\b(?:only|solely|purely|entirely|simply|just|clearly|completely|wholly|surely|certainly|merely|mainly|mostly|exclusively) `)

func unstressed(low string) string { return stress.ReplaceAllString(low, "") }

// makes are words by which one thing is said to do something to foams in general; behind so
// it is what two trials are said to show.
var (
	makes = pattern.Of(`(?i)\b(?:makes?|made|gives?|gave|lets?|helps?|helped|keeps?|kept|adds?|added|brings?|brought|lengthens?|lengthened|shortens?|improves?|improved|causes?|caused)\b[^.;]{0,40}\b(?:longer|shorter|better|worse|stable|stabler|firmer|stand|stands|hold|last|lasts|less|more|drier|wetter|min|minutes|difference)\b`)
	soThe = pattern.Of(`(?i)(?:,|;|:)?\s*\b(?:so|therefore|hence|thus|which shows(?: that)?|this shows(?: that)?|that shows(?: that)?|because of that|it follows that|meaning|which means)\s+(?:that )?(?:the |a |it is the |it was the |more |less |higher |lower |extra )`)
)

// creditClause is the part of a sentence in which the credit is given: behind "so the", else all of
// it without what stands in brackets.
func creditClause(low string) string {
	if at := soThe.FindAllStringIndex(low, -1); at != nil {
		return low[at[len(at)-1][0]:]
	}
	return inBrackets.ReplaceAllString(low, " ")
}

// insertion stands between commas: "it is the fat, from 20 to 30 %, that makes it hold".
var (
	insertion = pattern.Of(`, (?:from|of|at|with|by|between)\b[^,;]*, `)
	pointed   = pattern.Of(`(\d),(\d)`)
)

var inBrackets = pattern.Of(`\([^)]*\)`)

// pairCredited finds one thing that is given the credit for a difference between two trials
// that differ in more than it. before is the sentence before it in the same cell.
func (j *judge) pairCredited(s, before sentence.Sentence) (f finding.Found, ok bool) {
	sure := owed.MatchString(unstressed(s.Low))
	clause := s.Low
	if !sure {
		clause = creditClause(s.Low)
	}
	if !sure && !makes.MatchString(clause) && !soThe.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) || itOnly.MatchString(s.Low) || s.Denied() {
		return f, false
	}
	named := sentence.Mentions(j.Work, s)
	if len(named) == 0 {
		if f, ok := j.stepCredited(s, clause); ok {
			return f, true
		}
	}
	if len(named) < 2 && before.At == s.At {
		named = append(sentence.Mentions(j.Work, before), named...)
	}
	d := j.OneDesign(named)
	if d == nil || len(named) != 2 {
		return f, false
	}
	a, b := slices.Index(d.Trials, named[0].Trials[0]), slices.Index(d.Trials, named[1].Trials[0])
	if a < 0 || b < 0 || a == b {
		return f, false
	}
	var of []string
	var what method.Thing
	for _, c := range creditable {
		if creditNear[c.name].MatchString(clause) {
			of, what = append(of, c.name), c.varied
		}
	}
	all, known := d.Changed(a, b)
	if sure && len(of) == 1 && known && len(all) > 0 && !slices.Contains(all, what) {
		return ground.About(fmt.Sprintf("“%s”: trials %s and %s have the same %s; what differs is %s.", s.Said, named[0].ID, named[1].ID, of[0], say.List(namesOf(all))), s, "changed together").As(criteria.OneChange, graded.Method), true
	}
	if len(of) != 1 || !known || len(all) < 2 || what.Factor == method.Fat && d.Alone(a, b, method.Fat) {
		return f, false
	}
	var names []string
	for _, t := range all {
		if t != what {
			names = append(names, t.String())
		}
	}
	f = ground.About(fmt.Sprintf("“%s”: trials %s and %s differ in %s as well, so they do not show that it was the %s.", s.Said, named[0].ID, named[1].ID, say.List(names), of[0]), s, "changed together").As(criteria.OneChange, graded.Method)
	f.Certain = sure
	return f, true
}

// aStep is a step from one level to another: "from 3 g to 4 g", "from HLB 6 to 9", "25 to 30 % fat".
var aStep = pattern.Of(`(?i)\bfrom (?:hlb )?(\d+(?:[.,]\d+)?)\s*(g|%)?(?: of)?(?: [\p{L}]+){0,2} to (?:hlb )?(\d+(?:[.,]\d+)?)\s*(g\b|%)?`)

// stepCredited finds one thing that is given the credit for a step between two levels of it, where every two
// trials at these levels differ in more than it.
func (j *judge) stepCredited(s sentence.Sentence, clause string) (f finding.Found, ok bool) {
	m, d := aStep.FindStringSubmatch(s.Text), j.DesignOf(s)
	if m == nil || d == nil {
		return f, false
	}
	from, to, unit := ground.FirstNumber(m[1:2]), ground.FirstNumber(m[3:4]), strings.ToLower(m[2]+m[4])
	for _, c := range creditable {
		if c.varied.Setting != "" || !creditNear[c.name].MatchString(clause) {
			continue
		}
		var beside []string
		pairs := 0
		for a := range d.Trials {
			for b := range d.Trials {
				if !stands(d, a, c.varied.Factor, from, unit) || !stands(d, b, c.varied.Factor, to, unit) {
					continue
				}
				all, known := d.Changed(a, b)
				if !known || !slices.Contains(all, c.varied) || len(all) < 2 || c.varied.Factor == method.Fat && d.Alone(a, b, method.Fat) {
					return f, false
				}
				if pairs++; pairs == 1 {
					for _, t := range all {
						if t != c.varied {
							beside = append(beside, t.String())
						}
					}
				}
			}
		}
		if pairs > 0 {
			return ground.About(fmt.Sprintf("“%s”: there %s changed as well, so the step does not show that it was the %s.", s.Said, say.List(beside), c.name), s, "changed together").As(criteria.OneChange, graded.Method), true
		}
	}
	return f, false
}

// stands reports a trial at a level, of the fat also as it was weighed.
func stands(d *method.Design, i int, f method.Factor, level float64, unit string) bool {
	return d.Stands(i, f, level, unit) || f == method.Fat && unit != "g" && math.Abs(ground.WeighedFatOf(d.Trials[i])-level) <= 0.6
}

func namesOf(all []method.Thing) (out []string) {
	for _, t := range all {
		out = append(out, t.String())
	}
	return out
}

// credited finds one thing that is given the credit although it was never changed alone.
func (j *judge) credited(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	d := j.DesignOf(s)
	if d == nil || sentence.Unsure.MatchString(s.Low) || s.Denied() || itOnly.MatchString(s.Low) {
		return f, false
	}
	for _, c := range creditable {
		if !creditedBy[c.name].MatchString(unstressed(s.Low)) {
			continue
		}
		if f, ok := j.neverAlone(s, d, c.name, c.varied); ok {
			return f, true
		}
	}
	return f, false
}

// credits asks of a thing that is said to make foams better in general, and was never changed alone:
// "the second charger gives 6 min more".
func (j *judge) credits(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	d := j.DesignOf(s)
	clause := insertion.ReplaceAllString(pointed.ReplaceAllString(creditClause(s.Low), "$1.$2"), " ")
	verb := makes.FindStringIndex(clause)
	if d == nil || verb == nil || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Planned.MatchString(s.Low) || len(sentence.Mentions(j.Work, s)) == 2 {
		return f, false
	}
	from := strings.LastIndexAny(clause[:verb[0]], ",;:") + 1 // what was done comes before, and what did it here
	if itOnly.MatchString(clause[from:]) {
		return f, false
	}
	for _, c := range creditable {
		if c.varied.Setting == "" && (c.varied.Factor == method.Emulsifier || d.Separates(c.varied.Factor)) || !creditNear[c.name].MatchString(clause[from:verb[0]]) {
			continue
		}
		if f, ok := j.neverAlone(s, d, c.name, c.varied); ok {
			f.Certain = false
			return f, true
		}
	}
	return f, false
}

// neverAlone finds a thing that changed only together with others, or never.
func (j *judge) neverAlone(s sentence.Sentence, d *method.Design, name string, what method.Thing) (f finding.Found, ok bool) {
	var beside []string
	changed := false
	for a := range d.Trials {
		for b := range a {
			all, known := d.Changed(a, b)
			if !known {
				return f, false
			}
			if !slices.Contains(all, what) {
				continue
			}
			if len(all) == 1 || what.Factor == method.Fat && d.Alone(a, b, method.Fat) {
				return f, false
			}
			if changed {
				beside = slices.DeleteFunc(beside, func(n string) bool {
					return !slices.ContainsFunc(all, func(t method.Thing) bool { return t.String() == n })
				})
				continue
			}
			for _, t := range all {
				if t != what {
					beside = append(beside, t.String())
				}
			}
			changed = true
		}
	}
	switch {
	case !changed:
		return ground.About(fmt.Sprintf("“%s”: the %s was the same in every trial. Which trials show what it does?", s.Said, name), s, "not tried").As(criteria.OneChange, graded.Method), true
	case len(beside) == 0:
		return ground.About(fmt.Sprintf("“%s”: no two trials differ in the %s alone, so these trials do not show that it was this. Change it alone.", s.Said, name), s, "changed together").As(criteria.OneChange, graded.Method).Surely(), true
	}
	return ground.About(fmt.Sprintf("“%s”: whenever the %s changed, %s changed too, so these trials do not show which of them did it. Change one of them alone.", s.Said, name, say.List(beside)), s, "changed together").
		As(criteria.OneChange, graded.Method).Surely(), true
}
