// Package rule is when a student calls a foam a success, and which of the successes is the
// best, as the work says it in words; and which trials pass.
package rule

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/grade/tongue"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

// Limit is one part of a rule: a number that a result must reach, or stay under.
type Limit struct {
	At     float64
	Strict bool   // "more than 20": 20 itself is too little
	Open   bool   // no word says whether the number itself will do
	Unit   string // "min", "%", "ml", "g"
}

// Best is what makes one success better than another.
type Best uint8

// What a student may go by.
const (
	Unsaid Best = iota
	MostFat
	Longest
	LeastDrained
	LeastEmulsifier
	HighestScore
)

// String is what the best has.
func (b Best) String() string {
	return [...]string{"", "the most fat", "the longest hold", "the least drained", "the least emulsifier", "the highest score"}[b]
}

// Rule is a student's own rule of success. Parts that are not said are nil and false.
type Rule struct {
	Hold    *Limit
	Drained *Limit
	Overrun *Limit
	Out     bool // it has to come out
	Whole   bool // it must not split
	Best    Best
	Said    bool // there is a rule, if in words that are not understood
}

// Set reports a rule with a number by which trials can be told apart.
func (r Rule) Set() bool { return r.Hold != nil || r.Drained != nil || r.Overrun != nil }

// Words are the parts of a rule that were understood.
func (r Rule) Words() string {
	var words []string
	if r.Hold != nil {
		least := "at least "
		if r.Hold.Strict {
			least = "more than "
		}
		words = append(words, "holds "+least+say.Number(r.Hold.At)+" min")
	}
	if r.Drained != nil {
		most := "at most "
		if r.Drained.Strict {
			most = "less than "
		}
		unit := " " + r.Drained.Unit
		words = append(words, strings.TrimRight("drains "+most+say.Number(r.Drained.At)+unit, " "))
	}
	if r.Overrun != nil {
		least := "at least "
		if r.Overrun.Strict {
			least = "more than "
		}
		words = append(words, "overrun "+least+say.Number(r.Overrun.At)+" %")
	}
	if r.Out {
		words = append(words, "comes out")
	}
	if r.Whole {
		words = append(words, "does not split")
	}
	return strings.Join(words, ", ")
}

