// Package passed holds claims by the student's own rule of success against it: which trials pass, how
// many, and which of them is the best.
package passed

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
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/rule"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/grade/together"
	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// judge holds claims against trials.
type judge struct{ *ground.Judge }

var (
	number    = `\d+|none|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|all|half`
	nOfM      = pattern.Of(`(?i)\b(` + number + `)\s*(?:(?:out )?of|from|/)\s*(?:the |my |our |all |these |those )*(` + number + `)?\s*(?:\p{L}+ ){0,2}?(trials?|foams?|mixes|runs?|tests?|batches|recipes?|siphons?|ones|attempts?|tries|them)?\b`)
	percentOf = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:%|percent|per cent)\s+of (?:all |the |my |our )*(?:\d+ |\p{L}+ )?(?:trials|foams|mixes|runs|tests|batches|recipes|siphons)|\bsuccess rate\D{0,12}(\d+(?:[.,]\d+)?)\s*(?:%|percent)`)
	ofMN      = pattern.Of(`(?i)\b(?:out )?of (?:the |my |our |all )*(` + number + `) (?:trials|foams|mixes|runs|tests|batches|siphons),? (` + number + `)\b`)
	justN     = pattern.Of(`(?i)(?:^|[,;:]\s*|\b(?:so|and|in all|altogether|only|total of)\s+)\s*(` + number + `) (?:trials|foams|mixes|runs|tests|batches|siphons) (?:have |has )?(?:passed|worked|succeeded|met|were (?:good|ok|fine|successful|a success|successes)|made it|fulfilled|failed|did not)\b|\bnumber of (?:success\w*|passes|good \w+|wins)\D{0,12}?(` + number + `)\b`)
	numerals  = map[string]int{"none": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16}
	passing   = pattern.Of(`(?i)\b(works?|worked|working|succeed(?:s|ed)?|success(?:es|ful)?|met|meets?|fulfil(?:s|led|led)?|pass(?:es|ed)?|reached|good|ok|okay|fine|accepted|made it|did it|wins?|won|winners?|rule|criteri\w+|target)\b`)
	failing   = pattern.Of(`(?i)\b(failed|fails?|did not (?:work|pass|make it|meet)|didn't (?:work|pass|make it|meet)|missed|bad|no good|not (?:ok|good|fine))\b`)
	// partly are words by which only some of the trials are counted.
	partly = pattern.Of(`(?i)\b(repeats?|repeated|with (?:the )?(?:hlb|fat|butter|emulsifier|gms)|at \d|of (?:these|those|them)|on (?:mon|tues|wednes|thurs|fri)\w*|in series|in the (?:first|second|last)|only (?:held|stood|the)|clogged|split|came out|drained too|longer|of the (?:rich|lean|fat)\w*)\b`)
)

// Counted holds "3 of 5 trials worked", "75 % of my trials met the rule" against the trials
// by the student's own rule; and the trials that are listed beside it.
func Counted(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	all := j.Work.Trials()
	no := failing.MatchString(s.Low)
	if !r.Set() || sentence.Unsure.MatchString(s.Low) || !no && !passing.MatchString(s.Low) {
		return f, false
	}
	n, share, said := countIn(s, len(all), j.controls())
	if !said || partly.MatchString(withEmulsifier.ReplaceAllString(countedPart(s), "")) {
		return f, false
	}
	var passed, maybe, failed []*handin.Trial
	emulsified := withEmulsifier.MatchString(s.Low)
	for _, x := range all {
		if emulsified && x.Bare() {
			continue
		}
		switch v, _ := r.Judge(j.Trials, x); v {
		case rule.Passes:
			passed = append(passed, x)
		case rule.Fails:
			failed = append(failed, x)
		default:
			maybe = append(maybe, x)
		}
	}
	low, high := len(passed), len(passed)+len(maybe)
	if no && !passing.MatchString(failing.ReplaceAllString(s.Low, "")) {
		low, high = len(failed), len(failed)+len(maybe)
	}
	if n < float64(low)-share || n > float64(high)+share {
		is := strconv.Itoa(low)
		if high > low {
			is += " to " + strconv.Itoa(high)
		}
		f = ground.About(fmt.Sprintf("“%s”: by your own rule (%s) it is %s of %d%s.", s.Said, r.Words(), is, len(all), list(passed, no)), s, "miscounted")
		f.Certain = len(maybe) == 0 && r.Hold != nil && !j.doubted(r)
		if r.Drained == nil && r.Hold != nil {
			f.Certain = f.Certain && n > float64(high) // a part of the rule may not have been understood
		}
		return f, true
	}
	if g := together.Groups(j.Work, s); !no && len(g) == 1 && share < 1 && float64(len(g[0].Trials)) == n {
		for _, x := range g[0].Trials {
			if v, why := r.Judge(j.Trials, x); v == rule.Fails {
				return ground.About(fmt.Sprintf("“%s”: by your own rule (%s) trial %s does not: %s.", s.Said, r.Words(), x.ID, why), s, "own rule"), true
			}
		}
	}
	return f, false
}

