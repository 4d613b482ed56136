// Package sentence reads the sentences that a work concludes with, and which trials they name.
package sentence

import (
	"fmt"
	"foamfield/ingest/pattern"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/tongue"
	"foamfield/ingest/trial"
)

// Sentence is one sentence of a conclusion with where it stands.
type Sentence struct {
	At   trial.Place
	Text string // in English as far as its words are known, with the word for a trial that is looked for
	Low  string // folded
	Said string // as the student said it
	// Reworded is set where the student said it in another language, or in words that are taken for these.
	Reworded bool
}

// nounsOf are the words by which a work calls its trials, "go", "pot", that are none of
// those that everybody has.
func nounsOf(w *handin.Work) (out []*regexp.Regexp) {
	for _, t := range w.Tables {
		if n := t.Noun; n != "" && !trialWord.MatchString(n+" 1") {
			out = append(out, regexp.MustCompile(`(?i)\b`+regexp.QuoteMeta(n)+`(?:e?s)?(\s+(?:no\.?|nr\.?|nos\.?|#)?\s*[\p{L}\d])`))
		}
	}
	return out
}

// Plainly is a text as a sentence of a work, with the word for a trial that everybody has.
func Plainly(w *handin.Work, text string) Sentence {
	plain := plainly(tongue.English(text), nounsOf(w))
	return Sentence{Text: plain, Low: " " + strings.ToLower(plain) + " ", Said: text}
}

// plainly is a sentence with the word for a trial that everybody has: "pot 4" is trial 4.
func plainly(s string, nouns []*regexp.Regexp) string {
	s = byNumber.ReplaceAllString(s, "${1}trial $2") // "no. 5 beats" denies nothing
	for _, n := range nouns {
		s = n.ReplaceAllStringFunc(s, func(found string) string {
			m := n.FindStringSubmatch(found)
			rest := strings.TrimLeft(noNumber.ReplaceAllString(m[1], ""), " ")
			if c := rest[0]; c >= 'a' && c <= 'z' && len(rest) == 1 && !strings.HasPrefix(strings.ToLower(found), "letter") {
				return found // "go on": only a capital or a figure is a number
			}
			return "trial " + rest
		})
	}
	return s
}

var byNumber = pattern.Of(`(?i)(^|[\s(])(?:trials?|tests?|runs?|foams?)?\s*(?:nos?\.?|nr\.?|#s?)\s*(\d)`)

var noNumber = pattern.Of(`(?i)^\s*(?:no\.?|nr\.?|nos\.?|#)\s*`)

