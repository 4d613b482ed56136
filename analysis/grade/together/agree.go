package together

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

const repeatNouns = `(?:repeats?|repetitions?|replicates?|duplicates?|second makings?|pairs?|twins?|makings|charges|wiederholungen|répétitions?|repeticiones|réplicas|ripetizioni|herhalingen)`

var (
	// agreed are the words by which repeats are said to be near each other, before how near.
	agreed = pattern.Of(`(?i)\b` + repeatNouns + `\b[^.;]{0,60}?(?:\b(?:within|(?:by )?(?:at (?:the )?most|at worst|less than|no more than|not more than|never more than|up to|only|just|under|a maximum of)|never [^.;]{0,30}?\b(?:more|further) than|were never more than|differ(?:ed)? by|höchstens|maximal|um|weniger als|de moins de|d'au plus|au plus|como máximo|en menos de|menos de|al massimo|meno di|hoogstens|minder dan|binnen)|±)\s*(?:about |a )?(\d+(?:[.,]\d+)?|one|two|three|half a)\s*(min\b|mins\b|minutes?\b|minuten\b|minutos\b|minuti\b|%|percent\b|g\b|grams?\b|ml\b)`)
	// severalOf are mixes that are counted, and not called repeats: "the two mixes at HLB 10 agree within 1 min".
	severalOf = pattern.Of(`(?i)\b(?:two|both|three|2|3) (?:mixes|foams|trials|runs|makings|batches|charges|siphons)(?: (?:at|with|of) (?:an? )?(hlb )?(?:of )?(\d+(?:[.,]\d+)?)\s*(%|percent)?(?: \p{L}+)?)?,? (?:agree[ds]?|lie|lay|were|are|came|differ(?:ed)?) (?:with)?in\s*(?:about |a )?(\d+(?:[.,]\d+)?|one|two|three|half a)\s*(min\b|mins\b|minutes?\b|%|percent\b|g\b|ml\b)`)
	noneOff   = pattern.Of(`(?i)\b(?:no|none of (?:the|my|our)) ` + repeatNouns + `\b[^.;\d]{0,40}?\b(?:more than|over|by)\s*(?:about |a )?(\d+(?:[.,]\d+)?|one|two|three|half a)\s*(min\b|mins\b|minutes?\b|%|percent\b|g\b|grams?\b|ml\b)`)
	same      = pattern.Of(`(?i)\b(?:all|both|my|the|our|every|each)\b[^.;]{0,20}\b` + repeatNouns + `\b[^.;\d]{0,30}\b(?:exactly (?:the same|alike|equal)|identical|to the minute|gave the very same)\b`)
	partly    = pattern.Of(`(?i)(\bexcept\b|\bapart from\b|\bbut\b|\bmost\b|\bnearly all\b|\bone of\b|\bsome\b|\bboth mixes\b|\bas much as\b)`)
	counted   = pattern.Of(`(?i)\b(?:not count\w*|left out|ignored?|discard\w*|excluded|leak\w*|invalid|void|warm kitchen|do not use|spoil\w*)\b`)
	few       = map[string]float64{"one": 1, "two": 2, "three": 3, "half a": 0.5}
)

// agree holds "all my repeats agreed within 1 min" against the makings of each formula: of those that the
// sentence names, or of all.
func (j *reader) agree(s sentence.Sentence, groups []Group) (said string, found bool) {
	if partly.MatchString(s.Low) || sentence.Unsure.MatchString(s.Low) {
		return "", false
	}
	m := agreed.FindStringSubmatch(s.Text)
	if m == nil {
		m = noneOff.FindStringSubmatch(s.Text)
	}
	level, ofHLB, anyOf := math.NaN(), false, false
	if n := severalOf.FindStringSubmatch(s.Text); m == nil && n != nil {
		m, ofHLB, anyOf = []string{"", n[4], n[5]}, n[1] != "", true
		level, _ = value(n[2])
	}
	if m == nil && same.MatchString(s.Text) {
		m = []string{"", "0", "min"}
	}
	if m == nil {
		return "", false
	}
	within, _ := value(m[1])
	if v, ok := few[strings.ToLower(m[1])]; ok {
		within = v
	}
	of, unit := evidence.Hold, "min"
	switch u := strings.ToLower(m[2]); {
	case u == "%" || u == "percent":
		of, unit = evidence.Drained, "%"
	case u == "ml":
		of, unit = evidence.Drained, "ml"
	case strings.HasPrefix(u, "g"):
		of, unit = evidence.Drained, "g"
	}
	for i := range j.Designs {
		d := &j.Designs[i]
		for _, at := range d.Groups() {
			all := slices.DeleteFunc(pick(d, at), func(x *handin.Trial) bool { return counted.MatchString(x.Note) })
			if len(groups) > 0 && !slices.ContainsFunc(groups, func(g Group) bool {
				return slices.ContainsFunc(g.Trials, func(x *handin.Trial) bool { return slices.Contains(all, x) })
			}) {
				continue
			}
			if len(all) < 2 || !math.IsNaN(level) && !nearLevel(d, at[0], level, ofHLB) {
				continue
			}
			words, off := j.apart(all, of, unit, within)
			if off && said == "" {
				said = words
			}
			if off && !anyOf {
				return said, true
			}
			if !off && anyOf { // these may be meant
				return "", false
			}
		}
	}
	return said, said != ""
}

// nearLevel reports a mix at an HLB, or at a percent of fat.
func nearLevel(d *method.Design, i int, level float64, ofHLB bool) bool {
	return d.Stands(i, method.HLB, level, "") || !ofHLB && (d.Stands(i, method.Fat, level, "%") || d.Stands(i, method.Emulsifier, level, "%"))
}

// apart reports makings of one formula of which two surely differ by more than a number.
func (j *reader) apart(all []*handin.Trial, of evidence.Measure, unit string, within float64) (words string, yes bool) {
	var low, high *handin.Trial
	least, most := math.Inf(1), math.Inf(-1)
	for _, x := range all {
		v, ok := j.of(x, of, unit)
		if !ok {
			continue
		}
		if v < least {
			low, least = x, v
		}
		if v > most {
			high, most = x, v
		}
	}
	if low == nil || most-least <= within+0.051 {
		return "", false
	}
	return fmt.Sprintf("trials %s and %s are of one formula, and have %s and %s %s.", low.ID, high.ID, say.Number(least), say.Number(most), unit), true
}
