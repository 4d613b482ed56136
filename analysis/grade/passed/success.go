package passed

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/grade/together"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var (
	worked = pattern.Of(`(?i)\b(besteh(?:en|t)|bestanden?|gelungen|riesc(?:e|ono)|riuscit[aoie]|réussi(?:t|ssent|e|es)?|passent?|pasan?|cumplen?|geslaagd|slagen|slaagt|works|work|pass|succeed|meet|worked|succeeded|succeeds|(?:is|was|are|were|be|as|count(?:s|ed)? as|call it|makes it) (?:clearly |so |then |thus |therefore |also |still )?(?:a|an|my|our|the|one|another)?\s?(?:\w+ )?success(?:es)?|(?:is|was|were|are) (?:a|my|our) (?:clear )?pass|successful|meets|met|fulfils|fulfilled|passed|passes|good by (?:my|our|the) rule)\b`)
	failed = pattern.Of(`(?i)\b(failed|fails|did not work|didn't work|does not work|missed the target|misses the target)\b`)
)

// Success holds "trial 4 works" against the student's own rule.
func Success(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	if !r.Set() || sentence.Unsure.MatchString(s.Low) || sentence.Narrowed.MatchString(s.Low) {
		return f, false
	}
	named := sentence.Mentions(j.Work, s)
	yes, no := worked.MatchString(s.Low) && !s.Denied(), failed.MatchString(s.Low)
	if yes == no {
		return f, false
	}
	single := len(named)
	if yes {
		for _, g := range together.Groups(j.Work, s) { // "M4 to M7"
			for _, x := range g.Trials {
				if !slices.ContainsFunc(named, func(m sentence.Mention) bool { return slices.Contains(m.Trials, x) }) {
					named = append(named, sentence.Mention{ID: x.ID, Trials: []*handin.Trial{x}})
				}
			}
		}
	}
	for k, m := range named {
		if m.Missing || len(m.Trials) == 0 || !ground.OneFormula(j.Design(m.Trials[0].Table), m.Trials) {
			continue
		}
		if len(m.Trials) > 1 {
			if words := j.level(s, m.Trials, r, yes); words != "" {
				return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) %s", s.Said, r.Words(), words), s, "own rule"), true
			}
			continue
		}
		x := m.Trials[0]
		if why := j.Fails(x, r); yes && why != "" {
			return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", s.Said, r.Words(), m.ID, why), s, "own rule").Unless(k >= single || j.doubted(r) || doubtful(x, r)), true
		}
		if no && j.Passes(x, r) && !strings.Contains(s.Low, "clog") && !strings.Contains(s.Low, "split") {
			return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s passes. What failed?", s.Said, r.Words(), m.ID), s, "own rule"), true
		}
	}
	return f, false
}

// recommends are words by which a trial is taken for the menu.
var recommends = pattern.Of(`(?i)\b(?:recommend(?:s|ed|ing)?|(?:i|we) (?:would|will|shall) (?:take|use|serve|choose|go (?:on )?with)|my (?:choice|pick)|empfehle|recommande|recomiendo|consiglio|aanraden|raad)\b`)