var (
	concludes   = pattern.Of(`(?i)(conclu|summary|discussion|result|finding|fazit|schluss|ergebnis|résultat|resumen|resultado|riassunto|risultat|answer)`)
	startsSo    = pattern.Of(`(?i)^\s*(conclusions?|in conclusion|to conclude|(?:what )?(?:i|we) (?:conclude|think|take home|learnt|learned|found|make of it)|my (?:view|verdict|opinion)|our (?:view|verdict)|take[- ]?(?:away|home)|verdict|in short|what came (?:out )?of it|so: ?|end: ?|summary|fazit|schluss\b|schlussfolgerung|ergebnis|conclusión|conclusione|conclusie|besluit|résultat|resultado|risultato|answer|finding|best|winner|winning|overall|so )`)
	notSo       = pattern.Of(`(?i)^\s*(aim|goal|question|hypothes|objective|plan|purpose|idea|method|procedure|protocol|step|prediction|safety|ziel|frage|hypothèse|but |objetivo|obiettivo|doel|werkwijze|veiligheid|note|notes|targets?|success|a success|works if|works when|our rule|rule|criterion|criteria|expect)`)
	Unsure      = pattern.Of(`(?i)(\bif\b|\bwhether\b|\bwould have\b|\bexpect|\bhypothes|\bpredict|\bguess|\bmight\b|\bcould\b|\bmaybe\b|\bperhaps\b|\bnext (time|i|we|trial|test|step)|\bshould (try|test)|\bwould (try|test|like)|\bplan to\b|\bto be tested|\bnot (tested|tried)|\bthought\b|\bbeliev|\bassum|\bsuppos|\bhoped\b|\bwanted\b|\bcontrary\b|\btextbook|\btheory\b|\bliterature\b|\bshould (hold|be)|\?)`)
	denied      = pattern.Of(`(?i)(\bnot\b|n't\b|\bnever\b|\bneither\b|\bnor\b|\bnone\b|\bno\b|\bnicht\b|\bkein|\bpas\b|\bnon\b)`)
	Narrowed    = pattern.Of(`(?i)(\bexcept\b|\bapart from\b|\bof the (two|first|last|low|lean|rich|high)|\bamong\b|\bafter the\b|\bsecond[- ](best|longest)\b|\bnearly\b|\balmost\b|\bper gram\b|\bfor its\b|\bin the first\b|\bother than\b|\bof (those|these|them)\b|\bof the ones (with|that were)|\bof the \d|\bof (my|our|the) (lean|rich|low|high|fat)|\bat (\d|the same|equal|a given)|\bwith the same|\bfor the same|\bon (mon|tues|wednes|thurs|fri|day)|\bwithout (gms|ester))`)
	sentenceEnd = pattern.Of(`([.!?;])(\s+|$)|\n| but | although | (?:even )?though | however | whereas | while `)
)

// SentencesOf are the sentences that a work concludes with, and where a conclusion
// stands.
func SentencesOf(w *handin.Work) (out []Sentence, places []trial.Place) {
	opened := map[string]int{} // by sheet, the row of a heading that opens a conclusion
	not, nouns := noClaims(w.Words), nounsOf(w)
	for _, p := range w.Words {
		if p.Note != nil && !p.Answer || not[p.At] || isSum(p) && !tallyLabel.MatchString(p.Text) {
			continue
		}
		if concluding(p, opened) {
			places = append(places, p.At)
		}
		text, at := p.Text, p.At
		if named, ok := labelled(p); ok {
			text, at = named, p.RightAt
			places = append(places, at)
		} else if tally, ok := tallied(p, len(w.Trials())); ok {
			text, at = tally, p.RightAt
		} else if heads(p) {
			places = append(places, p.RightAt)
		}
		for _, s := range Split(text) {
			if !notSo.MatchString(s) || applied.MatchString(s) {
				again := tongue.Plain(tongue.English(s))
				plain := plainly(again, nouns)
				out = append(out, Sentence{At: at, Text: plain, Low: " " + strings.ToLower(plain) + " ", Said: s, Reworded: again != s})
			}
		}
	}
	if len(places) == 0 {
		for _, s := range out {
			if !ruleLike.MatchString(s.Low) && (claimsSomething(s) || resultSaid.MatchString(s.Low) && len(Mentions(w, s)) > 0) && !slices.Contains(places, s.At) {
				places = append(places, s.At)
			}
		}
	}
	return out, places
}

// ruleLike are words of a rule or of a method, which claim nothing of the trials.
var ruleLike = pattern.Of(`(?i)(^\s*(?:how|method|made|did|how (?:i|we) did|procedure|steps?|passes|pass|good|ok|win|success|works?|i say|i call|we call)\b[^.]{0,24}?(?:[:=]|\bif\b|\bwhen\b)|\b(?:or more|or longer|at least)\b[^.;]*\b(?:under|less than|or less|at most|not more)\b|\b(?:most fat|fattest|richest)\b[^.;]*\b(?:wins|is (?:the )?best|counts)\b)`)

// applied is a rule that is not said, but held against the trials: "Success rate: 80 %", "Rule met by
// 7 of 10".
var applied = pattern.Of(`(?i)(\b(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten|half|all|none) (?:out )?of (?:my |our |the |all )*\d|\b\d+ ?/ ?\d+\b|\d ?% of (?:my|our|the|all)|\bsuccess rate\b)`)

