// Package together is what a conclusion says of trials together: which they are, their mean, the
// range of their results, what two groups of them differ by, and how many times one has of another.
package together

import (
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/ingest/pattern"
)

// Group is trials that a sentence names together: "trials 4, 5 and 6", "(5, 6, 7)", "N3 to N6".
type Group struct {
	Trials   []*handin.Trial
	from, to int // in the sentence
}

const (
	oneID  = `(?:[A-Za-z]{1,2}-?\d{1,2}[a-z]?|\d{1,2}[a-z]?)`
	noun   = `(?:trials?|tests?|runs?|batch(?:es)?|mix(?:es)?|foams?|samples?|recipes?|nos?|nrs?|numbers?|cards?|n°|#)\s*\.?\s*#?\s*`
	joined = `(?:\s*[,;]\s*(?:and\s+)?|\s*(?:&|/|\+|–|-|\band\b|\bto\b|\buntil\b|\bthrough\b|\bund\b|\bet\b)\s*(?:(?:its|the|their)\s+)?(?:repeats?\s+|twin\s+)?(?:` + noun + `)?)`
)

var (
	listed     = pattern.Of(`(?i)(\(\s*)?(` + noun + `)?(` + oneID + `(?:` + joined + oneID + `)*)`)
	joining    = pattern.Of(`(?i)` + joined)
	spans      = pattern.Of(`(?i)^\s*(?:–|-|to|until|through)`)
	unitIs     = pattern.Of(`(?i)^\s*(?:[.,]\d|%|percent|min\b|mins\b|minutes?\b|g\b|grams?\b|ml\b|°|h\b|hours?\b|oz\b|kg\b|times\b|x\b|of\b|chargers?\b|trials\b|foams\b|mixes\b|runs\b|more\b|less\b|and\s+\d+(?:[.,]\d+)?\s*(?:%|min|g\b|ml))`)
	inWord     = pattern.Of(`[\p{L}\d.,]$`)
	letterNext = pattern.Of(`^[\p{L}\d]`)
)

// Groups are those of trials that a sentence names, a trial by itself being one. A bare
// number is a trial only where it is called one, or in brackets with nothing but its like.
func Groups(w *handin.Work, s sentence.Sentence) (out []Group) {
	text := s.Text
	for _, m := range listed.FindAllStringSubmatchIndex(text, -1) {
		bracket, called := m[2] >= 0, m[4] >= 0
		list, behind := text[m[6]:m[7]], text[m[7]:]
		for unitIs.MatchString(behind) { // "longer than A5 and 6 min longer than A4"
			seps := joining.FindAllStringIndex(list, -1)
			if len(seps) == 0 {
				break
			}
			list, behind = list[:seps[len(seps)-1][0]], " "
		}
		if inWord.MatchString(text[:m[0]]) || unitIs.MatchString(behind) || letterNext.MatchString(behind) {
			continue
		}
		ids, seps := joining.Split(list, -1), joining.FindAllString(list, -1)
		letters := !slices.ContainsFunc(ids, func(id string) bool { return id == "" || id[0] >= '0' && id[0] <= '9' })
		closes := strings.HasPrefix(behind, ")") || strings.HasPrefix(behind, ",") || strings.HasPrefix(behind, ";") || strings.HasPrefix(behind, ":")
		if !(called || letters || bracket && closes) {
			continue
		}
		if trials := trialsOf(w, s, ids, seps); len(trials) > 0 {
			out = append(out, Group{trials, m[6], m[6] + len(list)})
		}
	}
	for _, m := range coded.FindAllStringSubmatchIndex(text, -1) {
		if trials := w.Under(text[m[2]:m[3]], text[m[4]:m[5]]); len(trials) > 1 && len(w.ByID(text[m[4]:m[5]])) == 0 {
			out = append(out, Group{trials, m[0], m[1]})
		}
	}
	slices.SortStableFunc(out, func(a, b Group) int { return a.from - b.from })
	return out
}

// coded is a code under the header of a column: "mix C" are all trials of that mix.
var coded = pattern.Of(`(?i)\b(\pL{2,20}) ([\pL\d]{1,6})\b`)

// trialsOf are the trials of some numbers, nil where one is none or stands in several tables.
func trialsOf(w *handin.Work, s sentence.Sentence, ids, seps []string) (out []*handin.Trial) {
	all := w.Trials()
	last := -1
	for i, id := range ids {
		found := w.ByID(strings.TrimSpace(id))
		if level := w.Level(id); len(found) == 0 && len(level) > 0 {
			return levelsOf(w, ids, seps)
		}
		if len(found) != 1 {
			return nil
		}
		at := slices.Index(all, found[0])
		if i > 0 && spans.MatchString(seps[i-1]) && last >= 0 && at > last {
			for k := last + 1; k < at; k++ {
				out = append(out, all[k])
			}
		}
		if !slices.Contains(out, found[0]) {
			out = append(out, found[0])
		}
		last = at
	}
	return out
}

// levelsOf are the makings of some levels, "P2 and P3", "P1 to P4", and the trials that are a level by
// themselves; nil where one is neither.
func levelsOf(w *handin.Work, ids, seps []string) (out []*handin.Trial) {
	all := w.Trials()
	last := -1
	for i, id := range ids {
		found := w.Level(id)
		if len(found) == 0 {
			found = w.ByID(strings.TrimSpace(id))
		}
		if len(found) == 0 {
			return nil
		}
		first := slices.Index(all, found[0])
		if i > 0 && spans.MatchString(seps[i-1]) && last >= 0 && first > last {
			out = append(out, all[last+1:first]...)
		}
		for _, x := range found {
			if !slices.Contains(out, x) {
				out = append(out, x)
			}
		}
		last = slices.Index(all, found[len(found)-1])
	}
	return out
}
