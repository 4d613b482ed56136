package passed

import (
	"fmt"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
)

var (
	// noneIn is a foam of nothing but fat and water.
	noneIn   = pattern.Of(`(?i)\b(?:without (?:any |an |the |its |both )?emulsifiers?|with no emulsifiers?|no emulsifiers?:|the bare (?:mix|foam|cream)|unemulsified)\b`)
	notPass  = pattern.Of(`(?i)\b(?:(?:does|do|did|will|would|can|could)(?: not|n't) (?:even )?(?:pass|work|meet|make it|reach|succeed)|never (?:pass\w*|work\w*)|fails?|failed|(?:no|none|nothing)(?: foam| mix)? (?:pass\w*|work\w*)|misses|missed|not pass|not work|(?:is|was) (?:not|no) (?:a )?(?:success|good))\b`)
	ofOthers = pattern.Of(`(?i)\b(?:one|only|alone|gms|ester|lecithin|hlb)\b`)
)

// Bare holds "without emulsifier it does not pass" against the trials that have none.
func Bare(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !r.Set() || !noneIn.MatchString(s.Low) || !notPass.MatchString(s.Low) || ofOthers.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) || ground.Planned.MatchString(s.Low) {
		return f, false
	}
	for _, x := range g.Work.Trials() {
		if x.Bare() && g.Passes(x, r) {
			return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s, which has none, passes.", s.Said, r.Words(), x.ID), s, "own rule"), true
		}
	}
	return f, false
}
