// Package asked asks of the line of each outcome what may have changed: a drift, days, weeks,
// optima, lots, cooks, canisters, suppliers, and says of each whether it is shown, suggested,
// not shown or not tested.
package asked

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/nested"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	showing = 0.05
	// mostFixed is how many weeks, or days, a test still tells one by one; of more it asks
	// whether they scatter at all.
	mostFixed = 12
	mostDays  = 60
	// leastGroups is how many groups must have enough to be tested.
	leastGroups = 2
)

// Question is one test of one line on its way.
type Question struct {
	result.TrendTest
	l      *line.Line
	ask    func(*Question)
	found  string // what was found, were it shown: "hold with butter lot B is times 0.71 what it is with A"
	beyond bool   // of an optimum: what would have been seen is more than all that was tried
}

// Of asks of every line what may have changed, and adjusts the answers for their number.
func Of(v *line.View) []result.TrendTest {
	all := questions(v)
	askEach(all)
	return answers(all)
}

// Wanted is Of where only some of the questions are wanted, nil if none of these has an answer
// of note: the others, which only adjust them, are asked only then.
func Wanted(v *line.View, wanted func(what string) bool) []result.TrendTest {
	all := questions(v)
	var first, rest []*Question
	for _, q := range all {
		if wanted(q.What) {
			first = append(first, q)
		} else {
			rest = append(rest, q)
		}
	}
	askEach(first)
	if !slices.ContainsFunc(first, func(q *Question) bool { return q.P != nil && *q.P < showing }) {
		return nil
	}
	askEach(rest)
	return answers(all)
}

// questions are what each line is asked.
func questions(v *line.View) []*Question {
	var all []*Question
	for _, l := range v.Lines {
		if l.Main == nil {
			continue
		}
		add := func(what, by string, ask func(*Question)) {
			all = append(all, &Question{TrendTest: result.TrendTest{What: what, By: by, Outcome: l.Outcome, Verdict: result.NotTested}, l: l, ask: ask})
		}
		add("drift", "", (*Question).drift)
		add("day", "", (*Question).day)
		add("week", "", (*Question).week)
		for i, x := range v.Surface.Vars {
			if l.Outcome == result.HoldMinutes { // drainage is best where there is least, not at a peak
				add("optimum:"+x.Name, "", func(q *Question) { q.optimum(i) })
			}
		}
		for f, way := range v.Factors {
			if l.InWeek[f] && len(l.Counts[f]) < len(v.History.Periods) {
				add("week", way.By+" or week", func(q *Question) { q.withWeeks(f) })
			}
			add(way.What, way.By, func(q *Question) { q.factor(f) })
		}
	}
	return all
}

func askEach(some []*Question) {
	region.Parallel(len(some), func(i int) { some[i].ask(some[i]) })
}

// answers are those of all questions, adjusted for their number.
func answers(all []*Question) []result.TrendTest {
	holm(all)
	out := []result.TrendTest{}
	named := map[string]bool{}
	for _, q := range all {
		q.judge()
		named[q.What] = true
		out = append(out, q.TrendTest)
	}
	return append(out, absent(named)...)
}

// absent names what the log has no column of.
func absent(named map[string]bool) (out []result.TrendTest) {
	for _, what := range []string{"drift", "day", "week", "lot", "cook", "canister", "supplier"} {
		if !named[what] {
			why := "not tested: the log names no " + what
			if what == "drift" {
				why = "not tested: there are no two dates to compare"
			}
			out = append(out, result.TrendTest{What: what, Outcome: result.HoldMinutes, Verdict: result.NotTested, Sentence: why})
		}
	}
	return out
}

// holm adjusts p values for the number of tests (Holm 1979, Scand. J. Statist. 6:65-70).
func holm(all []*Question) {
	var asked []*Question
	for _, q := range all {
		if q.P != nil {
			asked = append(asked, q)
		}
	}
	slices.SortStableFunc(asked, func(a, b *Question) int { return cmp.Compare(*a.P, *b.P) })
	least := 0.0
	for i, q := range asked {
		least = math.Max(least, math.Min(1, *q.P*float64(len(asked)-i)))
		p := least
		q.PAdjusted = &p
	}
}

