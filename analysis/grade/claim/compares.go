package claim

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

// What a conclusion rests on: two trials that are said to be of one mix, or to differ in one thing, and makings
// that are said to count.

var (
	oneMix    = pattern.Of(`(?i)\b(?:is|was|are|were)\s+(?:just |only |simply )?(?:a |an |the |my |our |exact )*(?:repeats?|repetitions?|replicates?|duplicates?|same (?:mix|recipe|formula)|of one (?:mix|recipe|formula)|identical (?:mix(?:es)?|recipes?|formulas?))\b`)
	onlyIn    = pattern.Of(`(?i)\bdiffer(?:s|ed)? (?:from (?:each other|one another|trial \w+) )?(?:only|just|solely|in nothing but) (?:in|by)?\b(.*)$|\b(?:only|sole) difference (?:between|of|is)\b(.*)$|\bin nothing but\b(.*)$`)
	picked    = pattern.Of(`(?i)\b(?:count(?:ed)?|took|take|used?|kept|keep|report(?:ed)?|chose|wrote)\b[^.;]{0,24}\bthe (?:better|best|longer|longest|higher|highest|drier|driest|nicer) (?:one |value |result |number |hold |time )?(?:of|from) (?:the |both |each |all |my |every |these |those )*(?:\w+ )?(?:repeats?|repetitions?|pairs?|two|three|makings?|squirts?|runs?)\b|\bof (?:each|every|both|the|all|my) (?:\w+ )?(?:pairs?|repeats?|two|makings?)\b[^.;]{0,30}\b(?:count(?:ed)?|took|take|used?|kept|keep)\b[^.;]{0,12}\bthe (?:better|best|longer|longest|higher|drier|nicer)\b`)
	leftAside = pattern.Of(`(?i)\b(?:left out|leave out|(?:dropped|ignored?|removed?) (?:trials?|foams?|repeats?|results?|values?|numbers?|it|them|this one|that one|the (?:trials?|repeats?|results?|values?|first|second|other|one))|excluded?|crossed out|(?:did|do) not count|(?:didn't|don't) count|not counted)\b[^;.]{0,60}\b(?:(?:did|does)(?: not|n't) (?:fit|match|suit|agree)|too (?:short|low|high|long|different|bad|far)|fell out of line|spoil(?:s|t|ed)?|disturb(?:s|ed)?|ruin(?:s|ed)?|out of line|off the (?:line|curve|trend))\b`)
	nobody    = pattern.Of(`(?i)\b(?:not|never|n't|nobody|without) (?:\w+ )?(?:take|took|taken|use[d]?|choose|chose|pick\w*|keep|kept|leave|left|drop\w*|ignor\w*|exclud\w*|remov\w*)\b`)
)

// compares asks of two trials that are called repeats, or said to differ in one thing, and do not by their grams.
func (j *judge) compares(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	m := onlyIn.FindStringSubmatch(s.Low)
	same := oneMix.MatchString(s.Low)
	named := sentence.Mentions(j.Work, s)
	d := j.OneDesign(named)
	if m == nil && !same || d == nil || len(named) != 2 || len(named[0].Trials) > 1 || len(named[1].Trials) > 1 || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Planned.MatchString(s.Low) {
		return f, false
	}
	a, b := slices.Index(d.Trials, named[0].Trials[0]), slices.Index(d.Trials, named[1].Trials[0])
	all, known := d.Changed(a, b)
	if !known || len(all) == 0 {
		return f, false
	}
	if m == nil {
		return ground.About(fmt.Sprintf("“%s”: trials %s and %s differ in %s. A repeat is like for like.", s.Said, named[0].ID, named[1].ID, say.List(namesOf(all))), s, "no repeat").As(criteria.Repeats, graded.Method), true
	}
	var of []method.Thing
	for _, c := range creditable {
		if creditNear[c.name].MatchString(m[1] + m[2] + m[3]) {
			of = append(of, c.varied)
		}
	}
	if len(of) != 1 || len(all) == 1 && all[0] == of[0] || of[0].Factor == method.Fat && d.Alone(a, b, method.Fat) {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: by the log trials %s and %s differ in %s.", s.Said, named[0].ID, named[1].ID, say.List(namesOf(all))), s, "changed together").As(criteria.OneChange, graded.Method), true
}

// forSure are words by which one of two trials is said to be more than a little better, by its hold.
var forSure = pattern.Of(`(?i)\b(?:clearly|significantly|really|definitely|far|much|truly|considerably|markedly|certainly) (?:better|longer|stabler|more stable|firmer)\b[^.;]{0,16}\bthan\b|\b(?:held|stood|lasted) (?:clearly|significantly|really|definitely|far|much|considerably|markedly) longer than\b`)

// clearly asks of two trials that are told apart for sure, and differ by no more than makings of one formula do.
func (j *judge) clearly(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	named := sentence.Mentions(j.Work, s)
	d := j.OneDesign(named)
	if !forSure.MatchString(s.Low) || d == nil || len(named) != 2 || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Otherwise.MatchString(s.Low) || !j.Repeats(d, evidence.Hold) {
		return f, false
	}
	l1, h1, ok1 := j.Seen(named[0].Trials[0], evidence.Hold)
	l2, h2, ok2 := j.Seen(named[1].Trials[0], evidence.Hold)
	margin := j.Margin(d, evidence.Hold)
	if !ok1 || !ok2 || l1 != h1 || l2 != h2 || math.Abs(l1-l2) > margin+1e-9 {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: trial %s has %s min and trial %s %s, and makings of one formula differ by up to %s. Is there a difference?", s.Said, named[0].ID, say.Number(l1), named[1].ID, say.Number(l2), say.Number(margin)), s, "within the scatter"), true
}

// choosing asks of a result that was picked out of several for being the better one.
func (j *judge) choosing(s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if sentence.Unsure.MatchString(s.Low) || ground.Planned.MatchString(s.Low) || nobody.MatchString(s.Low) {
		return f, false
	}
	switch {
	case picked.MatchString(s.Low):
		return ground.About(fmt.Sprintf("“%s”: whoever counts the better of two makings shows the luck of one. What is the mean of all?", s.Said), s, "picked").As(criteria.Repeats, graded.Method), true
	case leftAside.MatchString(s.Low):
		return ground.About(fmt.Sprintf("“%s”: that a result does not fit is no reason to leave it out. What went wrong with it, and what do all of them show?", s.Said), s, "picked").As(criteria.Repeats, graded.Method), true
	}
	return f, false
}
