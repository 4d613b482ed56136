package method

import (
	"fmt"
	"slices"

	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// A plan may say which trials are to show the effect of what. They do where they differ in
// nothing else.

var (
	fatWord    = `(?:fat|butter|oil|fett\w*|gras|matière grasse|grasa|grass[oi]|vet)`
	emWord     = `(?:emulsifiers?|emulgator\w*|émulsifiants?|emulsionantes?|emulgentes?|emulsionant[ei]|emulsifianti)`
	hlbWord    = `(?:hlb|blends?)`
	effectOf   = pattern.Of(`(?i)\b(?:effects?|influence|impact|role|einfluss|wirkung|effet|efecto|influencia|effetto|influenza|invloed)\b[^.;,]{0,25}?\b(?:(` + fatWord + `)|(` + emWord + `)|(` + hlbWord + `))\b(?:[^.;,]{0,12}\b(?:and|or|und|et|y|e|en)\b[^.;,]{0,12}\b(` + fatWord + `|` + emWord + `|` + hlbWord + `)\b)?`)
	comparing  = pattern.Of(`(?i)\b(?:compar\w+|vergl[ei]+ch\w*|confront\w+|vergelijk\w*|vergeleken)\b`)
	connecting = pattern.Of(`(?i)\b(?:with|to|against|versus|vs\.?|mit|gegen|avec|à|con|met|tegen)\b`)
)

// contrasts asks of plans that hold trials against others that differ in more than what is asked about.
func contrasts(w *handin.Work, designs []Design) (out []finding.Found) {
	for _, p := range w.Words {
		if p.Note != nil {
			continue
		}
		for _, text := range sentence.Split(p.Text) {
			if f, ok := contrast(w, designs, text); ok {
				out = append(out, finding.New(criteria.OneChange, graded.Method, f, p.At).Kinds("several things changed"))
			}
		}
	}
	return out
}

// contrast is what is to be asked of one sentence.
func contrast(w *handin.Work, designs []Design, text string) (words string, ok bool) {
	m, at := effectOf.FindStringSubmatch(text), comparing.FindStringIndex(text)
	if m == nil || at == nil || m[4] != "" {
		return "", false
	}
	factor := Fat
	switch {
	case m[2] != "":
		factor = Emulsifier
	case m[3] != "":
		factor = HLB
	}
	for _, cut := range connecting.FindAllStringIndex(text[at[1]:], -1) {
		one, other := trialsIn(w, text[:at[1]+cut[0]]), trialsIn(w, text[at[1]+cut[1]:])
		if len(one) == 0 || len(other) == 0 {
			continue
		}
		for i := range designs {
			if beside := designs[i].besideAll(one, other, factor); len(beside) > 0 {
				return fmt.Sprintf("%s: these trials differ in the %s and in %s. Which of them would a difference come from? Compare mixes that differ in the %s alone.", say.Quoted(text), factor, say.List(beside), factor), true
			}
		}
		return "", false
	}
	return "", false
}

// trialsIn are the trials that words name.
func trialsIn(w *handin.Work, text string) (out []*handin.Trial) {
	for _, m := range sentence.Mentions(w, sentence.Plainly(w, text)) {
		out = append(out, m.Trials...)
	}
	return out
}

// besideAll names what differs, beside a factor that does, between each of some trials and each of others.
func (d *Design) besideAll(one, other []*handin.Trial, factor Factor) (names []string) {
	count, pairs := map[string]int{}, 0
	for _, x := range one {
		for _, y := range other {
			a, b := slices.Index(d.Trials, x), slices.Index(d.Trials, y)
			if a < 0 || b < 0 || a == b {
				return nil
			}
			things, known := d.Changed(a, b)
			if !known || !slices.Contains(things, Thing{Factor: factor}) {
				return nil
			}
			pairs++
			for _, t := range things {
				if t.Factor != factor {
					if count[t.String()]++; count[t.String()] == 1 {
						names = append(names, t.String())
					}
				}
			}
		}
	}
	return slices.DeleteFunc(names, func(n string) bool { return count[n] < pairs })
}