// judge words what a test came to.
func (q *Question) judge() {
	if q.P == nil {
		if q.Sentence == "" {
			q.Sentence = "not tested"
		}
		return
	}
	switch {
	case *q.PAdjusted < showing:
		q.Verdict = result.Shown
	case *q.P < showing:
		q.Verdict = result.Suggested
	default:
		q.Verdict = result.NotSeen
	}
	q.Sentence = q.words()
}

// words says what was found, or what would have been seen.
func (q *Question) words() string {
	switch q.Verdict {
	case result.Shown:
		return "shown: " + q.found
	case result.Suggested:
		return "suggested, not shown: " + q.found + "; of so many things looked at one may look so by chance"
	}
	return "not shown: " + q.looked() + q.seen()
}

// looked is what was looked for.
func (q *Question) looked() string {
	o := line.Named(q.Outcome)
	switch q.What {
	case "drift":
		return "a steady move of " + o + " from the first date to the last"
	case "day":
		return "a difference of " + o + " between the days of a week"
	case "week":
		if q.By != "" {
			return "a difference of " + o + " by " + q.By
		}
		return "a difference of " + o + " between weeks"
	}
	if x, optimum := q.variable(); optimum {
		return "a move of the " + x.Label + " that holds longest"
	}
	return "a difference of " + o + " by " + q.By
}

// variable is the one whose optimum is asked about.
func (q *Question) variable() (result.Variable, bool) {
	name, optimum := strings.CutPrefix(q.What, "optimum:")
	if !optimum {
		return result.Variable{}, false
	}
	return q.l.Surface.Vars[q.l.Surface.Place(name)], true
}

// seen is what would have been seen.
func (q *Question) seen() string {
	if q.SmallestSeen == nil {
		return ""
	}
	if q.beyond {
		return "; these trials would hardly have shown one even from one end of what was tried to the other"
	}
	if x, optimum := q.variable(); optimum && !x.Log {
		return fmt.Sprintf("; a move of %s would most likely have been seen", strings.TrimSpace(fmt.Sprintf("%.2g %s", *q.SmallestSeen, x.Unit)))
	}
	return fmt.Sprintf("; one of times %.2f would most likely have been seen", *q.SmallestSeen)
}

// differs is a finding of two groups: the lower over the higher.
func (q *Question) differs(of, than string) {
	q.found = fmt.Sprintf("%s %s is %.2f times what it is %s", line.Named(q.Outcome), of, 1/q.Effect.Ratio, than)
}

// answer takes the p of columns from the p-th on.
func (q *Question) answer(fit *nested.Fit, columns []int) {
	p := fit.Zero(columns...)
	q.P = &p
}

// largest is the widest difference between levels whose places on the line are given, the
// first being the base, and the smallest that would have been seen.
func (q *Question) largest(fit *nested.Fit, columns []int, enough []bool) (high, low int) {
	p := fit.Columns()
	at := func(k int) nested.Combination {
		x := make([]float64, p)
		if k > 0 {
			x[columns[k-1]] = 1
		}
		return nested.Combination{Line: x, Of: -1}
	}
	means := make([]float64, len(columns)+1)
	for k := range means {
		means[k] = fit.Value(at(k), line.Level).Mean
	}
	high, low = -1, -1
	for k, m := range means {
		if enough != nil && !enough[k] {
			continue
		}
		if high < 0 || m > means[high] {
			high = k
		}
		if low < 0 || m < means[low] {
			low = k
		}
	}
	if high == low {
		high = max(1, high)
	}
	d := fit.Value(at(high).Minus(at(low)), line.Level)
	q.Effect = line.Ratio(d)
	seen := line.Grow(line.Power(len(columns)) * d.SD)
	q.SmallestSeen = &seen
	return high, low
}

// drift asks for a straight move over the dates.
func (q *Question) drift() {
	l := q.l
	if len(l.History.Trials) < 2*line.LeastOf {
		q.Sentence = "not tested: too few trials"
		return
	}
	time := l.Time()
	if time == nil {
		q.Sentence = "not tested: all trials are of one day"
		return
	}
	fit, err := l.RefitBesideMove(func(k int) []float64 { return []float64{time[k]} })
	if err != nil {
		q.Sentence = "not tested: a move over time and what else changed cannot be told apart"
		return
	}
	q.answer(fit, l.Span(1))
	d := fit.Value(nested.Combination{Line: line.Unit(len(l.Columns)+1, len(l.Columns)), Of: -1}, line.Level)
	q.Effect = line.Ratio(d)
	seen := line.Grow(line.Power(1) * d.SD)
	q.SmallestSeen = &seen
	q.found = fmt.Sprintf("from the first date to the last, %s went to %.2f times what it was", line.Named(q.Outcome), q.Effect.Ratio)
}

