package trend

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/nested"
	"foamfield/analysis/region"
	"foamfield/analysis/result"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	showing = 0.05
	// power is how many standard errors a difference must be to be seen 8 times in 10.
	power = 1.96 + 0.8416
	// mostFixed is how many weeks, or days, a test still tells one by one; of more it asks
	// whether they scatter at all.
	mostFixed = 12
	mostDays  = 60
	// leastOf and leastGroups are what a group needs to be tested.
	leastOf     = 3
	leastGroups = 2
)

// question is one test of one line on its way.
type question struct {
	result.TrendTest
	l     *line
	ask   func(*question)
	found string // what was found, were it shown: "hold with butter lot B is times 0.71 what it is with A"
}

// tests asks of every line what may have changed, and adjusts the answers for their number.
func (v *view) tests() []result.TrendTest {
	var all []*question
	for _, l := range v.lines {
		if l.main == nil {
			continue
		}
		add := func(what, by string, ask func(*question)) {
			all = append(all, &question{TrendTest: result.TrendTest{What: what, By: by, Outcome: l.outcome, Verdict: result.NotTested}, l: l, ask: ask})
		}
		add("drift", "", (*question).drift)
		add("day", "", (*question).day)
		add("week", "", (*question).week)
		for i, x := range v.Surface.Vars {
			if l.outcome == result.HoldMinutes { // drainage is best where there is least, not at a peak
				add("optimum:"+x.Name, "", func(q *question) { q.optimum(i) })
			}
		}
		for f, way := range v.factors {
			add(way.what, way.by, func(q *question) { q.factor(f) })
		}
	}
	region.Parallel(len(all), func(i int) { all[i].ask(all[i]) })
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
			out = append(out, result.TrendTest{What: what, Outcome: result.HoldMinutes, Verdict: result.NotTested,
				Sentence: "not tested: the log names no " + what})
		}
	}
	return out
}

// holm adjusts p values for the number of tests (Holm 1979, Scand. J. Statist. 6:65-70).
func holm(all []*question) {
	var asked []*question
	for _, q := range all {
		if q.P != nil {
			asked = append(asked, q)
		}
	}
	slices.SortStableFunc(asked, func(a, b *question) int { return cmp.Compare(*a.P, *b.P) })
	least := 0.0
	for i, q := range asked {
		least = math.Max(least, math.Min(1, *q.P*float64(len(asked)-i)))
		p := least
		q.PAdjusted = &p
	}
}