// isSum reports a label with a number beside it, "best minus control | 22": worked out,
// not concluded.
func isSum(p handin.Phrase) bool {
	return figure.MatchString(p.Right) && len(strings.Fields(p.Text)) <= 10 && !verbs.MatchString(p.Text) && !bestLabel.MatchString(p.Text)
}

var figure = pattern.Of(`^\s*[-−]?\d+(?:[.,]\d+)?\s*(?:min|minutes|%|s|h)?\s*$`)

// Label is a label beside or under which a conclusion is to stand.
var Label = pattern.Of(`(?i)^\s*(?:(?:my|our) )?(?:conclusions?|summary|end|fazit|schluss|schlussfolgerung|conclusión|conclusione|conclusie|besluit|result|answer|what (?:i|we) (?:conclude|think|take home|learnt|learned|found))\s*[:?]?\s*$`)

// planLabel are labels of what was meant or expected.
var planLabel = pattern.Of(`(?i)^\s*(aim|goal|question|research question|hypothes|objective|plan|purpose|prediction|expect|ziel|frage|hypothèse|objetivo|obiettivo|doel)`)

// otherLabel are labels of what is no conclusion.
var otherLabel = pattern.Of(`(?i)^\s*(safety|careful|caution|hazards?|risks?|hygiene|sicherheit|sécurité|seguridad|sicurezza|name|student|class|group|partner|dates?|product|dish|canister|(?:our |my )?rule|success rule)\b[^.]{0,12}$`)

// planSheet are names of sheets on which nothing is concluded.
var planSheet = pattern.Of(`(?i)^\s*(aim|hypothes|method|plan|procedure|question|prediction|safety|introduction|intro)`)

// noClaims are the places of words that stand beside or under a label such as “Aim” or
// “Hypothesis”, or on a sheet of that name.
func noClaims(words []handin.Phrase) map[trial.Place]bool {
	out, under := map[trial.Place]bool{}, map[string]int{}
	beside := map[trial.Place]bool{} // beside a label that opens a conclusion
	for _, p := range words {
		sheet := p.At.File + p.At.Sheet
		if startsSo.MatchString(p.Text) && len(strings.Fields(p.Text)) <= 3 && p.Right != "" {
			beside[p.RightAt] = true
		}
		if row, ok := under[sheet]; ok && p.At.Row == row+1 || planSheet.MatchString(p.At.Sheet) && !concludes.MatchString(p.At.Sheet) && p.Note == nil {
			out[p.At] = !startsSo.MatchString(p.Text) && !beside[p.At]
		}
		if len(strings.Fields(p.Text)) <= 3 && otherLabel.MatchString(p.Text) && p.Right != "" {
			out[p.RightAt] = true
		}
		if len(strings.Fields(p.Text)) > 3 || !planLabel.MatchString(p.Text) {
			continue
		}
		if p.Right != "" {
			out[p.RightAt] = true
		} else {
			under[sheet] = p.At.Row
		}
	}
	return out
}

// concluding reports words that are called a conclusion: by their sheet or column, by
// how they begin, or by a heading a few rows above.
func concluding(p handin.Phrase, opened map[string]int) bool {
	sheet, starts, words := p.At.File+p.At.Sheet, startsSo.MatchString(p.Text), len(strings.Fields(p.Text))
	switch {
	case starts && words <= 3:
		opened[sheet] = p.At.Row
	case words <= 3 && otherLabel.MatchString(p.Text):
		delete(opened, sheet)
	}
	row, below := opened[sheet]
	below = below && p.At.Row >= row && p.At.Row <= row+8
	called := concludes.MatchString(p.At.Sheet)
	if !p.Answer && !called && !starts && !below {
		return false
	}
	if called && !starts && !p.Answer && !below && (words < 6 && !shortClaim.MatchString(p.Text) || figure.MatchString(p.Right) && words < 10) {
		return false // a head or a label of a table on a sheet of that name
	}
	return words > 1 && !OnlySafety(p.Text) && (called || !notSo.MatchString(p.Text))
}

