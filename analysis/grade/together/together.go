package together

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/finding"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/rule"
	"foamfield/analysis/grade/sentence"
	"foamfield/analysis/result/graded"
	"foamfield/ingest/criteria"
	"foamfield/ingest/pattern"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// What a number may be of is tried in every way that the words leave open; it is asked of only
// where none of them bears it out.

var (
	amount  = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:-\s*)?(%|percent\b|mins?\b|minutes?\b|ml\b|g\b|grams?\b)`)
	meant   = pattern.Of(`(?i)(\b(?:on|in) (?:the )?average\b|\baverage[sd]?\b|\baveraging\b|\bmeans?\b|\bmean of\b|\bavg\b|ø|\bim mittel\b|\bdurchschnitt\w*|\ben moyenne\b|\bde media\b|\bin media\b)`)
	clock   = pattern.Of(`(?i)\b(after|in|at|within|for the first|every|by minute|@)\s*(the |about )?$`)
	loose   = pattern.Of(`(?i)(\b(about|around|roughly|nearly|almost|over|under|above|below|more than|less than|at least|at most|up to|ca\.?|circa|some|until|rule|±)|[~≈<>≤≥±])\s*(the |a )?$`)
	scatter = pattern.Of(`(?i)\b(?:scatter\w*|spread|standard deviations?|s\.?d\.?|errors?|uncertainty)\b[^.;\d]{0,40}(?:\d+(?:[.,]\d+)?\s*(?:to|and|-|–)\s*)?$`)
	byMore  = pattern.Of(`(?i)^\s*(?:more|less|longer|shorter|higher|lower|better|worse|apart|difference|of difference|earlier|later|gain|extra|wetter|drier)\b`)
	differ  = pattern.Of(`(?i)\b(?:differ\w*|difference|gap|gain(?:s|ed)?|lost|apart|minus|(?:f[ae]ll|falls|fell|dropp?s?(?:ed)?|rises?|rose|went (?:up|down)|increase[sd]?|decrease[sd]?|shorter|longer) by)\b[^.;]{0,40}$`)
	drains  = pattern.Of(`(?i)\b(drain\w*|drip\w*|wept|weep\w*|leak\w*|ran (?:off|out)|run[- ]?(?:off|out)|lost|loses?|loss|liquid|serum|wet|whey)\b`)
	holds   = pattern.Of(`(?i)\b(held|holds?|holding|stood|stands?|standing|lasted|lasts?|stayed|stays?|kept|keeps?|stable|stability|time|times|minutes?|min|long|longer|shorter)\b`)
	fatOf   = pattern.Of(`(?i)^\s*(?:of )?(?:the )?(fat|butter|oil|ghee|cream|emulsifiers?|gms|ester|mix\b|se\b|polysorbate|sure|of (?:my|the|all|our))`)
	pronoun = pattern.Of(`(?i)\b(its|their|they|them|these|both|the (?:two|three|four|five|repeats|twins|runs|makings)|(?:two|three|four) (?:repeats|runs|makings|times))\b`)
	likely  = pattern.Of(`(?i)(\bnext\b|\bwould\b|\bshould\b|\bexpect\w*|\bpredict\w*|\bmight\b|\bcould\b|\bif\b|\?|\bmaybe\b|\bperhaps\b|\bguess\w*)`)
	ratios  = pattern.Of(`(?i)\b(?:(twice|double|half)\s+(?:as\s+(?:much|long|well|many)|as|the|that of|what)|doubled\b()|(\d+(?:[.,]\d+)?)\s*(?:times|x|fold|×)\s+(?:as|the|that|more|less|longer|what)|(two|three|four|five|six|ten)[- ](?:times|fold)\s*(?:as|the|that|more|less|longer|what))\b`)
	words   = map[string]float64{"twice": 2, "double": 2, "doubled": 2, "half": 0.5, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "ten": 10}
	ranged  = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:min\s*|minutes\s*|%\s*)?(?:to|–|-|and|until|bis)\s*(\d+(?:[.,]\d+)?)\s*(mins?\b|minutes?\b)`)
	isRange = pattern.Of(`(?i)\b(range[sd]?|between|from|lay|spread|varied|vary|varies)\b|\d\s*(?:–|-|to)\s*\d`)
)

// reader holds numbers of groups of trials against the trials.
type reader struct{ *evidence.Trials }