var (
	// opens are words that a rule of success stands behind or beside.
	opens = pattern.Of(`(?i)(\bsuccess\w*|\bsucceeds?\b|\bworks?\s*(?:=|:|if|when|means|for me|is when)|\b(?:my|our|own|the|success)? ?rules?\b|\bcriteri\w+|\btargets?\b|\bcounts? as\b|\bi call\b|\bwe call\b|\bcall(?:ed)? it\b|\b(?:good|ok|okay|pass|passes|passed|fine|usable|valid|accepted|enough|win|wins|winner|yes|right)\b[^.;\d]{0,20}?(?:=|:|\bmeans?\b|\bif\b|\bwhen\b)|^\s*(?:ok|okay|good|pass)\s+(?:at least |from |>=? ?|≥ ?)?\d|\bwhen is it\b|\bwhat is (?:a )?good\b|\b(?:is|are) (?:good|ok|fine|a pass|usable) (?:if|when)\b|\bit(?:'s| is) (?:good|ok|fine|a pass) (?:if|when)\b|\bi say it\b|\bwe say it\b|\b(?:must|ha(?:s|ve) to|needs? to|should)\b[^.;?]{0,40}?\b(?:hold|stand|stay|last)\b|\b(?:an? )?(?:good|ok|okay|usable) (?:foam|mix|one|siphon)s? (?:comes?|holds?|stands?|stays?|lasts?|must|has|have|is one)\b|\bneed(?:s|ed)? (?:at least|to)\b|\bpass mark\b|\bdefinition of\b|\baccept\w*|\bthreshold\b|\berfolg\w*|\bregel\b|\bgelungen\b|\bréussi\w*|\brègle\b|\béxito\b|\bregla\b|\bsuccesso\b|\bregola\b|\bgeslaagd\b)`)
	// head are labels that have a rule beside or below them.
	head = pattern.Of(`(?i)^\s*(?:\d+[.)]\s*)?(?:my |our |own |the )?(?:success(?: rule| criteri\w+| is| means)?|rules?(?: of success)?|criteri\w+|targets?|(?:good|ok|pass(?:es|ed)?)(?: (?:when|if|is))?|geslaagd(?: als)?|réussi(?:e)? si|bestanden(?: wenn)?|when is it (?:good|ok)\??|erfolg|regel|règle|regla|regola)\s*[:=?]?\s*$`)

	atLeast = pattern.Of(`(?i)(at least|min\.?|minimum(?: of)?|more than|longer than|over|above|≥|>=|>|not less than|no less than|mindestens|au moins|al menos|almeno|minstens|ten minste)\s*(\d+(?:[.,]\d+)?)\s*(min\b|mins\b|minutes?\b|minuten\b|minuti\b|minutos\b|h\b|hours?\b)`)
	orMore  = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(\+)?\s*(min\b|mins\b|minutes?\b|h\b|hours?\b)\s*(or more|or longer|or above|or over|or better|and more|and longer|and up|and above|\+|plus\b|upwards|at least|minimum|o más|ou plus|oder mehr|o più)?`)
	past    = pattern.Of(`(?i)\b(after|within|in|at|for the first|@|over the|during|nach|après)\s*$`)
	keeps   = pattern.Of(`(?i)\b(hold|holds|held|stand|stands|standing|stood|last|lasts|lasted|stay|stays|stayed|keep|keeps|kept|stable|upright|up)\b`)

	atMost = pattern.Of(`(?i)(less than|under|below|at most|no more than|not more than|never more than|max\.?(?:imum)?(?: of)?|up to|<=|≤|<|fewer than|weniger als|unter|höchstens|moins de|menos de|meno di)\s*(\d+(?:[.,]\d+)?)\s*(%|percent\b|per cent\b|ml\b|g\b|grams?\b|cc\b)`)
	orLess = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(%|percent\b|per cent\b|ml\b|g\b|grams?\b|cc\b)\s*(?:[a-z]+\s+){0,3}(or less|or under|or below|or fewer|at most|at the most|max\b|maximum|tops)`)
	// notDrained are what else percents and grams may be of.
	notDrained = pattern.Of(`(?i)^\s*(?:of )?(?:the )?(fat|butter|oil|ghee|emulsifiers?|gms|ester|mix\b|hlb|sugar|water\b)`)

	comesOut = pattern.Of(`(?i)(\bcom(?:es?|ing) out\b|\bcame out\b|\bthrough the nozzle\b|\bout of the (?:nozzle|siphon)\b|\bpasses the nozzle\b|\bcan be (?:sprayed|dispensed)\b|\bno clog|\bnot clog|\bdoes(?: not|n't) clog)`)
	notSplit = pattern.Of(`(?i)(\b(?:not|never|no|without|n't|isn't|un)\s*(?:be |being |to )?(?:a )?(?:split|splits|splitting|separat\w*|broken|breaking|break|curdl\w*)\b|\bstays together\b|\bunsplit\b|\b(?:bricht|trennt sich|splits?|scheidt|schift) (?:sich )?(?:nicht|niet|not)\b|\bne (?:se )?(?:sépare|tranche|casse) pas\b|\bno se (?:separa|corta|rompe)\b|\bnon si (?:separa|rompe|smonta)\b)`)
)

// Of is a student's own rule: on a sheet of targets, or in words.
func Of(w *handin.Work) (r Rule) {
	for _, h := range w.Log {
		if t := h.Log.Targets.HoldMinutes; t != nil {
			r.Hold, r.Said = &Limit{At: t.Value, Unit: "min"}, true
		}
		if t := h.Log.Targets.DrainedPercent; t != nil {
			r.Drained, r.Said = &Limit{At: t.Value, Unit: "%"}, true
		}
	}
	called, aimed, other := candidates(w)
	for _, s := range called {
		r.add(s)
	}
	if !r.Set() { // who aims at "at least 20 min, not split" has said what a success is
		for _, s := range aimed {
			r.add(s)
		}
	}
	if !r.Set() {
		for _, s := range other { // "20 min or more and under 10 ml", and nothing else
			hold, drained := holdIn(s, false), drainedIn(s)
			if hold != nil && drained != nil && !hold.Open {
				r.add(s)
			}
		}
	}
	r.Best = bestIn(w)
	return r
}