// shortClaim are words by which a few words say something.
var shortClaim = pattern.Of(`(?i)\b(best|wins?|winner|won|held|holds|stood|stands|is|was|are|were|lasted|longer|longest|better|worked|works|beat|beats)\b`)

// heads reports a label with a conclusion beside it: "Conclusion | More butter held longer".
func heads(p handin.Phrase) bool {
	return startsSo.MatchString(p.Text) && len(strings.Fields(p.Text)) <= 3 && len(strings.Fields(p.Right)) > 2
}

// labelled is the statement of a label with a trial beside it: "Best trial | 4".
func labelled(p handin.Phrase) (text string, ok bool) {
	m := bestLabel.FindStringSubmatch(p.Text)
	if m == nil || p.Right == "" || len(strings.Fields(p.Right)) > 3 {
		return "", false
	}
	says := " is best."
	if strings.Contains(strings.ToLower(m[1]), "hold") {
		says = " held longest."
	}
	return "Trial " + strings.TrimSpace(trialPrefix.ReplaceAllString(p.Right, "")) + says, true
}

// tallied is the statement of a label with a count beside it: "Passed | 7 of 10", "Success rate | 70 %".
func tallied(p handin.Phrase, all int) (text string, ok bool) {
	if !tallyLabel.MatchString(p.Text) || len(strings.Fields(p.Text)) > 7 {
		return "", false
	}
	m := tallyIs.FindStringSubmatch(p.Right)
	switch {
	case m == nil:
		return "", false
	case m[2] != "":
		return m[1] + " of " + m[2] + " trials passed.", true
	case m[3] != "":
		return m[1] + " % of my trials passed.", true
	}
	return fmt.Sprintf("%s of %d trials passed.", m[1], all), true
}

var (
	tallyLabel = pattern.Of(`(?i)(^\s*(?:my |our |the )?(?:success rate|success(?:es|ful)?(?: trials| foams)?|passed|passes|how many (?:passed|worked|were good)|worked)\s*[:?]?\s*$|\b(?:trials|foams|mixes|tests|runs)\b.{0,24}\b(?:passed|pass|worked|success\w*|met|meet|good|ok)\b|\bnumber of (?:success\w*|good|passes|passing)\b)`)
	tallyIs    = pattern.Of(`(?i)^\s*(\d+(?:[.,]\d+)?)\s*(?:(?:out of|of|/)\s*(\d+)|(%|percent))?\s*(?:trials|foams|mixes|tests|runs)?\.?\s*$`)
)

var (
	bestLabel   = pattern.Of(`(?i)^\s*(?:our |my |the )?(best|winner|winning|chosen|recommended|longest hold|longest)(?: (?:trial|formula|mix|recipe|foam|run|test))?(?: is| was)?\s*:?\s*$`)
	trialPrefix = pattern.Of(`(?i)^\s*(trial|test|run|no\.?|#)\s*`)
	safetyOnly  = pattern.Of(`(?i)^\s*(safety|sicherheit|sécurité|seguridad|sicurezza|i wore|we wore|goggles)`)
)

func OnlySafety(text string) bool { return safetyOnly.MatchString(text) }

// resultSaid is a result in numbers, which beside a trial's name says what came of it.
var resultSaid = pattern.Of(`\d\s*(?:min\w*|%|percent|s)\b|\b(?:longest|shortest|alike|best|tied|level)\b`)

// outcomes are words for what a trial did or was, behind its name.
var outcomes = pattern.Of(`(?i)\b(held|beat|beats|wins?|won|stood|lasted|is (my|our|the) (foam|choice|one|pick|favourite|favorite)|outlasted|was the one|drained (least|most|less|more))\b`)