// week asks whether weeks differ by more than their days do.
func (q *Question) week() {
	l := q.l
	weeks := l.Groups(func(k int) int { return l.Data.Outer[k] })
	if weeks.Enough() < leastGroups {
		q.Sentence = "not tested: fewer than two weeks have three trials that tell of " + line.Named(q.Outcome)
		return
	}
	if weeks.N() > mostFixed {
		q.scatter(func(d *nested.Data) { d.Level = false }, func(s nested.Spreads) float64 { return s.Outer[0] }, q.ofWeeks(weeks))
		return
	}
	fit, err := l.Refit(func(k int) []float64 { return weeks.Steps(l.Data.Outer[k]) }, func(d *nested.Data) { d.Level = false })
	if err != nil {
		q.Sentence = "not tested: weeks and what else changed cannot be told apart"
		return
	}
	columns := l.Span(weeks.N() - 1)
	q.answer(fit, columns)
	high, low := q.largest(fit, columns, weeks.EnoughEach())
	q.differs("in "+line.InWords(l.Label(weeks.Names[low])), "in "+line.InWords(l.Label(weeks.Names[high])))
}

// withWeeks asks whether weeks of one lot, or cook, differ from those of another where it changed
// only with the weeks: fewer steps than there are weeks, so sooner seen, and of lot or week, which
// nobody can tell.
func (q *Question) withWeeks(f int) {
	l := q.l
	way := l.Factors[f]
	w := l.WithWeeks(f)
	enough := 0
	var each []bool
	for _, n := range w.Names {
		each = append(each, l.Counts[f][n] >= line.LeastOf)
		enough += int(line.One(each[len(each)-1]))
	}
	switch {
	case enough < leastGroups:
		q.Sentence = "not tested: fewer than two of " + way.By + " have three trials that tell of " + line.Named(q.Outcome)
		return
	case w.Fit == nil:
		q.Sentence = "not tested: " + way.By + " and what else changed cannot be told apart"
		return
	}
	q.answer(w.Fit, w.Columns)
	high, low := q.largest(w.Fit, w.Columns, each)
	q.differs("with "+way.By+" "+w.Names[low], "with "+w.Names[high])
	q.found += ": " + q.By + ", which of them is unclear"
}

// day asks whether days of one week differ by more than repeats do.
func (q *Question) day() {
	l := q.l
	if !l.Data.Within {
		q.Sentence = "not tested: the log does not say on which day a trial was made"
		return
	}
	days := l.Groups(func(k int) int { return l.Data.Inner[k] })
	if days.Enough() < leastGroups {
		q.Sentence = "not tested: fewer than two days have three trials that tell of " + line.Named(q.Outcome)
		return
	}
	weeks := l.Groups(func(k int) int { return l.Data.Outer[k] })
	// One day a week is the base of its week.
	base := map[int]int{}
	for k := range l.Rows {
		if _, known := base[l.Data.Outer[k]]; !known {
			base[l.Data.Outer[k]] = l.Data.Inner[k]
		}
	}
	var free []int
	for _, d := range days.Names {
		isBase := false
		for _, b := range base {
			isBase = isBase || b == d
		}
		if !isBase {
			free = append(free, d)
		}
	}
	if len(free) == 0 {
		q.Sentence = "not tested: there is one day a week, so days and weeks cannot be told apart"
		return
	}
	rest := l.Main.Mode.Rest
	seen := line.Spread(len(free)+1, rest*rest*float64(days.N())/float64(len(l.Rows)))
	if len(free) > mostDays || len(l.Columns)+weeks.N()+len(free)+line.LeastRest > len(l.Rows) || weeks.N() > mostFixed {
		q.scatter(func(d *nested.Data) { d.Within = false }, func(s nested.Spreads) float64 { return s.Inner }, seen)
		return
	}
	fit, err := l.Refit(func(k int) []float64 {
		x := weeks.Steps(l.Data.Outer[k])
		for _, d := range free {
			x = append(x, line.One(l.Data.Inner[k] == d))
		}
		return x
	}, func(d *nested.Data) { d.Level, d.Within = false, false })
	if err != nil {
		q.Sentence = "not tested: days and what else changed cannot be told apart"
		return
	}
	columns := l.Span(weeks.N() - 1 + len(free))[weeks.N()-1:]
	q.answer(fit, columns)
	q.between(l.Main.Spread(func(s nested.Spreads) float64 { return s.Inner }, line.Level), seen)
}

