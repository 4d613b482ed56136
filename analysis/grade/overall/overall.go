// Package overall holds what a conclusion says of many trials at once against each of them: "no foam held
// longer than 25 min", "trials 2, 4 and 5 all reached 20 min", "the longest hold was 31 min".
package overall

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/ground"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/grade/together"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
)

const (
	numeral = `\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve`
	foams   = `(?:(?:other|emulsified) )?(?:foams?|mix(?:es)?|trials?|runs?|tests?|batch(?:es)?|recipes?|siphons?|pots?|cards?|lots?|samples?)`
	// did are the verbs of a result, and bound how far it went.
	did   = `(?:(?:has|have|had|all|both|each)\s+)*(held|holds?|stood|stands?|lasts?|lasted|stayed up|reached|reaches|kept|drained|drains?|lost|dripped|wept)`
	bound = `(?:\s+(?:for|its shape|up|out|only))*\s+(at least|more than|longer than|over|above|beyond|past|less than|shorter than|fewer than|under|below|at most|no longer than|no more than|not more than|up to)?\s*(\d+(?:[.,]\d+)?)\s*(min\b|mins\b|minutes?\b|%|g\b|ml\b)(\s+or (?:more|longer|less))?`
)

var (
	ofMany = pattern.Of(`(?i)^\s*(?:so |and |in all,? |that is,? )?(no|none of (?:the|my|our)|every|each|all(?: of)?(?: (?:the|my|our|these))?(?: (?:` + numeral + `))?|` + numeral + `)(?: of (?:the|my|our))? ` + foams + `( with(?:out)? (?:an |any |the |both )?emulsifiers?)?\s+` + did + bound + `\s*(?:$|[,;:.(])`)
	named  = pattern.Of(`(?i)\b` + did + bound)
	ends   = pattern.Of(`(?i)\b(longest|shortest|highest|lowest|least|most|greatest|smallest)\s+(hold(?:ing)?(?: time)?|stand(?:ing)?(?: time)?|time|overrun|drained|drainage|drip|loss)(?: of all| i (?:got|had|saw|measured))?\s*(?:was|is|of|were|:|=)?\s*(?:only )?(\d+(?:[.,]\d+)?)\s*(min\b|mins\b|minutes?\b|%|g\b|ml\b)`)
	twoOf  = pattern.Of(`(?i)\b(?:except|but|apart|besides|other than|excluding)\b`)
)

// judge holds claims against trials.
type judge struct{ *ground.Judge }

// limit is what a sentence says a result did: at least a number, more, less or at most.
type limit struct {
	of     evidence.Measure
	at     float64
	most   bool // at most, or less than
	strict bool
}

// limitIn is the limit of a sentence, of verb, word, number, unit and what follows; false where the number is
// none, or of no measure that was logged in its unit.
func (j *judge) limitIn(m []string) (l limit, ok bool) {
	for i := range m {
		m[i] = strings.ToLower(strings.TrimSpace(m[i]))
	}
	verb, word, unit, after := m[0], m[1], m[3], m[4]
	v, err := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
	l.at, l.of = v, evidence.Hold
	if slices.Contains([]string{"drained", "drain", "drains", "lost", "dripped", "wept"}, verb) {
		l.of = evidence.Drained
	}
	minutes := strings.HasPrefix(unit, "min")
	if err != nil || minutes != (l.of == evidence.Hold) || !minutes && unit != strings.ToLower(j.Unit(evidence.Drained)) {
		return l, false
	}
	switch word {
	case "at least":
	case "more than", "longer than", "over", "above", "beyond", "past":
		l.strict = true
	case "less than", "shorter than", "fewer than", "under", "below":
		l.most, l.strict = true, true
	case "at most", "no longer than", "no more than", "not more than", "up to":
		l.most = true
	default:
		switch {
		case strings.HasPrefix(after, "or l") && after != "or longer":
			l.most = true
		case after != "", strings.HasPrefix(verb, "reach"):
		default:
			return l, false // just so long: held against the log elsewhere
		}
	}
	return l, true
}

// keeps reports a trial that surely keeps to a limit, and one that surely does not.
func (j *judge) keeps(x *handin.Trial, l limit) (yes, no bool) {
	low, high, ok := j.Seen(x, l.of)
	if !ok {
		return false, false
	}
	switch {
	case l.most && l.strict:
		return high < l.at, low >= l.at
	case l.most:
		return high <= l.at, low > l.at
	case l.strict:
		return low > l.at, high <= l.at
	}
	return low >= l.at, high < l.at
}

// result is what a trial is held against a limit by, in words.
func (j *judge) result(x *handin.Trial, l limit) string {
	low, _, _ := j.Seen(x, l.of)
	return fmt.Sprintf("trial %s has %s %s", x.ID, say.Number(low), j.Unit(l.of))
}

