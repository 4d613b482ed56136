package claim

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var (
	longerThan  = pattern.Of(`(?i)\b(held|holds|lasted|lasts|stood|stands|kept|stayed)\b[^.]{0,24}\b(longer|shorter)( time)? than\b`)
	drainedThan = pattern.Of(`(?i)\b(drained|drains|wept|leaked)\b[^.]{0,16}\b(less|more) than\b`)
	byMinutes   = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:min|minutes)\s+(?:longer|shorter|more|less)`)
)

// comparison is what a sentence compares two trials by: a measure, and which way.
func comparison(s sentence.Sentence) (m evidence.Measure, sign float64) {
	for _, one := range []struct {
		re *pattern.Pattern
		m  evidence.Measure
	}{{longerThan, evidence.Hold}, {drainedThan, evidence.Drained}} {
		if p := one.re.FindStringSubmatch(s.Low); p != nil {
			m, sign = one.m, 1
			if w := strings.ToLower(p[2]); w == "shorter" || w == "less" {
				sign = -1
			}
		}
	}
	return m, sign
}

// compared holds "trial 3 held 5 min longer than the control" against the two.
func (j *judge) compared(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	m, sign := comparison(s)
	at := strings.Index(s.Low, " than ") // one blank stands before the text
	if m == evidence.NoMeasure || at < 0 || at > len(s.Text) || s.NotClaimed() {
		return f, false
	}
	before, after := j.Only(s, s.Text[:at]), j.Only(s, s.Text[at:])
	if before == nil || after == nil || before == after {
		return f, false
	}
	a, aHigh, ok1 := j.Seen(before, m)
	b, bHigh, ok2 := j.Seen(after, m)
	if !ok1 || !ok2 {
		return f, false
	}
	if max(sign*(a-bHigh), sign*(aHigh-b)) < -j.Margin(j.Design(before.Table), m) {
		return ground.About(fmt.Sprintf("“%s”: in your log trial %s has %s %s and trial %s %s %s.", s.Said, before.ID, say.Number(a), j.Unit(m), after.ID, say.Number(b), j.Unit(m)), s, "comparison").Surely(), true
	}
	if m == evidence.Hold && a == aHigh && b == bHigh {
		return j.byHowMuch(s, before, after, a, b)
	}
	return f, false
}

// byHowMuch holds "5 min longer" against two holds.
func (j *judge) byHowMuch(s sentence.Sentence, x, y *handin.Trial, a, b float64) (f finding.Found, ok bool) {
	p := byMinutes.FindStringSubmatch(s.Low)
	if p == nil {
		return f, false
	}
	v, err := strconv.ParseFloat(strings.Replace(p[1], ",", ".", 1), 64)
	if err != nil || math.Abs(math.Abs(a-b)-v) <= 0.51 || j.meansDiffer(x, y, v) {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: by your log it is %s − %s = %s min.", s.Said, say.Number(a), say.Number(b), say.Number(a-b)), s, "value quoted"), true
}

// meansDiffer reports that the means of the two formulas differ by so much.
func (j *judge) meansDiffer(x, y *handin.Trial, by float64) bool {
	a, n := j.OfFormula(x, evidence.Hold)
	b, k := j.OfFormula(y, evidence.Hold)
	return n > 0 && k > 0 && math.Abs(math.Abs(a-b)-by) <= 0.51
}

var (
	noneSo = pattern.Of(`(?i)\b(none of (?:the|my|our) (?:trials|foams|mixes|runs)|no (?:trial|foam|mix|run))s? (clogged|split|broke)`)
	allOut = pattern.Of(`(?i)\ball (?:of )?(?:the |my |our )?(?:\d+ |four |five |six )?(?:trials|foams|mixes|runs)? ?(?:with [^.;]{1,70}? )?(?:came out|were dispensed)`)
)

// against holds "none clogged" and "all came out" against all trials.
func (j *judge) against(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if sentence.Unsure.MatchString(s.Low) {
		return f, false
	}
	if x := j.speaksAgainst(s); x != nil {
		return ground.About(fmt.Sprintf("“%s”: your log says otherwise of trial %s.", s.Said, x.ID), s, "miscounted").Surely(), true
	}
	return f, false
}

// everyTwice claims that all was made more than once.
var everyTwice = pattern.Of(`(?i)\b(?:every|each|all)\b[^.;]{0,40}\b(?:twice|two times|three times|2 times|2x|repeated|in duplicate|in triplicate|double)\b|\b(?:repeated|duplicated|made twice) (?:every|each|all)\b`)

// allTwice holds "every pot was made twice" against the formulas of the trials.
func (j *judge) allTwice(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !everyTwice.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) || s.Denied() {
		return f, false
	}
	once, all := 0, 0
	for i := range j.Designs {
		d := &j.Designs[i]
		if d.ReadTwice() {
			return f, false
		}
		for _, g := range d.Groups() {
			if all++; len(g) == 1 {
				once++
			}
		}
	}
	if 2*once <= all {
		return f, false
	}
	f = ground.About(fmt.Sprintf("“%s”: by the grams %d of your %d formulas were made once only.", s.Said, once, all), s, "miscounted").As(criteria.Repeats, graded.Method)
	return f, true
}

// speaksAgainst is a trial that speaks against "none clogged" or "all came out".
func (j *judge) speaksAgainst(s sentence.Sentence) *handin.Trial {
	none, all := noneSo.FindStringSubmatch(s.Low), allOut.MatchString(s.Low)
	for _, x := range j.Work.Trials() {
		clogged := x.CameOut == trial.No
		if all && clogged && !(x.Bare() && strings.Contains(s.Low, "with ")) || none != nil && (none[2] == "clogged" && clogged || none[2] != "clogged" && x.Broke == trial.Yes) {
			return x
		}
	}
	return nil
}

var (
	drainedSaid = pattern.Of(`(?i)\b(?:drained|drainage|wept|leaked)\b[^.;%]{0,20}?(\d+(?:[.,]\d+)?)\s*%|(\d+(?:[.,]\d+)?)\s*% (?:drained|drainage|drain)`)
	timesAs     = pattern.Of(`(?i)\b(?:twice|half|double|\d+(?:[.,]\d+)?|two|three|four|five|ten)(?: times)? as\b`)
	sameWords   = pattern.Of(`(?i)(\balike\b|\bas (?:long|good|stable|firm) as\b|\b(?:exactly|just|quite) as long\b|\bequally (long|well|good)\b|\bthe same (hold|time|length)\b|\bno difference\b|\bdid not differ\b|\bidentical\b)`)
)

// notAlike denies that trials are alike.
var notAlike = pattern.Of(`(?i)\b(?:not|never|n't) (?:quite |nearly |half )?(?:alike|as (?:long|good|stable|firm) as)\b`)

// exactly leaves no room for what makings differ by.
var exactly = pattern.Of(`(?i)\bexactly (?:as (?:long|well|good)|the same|alike|equal)\b`)

// quotedPercent holds percents that a sentence gives for one trial against its log: what
// drained, and its fat.
func (j *judge) quotedPercent(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	x := j.Only(s, s.Text)
	if x == nil || sentence.Unsure.MatchString(s.Low) || s.Denied() || roughly.MatchString(s.Low) {
		return f, false
	}
	if m := drainedSaid.FindStringSubmatch(s.Low); m != nil {
		v := ground.FirstNumber(m[1:])
		low, high, known := j.Seen(x, evidence.Drained)
		if known && (v < low-0.51 || v > high+0.51) && !ground.InRow(x, v) {
			return ground.About(fmt.Sprintf("“%s”: your log has %s %% for trial %s.", s.Said, say.Number(low), x.ID), s, "value quoted"), true
		}
	}
	m := hlbSaid.FindStringSubmatch(s.Text)
	if of := hlbOf.FindStringSubmatch(s.Text); of != nil {
		m = of
	}
	if m != nil && !ofIngredient.MatchString(s.Text) {
		if f, ok := j.quotedHLB(s, x, ground.FirstNumber(m[1:])); ok {
			return f, true
		}
	}
	if m := fatSaid.FindStringSubmatch(s.Text); m != nil {
		return j.quotedFat(s, x, ground.FirstNumber(m[1:]))
	}
	return f, false
}

// hlbOf is the HLB of a trial that is named before the number: "the blend HLB of T3 is 8.7".
var hlbOf = pattern.Of(`(?i)\bhlb (?:of|in|for|with) (?:the )?(?:trial |mix |foam |card )?[\p{L}]{0,2}\d+[a-z]? (?:is|was|=|comes to|came to)\s*(?:about )?(\d+(?:[.,]\d+)?)`)

// quotedHLB holds the blend HLB that a sentence gives for a trial against its grams and its row.
func (j *judge) quotedHLB(s sentence.Sentence, x *handin.Trial, v float64) (f finding.Found, ok bool) {
	d := j.Design(x.Table)
	hlb := d.At(slices.Index(d.Trials, x), method.HLB)
	if math.IsNaN(hlb) || math.IsNaN(v) || math.Abs(v-hlb) <= 0.5 || slices.ContainsFunc(x.Table.All(column.BlendHLB), func(c *handin.Column) bool {
		return math.Abs(c.Cells[x.Index].Value-v) <= 0.06
	}) {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: by its grams trial %s has an HLB of %s.", s.Said, x.ID, say.Number(math.Round(10*hlb)/10)), s, "value quoted"), true
}

// quotedFat holds the fat that a sentence gives for a trial against its grams.
func (j *judge) quotedFat(s sentence.Sentence, x *handin.Trial, v float64) (f finding.Found, ok bool) {
	d := j.Design(x.Table)
	fat := d.At(slices.Index(d.Trials, x), method.Fat)
	weighed := ground.WeighedFatOf(x)
	if math.IsNaN(fat) || math.Abs(v-fat) <= 2 || math.Abs(v-weighed) <= 2 || ground.InRow(x, v) {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: by its grams trial %s has %s %% fat.", s.Said, x.ID, say.Number(math.Round(10*fat)/10)), s, "value quoted"), true
}

// alike asks of trials that are called alike and differ by more than makings of one
// formula do.
func (j *judge) alike(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !sameWords.MatchString(s.Low) || timesAs.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) || notAlike.MatchString(s.Low) {
		return f, false
	}
	named := sentence.Mentions(j.Work, s)
	if len(named) < 2 {
		return f, false
	}
	low, high := math.Inf(1), math.Inf(-1)
	var d *method.Design
	for _, m := range named {
		if m.Missing || len(m.Trials) != 1 {
			return f, false
		}
		d = j.Design(m.Trials[0].Table)
		l, h, known := j.Seen(m.Trials[0], evidence.Hold)
		if !known {
			return f, false
		}
		low, high = min(low, h), max(high, l)
	}
	if exactly.MatchString(s.Low) && high-low > max(1, high/10) {
		return ground.About(fmt.Sprintf("“%s”: they held %s and %s min. Exactly?", s.Said, say.Number(low), say.Number(high)), s, "called alike"), true
	}
	if margin := j.Margin(d, evidence.Hold); high-low > 1.5*margin+0.5 {
		return ground.About(fmt.Sprintf("“%s”: they held from %s to %s min, and makings of one formula differ by %s. Alike in what?", s.Said, say.Number(low), say.Number(high), say.Number(margin)), s, "called alike"), true
	}
	return f, false
}

// optimum asks of a level that is called the best although another level held longer.
func (j *judge) optimum(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	best := sentence.Longest.MatchString(s.Low) || sentence.BestWord.MatchString(s.Low) && !ground.Otherwise.MatchString(s.Low)
	d := j.DesignOf(s)
	if f, ok := j.neverChanged(s, d); ok {
		return f, true
	}
	if !best || d == nil || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Planned.MatchString(s.Low) || len(sentence.Mentions(j.Work, s)) > 0 {
		return f, false
	}
	for _, one := range []struct {
		factor method.Factor
		re     *pattern.Pattern
	}{{method.HLB, hlbSaid}, {method.Fat, fatSaid}, {method.Emulsifier, emSaid}} {
		m := one.re.FindStringSubmatch(s.Text)
		if m == nil {
			continue
		}
		if here, best := j.longestAt(d, one.factor, ground.FirstNumber(m[1:])); !math.IsInf(here, 0) && best-here > j.Margin(d, evidence.Hold) {
			return ground.About(fmt.Sprintf("“%s”: there the longest hold is %s min, and you have %s min elsewhere. Best by what?", s.Said, say.Number(here), say.Number(best)), s, "another level did better"), true
		} else if v := ground.FirstNumber(m[1:]); math.IsInf(here, 0) && !math.IsInf(best, 0) && d.Varies(one.factor) && !roundly.MatchString(s.Low) && !j.isOwn(v, s, d) && !(one.factor == method.HLB && ofIngredient.MatchString(s.Text)) {
			if below, above, ok := nearest(d, one.factor, v); ok {
				return ground.About(fmt.Sprintf("“%s”: no trial has it; of the %s you tried %s and %s beside it. Which trials show it?", s.Said, one.factor, say.Number(below), say.Number(above)), s, "not tried").As(criteria.OneChange, graded.Method), true
			}
		}
	}
	return f, false
}

// roundly are words by which a level is guessed from those beside it, or is a bound of them.
var roundly = pattern.Of(`(?i)(\b(?:about|around|roughly|near(?:ly)?|between|approximately|ca|circa|some|perhaps|probably|likely|from|up to|above|below|over|under|at least|at most|more than|less than|to)\b|~|≈|±|\d\s*(?:-|–|to)\s*\d)`)

// nearest are the levels tried below and above one that was not, false where it lies outside of them.
func nearest(d *method.Design, f method.Factor, v float64) (below, above float64, ok bool) {
	below, above = math.Inf(-1), math.Inf(1)
	for i, x := range d.Trials {
		switch at := d.At(i, f); {
		case x.Bare() || math.IsNaN(at):
		case at <= v:
			below = max(below, math.Round(10*at)/10)
		default:
			above = min(above, math.Round(10*at)/10)
		}
	}
	return below, above, !math.IsInf(below, 0) && !math.IsInf(above, 0)
}

// right are words for the level that is to be taken, of a factor beside them.
var (
	rightHLB  = pattern.Of(`(?i)\b(?:best|right|ideal|optimal|optimum|perfect|correct|proper|most suitable)\s+(?:blend )?hlb\b|\bhlb\b[^;,]{0,24}?\b(?:is|was|turned out|proved)\s+(?:clearly |surely |certainly )?(?:the |to be the )?(?:best|right|ideal|optimal|optimum|perfect|correct|proper|most suitable)\b|\bother hlbs?\b|\boptimum\b[^.;]{0,12}\bhlb\b|\bhlb\b` + thanOther + `|` + otherOf + `(?:blend )?hlbs?\b` + doesWorse)
	rightDose = pattern.Of(`(?i)\b(?:best|right|ideal|optimal|optimum|perfect|correct|proper)\s+(?:emulsifier (?:dose|amount|content)|amount of emulsifiers?|dose)\b|\b\d+(?:[.,]\d+)?\s*% (?:of )?emulsifiers?\b[^.;,]{0,12}\b(?:is|was)\s+(?:the )?(?:best|right|ideal|optimal|optimum|perfect|correct)\b|\bemulsifiers?\b` + thanOther + `|` + otherOf + `(?:amount of |dose of )?emulsifiers?\b` + doesWorse)
	rightFat  = pattern.Of(`(?i)\b(?:best|right|ideal|optimal|optimum|perfect|correct|proper)\s+(?:fat (?:content|percent(?:age)?|level)|amount of (?:fat|butter|oil))\b|\b\d+(?:[.,]\d+)?\s*% (?:of )?fat\b[^.;,]{0,12}\b(?:is|was)\s+(?:the )?(?:best|right|ideal|optimal|optimum|perfect|correct)\b|\bfat\b` + thanOther + `|` + otherOf + `(?:fat|butter)\b` + doesWorse)
)

// thanOther holds a level against others: "an HLB of 7 is better than a lower one".
const (
	thanOther = `(?:[^.;,]|[.,]\d){0,30}\b(?:better|longer|firmer|stabler|more stable)(?: foams?)? than (?:with |at )?(?:an? |any |the |all )*(?:lower|higher|other|another|smaller|larger|less|more)\b`
	otherOf   = `\b(?:an? |any |the )?(?:lower|higher|other|another|more|less)(?: or (?:an? )?(?:lower|higher|more|less))? `
	doesWorse = `[^.;,]{0,16}\b(?:is|are|was|were|holds?|gives?|gave|makes?|works?)\b[^.;,]{0,12}\b(?:worse|shorter|weaker|no better)\b`
)

// neverChanged asks of a level that is called the right one where no other was tried.
func (j *judge) neverChanged(s sentence.Sentence, d *method.Design) (f finding.Found, ok bool) {
	if d == nil || len(d.Trials) < 3 || sentence.Unsure.MatchString(s.Low) || ground.Planned.MatchString(s.Low) || s.Denied() {
		return f, false
	}
	for _, one := range []struct {
		factor method.Factor
		re     *pattern.Pattern
	}{{method.HLB, rightHLB}, {method.Emulsifier, rightDose}, {method.Fat, rightFat}} {
		if one.re.MatchString(s.Low) && !d.Tried(one.factor) {
			return ground.About(fmt.Sprintf("“%s”: the %s was the same in every trial, so nothing shows that another is worse. Which trials show it?", s.Said, one.factor), s, "not tried").As(criteria.OneChange, graded.Method), true
		}
	}
	return f, false
}

// longestAt is the longest hold at a level of a factor, and of all.
func (j *judge) longestAt(d *method.Design, factor method.Factor, level float64) (here, best float64) {
	here, best = math.Inf(-1), math.Inf(-1)
	for i, x := range d.Trials {
		low, high, known := j.Seen(x, evidence.Hold)
		if !known {
			continue
		}
		best = max(best, low)
		at := math.Abs(d.At(i, factor)-level) <= 0.6
		switch factor {
		case method.Emulsifier:
			at = math.Abs(d.At(i, factor)-level) <= max(0.06, level/20)
		case method.Fat:
			at = math.Abs(d.At(i, factor)-level) <= 2 || math.Abs(ground.WeighedFatOf(x)-level) <= 1 || ground.InRow(x, level)
		}
		if at {
			here = max(here, high)
		}
	}
	return here, best
}