// Recommended holds "I recommend trial 2" against the student's own rule, which the one trial fails.
func Recommended(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	named := sentence.Mentions(j.Work, s)
	if !r.Set() || !recommends.MatchString(s.Low) || s.Denied() || len(named) != 1 || named[0].Missing || len(named[0].Trials) != 1 || strings.Contains(s.Low, "?") {
		return f, false
	}
	x := named[0].Trials[0]
	why := j.Fails(x, r)
	if why == "" {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not pass: %s.", s.Said, r.Words(), named[0].ID, why), s, "own rule").Unless(j.doubted(r) || doubtful(x, r)), true
}

// level holds a level that is said to pass, or to fail, against its makings: it is said wrongly of where
// all of them do otherwise; where one does, only if both are spoken of.
func (j *judge) level(s sentence.Sentence, all []*handin.Trial, r ground.OwnRule, yes bool) (words string) {
	var off []string
	for _, x := range all {
		if why := j.Fails(x, r); yes && why != "" {
			off = append(off, fmt.Sprintf("trial %s does not: %s", x.ID, why))
		} else if !yes && j.Passes(x, r) && !strings.Contains(s.Low, "clog") && !strings.Contains(s.Low, "split") {
			off = append(off, fmt.Sprintf("trial %s passes", x.ID))
		}
	}
	if len(off) == 0 || len(off) < len(all) && !ofEach.MatchString(s.Low) {
		return ""
	}
	return say.List(off) + "."
}

// ofEach are words that speak of all makings of a level.
var ofEach = pattern.Of(`(?i)\b(?:both|each|every|all|twice|either|replicates?|repeats?)\b`)

// doubtful reports a trial whose own cells do not agree that it fails: it has a hold and is said not to have
// come out, or is said to have split in more words than yes.
func doubtful(x *handin.Trial, r ground.OwnRule) bool {
	held := slices.ContainsFunc(x.Table.Columns, func(c *handin.Column) bool {
		return c.Role == column.Hold && c.Cells[x.Index].Known && c.Cells[x.Index].Value > 0
	})
	if x.CameOut == trial.No && held {
		return true
	}
	return r.Whole && x.Broke == trial.Yes && !slices.ContainsFunc(x.Table.Columns, func(c *handin.Column) bool {
		return c.Role == column.Broke && plainly.MatchString(c.Cells[x.Index].Text)
	})
}

// plainly is a yes, or the thing itself, and nothing more.
var plainly = pattern.Of(`(?i)^\s*(?:yes|y|ja|oui|sí|si|x|✓|1|true|split|it split|separated|broke|broken)[.!]?\s*$`)

var (
	successHeader = pattern.Of(`(?i)^\s*(works|worked|success|successful|met( my| the)? (rule|target)|(?:my |the )?rule (?:met|kept|ok|passed|fulfilled)|pass(ed)?|pass (?:or|/) fail|ok|good)\s*\??\s*$`)
	saysYes       = pattern.Of(`(?i)^\s*(yes|y|ja|oui|sí|si|x|✓|1|true)\s*$`)
	saysNo        = pattern.Of(`(?i)^\s*(no|n|nein|non|0|false)\s*$`)
)

// Verdicts holds a column of yes and no, in which students judge their trials, against
// their own rule.
func Verdicts(g *ground.Judge, r ground.OwnRule) (out []finding.Found) {
	j := &judge{g}
	if !r.Set() {
		return nil
	}
	for _, t := range j.Work.Tables {
		for _, col := range t.Columns {
			if !successHeader.MatchString(strings.ReplaceAll(col.Header, "_", " ")) {
				continue
			}
			for i, c := range col.Cells {
				x := t.Trials[i]
				switch why := j.Fails(x, r); {
				case saysYes.MatchString(c.Text) && why != "":
					out = append(out, finding.Of(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", c.Text, r.Words(), x.ID, why), c).Kinds("own rule").Unless(j.doubted(r)))
				case saysNo.MatchString(c.Text) && j.Passes(x, r):
					out = append(out, finding.Of(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: by your own rule (%s) trial %s passes.", c.Text, r.Words(), x.ID), c).Kinds("own rule").Unless(j.doubted(r) || r.Hold == nil || r.Drained == nil))
				}
			}
		}
	}
	return out
}

var (
	onlyOne = pattern.Of(`(?i)\b(?:nur|solo|soltanto|seule?s?|sólo|alleen)\b[^.;]{0,40}\b(?:besteh(?:en|t)|bestand\w*|gelungen|riesc(?:e|ono)|riuscit[aoie]|réussi(?:t|ssent|e)?|passe|pasa|cumple|geslaagd|slaagt)\b|\b(?:only|just (?:trials?|mix(?:es)?|foams?|one|two|three|\d|\p{L}\d))\b[^.;]{0,60}\b(?:pass(?:es|ed)?|works?|worked|succeed(?:s|ed)?|met|meets?|reach(?:es|ed)?|(?:was|is|were|are) (?:good|ok|a success|successful))\b|\bthe only (?:one|ones|mix|mixes|trial|trials|foam|foams)\b[^.;]{0,30}\b(?:pass(?:es|ed)?|works?|worked|succeed(?:s|ed)?|met|meets?|(?:was|is|were|are) (?:good|ok|a success|successful))\b`)
	noneAt  = pattern.Of(`(?i)\b(?:no|none of (?:the|my|our)) (?:single )?(?:trials?|foams?|mix(?:es)?|runs?|tests?|one)\s+(?:of mine |at all |really |ever |had |has |have )?(?:pass(?:es|ed)?|worked|works|succeeded|met|(?:was|is|were) (?:good|ok|a success|successful))\b|\bnothing passed\b`)
	onlyBad = pattern.Of(`(?i)\b(?:only|just)\b[^.;]{0,60}\b(?:fail(?:s|ed)?|did(?: not|n't) (?:pass|work|meet|make it)|missed)\b|\bthe only (?:one|ones|mix|mixes|trial|trials|foam|foams)\b[^.;]{0,30}\b(?:fail(?:s|ed)?|did(?: not|n't) (?:pass|work|meet|make it)|missed)\b`)
	allGood = pattern.Of(`(?i)(?:^|[,;:]|\band)\s*(?:all|every one|each|every (?:foam|mix|trial|run|one))(?: of (?:them|these|(?:the|my|our) \w+))?(?: (?:foams|mixes|trials|runs|my \w+|the \w+))? (?:have |has )?(?:pass(?:ed|es)?|worked|succeeded|met (?:the|my|our) \w+|were (?:good|ok|a success|successful))\b`)
	justly  = pattern.Of(`(?i)(\bjust (?:so|about|barely|passes|passed)\b|\bonly just\b|\bon (?:mon|tues|wednes|thurs|fri)|\bof the (?:rich|lean|first|last)|\bafter \d)`)
)

// Only holds "only trial 4 passes" and "no mix passed" against what passes by the student's own rule.
func Only(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !r.Set() || sentence.Unsure.MatchString(s.Low) || justly.MatchString(s.Low) {
		return f, false
	}
	j := &judge{g}
	none, only := noneAt.MatchString(s.Low), onlyOne.MatchString(s.Low)
	if none == only || only && s.Denied() {
		return f, false
	}
	named := sentence.Mentions(j.Work, s)
	if only && len(named) == 0 || none && len(named) > 0 {
		return f, false
	}
	for _, group := range together.Groups(j.Work, s) { // "2 to 6"
		named = append(named, sentence.Mention{Trials: group.Trials})
	}
	for _, x := range j.Work.Trials() {
		if !j.Passes(x, r) || ofEach.MatchString(s.Low) && !j.allMakingsPass(x, r) || slices.ContainsFunc(named, func(m sentence.Mention) bool { return m.Missing || j.ofOneFormula(m.Trials, x) }) {
			continue
		}
		return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s passes too.", s.Said, r.Words(), x.ID), s, "miscounted"), true
	}
	return f, false
}

// allMakingsPass reports a trial that passes with all other makings of its formula.
func (j *judge) allMakingsPass(x *handin.Trial, r ground.OwnRule) bool {
	d := j.Design(x.Table)
	at := slices.Index(d.Trials, x)
	return at >= 0 && j.allPass(d, at, r)
}

// OnlyFailed holds "only the control failed" and "all passed" against what fails by the student's own rule.
func OnlyFailed(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	if !r.Set() || sentence.Unsure.MatchString(s.Low) || justly.MatchString(s.Low) || sentence.Narrowed.MatchString(s.Low) {
		return f, false
	}
	j := &judge{g}
	only, all := onlyBad.MatchString(s.Low), allGood.MatchString(s.Low) && !s.Denied()
	named := sentence.Mentions(j.Work, s)
	if j.TakenBack(s) || only == all || only && len(named) == 0 || all && len(named) > 0 || len(together.Groups(j.Work, s)) > 0 {
		return f, false
	}
	for _, x := range j.Work.Trials() {
		why := j.Fails(x, r)
		if why == "" || (x.IsControl() || x.Bare()) || slices.ContainsFunc(named, func(m sentence.Mention) bool { return m.Missing || j.ofOneFormula(m.Trials, x) }) {
			continue
		}
		return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not pass: %s.", s.Said, r.Words(), x.ID, why), s, "miscounted"), true
	}
	return f, false
}

// ofOneFormula reports a trial that is one of some, or another making of one.
func (j *judge) ofOneFormula(all []*handin.Trial, x *handin.Trial) bool {
	d := j.Design(x.Table)
	at := slices.Index(d.Trials, x)
	return slices.ContainsFunc(all, func(o *handin.Trial) bool {
		k := slices.Index(d.Trials, o)
		return o == x || k >= 0 && at >= 0 && d.Same(k, at)
	})
}