// judge words what a test came to.
func (q *question) judge() {
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
func (q *question) words() string {
	switch q.Verdict {
	case result.Shown:
		return "shown: " + q.found
	case result.Suggested:
		return "suggested, not shown: " + q.found + "; of so many things looked at one may look so by chance"
	}
	return "not shown: " + q.looked() + q.seen()
}

// looked is what was looked for.
func (q *question) looked() string {
	o := named(q.Outcome)
	switch q.What {
	case "drift":
		return "a steady move of " + o + " from the first date to the last"
	case "day":
		return "a difference of " + o + " between the days of a week"
	case "week":
		return "a difference of " + o + " between weeks"
	}
	if x, optimum := q.variable(); optimum {
		return "a move of the " + x.Label + " that holds longest"
	}
	return "a difference of " + o + " by " + q.By
}

// variable is the one whose optimum is asked about.
func (q *question) variable() (result.Variable, bool) {
	name, optimum := strings.CutPrefix(q.What, "optimum:")
	if !optimum {
		return result.Variable{}, false
	}
	return q.l.Surface.Vars[q.l.Surface.Place(name)], true
}

// seen is what would have been seen.
func (q *question) seen() string {
	if q.SmallestSeen == nil {
		return ""
	}
	if x, optimum := q.variable(); optimum && !x.Log {
		return fmt.Sprintf("; a move of %s would most likely have been seen", strings.TrimSpace(fmt.Sprintf("%.2g %s", *q.SmallestSeen, x.Unit)))
	}
	return fmt.Sprintf("; one of times %.2f would most likely have been seen", *q.SmallestSeen)
}

// differs is a finding of two groups: the lower over the higher.
func (q *question) differs(of, than string) {
	q.found = fmt.Sprintf("%s %s is %.2f times what it is %s", named(q.Outcome), of, 1/q.Effect.Ratio, than)
}

// refit fits the line with columns added, and a part of it left out.
func (l *line) refit(add func(k int) []float64, change func(*nested.Data)) (*nested.Fit, error) {
	return l.refitBy(prior, add, change)
}

func (l *line) refitBy(pr nested.Prior, add func(k int) []float64, change func(*nested.Data)) (*nested.Fit, error) {
	d := l.data
	d.X = make([][]float64, len(l.data.X))
	for k, x := range l.data.X {
		d.X[k] = append(slices.Clone(x), add(k)...)
	}
	change(&d)
	return nested.From(d, pr, l.near(&d))
}

// near is the likeliest spreads of the line, of those that a changed one still has.
func (l *line) near(d *nested.Data) nested.Spreads {
	all := l.main.Mode
	s := nested.Spreads{Rest: all.Rest, Inner: all.Inner}
	if d.Level {
		s.Outer = append(s.Outer, all.Outer[0])
	}
	for _, c := range d.Lean {
		s.Outer = append(s.Outer, all.Outer[1+slices.Index(l.data.Lean, c)])
	}
	return s
}

// answer takes the p of columns from the p-th on.
func (q *question) answer(fit *nested.Fit, columns []int) {
	p := fit.Zero(columns...)
	q.P = &p
}

// span is the added columns of a fit.
func (l *line) span(n int) (columns []int) {
	for j := range n {
		columns = append(columns, len(l.columns)+j)
	}
	return columns
}

// largest is the widest difference between levels whose places on the line are given, the
// first being the base, and the smallest that would have been seen.
func (q *question) largest(fit *nested.Fit, columns []int, enough []bool) (high, low int) {
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
		means[k] = fit.Value(at(k), level).Mean
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
	d := fit.Value(at(high).Minus(at(low)), level)
	q.Effect = ratio(d)
	seen := grow(power * d.SD)
	q.SmallestSeen = &seen
	return high, low
}

// drift asks for a straight move over the dates.
func (q *question) drift() {
	l := q.l
	if len(l.History.Trials) < 2*leastOf {
		q.Sentence = "not tested: too few trials"
		return
	}
	time := l.time()
	if time == nil {
		q.Sentence = "not tested: all trials are of one day"
		return
	}
	fit, err := l.refitBy(besideMove, func(k int) []float64 { return []float64{time[k]} }, func(*nested.Data) {})
	if err != nil {
		q.Sentence = "not tested: a move over time and what else changed cannot be told apart"
		return
	}
	q.answer(fit, l.span(1))
	d := fit.Value(nested.Combination{Line: unit(len(l.columns)+1, len(l.columns)), Of: -1}, level)
	q.Effect = ratio(d)
	seen := grow(power * d.SD)
	q.SmallestSeen = &seen
	q.found = fmt.Sprintf("%s moved steadily, to %.2f times what it was from the first date to the last", named(q.Outcome), q.Effect.Ratio)
}

// time is when each row was, from 0 at the first to 1 at the last; nil if there is one
// time only.
func (l *line) time() []float64 {
	h := l.History
	out := make([]float64, len(l.rows))
	for k, i := range l.rows {
		switch at := l.at[i]; {
		case h.When != nil:
			out[k] = h.When[at].Sub(h.When[l.at[l.rows[0]]]).Hours()
		case h.Day != nil:
			out[k] = float64(h.Day[at])
		case len(h.Periods) > 1:
			out[k] = float64(h.Of[at])
		default:
			out[k] = float64(at)
		}
	}
	low, high := slices.Min(out), slices.Max(out)
	if high == low {
		return nil
	}
	for k := range out {
		out[k] = (out[k] - low) / (high - low)
	}
	return out
}

// week asks whether weeks differ by more than their days do.
func (q *question) week() {
	l := q.l
	weeks := l.groups(func(k int) int { return l.data.Outer[k] })
	if weeks.enough() < leastGroups {
		q.Sentence = "not tested: fewer than two weeks have three trials that tell of " + named(q.Outcome)
		return
	}
	if weeks.n() > mostFixed {
		q.scatter(func(d *nested.Data) { d.Level = false }, func(s nested.Spreads) float64 { return s.Outer[0] })
		return
	}
	fit, err := l.refit(func(k int) []float64 { return weeks.steps(l.data.Outer[k]) }, func(d *nested.Data) { d.Level = false })
	if err != nil {
		q.Sentence = "not tested: weeks and what else changed cannot be told apart"
		return
	}
	columns := l.span(weeks.n() - 1)
	q.answer(fit, columns)
	high, low := q.largest(fit, columns, weeks.enoughEach())
	q.differs("in "+inWords(l.label(weeks.names[low])), "in "+inWords(l.label(weeks.names[high])))
}

// day asks whether days of one week differ by more than repeats do.
func (q *question) day() {
	l := q.l
	if !l.data.Within {
		q.Sentence = "not tested: the log does not say on which day a trial was made"
		return
	}
	days := l.groups(func(k int) int { return l.data.Inner[k] })
	if days.enough() < leastGroups {
		q.Sentence = "not tested: fewer than two days have three trials that tell of " + named(q.Outcome)
		return
	}
	weeks := l.groups(func(k int) int { return l.data.Outer[k] })
	// One day a week is the base of its week.
	base := map[int]int{}
	for k := range l.rows {
		if _, known := base[l.data.Outer[k]]; !known {
			base[l.data.Outer[k]] = l.data.Inner[k]
		}
	}
	var free []int
	for _, d := range days.names {
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
	if len(free) > mostDays || len(l.columns)+weeks.n()+len(free)+leastRest > len(l.rows) || weeks.n() > mostFixed {
		q.scatter(func(d *nested.Data) { d.Within = false }, func(s nested.Spreads) float64 { return s.Inner })
		return
	}
	fit, err := l.refit(func(k int) []float64 {
		x := weeks.steps(l.data.Outer[k])
		for _, d := range free {
			x = append(x, one(l.data.Inner[k] == d))
		}
		return x
	}, func(d *nested.Data) { d.Level, d.Within = false, false })
	if err != nil {
		q.Sentence = "not tested: days and what else changed cannot be told apart"
		return
	}
	columns := l.span(weeks.n() - 1 + len(free))[weeks.n()-1:]
	q.answer(fit, columns)
	q.between(l.main.Spread(func(s nested.Spreads) float64 { return s.Inner }, level), float64(len(l.rows))/float64(days.n()))
}

// scatter asks whether a spread is there at all: twice the gain of the likelihood, half of
// which would be nothing were it not (Self and Liang 1987, J. Am. Stat. Ass. 82:605).
func (q *question) scatter(without func(*nested.Data), of func(nested.Spreads) float64) {
	l := q.l
	less := l.data
	without(&less)
	rest, err := nested.Likeliest(less, prior, l.near(&less))
	if err != nil {
		q.Sentence = "not tested: the trials do not settle it"
		return
	}
	p := 1.0
	if gain := 2 * (l.main.LogML - rest); gain > 0 {
		p = 0.5 * distuv.ChiSquared{K: 1}.Survival(gain)
	}
	q.P = &p
	q.between(l.main.Spread(of, level), math.Max(2, float64(len(l.rows))/float64(len(l.History.Periods))))
}

// between is the effect of groups that scatter: what two of them differ by.
func (q *question) between(sd nested.Value, each float64) {
	d := func(s float64) float64 { return grow(math.Sqrt2 * s) }
	q.Effect = &result.Ratio{Ratio: d(sd.Mean), Low: d(sd.Low), High: d(sd.High)}
	seen := grow(power * q.l.main.Mode.Rest * math.Sqrt(2/each))
	q.SmallestSeen = &seen
	q.found = fmt.Sprintf("%s differs from one %s to the next, by some %.0f %%", named(q.Outcome), q.What, 100*(q.Effect.Ratio-1))
}

// factor asks whether lots, cooks, canisters or suppliers differ.
func (q *question) factor(f int) {
	l := q.l
	way := l.factors[f]
	counts := l.counts[f]
	enough := 0
	for _, n := range counts {
		if n >= leastOf {
			enough++
		}
	}
	columns := l.of(f)
	g, double := l.double[f]
	switch {
	case len(counts) == 0:
		q.Sentence = "not tested: the log names no " + way.by
	case enough < leastGroups:
		q.Sentence = "not tested: fewer than two of " + way.by + " have three trials that tell of " + named(q.Outcome)
	case l.inWeek[f]:
		q.Sentence = "not tested: " + way.by + " changed only with the weeks, so the two cannot be told apart"
	case double && g >= 0:
		q.Sentence = "not tested: " + way.by + " changed with " + l.factors[g].by + ", so the two cannot be told apart"
	case len(columns) == 0:
		q.Sentence = "not tested: " + way.by + " and what else changed cannot be told apart"
	default:
		q.answer(l.main, columns)
		each := []bool{counts[l.bases[f]] >= leastOf}
		for _, j := range columns {
			each = append(each, counts[l.columns[j].level] >= leastOf)
		}
		high, low := q.largest(l.main, columns, each)
		name := func(k int) string {
			if k == 0 {
				return l.bases[f]
			}
			return l.columns[columns[k-1]].level
		}
		q.differs("with "+way.by+" "+name(low), "with "+name(high))
		if both := l.called(f); both != way.by {
			q.found += ": " + both + ", which of them is unclear"
		}
	}
}

// called is what a factor's steps are of: "butter lot or cook" where a cook changed whenever
// the lot did.
func (l *line) called(f int) string {
	name := l.factors[f].by
	for g := range l.factors {
		if of, double := l.double[g]; double && of == f {
			name += " or " + l.factors[g].by
		}
	}
	return name
}

// grouping is rows in groups, in the order they come.
type grouping struct {
	names []int
	count map[int]int
}

func (l *line) groups(of func(k int) int) grouping {
	g := grouping{count: map[int]int{}}
	for k := range l.rows {
		n := of(k)
		if g.count[n] == 0 {
			g.names = append(g.names, n)
		}
		g.count[n]++
	}
	return g
}

func (g grouping) n() int { return len(g.names) }

func (g grouping) enough() (n int) {
	for _, c := range g.count {
		if c >= leastOf {
			n++
		}
	}
	return n
}

func (g grouping) enoughEach() (out []bool) {
	for _, n := range g.names {
		out = append(out, g.count[n] >= leastOf)
	}
	return out
}

// steps is a row's columns: one a group but the first.
func (g grouping) steps(of int) (x []float64) {
	for _, n := range g.names[1:] {
		x = append(x, one(of == n))
	}
	return x
}

func one(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}
