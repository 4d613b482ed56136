// Package claim reads what a student concludes and holds it against the student's own
// trials, by the student's own rule of success. It reads conservatively: a claim of
// which a word that matters is not understood is not judged.
package claim

import (
	"regexp"
	"slices"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

// sentence is one sentence of a conclusion with where it stands.
type sentence struct {
	at   trial.Place
	text string
	low  string // folded
}

var (
	concludes   = regexp.MustCompile(`(?i)(conclu|summary|discussion|result|finding|fazit|schluss|ergebnis|résultat|resumen|resultado|riassunto|risultat|answer)`)
	startsSo    = regexp.MustCompile(`(?i)^\s*(conclusions?|in conclusion|to conclude|i conclude|we conclude|summary|fazit|schlussfolgerung|ergebnis|conclusión|conclusione|résultat|resultado|risultato|answer|finding|best|winner|winning|overall|so )`)
	notSo       = regexp.MustCompile(`(?i)^\s*(aim|goal|question|hypothes|objective|plan|purpose|idea|method|procedure|protocol|step|prediction|safety|ziel|frage|hypothèse|but |objetivo|obiettivo|note|notes|targets?|success|a success|works if|works when|our rule|rule|criterion|criteria|expect)`)
	unsure      = regexp.MustCompile(`(?i)(\bif\b|\bwhether\b|\bwould have\b|\bexpect|\bhypothes|\bpredict|\bguess|\bmight\b|\bcould\b|\bmaybe\b|\bperhaps\b|\bnext (time|i|we|trial|test|step)|\bshould (try|test)|\bwould (try|test|like)|\bplan to\b|\bto be tested|\bnot (tested|tried)|\bthought\b|\bbeliev|\bassum|\bsuppos|\bhoped\b|\bwanted\b|\bcontrary\b|\btextbook|\btheory\b|\bliterature\b|\bshould (hold|be)|\?)`)
	denied      = regexp.MustCompile(`(?i)(\bnot\b|n't\b|\bnever\b|\bneither\b|\bnor\b|\bnone\b|\bno\b|\bnicht\b|\bkein|\bpas\b|\bnon\b)`)
	narrowed    = regexp.MustCompile(`(?i)(\bexcept\b|\bapart from\b|\bof the (two|first|last|low|lean|rich|high)|\bamong\b|\bafter the\b|\bsecond[- ](best|longest)\b|\bnearly\b|\balmost\b|\bper gram\b|\bfor its\b|\bin the first\b|\bother than\b|\bof (those|the ones) (with|that were)|\bof the \d|\bof (my|our|the) (lean|rich|low|high|fat)|\bat (\d|the same|equal|a given)|\bwith the same|\bfor the same|\bon (mon|tues|wednes|thurs|fri|day)|\bwithout (gms|ester))`)
	sentenceEnd = regexp.MustCompile(`([.!?;])(\s+|$)|\n| but | although | however | whereas | while `)
)

// sentencesOf are the sentences that a work concludes with, and where a conclusion
// stands.
func sentencesOf(w *handin.Work) (out []sentence, places []trial.Place) {
	head := map[string]int{} // by sheet, the row of a heading that opens a conclusion
	for _, p := range w.Words {
		if p.Note != nil && !p.Answer {
			continue
		}
		text := p.Text
		in := p.Answer || concludes.MatchString(p.At.Sheet) || startsSo.MatchString(text)
		if startsSo.MatchString(text) && len(strings.Fields(text)) <= 3 {
			head[p.At.File+p.At.Sheet] = p.At.Row
		}
		if row, ok := head[p.At.File+p.At.Sheet]; ok && p.At.Row >= row && p.At.Row <= row+8 {
			in = true
		}
		if in && len(strings.Fields(text)) > 1 && !onlySafety(text) && (concludes.MatchString(p.At.Sheet) || !notSo.MatchString(text)) {
			places = append(places, p.At)
		}
		at := p.At
		if m := bestLabel.FindStringSubmatch(text); m != nil && p.Right != "" && len(strings.Fields(p.Right)) <= 3 {
			text, at = "Trial "+strings.TrimSpace(trialPrefix.ReplaceAllString(p.Right, ""))+" is best.", p.RightAt
			if m[1] != "" && strings.Contains(strings.ToLower(m[1]), "hold") {
				text = strings.Replace(text, "is best", "held longest", 1)
			}
			places = append(places, p.RightAt)
		}
		for _, s := range split(text) {
			if notSo.MatchString(s) {
				continue
			}
			out = append(out, sentence{at: at, text: s, low: " " + strings.ToLower(s) + " "})
		}
	}
	if len(places) == 0 {
		for _, s := range out {
			if claimsSomething(s) && !slices.Contains(places, s.at) {
				places = append(places, s.at)
			}
		}
	}
	return out, places
}

var (
	bestLabel   = regexp.MustCompile(`(?i)^\s*(?:our |my |the )?(best|winner|winning|chosen|recommended|longest hold|longest)(?: (?:trial|formula|mix|recipe|foam|run|test))?(?: is| was)?\s*:?\s*$`)
	trialPrefix = regexp.MustCompile(`(?i)^\s*(trial|test|run|no\.?|#)\s*`)
	safetyOnly  = regexp.MustCompile(`(?i)^\s*(safety|sicherheit|sécurité|seguridad|sicurezza|i wore|we wore|goggles)`)
)

func onlySafety(text string) bool { return safetyOnly.MatchString(text) }

func claimsSomething(s sentence) bool {
	return longest.MatchString(s.low) || bestWord.MatchString(s.low) || longer.MatchString(s.low) || shorter.MatchString(s.low)
}

// split cuts a text into sentences and clauses; a point within a number cuts nothing.
func split(text string) (out []string) {
	from := 0
	add := func(to int, asked bool) {
		if s := strings.TrimSpace(text[from:to]); s != "" && !asked {
			out = append(out, s)
		}
	}
	for _, m := range sentenceEnd.FindAllStringIndex(text, -1) {
		add(m[0], text[m[0]] == '?')
		from = m[1]
	}
	add(len(text), false)
	return clauses(out)
}

// nextTrial opens a second statement in a sentence: "trial 3 held longest and trial 5
// drained least".
var nextTrial = regexp.MustCompile(`(?i),? (?:and|but|while) (?:trial|test|run|batch|the control)\b`)

// clauses cuts sentences that speak of one trial after the other, where the first part
// already says something.
func clauses(sentences []string) (out []string) {
	for _, s := range sentences {
		at := nextTrial.FindStringIndex(s)
		if at != nil && verbs.MatchString(s[:at[0]]) && verbs.MatchString(s[at[0]:]) {
			rest := regexp.MustCompile(`(?i)^,? (?:and|but|while) `).ReplaceAllString(s[at[0]:], "")
			out = append(append(out, s[:at[0]]), clauses([]string{rest})...)
			continue
		}
		out = append(out, s)
	}
	return out
}

var verbs = regexp.MustCompile(`(?i)\b(held|holds|was|is|drained|drains|worked|works|lasted|stood|clogged|split)\b`)

// mention is a trial that a sentence names.
type mention struct {
	trials  []*handin.Trial // one, or several of the same number in several tables
	id      string
	missing bool
}

var (
	trialWord = regexp.MustCompile(`(?i)\b(?:trials?|tests?|runs?|batch(?:es)?|samples?|mix(?:es)?|foams?|recipes?|formulas?|formulae|no\.|nr\.|number|versuche?|essais?|pruebas?|prov[ae]|ensayos?)\s*#?\s*((?:[a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\b(?:\s*(?:,|and|&|und|et|y|e|\+)\s*(?:trial\s*|test\s*)?(?:[a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\b)*)`)
	listMark  = regexp.MustCompile(`(?i)\s*(?:,|\band\b|&|\bund\b|\bet\b|\by\b|\be\b|\+)\s*(?:trial\s*|test\s*)?`)
	token     = regexp.MustCompile(`[\p{L}\p{N}-]+`)
)

// mentions finds the trials that a sentence names.
func mentions(w *handin.Work, s sentence) (out []mention) {
	seen := map[string]bool{}
	add := func(id string, sure bool) {
		key := handin.IDKey(id)
		if key == "" || seen[key] {
			return
		}
		found := inTask(w.ByID(id), s.low)
		if len(found) == 0 && !sure {
			return
		}
		seen[key] = true
		out = append(out, mention{trials: found, id: id, missing: len(found) == 0})
	}
	for _, m := range trialWord.FindAllStringSubmatch(s.text, -1) {
		for _, id := range listMark.Split(m[1], -1) {
			if id = strings.TrimSpace(id); id != "" && !unitAfter(s.text, m[0]) {
				add(id, strings.ContainsAny(id, "0123456789"))
			}
		}
	}
	words := token.FindAllString(s.text, -1)
	for i, t := range words {
		switch {
		case strings.ContainsAny(t, "0123456789") && strings.ContainsFunc(t, func(r rune) bool { return r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' }):
			add(t, false)
		case len(t) == 1 && t[0] >= 'A' && t[0] <= 'Z' && t != "I" && (t != "A" || i+1 < len(words) && verb.MatchString(words[i+1])):
			add(t, false)
		case handin.NamesControl(t) && len(t) > 2:
			for _, x := range w.Trials() {
				if handin.NamesControl(x.ID) {
					add(x.ID, false)
				}
			}
		case i == 0 && len(words) > 1 && verb.MatchString(words[1]):
			add(t, false)
		}
	}
	return out
}

var verb = regexp.MustCompile(`(?i)^(held|holds|was|is|drained|drains|worked|works|lasted|stood|had|gave|came|clogged|did)$`)

// unitAfter reports a number that is followed by a unit, and so is no trial's.
func unitAfter(text, m string) bool {
	rest := text[strings.Index(text, m)+len(m):]
	rest = strings.TrimSpace(rest)
	for _, u := range []string{"%", "g ", "min", "minutes", "percent"} {
		if strings.HasPrefix(rest, u) {
			return true
		}
	}
	return false
}

// inTask keeps the trials of the sheet that a sentence speaks of.
func inTask(all []*handin.Trial, low string) []*handin.Trial {
	if len(all) < 2 {
		return all
	}
	var of []*handin.Trial
	for _, x := range all {
		if name := strings.ToLower(x.Table.At.Sheet); name != "" && strings.Contains(low, name) {
			of = append(of, x)
		}
	}
	if len(of) > 0 {
		return of
	}
	return all
}