// ofWeeks is how large the spread of weeks must be to be seen: each is known up to its trials and its
// days.
func (q *Question) ofWeeks(weeks line.Grouping) float64 {
	l := q.l
	n := float64(weeks.N())
	rest := l.Main.Mode.Rest
	variance := rest * rest * n / float64(len(l.Rows))
	if l.Data.Within {
		days := l.Groups(func(k int) int { return l.Data.Inner[k] })
		variance += l.Main.Mode.Inner * l.Main.Mode.Inner * n / float64(days.N())
	}
	return line.Spread(weeks.N(), variance)
}

// scatter asks whether a spread is there at all: twice the gain of the likelihood, half of
// which would be nothing were it not (Self and Liang 1987, J. Am. Stat. Ass. 82:605).
func (q *Question) scatter(without func(*nested.Data), of func(nested.Spreads) float64, seen float64) {
	l := q.l
	less := l.Data
	without(&less)
	rest, err := nested.Likeliest(less, line.Prior, l.Near(&less))
	if err != nil {
		q.Sentence = "not tested: the trials do not settle it"
		return
	}
	p := 1.0
	if gain := 2 * (l.Main.LogML - rest); gain > 0 {
		p = 0.5 * distuv.ChiSquared{K: 1}.Survival(gain)
	}
	q.P = &p
	q.between(l.Main.Spread(of, line.Level), seen)
}

// between is the effect of groups that scatter: what two of them differ by.
func (q *Question) between(sd nested.Value, seen float64) {
	d := func(s float64) float64 { return line.Grow(math.Sqrt2 * s) }
	q.Effect = &result.Ratio{Ratio: d(sd.Mean), Low: d(sd.Low), High: d(sd.High)}
	smallest := d(seen)
	q.SmallestSeen = &smallest
	q.found = fmt.Sprintf("%s differs from one %s to the next, by some %.0f %%", line.Named(q.Outcome), q.What, 100*(q.Effect.Ratio-1))
}

// factor asks whether lots, cooks, canisters or suppliers differ.
func (q *Question) factor(f int) {
	l := q.l
	way := l.Factors[f]
	counts := l.Counts[f]
	enough := 0
	for _, n := range counts {
		if n >= line.LeastOf {
			enough++
		}
	}
	columns := l.Of(f)
	g, double := l.Double[f]
	switch {
	case len(counts) == 0:
		q.Sentence = "not tested: the log names no " + way.By
	case enough < leastGroups:
		q.Sentence = "not tested: of " + way.By + " no two have three trials each that tell of " + line.Named(q.Outcome)
	case l.InWeek[f]:
		q.Sentence = "not tested: " + way.By + " changed only with the weeks, so the two cannot be told apart"
	case double && g >= 0:
		q.Sentence = "not tested: " + way.By + " changed with " + l.Factors[g].By + ", so the two cannot be told apart"
	case len(columns) == 0:
		q.Sentence = "not tested: " + way.By + " and what else changed cannot be told apart"
	default:
		q.answer(l.Main, columns)
		each := []bool{counts[l.Bases[f]] >= line.LeastOf}
		for _, j := range columns {
			each = append(each, counts[l.Columns[j].Level] >= line.LeastOf)
		}
		high, low := q.largest(l.Main, columns, each)
		name := func(k int) string {
			if k == 0 {
				return l.Bases[f]
			}
			return l.Columns[columns[k-1]].Level
		}
		q.differs("with "+way.By+" "+name(low), "with "+name(high))
		if both := l.Called(f); both != way.By {
			q.found += ": " + both + ", which of them is unclear"
		}
	}
}