// withEmulsifier are all but the controls.
var withEmulsifier = pattern.Of(`(?i)\bwith (?:an? |the |any )?emulsifiers?\b`)

var (
	richest = pattern.Of(`(?i)\b(richest|fattest|most fat|highest fat|most butter|highest in fat)\b`)
	poorest = pattern.Of(`(?i)\b(leanest|least fat|lowest fat)\b`)
	ofGood  = pattern.Of(`(?i)\b(that|which|of (?:these|those|them|the good|the successes|the successful|the passing|the ones)|among|passing|passed|pass|passes|success\w*|good|ok|worked|works?|met|meets?|still)\b`)
)

// Fattest holds "the richest mix is trial 7", "the richest that passed is no. 5" against the fat of
// all trials, or of those that pass.
func Fattest(g *ground.Judge, s sentence.Sentence, r ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	rich, lean := richest.MatchString(s.Low), poorest.MatchString(s.Low)
	if rich == lean || sentence.Unsure.MatchString(s.Low) || s.Denied() || ground.Otherwise.MatchString(ByRule.ReplaceAllString(s.Low, "")) {
		return f, false
	}
	named := j.Subjects(s)
	d := j.OneDesign(named)
	passing := ofGood.MatchString(s.Low) || sentence.BestWord.MatchString(s.Low)
	if d == nil || passing && !r.Set() {
		return f, false
	}
	sign := 1.0
	if lean {
		sign = -1
	}
	mine := math.Inf(-1)
	for _, m := range named {
		mine = max(mine, sign*d.At(slices.Index(d.Trials, m.Trials[0]), method.Fat))
	}
	for at, x := range d.Trials {
		v := sign * d.At(at, method.Fat)
		if math.IsNaN(v) || math.IsNaN(mine) || v <= mine+1.5 || passing && !j.allPass(d, at, r) {
			continue
		}
		is := "richer"
		if lean {
			is = "leaner"
		}
		which := ""
		if passing {
			which = fmt.Sprintf(", and it passes (%s)", r.Words())
		}
		return ground.About(fmt.Sprintf("“%s”: trial %s is %s, with %s %% fat for %s%s.", s.Said, x.ID, is, say.Number(math.Round(10*sign*v)/10), say.Number(math.Round(10*sign*mine)/10), which), s, "another trial did better"), true
	}
	return f, false
}