func claimsSomething(s Sentence) bool {
	return outcomes.MatchString(s.Low) && !OnlySafety(s.Text) || Longest.MatchString(s.Low) || BestWord.MatchString(s.Low) || Longer.MatchString(s.Low) || Shorter.MatchString(s.Low)
}

// Split cuts a text into sentences and clauses; a point within a number cuts nothing.
func Split(text string) (out []string) {
	from := 0
	add := func(to int, asked bool) {
		if s := strings.TrimSpace(text[from:to]); s != "" && !asked {
			out = append(out, s)
		}
	}
	for _, m := range sentenceEnd.FindAllStringIndex(text, -1) {
		if text[m[0]] == '.' && shortened.MatchString(text[from:m[0]]) {
			continue
		}
		add(m[0], text[m[0]] == '?')
		from = m[1]
	}
	add(len(text), false)
	return clauses(out)
}

// shortened are words that end in a point without ending a sentence.
var shortened = pattern.Of(`(?i)(^|[\s(])(nos?|nr|ca|approx|vs|e\.g|i\.e|incl|fig|tab)$`)

// nextTrial opens a second statement in a sentence: "trial 3 held longest and trial 5
// drained least".
var nextTrial = pattern.Of(`(?i),? (?:and|but|while) (?:trial|test|run|batch|the control)\b`)

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

var verbs = pattern.Of(`(?i)\b(held|holds|was|is|drained|drains|worked|works|lasted|stood|clogged|split)\b`)

// Mention is a trial that a sentence names.
type Mention struct {
	Trials  []*handin.Trial // one, or several of the same number in several tables, or the makings of a level
	ID      string
	Missing bool
}

var (
	trialWord = pattern.Of(`(?i)\b(?:trials?|tests?|runs?|batch(?:es)?|samples?|mix(?:es)?|foams?|recipes?|formulas?|formulae|nos?\.?|nr\.?|numbers?|ids?|letters?|cards?|versuche?|essais?|pruebas?|prov[ae]|ensayos?)\s*#?\s*((?:[a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\b(?:\s*(?:,|and|&|und|et|y|e|\+)\s*(?:trial\s*|test\s*)?(?:[a-z]{0,2}-?\d+[a-z]?|[A-Z]\d*)\b)*)`)
	listMark  = pattern.Of(`(?i)\s*(?:,|\band\b|&|\bund\b|\bet\b|\by\b|\be\b|\+)\s*(?:trial\s*|test\s*)?`)
	token     = pattern.Of(`[\p{L}\p{N}-]+`)
)

// leading is a list of numbers that a sentence begins with, before what they did.
var leading = pattern.Of(`(?i)^\s*((?:[a-z]{0,2}-?\d{1,2}[a-z]?|[A-Z])(?:\s*(?:,|\band\b|&)\s*(?:[a-z]{0,2}-?\d{1,2}[a-z]?|[A-Z]))+)\s+(?:both |all |have |were |was |are |is )?(?:held|hold|holds|were|was|are|is|stood|lasted|drained|had|gave|came|clogged|did|split|won|differ|the same|alike|equal)`)

// roman are numbers that some give their trials.
var roman = pattern.Of(`^[IVX]{2,5}$`)

// naming gathers the trials that a sentence names.
type naming struct {
	work *handin.Work
	s    Sentence
	out  []Mention
}

// add takes a trial by its number; sure is a number that is called a trial, which may
// be missing from the log.
func (n *naming) add(id string, sure bool) {
	key := handin.IDKey(id)
	if key == "" || slices.ContainsFunc(n.out, func(m Mention) bool { return handin.IDKey(m.ID) == key }) {
		return
	}
	found := inTask(called(n.work, id), n.s.Low)
	if len(found) > 0 || sure {
		n.out = append(n.out, Mention{Trials: found, ID: id, Missing: len(found) == 0})
	}
}