// Missing reports that nowhere is said when a foam is a success: no sentence that is called a
// rule, or that may be one in words that are not understood.
func Missing(w *handin.Work) bool {
	if r := Of(w); r.Said || r.Set() {
		return false
	}
	for _, t := range slices.Concat(w.Tables, w.Sums) {
		for _, c := range t.Columns {
			if c.Filled() && judged.MatchString(strings.ReplaceAll(c.Whole, "_", " ")) {
				return false // a column of verdicts rests on some rule
			}
		}
	}
	return !slices.ContainsFunc(w.Words, func(p handin.Phrase) bool {
		return p.Note == nil && !safety.MatchString(p.Text) && opens.MatchString(p.Text) && resultWord.MatchString(p.Text+" "+p.Right) && !counted.MatchString(p.Text)
	})
}

var (
	judged     = pattern.Of(`(?i)\b(rules?|success\w*|pass(?:ed)?|works|worked|target|criteri\w+)\b`)
	resultWord = pattern.Of(`(?i)(\d\s*(?:min|%|ml|g)\b|\b(hold|holds|held|stand|stands|stood|last|lasts|lasted|drain\w*|drip\w*|nozzle|split\w*|foam|liquid)\b)`)
)

// candidates are the sentences that are called a rule, aims that say all that one does, and others
// that may be one. A sentence that names a trial is of that trial.
func candidates(w *handin.Work) (called, aimed, other []string) {
	for _, p := range w.Words {
		if p.Note != nil || safety.MatchString(p.Text) {
			continue
		}
		text := p.Text
		if len(strings.Fields(text)) <= 4 { // "Success | holds at least 20 min"
			text += " " + p.Right
		}
		text = tongue.English(text)
		label := opens.MatchString(text) || head.MatchString(labelOf(w, p))
		if opensAim.MatchString(text) && !opens.MatchString(text) && asksAll(text) && len(sentence.Mentions(w, sentence.Plainly(w, text))) == 0 {
			aimed = append(aimed, text) // "which ratio holds 15 min or more? Not split": a question that says what is good
			continue
		}
		for _, s := range sentence.Split(text) {
			switch {
			case len(sentence.Mentions(w, sentence.Plainly(w, s))) > 0 || counted.MatchString(s):
			case past1.MatchString(s) && !head.MatchString(labelOf(w, p)) && holdIn(s, false) == nil: // told of a foam, and asked of none
			case label && (opens.MatchString(s) || head.MatchString(labelOf(w, p)) || holdIn(s, true) != nil && drainedIn(s) != nil):
				called = append(called, s)
			case opensAim.MatchString(text) && asksAll(s):
				aimed = append(aimed, s)
			case !past1.MatchString(s):
				other = append(other, s)
			}
		}
	}
	return called, aimed, other
}

// asksAll reports a sentence that asks how long a foam holds, and that it comes out, does not split or drains little.
func asksAll(s string) bool {
	hold := holdIn(s, true)
	return hold != nil && !hold.Open && (comesOut.MatchString(s) || notSplit.MatchString(s) || drainedIn(s) != nil)
}

// opensAim is a label of an aim.
var opensAim = pattern.Of(`(?i)^\s*(?:what )?(?:(?:my|our|the|i|we) )?(?:want(?:ed)? to (?:know|find out|see)|(?:research )?questions?|q|purpose|to find out|frage\b|fragestellung|vraag|pregunta|domanda|goals?|aims?|objectives?|task|ziel|aufgabe|but|objectif|objetivo|obiettivo|scopo|doel)\b`)

// safety opens a word on safety, which has rules too.
var safety = pattern.Of(`(?i)^\s*(?:be )?(?:safe|safety|careful|caution|sicherheit|sécurité|seguridad|sicurezza)\b`)

// counted are words by which a rule is applied, and not said: "6 of 10 met my rule".
var counted = pattern.Of(`(?i)(\b(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|half|none|all|most)\s+(?:out )?of\b|\bmet (?:my|our|the|this)\b|\b\d+\s*/\s*\d+\b|\d\s*% of (?:my|the|all|our) (?:\d+ |\w+ )?(?:trials|foams|mixes|tests|runs|batches)\b)`)

var past1 = pattern.Of(`(?i)\b(held|stood|lasted|stayed|was|were|had|gave)\b`)