// tellOff are what may become of a foam, and how many trials a sentence says it became of.
var tellOff = []struct {
	re *pattern.Pattern
	of func(x *handin.Trial) (yes, known bool)
	is string
}{
	{pattern.Of(`(?i)\b(` + number + `) (?:of (?:the |my |our |all |these )*(?:\d+ |\p{L}+ )?)?(?:trials?|foams?|mixes|runs?|tests?|times)? ?(?:were |was |got |have |had |has )?(?:clogged|blocked|stuck|did not come out|didn't come out)\b`), func(x *handin.Trial) (bool, bool) {
		return x.CameOut == trial.No, x.CameOut != trial.Unknown
	}, "did not come out"},
	{pattern.Of(`(?i)\b(` + number + `) (?:of (?:the |my |our |all |these )*(?:\d+ |\p{L}+ )?)?(?:trials?|foams?|mixes|runs?|tests?)? ?(?:were |was |got |have |had |has )?(?:split|separated|broke|curdled)\b`), func(x *handin.Trial) (bool, bool) {
		return x.Broke == trial.Yes, x.Broke != trial.Unknown
	}, "split"},
	{pattern.Of(`(?i)\b(` + number + `) (?:of (?:the |my |our |all |these )*(?:\d+ |\p{L}+ )?)?(?:trials?|foams?|mixes|runs?|tests?)? ?(?:came|come) out (?:only )?(?:partly|in part|half)\b`), func(x *handin.Trial) (bool, bool) {
		return x.CameOut == trial.Partly, x.CameOut != trial.Unknown
	}, "came out partly"},
}

// Became holds "three foams clogged", "two split" against all trials.
func Became(g *ground.Judge, s sentence.Sentence, _ ground.OwnRule, _ evidence.Measure) (f finding.Found, ok bool) {
	j := &judge{g}
	if sentence.Unsure.MatchString(s.Low) || len(together.Groups(j.Work, s)) > 0 || strings.Contains(s.Low, "%") || sentence.Narrowed.MatchString(s.Low) {
		return f, false
	}
	for _, one := range tellOff {
		m := one.re.FindStringSubmatch(s.Low)
		if m == nil {
			continue
		}
		n, ok := whole(m[1], 0)
		if x := j.Work.ByID(m[1]); len(x) == 1 && m[1][0] <= '9' { // "5 clogged" is of trial 5, which did
			if yes, _ := one.of(x[0]); yes {
				continue
			}
		}
		is, unknown := 0, 0
		for _, x := range j.Work.Trials() {
			switch yes, known := one.of(x); {
			case !known:
				unknown++
			case yes:
				is++
			}
		}
		if ok && (n < is || n > is+unknown) {
			return ground.About(fmt.Sprintf("“%s”: in your log %d %s.", s.Said, is, one.is), s, "miscounted"), true
		}
	}
	return f, false
}

// list names the trials that pass, where they are few.
func list(passed []*handin.Trial, no bool) string {
	ids := handin.ShortIDs(passed)
	if no || len(ids) == 0 || len(ids) > 16 {
		return ""
	}
	return " (" + strings.Join(ids, ", ") + ")"
}

// countedPart is a sentence up to where it lists or explains what was counted.
func countedPart(s sentence.Sentence) string {
	at := nOfM.FindStringIndex(s.Low)
	if at == nil {
		return s.Low
	}
	rest, _, _ := strings.Cut(s.Low[at[0]:], "(")
	rest, _, _ = strings.Cut(rest, ",")
	return rest
}

// countIn is how many trials a sentence counts, of all; within how many it is rounded.
func countIn(s sentence.Sentence, all, controls int) (n, within float64, ok bool) {
	if m := percentOf.FindStringSubmatch(s.Low); m != nil {
		v := ground.FirstNumber(m[1:])
		return v / 100 * float64(all), 0.5, !math.IsNaN(v)
	}
	if m := ofMN.FindStringSubmatch(s.Low); m != nil {
		of, _ := whole(m[1], 0)
		if k, fine := whole(m[2], of); fine && k <= of && (of == all || of == all-controls) {
			return float64(k), 0, true
		}
	}
	if m := justN.FindStringSubmatch(s.Low); m != nil {
		if k, fine := whole(m[1]+m[2], all); fine && k <= all {
			return float64(k), 0, true
		}
	}
	for _, m := range nOfM.FindAllStringSubmatch(slashed.ReplaceAllString(s.Low, " "), -1) {
		of, has := whole(m[2], 0)
		if !has && m[3] == "" {
			continue // "one of", "half of the"
		}
		if has && of != all && of != all-controls {
			continue // of some of them only
		}
		if !has {
			of = all
		}
		if k, fine := whole(m[1], of); fine && k <= of {
			return float64(k), 0, true
		}
	}
	return 0, 0, false
}

