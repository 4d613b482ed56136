// Package moves holds what a conclusion says moved with what against the trials in which it alone was
// changed: "more butter held longer", "the drainage fell with the dose".
package moves

import (
	"fmt"
	"math"
	"slices"

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

// judge holds claims against trials.
type judge struct{ *ground.Judge }

// holdUp and holdDown are what a hold does by itself.
var (
	holdUp   = pattern.Of(`(?i)\b(the|its|their|mean) (mean )?hold( time)? (rises|rose|goes up|went up|increases|increased|grows|grew)\b`)
	holdDown = pattern.Of(`(?i)\b(the|its|their|mean) (mean )?hold( time)? (falls|fell|goes down|went down|decreases|decreased|drops|dropped|sinks)\b`)
)

var (
	drainsLo = pattern.Of(`(?i)(\b(drain|drains|drained|weeps?|wept|leaks?|leaked)\b[^.]{0,8}\bless\b|\bless (drainage|draining|weeping|liquid)|\bless (water|serum|whey) (drained|drains|wept|leaked)\b|\b(reduce[sd]?|lower(s|ed)?) (the )?drain)`)
	drainsHi = pattern.Of(`(?i)(\b(drain|drains|drained|weeps?|wept|leaks?|leaked)\b[^.]{0,8}\bmore\b|\bmore (drainage|draining|weeping)|\bmore (liquid|water|serum|whey) (drained|drains|wept|leaked|ran out|came out)\b|\bincrease[sd]? (the )?drain)`)

	rises    = `(?: content| share| percent| %)? (?:rises|rose|goes up|went up|increases|increased|grows|grew|climbs)\b`
	falls    = `(?: content| share| percent| %)? (?:falls|fell|goes down|went down|decreases|decreased|drops|dropped|sinks)\b`
	makes    = ` (?:always |clearly |itself )?(?:makes?|made|lets?|helps?|helped|keeps?|kept|causes?|caused)\b`
	upWord   = `(?:more|higher|increasing|increased|raising|adding|extra|greater|a higher|mehr|höherer|höhere|plus de|más|mas|più)`
	downWord = `(?:less|lower|decreasing|decreased|reducing|reduced|a lower|fewer|weniger|niedriger(?:er)?|moins de|menos|meno)`
	anyRange = pattern.Of(`(?i)(\bup to\b|\buntil\b|\bbut only\b|\bat first\b|\bexcept\b|\bunless\b|\bonly (when|if|at|with)\b)`)
)

// Subjects are the words for what may be changed.
var subjects = []struct {
	factor method.Factor
	words  string
}{
	{method.Fat, `(?:butter ?fat|fat|butter|ghee|oil|fett|beurre|matière grasse|mantequilla|grasa|burro|grasso|grassi|coconut oil|olive oil)`},
	{method.Emulsifier, `(?:emulsifiers?|emuls?|total emulsifier|emulgator|émulsifiant|emulsionante|emulgente|emulsifying agent)`},
	{method.HLB, `(?:blend hlb|hlb)`},
}

// change is what a sentence says was changed, and which way.
func change(low string) (f method.Factor, up, ok bool) {
	f, up, n := changes(low)
	if n != 1 {
		return f, up, false
	}
	for _, s := range subjects { // "more butter and emulsifier" is of both
		if s.factor != f && regexpFor(`\b`+s.words+`\b`).MatchString(low) && !regexpFor("same").MatchString(low) {
			return f, up, false
		}
	}
	return f, up, true
}

// changes are how many things a sentence says were changed, and the last of them.
func changes(low string) (f method.Factor, up bool, n int) {
	type one struct {
		f  method.Factor
		up bool
	}
	all := map[one]bool{}
	for _, s := range subjects {
		for _, way := range []struct {
			words, moves string
			up           bool
		}{{upWord, rises, true}, {downWord, falls, false}} {
			if regexpFor(`\b`+way.words+`\s+(?:the\s+|of the\s+|in\s+)?`+s.words+`\b`).MatchString(low) || regexpFor(`\b`+s.words+way.moves).MatchString(low) {
				all[one{s.factor, way.up}] = true
				f, up = s.factor, way.up
			}
		}
	}
	for _, s := range subjects { // "butter makes it hold longer", and more of it longer still
		if !all[one{s.factor, false}] && regexpFor(`\b`+s.words+makes).MatchString(low) {
			all[one{s.factor, true}] = true
			f, up = s.factor, true
		}
	}
	return f, up, len(all)
}

var compiled = map[string]*pattern.Pattern{}

func init() {
	compiled["same"] = pattern.Of(`(?i)\b(at|with|for) (the same|both|equal|every|each|all|a fixed|constant)\b`)
	for _, s := range subjects {
		compiled[`\b`+s.words+`\b`] = pattern.Of(`(?i)\b` + s.words + `\b`)
		for _, way := range []string{rises, falls, makes} {
			compiled[`\b`+s.words+way] = pattern.Of(`(?i)\b` + s.words + way)
		}
		for _, way := range []string{upWord, downWord} {
			expr := `\b` + way + `\s+(?:the\s+|of the\s+|in\s+)?` + s.words + `\b`
			compiled[expr] = pattern.Of(`(?i)` + expr)
		}
	}
}

func regexpFor(expr string) *pattern.Pattern { return compiled[expr] }

// Direction holds "more butter held longer" against the trials.
func Direction(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	factor, up, has := change(s.Low)
	m, better, says := effect(s.Low)
	if !has || m == evidence.NoMeasure || sentence.Unsure.MatchString(s.Low) || s.Denied() {
		return f, false
	}
	d := j.DesignOf(s)
	if d == nil {
		return f, false
	}
	if !d.Varies(factor) || !d.Separates(factor) {
		return j.notShown(s, d, factor)
	}
	part := j.spanOf(s, d, factor)
	with, against, n := j.pairs(d, factor, m, up == better, part)
	switch {
	case n == 0:
		return f, false
	case against > 0 && with == 0:
		return ground.About(fmt.Sprintf("“%s”: in your own trials it is the other way round: where only the %s was changed, %s.", s.Said, factor, j.example(d, factor, m, part)), s, "the other way round").Unless(j.Slipped()), true
	case against > with:
		return ground.About(fmt.Sprintf("“%s”: %d of your comparisons say so and %d say the other. Which do you rest it on?", s.Said, with, against), s, "the other way round"), true
	case with == 0 && against == 0 && !anyRange.MatchString(s.Low):
		return ground.About(fmt.Sprintf("“%s”: %s differs by no more than makings of one formula do. Is there a difference?", s.Said, says), s, "within the scatter"), true
	}
	return f, false
}

var (
	fromTo  = pattern.Of(`(?i)\b(?:from|between|in)\s+(?:trial\s+|test\s+)?([a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\s*(?:to|and|–|-|until|till|through)\s*(?:trial\s+|test\s+)?([a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\b`)
	levels  = pattern.Of(`(?i)\b(?:from|between)\s+(?:about\s+|blend\s+)?(?:hlb\s+)?(\d+(?:[.,]\d+)?)\s*%?\s*(?:to|and|–|-)\s*(\d+(?:[.,]\d+)?)`)
	upUntil = pattern.Of(`(?i)\b(?:up to|above|over|below|under|beyond|past|after|until|at first|first|then|again)\b`)
)

// spanOf are the trials that a sentence keeps to, "from T3 to T6" or "between HLB 5 and
// 8"; nil where it speaks of all. A span that is not understood holds no trial.
func (j *judge) spanOf(s sentence.Sentence, d *method.Design, f method.Factor) map[int]bool {
	if m := fromTo.FindStringSubmatch(s.Text); m != nil {
		a, b := j.Only(s, "trial "+m[1]), j.Only(s, "trial "+m[2])
		from, to := slices.Index(d.Trials, a), slices.Index(d.Trials, b)
		if a != nil && b != nil && from >= 0 && to >= 0 {
			span := map[int]bool{}
			for i := min(from, to); i <= max(from, to); i++ {
				span[i] = true
			}
			return span
		}
	}
	span := map[int]bool{}
	if m := levels.FindStringSubmatch(s.Text); m != nil {
		low, high := ground.FirstNumber(m[1:2]), ground.FirstNumber(m[2:3])
		for i := range d.Trials {
			if v := d.At(i, f); v >= min(low, high)-0.2 && v <= max(low, high)+0.2 {
				span[i] = true
			}
		}
		return span
	}
	if upUntil.MatchString(s.Low) {
		return span
	}
	return nil
}

// notShown is a claim on a factor that the trials cannot show: it was hardly changed, or
// never without another.
func (j *judge) notShown(s sentence.Sentence, d *method.Design, factor method.Factor) (f finding.Found, ok bool) {
	if d.Varies(factor) {
		return ground.About(fmt.Sprintf("“%s”: whenever the %s changed, %s changed too, so these trials do not show which of them did it. Change one of them alone.", s.Said, factor, say.List(d.Beside(factor))), s, "changed together").
			As(criteria.OneChange, graded.Method).Surely(), true
	}
	if low, high, known := d.Range(factor); known && (high > low || len(d.Trials) > 2) {
		return ground.About(fmt.Sprintf("“%s”: the %s was hardly changed (%s to %s). Which trials show it?", s.Said, factor, say.Number(low), say.Number(high)), s, "not tried"), true
	}
	return f, false
}

// effect is the result that a sentence claims: of which measure, and whether it grew.
func effect(low string) (m evidence.Measure, grew bool, says string) {
	n := 0
	for _, e := range []struct {
		re   *pattern.Pattern
		m    evidence.Measure
		grew bool
		says string
	}{{holdUp, evidence.Hold, true, "the hold"}, {holdDown, evidence.Hold, false, "the hold"}, {sentence.Longer, evidence.Hold, true, "the hold"}, {sentence.Shorter, evidence.Hold, false, "the hold"}, {drainsLo, evidence.Drained, false, "the drainage"}, {drainsHi, evidence.Drained, true, "the drainage"}} {
		if e.re.MatchString(low) {
			if n > 0 && m == e.m && grew != e.grew {
				return evidence.NoMeasure, false, "" // "first longer, then shorter"
			}
			if n == 0 {
				m, grew, says = e.m, e.grew, e.says
			}
			n++
		}
	}
	if n > 3 {
		return evidence.NoMeasure, false, ""
	}
	return m, grew, says
}

// pairs counts the pairs of trials that differ in a factor alone, and whose results go
// with or against a claim by more than the scatter.
func (j *judge) pairs(d *method.Design, f method.Factor, m evidence.Measure, rises bool, part map[int]bool) (with, against, n int) {
	margin := j.Margin(d, m)
	alone := false
	for a := range d.Trials {
		for b := range a {
			alone = alone || d.Alone(a, b, f)
		}
	}
	for a, x := range d.Trials {
		for b := range a {
			y := d.Trials[b]
			if part != nil && !(part[a] && part[b]) || alone && !d.Alone(a, b, f) || !d.Differ(a, b, f) || d.Same(a, b) {
				continue
			}
			lowA, highA, okA := j.Seen(x, m)
			lowB, highB, okB := j.Seen(y, m)
			if !okA || !okB {
				continue
			}
			n++
			up := d.At(a, f) > d.At(b, f)
			switch {
			case lowA-highB > margin:
				count(up == rises, &with, &against)
			case lowB-highA > margin:
				count(up != rises, &with, &against)
			}
		}
	}
	return with, against, n
}

func count(yes bool, with, against *int) {
	if yes {
		*with++
	} else {
		*against++
	}
}

// example is the pair of trials that shows a factor most plainly.
func (j *judge) example(d *method.Design, f method.Factor, m evidence.Measure, part map[int]bool) string {
	best, words := 0.0, ""
	for a, x := range d.Trials {
		for b := range a {
			y := d.Trials[b]
			lowA, _, okA := j.Seen(x, m)
			lowB, _, okB := j.Seen(y, m)
			if !okA || !okB || part != nil && !(part[a] && part[b]) || !d.Alone(a, b, f) || math.Abs(lowA-lowB) <= best {
				continue
			}
			best = math.Abs(lowA - lowB)
			words = fmt.Sprintf("trial %s (%s %s) has %s %s and trial %s (%s) %s", y.ID, f, say.Number(d.At(b, f)), say.Number(lowB), j.Unit(m), x.ID, say.Number(d.At(a, f)), say.Number(lowA))
		}
	}
	return words
}