// Check finds means, differences, ratios and ranges that no reading of the trials bears out.
func Check(tr *evidence.Trials) (out []finding.Found) {
	if len(tr.Designs) == 0 || len(tr.Work.Trials()) > mostTrials {
		return nil
	}
	j := &reader{tr}
	all, _ := sentence.SentencesOf(tr.Work)
	var last []Group
	at := trial.Place{}
	for _, s := range all {
		if s.At.File != at.File || s.At.Sheet != at.Sheet || s.At.Row > at.Row+2 {
			last = nil
		}
		at = s.At
		own, before := Groups(tr.Work, s), last
		groups := own
		if len(own) == 0 && pronoun.MatchString(s.Low) {
			groups = last
		}
		if len(groups) == 0 {
			groups = j.levels(s)
		}
		if many := slices.DeleteFunc(slices.Clone(own), func(g Group) bool { return len(g.Trials) < 2 }); len(many) > 0 {
			last = many[len(many)-1:]
		}
		if likely.MatchString(s.Low) {
			continue
		}
		if words, found := j.ofThese(s, own, before); found {
			f := finding.New(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: %s", s.Said, words), s.At).Kinds("another trial did better")
			f.Typed = graded.Txt(s.Said)
			out = append(out, f)
			continue
		}
		for _, check := range []func(sentence.Sentence, []Group) (string, bool){j.agree, j.mean, j.ratio, j.percent, j.spread} {
			if words, found := check(s, groups); found {
				f := finding.New(criteria.Conclusion, graded.Conclusion, fmt.Sprintf("“%s”: %s", s.Said, words), s.At).Kinds("value quoted")
				f.Typed = graded.Txt(s.Said)
				out = append(out, f)
				break
			}
		}
	}
	return append(out, j.tables()...)
}

// mostTrials bounds what every number is held against.
const mostTrials = 60

// measureOf is what an amount is of, in its sentence.
func measureOf(s sentence.Sentence, unit, behind string) (m evidence.Measure, in string) {
	switch u := strings.ToLower(unit); {
	case strings.HasPrefix(u, "min"):
		return evidence.Hold, "min"
	case fatOf.MatchString(behind) || !drains.MatchString(s.Low):
		return evidence.NoMeasure, ""
	case u == "%" || strings.HasPrefix(u, "per"):
		return evidence.Drained, "%"
	case u == "ml":
		return evidence.Drained, "ml"
	}
	return evidence.Drained, "g"
}

// of is a trial's result in a unit; as it was typed as well, where a slip is in it.
func (j *reader) of(x *handin.Trial, m evidence.Measure, unit string) (v float64, ok bool) {
	low, high := 0.0, 0.0
	if m == evidence.Hold {
		low, high, ok = j.Seen(x, m)
	} else {
		low, high, ok = rule.Drained(j.Trials, x, unit)
	}
	return low, ok && low == high
}

// meanOf is the mean of the trials of a group that have a result.
func (j *reader) meanOf(all []*handin.Trial, m evidence.Measure, unit string) (mean float64, list []float64) {
	for _, x := range all {
		if v, ok := j.of(x, m, unit); ok {
			mean, list = mean+v, append(list, v)
		}
	}
	return mean / float64(len(list)), list
}

// natural are the trials that anybody may mean together: of one formula, of one level of fat, of
// emulsifier, of HLB, of two of these; all; all with emulsifier.
func (j *reader) natural() (out [][]*handin.Trial) {
	var all, some []*handin.Trial
	for i := range j.Designs {
		d := &j.Designs[i]
		for _, x := range d.Trials {
			if all = append(all, x); !x.IsControl() && !x.Bare() {
				some = append(some, x)
			}
		}
		for _, g := range d.Groups() {
			out = append(out, pick(d, g))
		}
		for a := range d.Trials {
			for _, by := range [][]method.Factor{{method.Fat}, {method.Emulsifier}, {method.HLB}, {method.Fat, method.Emulsifier}, {method.Fat, method.HLB}, {method.Emulsifier, method.HLB}} {
				var g []int
				for b := range d.Trials {
					if !slices.ContainsFunc(by, func(f method.Factor) bool { return a != b && d.Differ(a, b, f) }) {
						g = append(g, b)
					}
				}
				out = append(out, pick(d, g))
			}
		}
		for _, t := range d.Tables {
			out = append(out, t.Trials)
		}
	}
	return append(out, all, some)
}

func pick(d *method.Design, at []int) (out []*handin.Trial) {
	for _, i := range at {
		out = append(out, d.Trials[i])
	}
	return out
}

// mean holds "5, 6 and 7 held 24 min on average" and "4 and 5 held 7 min longer than 6 and 10"
// against the trials.
func (j *reader) mean(s sentence.Sentence, groups []Group) (said string, found bool) {
	averaged := meant.MatchString(s.Low)
	all := slices.DeleteFunc(amount.FindAllStringSubmatchIndex(s.Text, -1), func(m []int) bool {
		of, _ := measureOf(s, s.Text[m[4]:m[5]], s.Text[m[1]:])
		return of == evidence.NoMeasure
	})
	each := inTurn(all, groups)
	for k, m := range all {
		before, behind := s.Text[:m[0]], s.Text[m[1]:]
		of, unit := measureOf(s, s.Text[m[4]:m[5]], behind)
		v, half := value(s.Text[m[2]:m[3]])
		if of == evidence.NoMeasure || math.IsNaN(v) || clock.MatchString(before) || loose.MatchString(before) || scatter.MatchString(before) {
			continue
		}
		if byMore.MatchString(behind) || differ.MatchString(before) {
			if words, wrong := j.difference(groups, of, unit, v, half, averaged); wrong && !(unit == "%" && j.percentApart(groups, of, unit, v, half, averaged)) {
				return words, true
			}
			continue
		}
		if !averaged {
			continue
		}
		named := groups
		if each {
			named = groups[k : k+1]
		}
		if words, wrong := j.average(named, of, unit, v, half, len(all) > len(groups)); wrong {
			return words, true
		}
	}
	return "", false
}

// inTurn reports numbers that each stand behind the trials of their own: "(5, 6) stood 23 min on
// average, (7, 9) 20.5 min".
func inTurn(amounts [][]int, groups []Group) bool {
	if len(groups) < 2 || len(amounts) != len(groups) {
		return false
	}
	for k, m := range amounts {
		if len(groups[k].Trials) < 2 || groups[k].to > m[0] || k+1 < len(groups) && groups[k+1].from < m[1] {
			return false
		}
	}
	return true
}

// average holds a mean against the groups that a sentence names, else, and where it has more
// numbers than groups, against all that may be meant together.
func (j *reader) average(groups []Group, m evidence.Measure, unit string, v, half float64, more bool) (words string, wrong bool) {
	var sets [][]*handin.Trial
	for _, g := range groups {
		sets = append(sets, g.Trials)
	}
	for i := 1; i < len(groups); i++ {
		sets = append(sets, slices.Concat(groups[i-1].Trials, groups[i].Trials))
	}
	one := len(sets) == 1 && len(sets[0]) > 1
	sets = append(sets, j.makings(groups)...)
	if len(groups) == 0 || more {
		sets = append(sets, j.natural()...)
	}
	any := false
	for _, set := range sets {
		mean, list := j.meanOf(set, m, unit)
		any = any || len(list) > 0
		if len(list) > 0 && math.Abs(mean-v) <= half+0.051 {
			return "", false
		}
		if median := middle(list); len(list) > 2 && math.Abs(median-v) <= half+0.01 {
			return "", false
		}
		for _, x := range list {
			if !one && math.Abs(x-v) <= half+0.01 {
				return "", false
			}
		}
	}
	if !any {
		return "", false
	}
	if len(groups) == 0 {
		return fmt.Sprintf("no trials that belong together have %s %s as their mean. Which are meant?", say.Number(v), unit), true
	}
	return j.sum(groups[nearestTo(j, groups, m, unit, v)].Trials, m, unit) + ".", true
}

// makings are the trials of one formula with those of a group.
func (j *reader) makings(groups []Group) (out [][]*handin.Trial) {
	for _, g := range groups {
		d := j.Design(g.Trials[0].Table)
		at := slices.Index(d.Trials, g.Trials[0])
		var set []*handin.Trial
		for i, x := range d.Trials {
			if i == at || at >= 0 && d.Same(i, at) {
				set = append(set, x)
			}
		}
		if len(g.Trials) == 1 {
			out = append(out, set)
		}
	}
	return out
}

// formula are the trials of one formula with a trial.
func (j *reader) formula(x *handin.Trial) (out []*handin.Trial) {
	d := j.Design(x.Table)
	at := slices.Index(d.Trials, x)
	for i, o := range d.Trials {
		if i == at || at >= 0 && d.Same(i, at) {
			out = append(out, o)
		}
	}
	return out
}

var (
	twoLevels = []struct {
		factor method.Factor
		re     *pattern.Pattern
		within float64
	}{
		{method.Emulsifier, pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*%\s*(?:of )?(?:emulsifiers?|dose)\b[^.;]*?\b(?:than|as|against|instead of|compared (?:with|to))\s+(?:it did |they did )?(?:with|at|the|in|that with)?\s*(?:only )?(\d+(?:[.,]\d+)?)\s*%`), 0.12},
		{method.Fat, pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*%\s*(?:of )?(?:fat|butter|oil|mix|mixes|ones|foams)\b[^.;]*?\b(?:than|as|against|instead of|compared (?:with|to))\s+(?:it did |they did )?(?:with|at|the|in|that with)?\s*(?:only )?(\d+(?:[.,]\d+)?)\s*%`), 1.2},
		{method.HLB, pattern.Of(`(?i)\bhlb (?:of )?(\d+(?:[.,]\d+)?)\b[^.;]*?\b(?:than|as|against|instead of|compared (?:with|to))\s+(?:with|at|the|in|that with)?\s*(?:an? )?(?:hlb )?(?:of )?(\d+(?:[.,]\d+)?)`), 0.3},
	}
)

