package ground

import (
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/rule"
	"foamfield/analysis/grade/tongue"
	"foamfield/ingest/pattern"
)

// End is which end of a measure a sentence claims for a trial.
type End struct {
	Of   evidence.Measure
	Most bool
	Says string
}

// OwnRule is what a student calls a success, and the best.
type OwnRule struct {
	rule.Rule
	By *End // best is what does most by it; nil where nothing is said
}

// RuleOf is the student's own rule of success: on a Targets sheet, or in words.
func RuleOf(w *handin.Work) OwnRule {
	return OwnRule{Rule: rule.Of(w), By: bestBy(w)}
}

var (
	bestRule  = pattern.Of(`(?i)(\b(rule|criterion|criteria)\b.{0,20}\bbest\b|\bbest\b.{0,12}(=|:|\bmeans\b|\bis the (one|foam|trial)\b)|\b(our|my|the) rule\b|\brule:)`)
	byHold    = pattern.Of(`(?i)\b(longest|long) ?(hold|holding|stand|standing|time)?\b|\bholds? (the )?longest|\bstands? (the )?longest`)
	byDrained = pattern.Of(`(?i)\b(least|lowest|less|smallest) (drip|drain|drainage|drained|liquid|serum|weep|loss)|\b(drains?|drips?|weeps?|loses?) (the )?least`)
)

// bestBy is what a student calls best, in a rule of words: "our rule: best = least drip".
// None where the rule names both, or two rules differ.
func bestBy(w *handin.Work) (by *End) {
	for _, p := range w.Words {
		text := p.Text
		if len(strings.Fields(text)) <= 6 {
			text += " " + p.Right
		}
		text = tongue.English(text)
		long, dry := byHold.MatchString(text), byDrained.MatchString(text)
		if p.Note != nil || !bestRule.MatchString(text) || long == dry {
			continue
		}
		e := End{Of: evidence.Hold, Most: true, Says: "held longest"}
		if dry {
			e = End{Of: evidence.Drained, Most: false, Says: "drained least"}
		}
		if by != nil && *by != e {
			return nil
		}
		by = &e
	}
	if by == nil {
		by = byAim(w)
	}
	return by
}

var (
	aimLabel = pattern.Of(`(?i)^\s*(?:(?:my|our|the) )?(?:aim|goal|question|research question|objective|purpose|ziel|frage|but|objetivo|obiettivo|scopo|doel)s?\s*[:?]?\s*`)
	aimedAt  = pattern.Of(`(?i)(\blongest\b|\bmost stable\b|\bas long as possible\b|\blängsten?\b|\bplus (?:stable|durable|longtemps)\b|\bmás (?:tiempo|estable|aguanta)\b|\bpiù (?:stabile|a lungo)\b|\blangste?\b)`)
	ranking  = pattern.Of(`(?i)\b(?:best|winner|wins|beste[rn]?|meilleure?|mejor|migliore)\b`)
)

// byAim is the hold where that is what a work was after, and no rule of it says what the best is by.
func byAim(w *handin.Work) *End {
	aimed := false
	for _, p := range w.Words {
		text := p.Text
		if len(strings.Fields(text)) <= 4 {
			text += " " + p.Right
		}
		text = tongue.English(text)
		switch {
		case p.Note != nil:
		case aimLabel.MatchString(text):
			aimed = aimed || aimedAt.MatchString(text) && !byDrained.MatchString(text)
		case ranking.MatchString(text) && ruleSaid.MatchString(text):
			return nil
		}
	}
	if !aimed {
		return nil
	}
	return &End{Of: evidence.Hold, Most: true, Says: "held longest"}
}

// ruleSaid opens a rule of success.
var ruleSaid = pattern.Of(`(?i)^\s*(?:(?:my|our|the) )?(?:success|successful|passes|passed|good|rule|criteri\w+|target|it is good|works|ok)\b`)

// Fails says how a trial surely fails a rule, "" if it may pass.
func (j *Judge) Fails(x *handin.Trial, r OwnRule) string {
	_, why := r.Judge(j.Trials, x)
	return why
}

// Passes reports a trial that surely passes a rule.
func (j *Judge) Passes(x *handin.Trial, r OwnRule) bool {
	v, _ := r.Judge(j.Trials, x)
	return v == rule.Passes
}
