package method

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/column"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

var (
	aimLabel = pattern.Of(`(?i)^\s*(?:\d+[.)]\s*)?(?:my |our |the )?(?:aims?|goals?|questions?|objectives?|purpose|research question|what (?:i|we) (?:want(?:ed)?|ask(?:ed)?)(?: to (?:know|find out))?|ziel|fragestellung|frage|but|question|objectif|objetivo|pregunta|obiettivo|domanda|doel|vraag)\b[^:\n]{0,16}?\s*(?::|$)`)
	ofWhat   = `(?:how (?:much |many |does |do |the )?|which |what |effect of |influence of |role of |best |right |ideal )(?:(?:the|an?|much|more|less|total|blend|different|of) )*`
	aims     = []struct {
		factor Factor
		of     *pattern.Pattern
	}{
		{HLB, pattern.Of(`(?i)\b` + ofWhat + `hlb\b`)},
		{Emulsifier, pattern.Of(`(?i)\b` + ofWhat + `(?:emulsifiers? (?:dose|amount|percent|content)|dose)\b|(?i)\b(?:how (?:much|little)|(?:how|effect of|influence of|role of|which|what|best|right|ideal) (?:the |more |less |does )*(?:amount|quantity|mass|share|percentage|level) of) (?:the |more |less |total )*emulsifiers?\b|\bhow (?:does )?(?:more|less) emulsifier\b`)},
		{Fat, pattern.Of(`(?i)\b` + ofWhat + `(?:fat content|fat percent(?:age)?|amount of (?:fat|butter|oil|ghee)|butter ?fat content)\b|\bhow (?:much|rich|fat)\b[^.;?]{0,12}\b(?:fat|butter|oil|ghee|rich)\b`)},
	}
)

// aimsElsewhere asks where the aim is of something that is the same in every trial, while something else
// was changed.
func aimsElsewhere(w *handin.Work, designs []Design) (out []finding.Found) {
	if len(designs) != 1 {
		return nil
	}
	d := &designs[0]
	for _, p := range w.Words {
		if p.Note != nil {
			continue
		}
		text, at := aimOf(p)
		if text == "" {
			text, at = shownIn(w, p.Text), p.At
		}
		asks := askedFirst(text)
		if asks == NoFactor || d.Tried(asks) {
			continue
		}
		for _, o := range []Factor{HLB, Emulsifier, Fat} {
			if !d.Tried(o) {
				continue
			}
			f := finding.New(criteria.OneChange, graded.Method, fmt.Sprintf("You ask what the %s does, and it is the same (%s) in every trial; what was changed is the %s. Which trials answer the question?", asks, say.Number(math.Round(10*d.level(asks))/10), o), at).Kinds("aim not tried")
			f.Typed = graded.Txt(text)
			return append(out, f)
		}
	}
	return nil
}

// toShow are words by which a student says what all the trials are for, wherever it stands: "with these
// trials I show how the dose changes the hold".
var toShow = pattern.Of(`(?i)\b(?:(?:with|in|by) (?:this|these|my|the|our) (?:series|set|trials?|tests?|runs?|experiments?|mixes|foams|work|log)\b,?\s+(?:i|we)|(?:this|the|my|our) (?:series|experiment|log|work)|(?:these|my|our) (?:trials|tests|runs|experiments|mixes)|here (?:i|we)) (?:(?:want(?:s|ed)? to|try to|tried to|is to|are to|is meant to|are meant to|will|can|could) )?(?:shows?|showed|tests?|tested|stud(?:y|ies|ied)|examines?|examined|look(?:s|ed)? at|investigates?|investigated|find out|finds out|found out|see|measures?|measured|demonstrates?|answers?)\b`)

// shownIn is what the sentences of a text say that the trials are to show; "" for none, and for what they
// are said not to.
func shownIn(w *handin.Work, text string) string {
	for _, s := range sentence.Split(text) {
		if at := toShow.FindStringIndex(s); at != nil && !sentence.Plainly(w, s).Denied() {
			return s[at[1]:]
		}
	}
	return ""
}

// askedFirst is what an aim asks of first.
func askedFirst(text string) (asks Factor) {
	first := len(text)
	for _, a := range aims {
		if m := a.of.FindStringIndex(text); m != nil && m[0] < first {
			asks, first = a.factor, m[0]
		}
	}
	return asks
}

// aimOf is the text of an aim with its place, beside its label or behind it; "" for any other phrase.
func aimOf(p handin.Phrase) (text string, at trial.Place) {
	label := aimLabel.FindString(p.Text)
	switch {
	case label == "":
		return "", at
	case strings.TrimSpace(p.Text[len(label):]) != "":
		return p.Text[len(label):], p.At
	}
	return p.Right, p.RightAt
}

// Tried reports a factor of which trials with emulsifiers have more than one level, by the grams or as the
// student has it, or one that is not known.
func (d *Design) Tried(f Factor) bool {
	within := map[Factor]float64{HLB: 0.15, Emulsifier: 0.05, Fat: 0.6}[f]
	role := map[Factor]column.Role{HLB: column.BlendHLB, Emulsifier: column.EmulsifierAmount, Fat: column.FatPercent}[f]
	low, high := math.Inf(1), math.Inf(-1)
	typed := map[string][2]float64{}
	for i, x := range d.Trials {
		if x.Bare() {
			continue
		}
		v := d.At(i, f)
		if math.IsNaN(v) {
			return true
		}
		low, high = min(low, v), max(high, v)
		for _, c := range x.Table.All(role) {
			cell := c.Cells[x.Index]
			if !cell.Known {
				continue
			}
			ends, seen := typed[c.Header]
			if !seen {
				ends = [2]float64{cell.Value, cell.Value}
			}
			ends = [2]float64{min(ends[0], cell.Value), max(ends[1], cell.Value)}
			if typed[c.Header] = ends; ends[1]-ends[0] > within {
				return true
			}
		}
	}
	return !(high-low <= within)
}

// level is the level of a factor in the trials with emulsifiers.
func (d *Design) level(f Factor) float64 {
	for i, x := range d.Trials {
		if !x.Bare() {
			return d.At(i, f)
		}
	}
	return math.NaN()
}