// Mentions finds the trials that a sentence names.
func Mentions(w *handin.Work, s Sentence) []Mention {
	s.Text = amountIn.ReplaceAllStringFunc(s.Text, func(m string) string { return strings.Repeat("·", len(m)) }) // "card 7, 57.4 % fat"
	n := &naming{work: w, s: s}
	for _, m := range trialWord.FindAllStringSubmatch(s.Text, -1) {
		for _, id := range listMark.Split(m[1], -1) {
			if id = strings.TrimSpace(id); id != "" && !unitAfter(s.Text, m[0]) {
				n.add(id, strings.ContainsAny(id, "0123456789"))
			}
		}
	}
	if m := leading.FindStringSubmatch(s.Text); m != nil { // "2 and 4 held longest"
		for _, id := range listMark.Split(m[1], -1) {
			n.add(strings.TrimSpace(id), false)
		}
	}
	for _, x := range w.Trials() { // "Mon 2"
		if id := strings.ToLower(x.ID); strings.Contains(id, " ") && len(id) <= 20 && slices.ContainsFunc([]string{" ", ".", ",", ";", ":", ")"}, func(end string) bool {
			return strings.Contains(strings.ReplaceAll(s.Low, "(", " "), " "+id+end)
		}) {
			n.add(x.ID, false)
		}
	}
	n.levels()
	words := token.FindAllString(s.Text, -1)
	for i, t := range words {
		next := ""
		if i+1 < len(words) {
			next = words[i+1]
		}
		switch {
		case handin.NamesControl(t) && len(t) > 2:
			n.control()
		case n.next(t):
			n.add(t, true)
		case numberedName(t), letterName(t, next), i == 0 && verb.MatchString(next), (strings.Contains(t, "-") || roman.MatchString(t)) && len(n.work.ByID(t)) > 0:
			n.add(t, false)
		}
	}
	return n.out
}

// amountIn are numbers that are no trial's: of what follows them.
var amountIn = pattern.Of(`\d+[.,]\d+\s*(?:%|percent\b|mins?\b|minutes?\b|g\b|ml\b|°)`)

// control takes the trials that are named as controls.
func (n *naming) control() {
	for _, x := range n.work.Trials() {
		if x.IsControl() {
			n.add(x.ID, false)
		}
	}
}

// next reports a number that goes on from those of the log, all of which have the same letters before
// it: "T9" where the log has T1 to T8.
func (n *naming) next(t string) bool {
	m := lettersFirst.FindStringSubmatch(t)
	all := n.work.Trials()
	if m == nil || len(all) < 3 || len(n.work.ByID(t)) > 0 {
		return false
	}
	if k, _ := strconv.Atoi(m[2]); k > len(all)+10 {
		return false
	}
	return !slices.ContainsFunc(all, func(x *handin.Trial) bool {
		o := lettersFirst.FindStringSubmatch(handin.ShortID(x.ID))
		return o == nil || o[1] != m[1]
	})
}

var lettersFirst = pattern.Of(`^([A-Z][A-Za-z]?)(\d{1,2})[a-z]?$`)

// numberedName reports a word of letters and figures: "T4", "D2".
func numberedName(t string) bool {
	return strings.ContainsAny(t, "0123456789") && strings.ContainsFunc(t, func(r rune) bool { return r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' })
}

// letterName reports a single capital that may name a trial; "A" and "I" are words too.
func letterName(t, next string) bool {
	return len(t) == 1 && t[0] >= 'A' && t[0] <= 'Z' && t != "I" && (t != "A" || verb.MatchString(next))
}

var verb = pattern.Of(`(?i)^(held|holds|was|is|drained|drains|worked|works|lasted|stood|had|gave|came|clogged|did)$`)

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
		if name := strings.ToLower(x.At.Sheet); name != "" && strings.Contains(low, name) {
			of = append(of, x)
		}
	}
	if len(of) > 0 {
		return of
	}
	return all
}

