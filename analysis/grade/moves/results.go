package moves

import (
	"fmt"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// Two results may be said to go together: "the longer a foam held, the less it drained".

const (
	long  = `(?:the longer\b[^,;]{0,30}\b(?:hold|holds|held|stand|stands|stood|last|lasts|lasted|it)|foams? (?:that|which) (?:held|stood|lasted) (?:the )?longe(?:r|st))`
	short = `(?:the shorter\b[^,;]{0,30}\b(?:hold|holds|held|stand|stands|stood|last|lasts|lasted|it)|foams? (?:that|which) (?:held|stood|lasted) (?:the )?shorte(?:r|st))`
	wet   = `(?:the more\b[^,;]{0,24}\b(?:drain\w*|drip\w*|liquid|leak\w*)|drained (?:the )?most|foams? (?:that|which) drained (?:the )?(?:most|more))`
	dry   = `(?:the less\b[^,;]{0,24}\b(?:drain\w*|drip\w*|liquid|leak\w*)|drained (?:the )?least|foams? (?:that|which) drained (?:the )?(?:least|less))`
	then  = `[^;.]{0,24}?`
)

var (
	longWet = pattern.Of(`(?i)` + long + then + wet + `|` + wet + then + `(?:the longer|held (?:the )?longe(?:r|st))|` + short + then + dry + `|` + dry + then + `(?:the shorter|held (?:the )?shorte(?:r|st))`)
	longDry = pattern.Of(`(?i)` + long + then + dry + `|` + dry + then + `(?:the longer|held (?:the )?longe(?:r|st))|` + short + then + wet + `|` + wet + then + `(?:the shorter|held (?:the )?shorte(?:r|st))`)
)

// Results holds what is said of drainage against hold against all pairs of mixes that differ in both by more
// than makings of one formula do.
func Results(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	up, down := longWet.MatchString(s.Low), longDry.MatchString(s.Low)
	d := j.DesignOf(s)
	if up == down || d == nil || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Planned.MatchString(s.Low) || sentence.Narrowed.MatchString(s.Low) || ofBoth.MatchString(s.Low) || len(sentence.Mentions(j.Work, s)) > 0 {
		return f, false
	}
	with, against := 0, 0
	shown := ""
	for a, x := range d.Trials {
		for _, y := range d.Trials[:a] {
			if x.Bare() || y.Bare() || x.IsControl() || y.IsControl() {
				continue
			}
			held, ok1 := j.apart(y, x, evidence.Hold)
			drained, ok2 := j.apart(y, x, evidence.Drained)
			if !ok1 || !ok2 {
				continue
			}
			if (held > 0) == (drained > 0) == up {
				with++
				continue
			}
			if against++; shown == "" {
				shown = fmt.Sprintf("%s, and %s", j.both(y), j.both(x))
			}
		}
	}
	if against <= with {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: %d of your comparisons say so and %d say the other: %s. Which do you rest it on?", s.Said, with, against, shown), s, "the other way round"), true
}

// apart is by how much a result of one trial exceeds that of another, false where that is no more than makings
// of one formula differ by.
func (j *judge) apart(x, y *handin.Trial, m evidence.Measure) (by float64, ok bool) {
	l1, h1, ok1 := j.Seen(x, m)
	l2, h2, ok2 := j.Seen(y, m)
	margin := j.Margin(j.Design(x.Table), m) + 1e-9
	switch {
	case !ok1 || !ok2:
		return 0, false
	case l1-h2 > margin:
		return l1 - h2, true
	case l2-h1 > margin:
		return h1 - l2, true
	}
	return 0, false
}

// both are the hold and the drainage of a trial in words.
func (j *judge) both(x *handin.Trial) string {
	held, _, _ := j.Seen(x, evidence.Hold)
	drained, _, _ := j.Seen(x, evidence.Drained)
	return fmt.Sprintf("trial %s held %s min and drained %s %s", x.ID, say.Number(held), say.Number(drained), j.Unit(evidence.Drained))
}