// Many holds what is said of all foams, of none or of so many against each of them.
func Many(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	m := ofMany.FindStringSubmatch(s.Low)
	if m == nil || sentence.Unsure.MatchString(s.Low) || ground.Planned.MatchString(s.Low) || twoOf.MatchString(s.Low) || j.TakenBack(s) || len(sentence.Mentions(j.Work, s)) > 0 {
		return f, false
	}
	l, known := j.limitIn(slices.Clone(m[3:]))
	if !known {
		return f, false
	}
	count, with := strings.TrimSpace(m[1]), strings.TrimSpace(m[2])
	var yes, no, bare []*handin.Trial
	open := 0
	for _, x := range j.Work.Trials() {
		if with != "" && x.Bare() != strings.HasPrefix(with, "without") {
			continue
		}
		keeps, fails := j.keeps(x, l)
		switch {
		case with == "" && (x.IsControl() || x.Bare()):
			if keeps { // who counts foams may leave the control out
				bare = append(bare, x)
			}
		case keeps:
			yes = append(yes, x)
		case fails:
			no = append(no, x)
		default:
			open++
		}
	}
	if len(yes)+len(no) == 0 {
		return f, false
	}
	switch n, counted := numbers[count]; {
	case strings.HasPrefix(count, "no"):
		if len(yes) > 0 {
			return ground.About(fmt.Sprintf("“%s”: %s.", s.Said, j.result(yes[0], l)), s, "of all"), true
		}
	case counted:
		if n < len(yes) || n > len(yes)+len(bare)+open {
			return ground.About(fmt.Sprintf("“%s”: in your log it is %d%s.", s.Said, len(yes), listed(yes)), s, "of all"), true
		}
	case len(no) > 0:
		return ground.About(fmt.Sprintf("“%s”: %s.", s.Said, j.result(no[0], l)), s, "of all"), true
	}
	return f, false
}

// Speaks reports a sentence that says of foams that were made how far they all went: no claim of others.
func Speaks(s sentence.Sentence) bool {
	return ofMany.MatchString(s.Low) && inPast.MatchString(s.Low)
}

var inPast = pattern.Of(`(?i)\b(?:held|stood|lasted|stayed|reached|kept|drained|lost|dripped|wept)\b`)

// listed names a few trials.
func listed(all []*handin.Trial) string {
	if len(all) == 0 || len(all) > 12 {
		return ""
	}
	return " (" + strings.Join(handin.ShortIDs(all), ", ") + ")"
}

// Named holds "trials 2, 4 and 5 all reached 20 min" against each of the trials that are named before it.
func Named(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	at := named.FindStringSubmatchIndex(s.Text)
	if at == nil || len(named.FindAllString(s.Text, -1)) != 1 || s.NotClaimed() || ground.Planned.MatchString(s.Low) {
		return f, false
	}
	l, known := j.limitIn(slices.Clone(named.FindStringSubmatch(s.Text)[1:]))
	if !known || strings.ContainsAny(s.Text[:at[0]], ";:.") {
		return f, false
	}
	before := sentence.Sentence{At: s.At, Text: s.Text[:at[0]], Low: " " + strings.ToLower(s.Text[:at[0]]) + " "}
	all := sentence.Mentions(j.Work, before)
	for _, g := range together.Groups(j.Work, before) { // "3 to 6"
		for _, x := range g.Trials {
			all = append(all, sentence.Mention{ID: x.ID, Trials: []*handin.Trial{x}})
		}
	}
	for _, m := range all {
		if m.Missing || len(m.Trials) != 1 {
			return f, false
		}
		if _, fails := j.keeps(m.Trials[0], l); fails {
			return ground.About(fmt.Sprintf("“%s”: %s.", s.Said, j.result(m.Trials[0], l)), s, "of all"), true
		}
	}
	return f, false
}

// End holds "the longest hold was 31 min" against all trials.
func End(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	m := ends.FindStringSubmatch(s.Low)
	if m == nil || s.NotClaimed() || len(sentence.Mentions(j.Work, s)) > 0 || strings.Contains(s.Low, "without ") || strings.Contains(s.Low, " with ") || strings.Contains(s.Low, " at ") {
		return f, false
	}
	of, unit := evidence.Hold, m[4]
	switch what := m[2]; {
	case what == "overrun":
		of = evidence.Overrun
	case strings.HasPrefix(what, "dr") || what == "loss":
		of = evidence.Drained
	}
	if strings.HasPrefix(unit, "min") != (of == evidence.Hold) || of != evidence.Hold && unit != strings.ToLower(j.Unit(of)) {
		return f, false
	}
	v, half := number(m[3])
	upper := slices.Contains([]string{"longest", "highest", "most", "greatest"}, m[1])
	all := []float64{} // of all trials, and of those that are no controls
	for _, controls := range []bool{true, false} {
		end, n := math.NaN(), 0
		for _, x := range j.Work.Trials() {
			low, high, ok := j.Seen(x, of)
			if !ok || !controls && (x.IsControl() || x.Bare()) {
				continue
			}
			if low != high {
				return f, false // ">30" may be any number
			}
			if n++; n == 1 || upper == (low > end) {
				end = low
			}
		}
		all = append(all, end)
	}
	if math.IsNaN(all[0]) || math.IsNaN(v) || slices.ContainsFunc(all, func(e float64) bool { return math.Abs(e-v) <= half+0.05 }) {
		return f, false
	}
	if slices.ContainsFunc(j.Work.Trials(), func(x *handin.Trial) bool { // the mean of a formula made twice
		mean, n := j.OfFormula(x, of)
		return n >= 2 && math.Abs(mean-v) <= half+0.05
	}) {
		return f, false
	}
	return ground.About(fmt.Sprintf("“%s”: in your log it is %s %s.", s.Said, say.Number(all[0]), j.Unit(of)), s, "of all"), true
}

// number is a number with half of its last digit.
func number(said string) (v, half float64) {
	v, err := strconv.ParseFloat(strings.Replace(said, ",", ".", 1), 64)
	if err != nil {
		return math.NaN(), 0
	}
	half = 0.5
	if i := strings.IndexAny(said, ".,"); i >= 0 {
		half = 0.5 * math.Pow(10, -float64(len(said)-i-1))
	}
	return v, half
}

var numbers = map[string]int{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12}

func init() {
	for n := 1; n <= 20; n++ {
		numbers[strconv.Itoa(n)] = n
	}
}