// NotClaimed reports a sentence that claims nothing of its own trials: a guess, a
// denial, a statement on part of them.
func (s Sentence) NotClaimed() bool {
	return Unsure.MatchString(s.Low) || s.Denied() || Narrowed.MatchString(s.Low)
}

// Denied reports a sentence that denies something other than a fault: "it came out, did not split and
// held longest" claims that it held longest.
func (s Sentence) Denied() bool {
	return denied.MatchString(noFault.ReplaceAllString(s.Low, " "))
}

// noFault denies that a foam had one.
var noFault = pattern.Of(`(?i)\b(?:(?:(?:did|does|do|has|have|was|were|is|are) )?(?:not|never)|(?:did|does|do|was|were|is|are|has|have)n't|no|without(?: any)?|nor) (?:be |been |being |to |even |a |once )?(?:split\w*|separat\w*|clog\w*|block\w*|brok\w*|break\w*|curdl\w*|collaps\w*|slump\w*|leak\w*|weep\w*|wept|drip\w*|drain\w*|water|liquid)\b(?:[ ,]+(?:or|nor|and|not|no)(?: not| no)? (?:split\w*|clog\w*|separat\w*|drain\w*|drip\w*))?`)

// words of a claim on how long foams held.
var (
	Longest  = pattern.Of(`(?i)(\b(held|hold|holds|lasted|lasts|stood|stands|standing|stayed|kept)\b[^.]{0,24}\blong(est)\b|\blongest (hold|time|standing|lasting)|\bhighest hold|\bmost stable\b|\blängste|\bam längsten|\ble plus longtemps|\bmás tiempo\b|\bpiù a lungo\b|\bhold was (the )?longest|^\s*longest\s*[:=])`)
	BestWord = pattern.Of(`(?i)\b(best|winner|winning|wins|optimum|optimal|meilleure?|mejor|migliore|beste[rn]?)\b`)
	Longer   = pattern.Of(`(?i)(\b(hold|holds|held|last|lasts|lasted|stand|stands|stood|stay|stays|stayed|keep|keeps|kept)\b[^.]{0,20}\blonger\b|\blonger (hold|holds|holding|stand|stands|standing|time|lasting|life)\b|\bthe longer (the|your|our|my|a|each|it|they|foams?) ?(\w+ )?(hold|holds|held|last|lasts|lasted|stand|stands|stood|stay|stays|stayed|keep|keeps|kept)\b|\bmore stable\b|\b(increase[sd]?|raise[sd]?|improve[sd]?|lengthen(s|ed)?)\b (the )?(hold|stability)|\bhält länger|\bhielt länger|\blänger (?:hält|hielt|stand|steht)\b|\blanger (?:stond|staat|hield|houdt)\b|\b(?:stond|staat|hield) langer\b|\bmás (?:tiempo )?aguanta\b|\bpiù (?:a lungo )?tiene\b|\blänger(e)? standzeit|\btient plus longtemps|\baguanta más|\btiene più a lungo|\bdura di più)`)
	Shorter  = pattern.Of(`(?i)(\b(hold|holds|held|last|lasts|lasted|stand|stands|stood)\b[^.]{0,20}\bshorter\b|\bshorter (hold|time)\b|\bthe shorter (the|your|our|my|a|each|it|they|foams?) ?(\w+ )?(hold|holds|held|last|lasts|lasted|stand|stands|stood|stay|stays|stayed|keep|keeps|kept)\b|\bless stable\b|\b(decrease[sd]?|lower(s|ed)?|reduce[sd]?|shorten(s|ed)?)\b (the )?(hold|stability)|\bhält kürzer|\bhielt kürzer|\btient moins longtemps|\baguanta menos|\btiene meno)`)
)