// slashed are makings of one mix by their numbers, and no count: "runs 3/6 and 4/7", "3/6 (18, 16 min)".
var slashed = pattern.Of(`\b(?:runs?|trials?|foams?|mix(?:es)?|cards?|tests?|nos?\.?|numbers?)\s+\d+\s*/\s*\d+(?:(?:\s*\([^)]*\))?\s*(?:,|and|&)\s*\d+\s*/\s*\d+)*|\b\d+\s*/\s*\d+\s*\(`)

// whole is a number in figures or as a word; all and half are of so many.
func whole(word string, of int) (n int, ok bool) {
	word = strings.ToLower(word)
	switch word {
	case "":
		return 0, false
	case "all":
		return of, of > 0
	case "half":
		return of / 2, of > 0 && of%2 == 0
	}
	if n, ok = numerals[word]; ok {
		return n, true
	}
	n, err := strconv.Atoi(word)
	return n, err == nil
}

// controls counts the controls.
func (j *judge) controls() (n int) {
	for _, x := range j.Work.Trials() {
		if x.IsControl() || x.Bare() {
			n++
		}
	}
	return n
}

// doubted reports results that may not be what the student saw: a slip among them, or a hold that
// would pass as hours; nobody is told for sure that he or she counted wrong.
func (j *judge) doubted(r ground.OwnRule) bool {
	for _, t := range j.Work.Tables {
		for _, c := range t.All(column.Hold) {
			if r.Hold != nil && slices.ContainsFunc(c.Cells, func(x handin.Cell) bool { return x.Known && x.Value < 1.5 && 60*x.Value >= r.Hold.At }) {
				return true
			}
		}
	}
	return len(j.Work.Sums) > 0 || j.Slipped()
}

// ByRule are words that say by what the best was chosen: by the student's own rule.
var ByRule = pattern.Of(`(?i)\b(?:by|after|following|under|according to|with|judged by|going by) (?:my|our|the|this|that|own) (?:own )?(?:success )?(?:rules?|goals?|aims?|targets?|criteri(?:on|a)|definition|yardstick)\b`)

// Best holds "trial 4 is best" against what the student says the best has, among all
// that pass. Whoever gives a reason of another kind may go by that, unless he or she says that
// it is by the rule.
func Best(g *ground.Judge, s sentence.Sentence, named []sentence.Mention, r ground.OwnRule) (f finding.Found, ok bool) {
	j := &judge{g}
	byRule := ByRule.MatchString(s.Low)
	if r.Best == rule.Unsaid || ground.Otherwise.MatchString(ByRule.ReplaceAllString(s.Low, "")) || !byRule && ground.Because.MatchString(s.Low) {
		return f, false
	}
	d := j.OneDesign(named)
	if d == nil {
		return f, false
	}
	mine := math.Inf(-1)
	for _, m := range named {
		mine = max(mine, j.merit(d, m.Trials[0], r.Best, true))
	}
	var beats *handin.Trial
	most := mine + j.merits(d, r.Best)
	for at, x := range d.Trials {
		v := j.merit(d, x, r.Best, false)
		if math.IsNaN(v) || v <= most || !j.allPass(d, at, r) || slices.ContainsFunc(named, func(m sentence.Mention) bool { return d.Same(at, slices.Index(d.Trials, m.Trials[0])) }) {
			continue
		}
		beats, most = x, v
	}
	if beats == nil || math.IsInf(mine, 0) || math.IsNaN(mine) {
		return f, false
	}
	passes := ""
	if r.Set() {
		passes = fmt.Sprintf(" of those that pass (%s)", r.Words())
	}
	return ground.About(fmt.Sprintf("“%s”: you call best what has %s%s; trial %s has %s, and trial %s %s.", s.Said, r.Best, passes, beats.ID, j.meritWords(j.merit(d, beats, r.Best, false), r.Best), named[0].ID, j.meritWords(mine, r.Best)), s, "another trial did better"), true
}