// levels are the trials at two levels that a sentence compares: "with 4 % emulsifier … than with 2 %".
func (j *reader) levels(s sentence.Sentence) []Group {
	if len(j.Designs) != 1 {
		return nil
	}
	d := &j.Designs[0]
	for _, one := range twoLevels {
		m := one.re.FindStringSubmatch(s.Text)
		if m == nil {
			continue
		}
		var out []Group
		for _, text := range m[1:3] {
			level, _ := value(text)
			var g Group
			for i, x := range d.Trials {
				if math.Abs(d.At(i, one.factor)-level) <= one.within && !x.IsControl() && !x.Bare() {
					g.Trials = append(g.Trials, x)
				}
			}
			if len(g.Trials) == 0 {
				return nil
			}
			out = append(out, g)
		}
		return out
	}
	return nil
}

// nearestTo is the group of several trials whose mean is nearest to a number.
func nearestTo(j *reader, groups []Group, m evidence.Measure, unit string, v float64) (best int) {
	off := math.Inf(1)
	for i, g := range groups {
		if mean, list := j.meanOf(g.Trials, m, unit); len(list) > 0 && math.Abs(mean-v) < off {
			best, off = i, math.Abs(mean-v)
		}
	}
	return best
}

// sum writes the mean of some trials out.
func (j *reader) sum(all []*handin.Trial, m evidence.Measure, unit string) string {
	mean, list := j.meanOf(all, m, unit)
	var ids, values []string
	for _, x := range all {
		ids = append(ids, handin.ShortID(x.ID))
	}
	for _, v := range list {
		values = append(values, say.Number(v))
	}
	if len(list) == 0 {
		return "no result is logged for " + say.List(ids)
	}
	if len(list) == 1 {
		return fmt.Sprintf("trial %s has %s %s", ids[0], values[0], unit)
	}
	return fmt.Sprintf("the mean of %s is (%s) / %d = %s %s", say.List(ids), strings.Join(values, " + "), len(list), say.Number(math.Round(100*mean)/100), unit)
}