// labelOf is the label that a text stands beside or under.
func labelOf(w *handin.Work, p handin.Phrase) string {
	for _, o := range w.Words {
		if o.Note != nil || o.At == p.At || o.At.File != p.At.File || o.At.Sheet != p.At.Sheet {
			continue
		}
		if o.RightAt == p.At || o.At.Row == p.At.Row-1 && o.At.Col == p.At.Col && len(strings.Fields(o.Text)) <= 4 {
			if head.MatchString(o.Text) {
				return o.Text
			}
		}
	}
	return ""
}

// add takes the parts of a rule out of a sentence; what was said before stays.
func (r *Rule) add(s string) {
	overrun, s := overrunIn(s)
	hold, drained := holdIn(s, true), drainedIn(s)
	r.Said = true
	if (hold != nil && drained != nil || overrun != nil && (hold != nil || drained != nil)) && either(s) {
		return // one or the other: no trial is refused by one of them
	}
	if r.Overrun == nil {
		r.Overrun = overrun
	}
	if r.Hold == nil {
		r.Hold = hold
	}
	if r.Drained == nil {
		r.Drained = drained
	}
	r.Out = r.Out || comesOut.MatchString(s)
	r.Whole = r.Whole || notSplit.MatchString(s)
}

// ofAir are words for the air that a foam has taken up, and by how much it has to.
var (
	ofAir   = `(?:overrun|volume gain|foisonnement|aufschlag|luftaufschlag|montado|aumento di volume)`
	airLast = pattern.Of(`(?i)\b` + ofAir + `\s*(?:of|is|must be|has to be|:|=)?\s*(?:of )?(at least|min\.?|minimum(?: of)?|more than|over|above|≥|>=|>|not less than|no less than|mindestens|au moins|al menos|almeno|minstens)?\s*(\d+(?:[.,]\d+)?)\s*(?:%|percent|per cent)\s*(or more|or above|or over|or better|or higher|and more|and up|and above|\+|oder mehr|ou plus|o más|o più)?`)
	airNext = pattern.Of(`(?i)(at least|min\.?|minimum(?: of)?|more than|over|above|≥|>=|>|not less than|no less than|mindestens|au moins|al menos|almeno|minstens)\s*(\d+(?:[.,]\d+)?)\s*(?:%|percent|per cent)\s*(?:of )?` + ofAir + `\b`)
)

// airMost is the most air, which is nobody's measure of a good foam and none of what may drain.
var airMost = pattern.Of(`(?i)\b` + ofAir + `\s*(?:of|is|must be|:)?\s*(?:at most|less than|under|below|no more than|not more than|up to|max\.?(?:imum)?(?: of)?|<=|≤|<)\s*\d+(?:[.,]\d+)?\s*(?:%|percent|per cent)`)

// overrunIn is how much air a sentence asks for, and the sentence without those words, whose percent
// is none of what may drain.
func overrunIn(s string) (l *Limit, rest string) {
	s = airMost.ReplaceAllString(s, " ")
	if m := airNext.FindStringSubmatchIndex(s); m != nil {
		return percentAir(s[m[2]:m[3]], s[m[4]:m[5]]), s[:m[0]] + s[m[1]:]
	}
	m := airLast.FindStringSubmatchIndex(s)
	if m == nil {
		return nil, s
	}
	rest = s[:m[0]] + s[m[1]:]
	switch {
	case m[2] >= 0:
		return percentAir(s[m[2]:m[3]], s[m[4]:m[5]]), rest
	case m[6] >= 0:
		return percentAir("", s[m[4]:m[5]]), rest
	}
	return nil, rest // no word says which way
}

// percentAir is a limit of the overrun.
func percentAir(word, figures string) *Limit {
	v, err := strconv.ParseFloat(strings.Replace(figures, ",", ".", 1), 64)
	if err != nil {
		return nil
	}
	w := strings.ToLower(word)
	return &Limit{At: v, Strict: slices.Contains([]string{"more than", "over", "above", ">"}, w), Unit: "%"}
}

// either reports a rule of which one part is enough: an "or" that is none of "20 min or more".
func either(s string) bool {
	for _, m := range orElse.FindAllStringSubmatchIndex(s, -1) {
		if m[2] < 0 || numberNext.MatchString(s[m[1]:]) {
			return true
		}
	}
	return false
}