// merit is how much a trial has of what makes the best, at its best or as much as it surely has where
// its results are bounds; NaN where it is not known.
func (j *judge) merit(d *method.Design, x *handin.Trial, b rule.Best, atBest bool) float64 {
	i := slices.Index(d.Trials, x)
	switch b {
	case rule.MostFat:
		return d.At(i, method.Fat)
	case rule.LeastEmulsifier:
		return -d.At(i, method.Emulsifier)
	case rule.Longest:
		if low, high, n := j.BoundsOfFormula(x, evidence.Hold); n > 0 && atBest {
			return high
		} else if n > 0 {
			return low
		}
	case rule.LeastDrained:
		if low, high, n := j.BoundsOfFormula(x, evidence.Drained); n > 0 && atBest {
			return -low
		} else if n > 0 {
			return -high
		}
	case rule.HighestScore:
		if low, high, known := scoresOfFormula(d, i); known && atBest {
			return high
		} else if known {
			return low
		}
	}
	return math.NaN()
}

// scoresOfFormula are the least and the highest score that makings of one formula were given; false where
// not all of them have one.
func scoresOfFormula(d *method.Design, at int) (low, high float64, known bool) {
	low, high = math.Inf(1), math.Inf(-1)
	for i, x := range d.Trials {
		if i != at && !d.Same(i, at) {
			continue
		}
		c := scores(x.Table)
		if c == nil || !c.Cells[x.Index].Known {
			return 0, 0, false
		}
		low, high = min(low, c.Cells[x.Index].Value), max(high, c.Cells[x.Index].Value)
	}
	return low, high, true
}

// scores is the column of the score by which trials rank: the only one, or the one that is called the sum of
// the others; nil where nothing tells which.
func scores(t *handin.Table) *handin.Column {
	all := t.All(column.Score)
	if len(all) > 1 {
		all = slices.DeleteFunc(slices.Clone(all), func(c *handin.Column) bool { return !totalScore.MatchString(c.Header) })
	}
	if len(all) != 1 {
		return nil
	}
	return all[0]
}

var totalScore = pattern.Of(`(?i)\b(?:total|sum|overall|all|together|final)\b`)

// merits is by how much a merit has to be greater to count.
func (j *judge) merits(d *method.Design, b rule.Best) float64 {
	switch b {
	case rule.MostFat:
		return 1.2
	case rule.LeastEmulsifier:
		return 0.12
	case rule.LeastDrained:
		return j.Margin(d, evidence.Drained)
	case rule.HighestScore: // by as much as makings of one formula were judged apart
		apart := 0.0
		for i := range d.Trials {
			if low, high, known := scoresOfFormula(d, i); known {
				apart = max(apart, high-low)
			}
		}
		return apart
	}
	return j.Margin(d, evidence.Hold)
}

func (j *judge) meritWords(v float64, b rule.Best) string {
	switch b {
	case rule.Longest:
		return say.Number(math.Round(10*v)/10) + " min"
	case rule.MostFat:
		return say.Number(math.Round(10*v)/10) + " % fat"
	case rule.LeastEmulsifier:
		return say.Number(math.Round(-100*v)/100) + " % emulsifier"
	case rule.HighestScore:
		return "a score of " + say.Number(math.Round(10*v)/10)
	}
	if unit := j.Unit(evidence.Drained); unit != "%" {
		return say.Number(math.Round(-1000*v)/1000) + " " + unit + " drained"
	}
	return say.Number(math.Round(-10*v)/10) + " % drained"
}

// allPass reports a trial that passes, as all makings of its formula do. Without a rule in
// numbers it has to have come out, and not to have split.
func (j *judge) allPass(d *method.Design, at int, r ground.OwnRule) bool {
	for i, x := range d.Trials {
		if i != at && !d.Same(i, at) {
			continue
		}
		if !r.Set() || !j.Passes(x, r) {
			return false
		}
	}
	return true
}
