// Package ground is what claims are held with: the trials that a sentence names and speaks of, and the
// student's own rule of success.
package ground

import (
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/trial"
)

// Judge holds claims against trials.
type Judge struct{ *evidence.Trials }

// Check holds one sentence of a conclusion against the trials; false where it says nothing that can be
// held against them. reason is the measure that the sentence, or one before it, speaks of.
type Check func(j *Judge, s sentence.Sentence, r OwnRule, reason evidence.Measure) (finding.Found, bool)

// About is a finding of a conclusion at a sentence.
func About(words string, s sentence.Sentence, kind string) finding.Found {
	f := finding.New(criteria.Conclusion, graded.Conclusion, words, s.At).Kinds(kind)
	f.Typed = graded.Txt(s.Said)
	return f
}

// besides opens what trials are compared with: "more than the control".
var besides = pattern.Of(`(?i)\b(than|against|compared (?:to|with)|versus|vs\.?|instead of|minus|as (?:long|much|well|far|stable|good) as|(?:times|twice|half) as|unlike|like the|as the)\b`)

// Subjects are the trials of which a sentence says something, without those that it
// compares them with.
func (j *Judge) Subjects(s sentence.Sentence) []sentence.Mention {
	at := besides.FindStringIndex(s.Text)
	if at == nil {
		return sentence.Mentions(j.Work, s)
	}
	if before := sentence.Mentions(j.Work, sentence.Sentence{At: s.At, Text: s.Text[:at[0]], Low: s.Low}); len(before) > 0 {
		return before
	}
	return slices.DeleteFunc(sentence.Mentions(j.Work, s), func(m sentence.Mention) bool {
		return len(m.Trials) == 1 && m.Trials[0].IsControl()
	})
}

// among narrows a claim to the foams that passed: "the longest of those that came out".
var among = pattern.Of(`(?i)\b(?:of|among) (?:all |the |my |our |these |those |them |ones |foams |mixes |trials |any )+(?:that|which|who)\b[^.;,]{0,30}\b(?:pass\w*|did (?:so|it)|came out|come out|work\w*|success\w*|met|meet|succeed\w*|good|stayed whole|not split|didn't split)\b|\b(?:of|among) (?:all |the |my |our |these |those )*(?:pass(?:es|ing|ed)?|success(?:es|ful)?|good|successful)(?: (?:ones|foams|mixes|trials))?\b`)

// Field is what a claim is held against: all trials, or those that came out, did not split and pass, where
// it keeps to them; with the sentence without these words.
func (j *Judge) Field(s sentence.Sentence, r OwnRule) (in func(x *handin.Trial) bool, rest sentence.Sentence) {
	if !among.MatchString(s.Low) {
		return func(*handin.Trial) bool { return true }, s
	}
	s.Low = among.ReplaceAllString(s.Low, " ")
	return func(x *handin.Trial) bool {
		return x.CameOut != trial.No && x.Broke != trial.Yes && (!r.Set() || j.Passes(x, r))
	}, s
}

// OneDesign is the design that all trials named belong to, nil where none or several do. What is named
// together as one is of one formula.
func (j *Judge) OneDesign(named []sentence.Mention) (d *method.Design) {
	for _, m := range named {
		if len(m.Trials) == 0 || d != nil && !d.Has(m.Trials[0].Table) {
			return nil
		}
		if d = j.Design(m.Trials[0].Table); !OneFormula(d, m.Trials) {
			return nil
		}
	}
	return d
}

// OneFormula reports one trial, or makings of one formula.
func OneFormula(d *method.Design, all []*handin.Trial) bool {
	first := slices.Index(d.Trials, all[0])
	return !slices.ContainsFunc(all[1:], func(x *handin.Trial) bool {
		k := slices.Index(d.Trials, x)
		return first < 0 || k < 0 || !d.Same(first, k)
	})
}

// DesignOf is the design that a sentence speaks of: the only one, or that of the sheet
// it names.
func (j *Judge) DesignOf(s sentence.Sentence) *method.Design {
	if len(j.Designs) == 1 {
		return &j.Designs[0]
	}
	var found *method.Design
	for i := range j.Designs {
		for _, x := range j.Designs[i].Trials {
			if name := strings.ToLower(x.At.Sheet); name != "" && strings.Contains(s.Low, name) || x.At.Sheet == s.At.Sheet && s.At.Sheet != "" {
				if found != nil && found != &j.Designs[i] {
					return nil
				}
				found = &j.Designs[i]
			}
		}
	}
	return found
}

var Planned = pattern.Of(`(?i)(\bnext\b|\bshould (be )?(try|test|tried|tested)|\bwould (like|try|test)|\bto try\b|\bto test\b|\bnot (tried|tested)\b|\bplan\b|\bcurious\b|\buntested\b|\bwe could\b|\bi could\b|\?)`)

// Otherwise are grounds on which a trial may be best that are not looked at here.
var Otherwise = pattern.Of(`(?i)(\btaste|\btexture|\bmouth|\bflavou?r|\bcheap|\bcost|\blook|\bcolou?r|\bsmooth|\bsilky|\bshine|\bscore|\bthick|\bbalance|\bcompromise|\boverall|\bby \w+ )`)

var Because = pattern.Of(`(?i)\b(because|as it|since it|as its|since its|which)\b`)

// Slipped reports a slip among the results.
func (j *Judge) Slipped() bool {
	for _, t := range j.Work.Tables {
		for _, c := range slices.Concat(t.All(column.Hold), t.All(column.DrainedAmount)) {
			if slices.ContainsFunc(c.Cells, func(x handin.Cell) bool { _, meant := j.Slips.Meant[x.At]; return meant || j.Slips.Not[x.At] }) {
				return true
			}
		}
	}
	return false
}

// takenBack opens what a sentence is taken back by in part.
var takenBack = pattern.Of(`(?i)^\s*[,;(]?\s*(?:but|except|apart|besides|though|although|however|only not|not)\b`)

// TakenBack reports a sentence whose cell goes on with what it is not true of: "all passed but trial 7".
func (j *Judge) TakenBack(s sentence.Sentence) bool {
	for _, p := range j.Work.Words {
		for _, text := range []string{p.Text, p.Right} {
			if _, rest, found := strings.Cut(text, s.Said); found && takenBack.MatchString(rest) {
				return true
			}
		}
	}
	return false
}

// Only is the one trial that a part of a sentence names, nil for none or several.
func (j *Judge) Only(s sentence.Sentence, part string) *handin.Trial {
	named := sentence.Mentions(j.Work, sentence.Sentence{At: s.At, Text: part, Low: " " + strings.ToLower(part) + " "})
	if len(named) != 1 || named[0].Missing || len(named[0].Trials) != 1 {
		return nil
	}
	return named[0].Trials[0]
}