var (
	orElse     = pattern.Of(`(?i)\b(?:or|oder|ou)\b(\s+(?:more|longer|less|under|below|above|over|better|fewer)\b)?`)
	numberNext = pattern.Of(`^\s*\d`)
)

// holdIn is the hold that a sentence asks for; called is set for one that is called a rule, where
// any minutes are of the hold that are not of a look at it.
func holdIn(s string, called bool) *Limit {
	if m := atLeast.FindStringSubmatch(s); m != nil {
		w := strings.ToLower(m[1])
		return limit(m[2], m[3], w == "more than" || w == "longer than" || w == "over" || w == "above" || w == ">", false)
	}
	if m := byClock.FindStringSubmatch(s); m != nil && called {
		first, _ := strconv.Atoi(m[1])
		second, _ := strconv.Atoi(m[2])
		switch {
		case first >= 4: // nobody asks four hours of a foam
			return &Limit{At: float64(first) + float64(second)/60, Unit: "min"}
		case first == 0 && second > 0 && second%5 == 0:
			return &Limit{At: float64(second), Unit: "min"}
		}
		return nil
	}
	for _, m := range orMore.FindAllStringSubmatchIndex(s, -1) {
		before := s[:m[0]]
		sure := m[4] >= 0 || m[8] >= 0
		if past.MatchString(before) || !sure && !(called && (keeps.MatchString(s) || comesOut.MatchString(s) || notSplit.MatchString(s))) && !(called && drainedIn(s) != nil) {
			continue
		}
		return limit(s[m[2]:m[3]], s[m[6]:m[7]], false, !sure)
	}
	if m := bareHold.FindStringSubmatch(s); m != nil && called {
		return limit(m[1]+m[2], "min", false, false)
	}
	return nil
}

// bareHold is a hold without its unit: "holds 15 or more".
var bareHold = pattern.Of(`(?i)\b(?:holds?|stands?|lasts?|stays?)(?: up)?(?: for)? (?:at least (\d+)|(\d+) or (?:more|longer|above|over))(?:\s*(?:[,;.]|and\b|or\b|$))`)

// byClock is a hold in minutes and seconds, or in hours and minutes: "18:00 or more", "0:20 or more".
var byClock = pattern.Of(`(?i)\b(\d{1,2}):(\d\d)(?::00)?\s*(?:min |h )?(?:or more|or longer|or above|or over|or better|and more|and longer|and up)\b`)

// limit is a hold in minutes.
func limit(figures, unit string, strict, open bool) *Limit {
	v, err := strconv.ParseFloat(strings.Replace(figures, ",", ".", 1), 64)
	if err != nil || v <= 0 {
		return nil
	}
	if strings.HasPrefix(strings.ToLower(unit), "h") {
		v *= 60
	}
	return &Limit{At: v, Strict: strict, Open: open, Unit: "min"}
}

// drainedIn is how much a sentence lets drain.
func drainedIn(s string) *Limit {
	for _, m := range atMost.FindAllStringSubmatchIndex(s, -1) {
		if w := strings.ToLower(s[m[2]:m[3]]); !notDrained.MatchString(s[m[1]:]) {
			return drop(s[m[4]:m[5]], s[m[6]:m[7]], slices.Contains([]string{"less than", "under", "below", "<", "fewer than", "weniger als", "unter", "moins de", "menos de", "meno di"}, w))
		}
	}
	for _, m := range orLess.FindAllStringSubmatchIndex(s, -1) {
		if !notDrained.MatchString(s[m[5]:]) {
			return drop(s[m[2]:m[3]], s[m[4]:m[5]], strings.HasSuffix(strings.ToLower(s[m[6]:m[7]]), "under") || strings.HasSuffix(strings.ToLower(s[m[6]:m[7]]), "below"))
		}
	}
	if m := bareDrop.FindStringSubmatch(s); m != nil {
		if l := drop(m[1], "", false); l != nil {
			l.Unit = "" // of the one column of drainage
			return l
		}
	}
	return nil
}

// bareDrop is what may drain, without its unit: "drained 12 or less".
var bareDrop = pattern.Of(`(?i)\b(?:drain|drip)\w*\s+(?:at most\s+)?(\d+(?:[.,]\d+)?)\s+(?:or less|or fewer|at most)\b`)