func middle(list []float64) float64 {
	if len(list) == 0 {
		return math.NaN()
	}
	s := slices.Sorted(slices.Values(list))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// difference holds what two groups are said to differ by against all pairs of means that may be
// meant: of the groups, of their formulas, of single trials where no mean is spoken of.
func (j *reader) difference(groups []Group, m evidence.Measure, unit string, v, half float64, averaged bool) (words string, wrong bool) {
	var sets [][]*handin.Trial
	for _, g := range groups {
		sets = append(sets, g.Trials)
	}
	if len(sets) == 1 && len(sets[0]) == 2 { // "6 min longer (4 → 5)"
		sets = [][]*handin.Trial{sets[0][:1], sets[0][1:]}
	}
	if len(sets) != 2 && len(sets) != 3 {
		return "", false
	}
	pairs := [][2][][]*handin.Trial{{j.readings(sets[0], averaged), j.readings(sets[1], averaged)}}
	if len(sets) == 3 { // "longer than A5 and 6 min longer than A4"
		pairs = append(pairs, [2][][]*handin.Trial{pairs[0][0], j.readings(sets[2], averaged)}, [2][][]*handin.Trial{pairs[0][1], j.readings(sets[2], averaged)})
	}
	for _, p := range pairs {
		for _, a := range p[0] {
			for _, b := range p[1] {
				x, n := j.meanOf(a, m, unit)
				y, k := j.meanOf(b, m, unit)
				if len(n) == 0 || len(k) == 0 {
					return "", false
				}
				if math.Abs(math.Abs(x-y)-v) <= max(half, 0.5*float64(b2i(half >= 0.5)))+0.051 {
					return "", false
				}
			}
		}
	}
	x, _ := j.meanOf(sets[0], m, unit)
	y, _ := j.meanOf(sets[1], m, unit)
	return fmt.Sprintf("%s, and %s: %s %s apart.", j.sum(sets[0], m, unit), j.sum(sets[1], m, unit), say.Number(math.Round(100*math.Abs(x-y))/100), unit), true
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// readings are what a group may be read as.
func (j *reader) readings(set []*handin.Trial, averaged bool) (out [][]*handin.Trial) {
	out = append(out, set)
	out = append(out, j.makings([]Group{{Trials: set}})...)
	for _, x := range set { // of a level: any one formula of it
		out = append(out, slices.DeleteFunc(j.formula(x), func(o *handin.Trial) bool { return !slices.Contains(set, o) }))
	}
	if !averaged {
		for _, x := range set {
			out = append(out, []*handin.Trial{x})
		}
	}
	return out
}

// ofThese holds "of these trial 5 stood longest" against the trials named before it.
func (j *reader) ofThese(s sentence.Sentence, own, before []Group) (said string, found bool) {
	if !among.MatchString(s.Low) || !sentence.Longest.MatchString(s.Low) || len(own) == 0 || len(before) != 1 || s.Denied() {
		return "", false
	}
	mine, list := j.meanOf(own[0].Trials[:1], evidence.Hold, "min")
	if len(list) == 0 {
		return "", false
	}
	for _, x := range before[0].Trials {
		if v, ok := j.of(x, evidence.Hold, "min"); ok && v > mine+1e-9 && x != own[0].Trials[0] {
			return fmt.Sprintf("trial %s of these has %s min, and trial %s %s.", x.ID, say.Number(v), own[0].Trials[0].ID, say.Number(mine)), true
		}
	}
	return "", false
}

var among = pattern.Of(`(?i)\bof (?:these|those|them)\b`)

// ratio holds "drained three times as much as" against two groups.
func (j *reader) ratio(s sentence.Sentence, groups []Group) (said string, found bool) {
	m := ratios.FindStringSubmatch(s.Text)
	if m == nil || len(groups) != 2 || loose.MatchString(s.Text[:strings.Index(s.Text, m[0])]) {
		return "", false
	}
	what, unit := evidence.NoMeasure, ""
	switch {
	case drains.MatchString(s.Low):
		what = evidence.Drained
		for _, u := range []string{"%", "ml", "g"} {
			if _, ok := j.of(groups[0].Trials[0], what, u); ok && unit == "" {
				unit = u
			}
		}
	case holds.MatchString(s.Low):
		what, unit = evidence.Hold, "min"
	}
	k, within := times(m)
	if unit == "" || k == 0 {
		return "", false
	}
	for _, a := range j.readings(groups[0].Trials, meant.MatchString(s.Low)) {
		for _, b := range j.readings(groups[1].Trials, meant.MatchString(s.Low)) {
			x, n := j.meanOf(a, what, unit)
			y, l := j.meanOf(b, what, unit)
			if len(n) == 0 || len(l) == 0 || y == 0 || x == 0 {
				return "", false
			}
			if math.Abs(x/y-k) <= within || math.Abs(y/x-k) <= within {
				return "", false
			}
		}
	}
	x, _ := j.meanOf(groups[0].Trials, what, unit)
	y, _ := j.meanOf(groups[1].Trials, what, unit)
	return fmt.Sprintf("%s, and %s: %s times.", j.sum(groups[0].Trials, what, unit), j.sum(groups[1].Trials, what, unit), say.Number(math.Round(10*x/y)/10)), true
}

// inPercent is by how many percent something held longer.
var inPercent = pattern.Of(`(?i)(\d+(?:[.,]\d+)?)\s*(?:%|percent|per cent)\s+(longer|shorter)\b`)

// percent holds "held 50 % longer than" against two groups.
func (j *reader) percent(s sentence.Sentence, groups []Group) (said string, found bool) {
	m := inPercent.FindStringSubmatchIndex(s.Text)
	if m == nil || len(groups) != 2 || loose.MatchString(s.Text[:m[0]]) || s.Denied() {
		return "", false
	}
	v, half := value(s.Text[m[2]:m[3]])
	a, b := groups[0].Trials, groups[1].Trials
	x, n := j.meanOf(a, evidence.Hold, "min")
	y, k := j.meanOf(b, evidence.Hold, "min")
	if len(n) == 0 || len(k) == 0 || x == 0 || y == 0 || math.IsNaN(v) || j.percentApart(groups, evidence.Hold, "min", v, half, meant.MatchString(s.Low)) {
		return "", false
	}
	return fmt.Sprintf("%s, and %s: (%s − %s) / %s × 100 = %s %%.", j.sum(a, evidence.Hold, "min"), j.sum(b, evidence.Hold, "min"), say.Number(math.Round(100*x)/100), say.Number(math.Round(100*y)/100), say.Number(math.Round(100*y)/100), say.Number(math.Round(100*(x-y)/y))), true
}

// percentApart reports two groups that differ by so many percent of either, in some reading.
func (j *reader) percentApart(groups []Group, m evidence.Measure, unit string, v, half float64, averaged bool) bool {
	if len(groups) != 2 {
		return false
	}
	for _, a := range j.readings(groups[0].Trials, averaged) {
		for _, b := range j.readings(groups[1].Trials, averaged) {
			x, n := j.meanOf(a, m, unit)
			y, k := j.meanOf(b, m, unit)
			if len(n) == 0 || len(k) == 0 || x == 0 || y == 0 {
				return true // not known
			}
			apart := 100 * math.Abs(x-y)
			if within := half + 0.03*v + 0.5; math.Abs(apart/x-v) <= within || math.Abs(apart/y-v) <= within {
				return true
			}
		}
	}
	return false
}

// times is a ratio in words or figures, with what it is rounded by.
func times(m []string) (k, within float64) {
	if v, half := value(m[3]); !math.IsNaN(v) {
		return v, half + 0.06*v
	}
	k = 2
	for _, w := range []string{m[1], m[4]} {
		if w != "" {
			k = words[strings.ToLower(w)]
		}
	}
	return k, 0.22 * k
}

// spread holds "stood between 20 and 26 min" against the least and the most of a group.
func (j *reader) spread(s sentence.Sentence, groups []Group) (said string, found bool) {
	if len(groups) != 1 || len(groups[0].Trials) < 2 || !isRange.MatchString(s.Text) || drains.MatchString(s.Low) {
		return "", false
	}
	all := ranged.FindAllStringSubmatchIndex(s.Text, -1)
	if len(all) != 1 || clock.MatchString(s.Text[:all[0][0]]) || scatter.MatchString(s.Text[:all[0][0]]) || byMore.MatchString(s.Text[all[0][1]:]) {
		return "", false
	}
	m := all[0]
	a, half := value(s.Text[m[2]:m[3]])
	b, _ := value(s.Text[m[4]:m[5]])
	_, list := j.meanOf(groups[0].Trials, evidence.Hold, "min")
	if len(list) < 2 || len(list) < len(groups[0].Trials) || borne(list, min(a, b), max(a, b), half) {
		return "", false
	}
	if len(list) == 2 || !strings.Contains(strings.ToLower(s.Text[m[0]:m[1]]), "and") || strings.Contains(s.Low, "between") {
		return fmt.Sprintf("these stood from %s to %s min.", say.Number(slices.Min(list)), say.Number(slices.Max(list))), true
	}
	return "", false
}

// borne reports a range that is that of some numbers.
func borne(list []float64, low, high, half float64) bool {
	return math.Abs(slices.Min(list)-low) <= half+0.01 && math.Abs(slices.Max(list)-high) <= half+0.01
}

func value(text string) (v, half float64) {
	text = strings.Replace(text, ",", ".", 1)
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN(), 0
	}
	half = 0.5
	if i := strings.Index(text, "."); i >= 0 {
		half = 0.5 * math.Pow(10, -float64(len(text)-i-1))
	}
	return v, half
}