func drop(figures, unit string, strict bool) *Limit {
	v, err := strconv.ParseFloat(strings.Replace(figures, ",", ".", 1), 64)
	if err != nil {
		return nil
	}
	switch u := strings.ToLower(unit); {
	case strings.HasPrefix(u, "per"), u == "%":
		unit = "%"
	case u == "ml" || u == "cc":
		unit = "ml"
	default:
		unit = "g"
	}
	return &Limit{At: v, Strict: strict, Unit: unit}
}

var (
	ranks = pattern.Of(`(?i)\b(wins?|winner|winning|best|counts?|ranks?|ranking|decides?|chosen|choose|pick|picked|take|preferred|gewinnt|gagne|gana|vince)\b`)
	among = pattern.Of(`(?i)\b(of (?:these|those|them)|among|passing|passes|that (?:pass|do|does|make|makes|meet|meets)|successes|successful|success|rule|means?|one|ones|then|wins?)\b|=`)
	tie   = pattern.Of(`(?i)\b(at the same|if (?:equal|two|there)|same fat|tie|ties|tied|otherwise|then|equal)\b`)
	bests = []struct {
		b  Best
		re *pattern.Pattern
	}{
		{MostFat, pattern.Of(`(?i)\b(fattest|richest|most (?:\w+ )?(?:fat|butter|oil|ghee|cream)|(?:highest|higher|max\w*|greatest|biggest) (?:\w+ )?(?:fat|butter|oil)\b|highest in fat|as (?:rich|fat|much fat) as possible|fettest\w*|plus gras|más grasa|più grasso)\b`)},
		{Longest, pattern.Of(`(?i)\b(longest|most stable|longer mean|highest hold|longest-standing|am längsten)\b`)},
		{LeastDrained, pattern.Of(`(?i)\b((?:least|lowest|less|smallest|fewest) (?:\w+ )?(?:drip\w*|drain\w*|liquid|serum|weep\w*|loss|leak\w*|ml)|(?:drains?|drips?|weeps?|loses?|leaks?) (?:the )?least|driest)\b`)},
		{LeastEmulsifier, pattern.Of(`(?i)\b(?:least|lowest|smallest|less) (?:\w+ )?(?:emulsifiers?|powder)\b`)},
		{HighestScore, pattern.Of(`(?i)\b(?:(?:highest|greatest|largest|higher) (?:\w+ ){0,2}?(?:scores?|points|rating|sum of points)|most points|(?:scores?|is rated) (?:the )?highest)\b`)},
	}
)

// bestIn is what a work says the best has; Unsaid where two sentences differ, or one has several
// that are not said to break a tie.
func bestIn(w *handin.Work) (best Best) {
	for _, p := range w.Words {
		if p.Note != nil {
			continue
		}
		text := p.Text
		if len(strings.Fields(text)) <= 4 {
			text += " " + p.Right
		}
		ruled := opensRule.MatchString(tongue.English(text))
		for _, s := range sentence.Split(tongue.English(text)) {
			if !ranks.MatchString(s) || !among.MatchString(s) && !(ruled && isWhat.MatchString(s)) || len(sentence.Mentions(w, sentence.Plainly(w, s))) > 0 || past1.MatchString(s) {
				continue
			}
			b := first(s)
			if b == Unsaid {
				continue
			}
			if best != Unsaid && best != b && !tie.MatchString(s) {
				return Unsaid
			}
			if best == Unsaid {
				best = b
			}
		}
	}
	return best
}

var (
	// opensRule is a label of what is said once for all trials.
	opensRule = pattern.Of(`(?i)^\s*(?:(?:my|our|the|own) )?(?:success )?(?:rules?|criteri(?:on|a)|goals?|aims?|targets?|success|passes if)\b`)
	// isWhat says of which kind the best is: "the best is the that holds longest", as other tongues order it.
	isWhat = pattern.Of(`(?i)\b(?:best|winner|wins?)\b.{0,12}\b(?:is|the|whichever|whatever|what)\b`)
)

// first is the first thing that a sentence goes by, Unsaid where others beside it break no tie.
func first(s string) (best Best) {
	at, n := math.MaxInt, 0
	for _, one := range bests {
		if m := one.re.FindStringIndex(s); m != nil {
			if n++; m[0] < at {
				at, best = m[0], one.b
			}
		}
	}
	if n > 1 && !tie.MatchString(s) {
		return Unsaid
	}
	return best
}
