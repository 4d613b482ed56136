package trend

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/nested"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
)

// groups is every lot, cook, canister and supplier against the usual one; of what changed
// only with the weeks, each against the one before, lot or week.
func (v *view) groups() (out []result.GroupStep) {
	each := make([][]result.GroupStep, len(v.lines))
	region.Parallel(len(v.lines), func(i int) {
		if v.lines[i].main != nil {
			each[i] = v.lines[i].stepsOfGroups()
		}
	})
	return slices.Concat(each...)
}

func (l *line) stepsOfGroups() (out []result.GroupStep) {
	for f := range l.factors {
		for _, j := range l.of(f) {
			r := ratio(l.main.Value(nested.Combination{Line: unit(len(l.columns), j), Of: -1}, level))
			name := l.columns[j].level
			out = append(out, result.GroupStep{By: l.called(f), Of: name, Against: l.bases[f], Outcome: l.outcome,
				Ratio: r.Ratio, Low: r.Low, High: r.High, Trials: l.counts[f][name]})
		}
		if l.inWeek[f] {
			out = append(out, l.orWeek(f)...)
		}
	}
	return out
}

// orWeek is the steps of what changed only with the weeks: the line without levels of weeks
// and with a step for each level.
func (l *line) orWeek(f int) (out []result.GroupStep) {
	way := l.factors[f]
	names := l.inOrder(f)
	fit, err := l.refit(func(k int) []float64 {
		var x []float64
		for _, n := range names[1:] {
			x = append(x, one(way.of(l.placedOf(k)) == n))
		}
		return x
	}, func(d *nested.Data) { d.Level = false })
	if err != nil {
		return nil
	}
	columns := l.span(len(names) - 1)
	for i := 1; i < len(names); i++ {
		x := unit(fit.Columns(), columns[i-1])
		if i > 1 {
			x[columns[i-2]] = -1
		}
		r := ratio(fit.Value(nested.Combination{Line: x, Of: -1}, level))
		out = append(out, result.GroupStep{By: way.by + " or week", Of: names[i], Against: names[i-1], Outcome: l.outcome,
			Ratio: r.Ratio, Low: r.Low, High: r.High, Trials: l.counts[f][names[i]]})
	}
	return out
}

// inOrder is the levels of a factor as they came.
func (l *line) inOrder(f int) (names []string) {
	for _, i := range l.rows {
		if n := l.factors[f].of(l.on[i]); n != "" && !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return names
}

// apart says what these trials cannot tell apart.
func (v *view) apart() (out []result.NotApart) {
	said := map[[2]string]bool{}
	add := func(a, b, sentence string) {
		if !said[[2]string{a, b}] {
			said[[2]string{a, b}] = true
			out = append(out, result.NotApart{A: a, B: b, Sentence: sentence})
		}
	}
	for _, l := range v.lines {
		for f, way := range v.factors {
			if l.inWeek[f] {
				add(way.by, "week", fmt.Sprintf("the %s changed with %s, so %s and week cannot be told apart", way.by, strings.Join(l.changed(f), " and with "), way.by))
			}
			if g, double := l.double[f]; double && g >= 0 {
				add(way.by, v.factors[g].by, fmt.Sprintf("the %s changed with the %s, so the two cannot be told apart", way.by, v.factors[g].by))
			} else if double {
				add(way.by, "the mix", fmt.Sprintf("the %s changed with what was in the mix, so the two cannot be told apart", way.by))
			}
		}
		// One day a week: what a day does is what its week does.
		if l.data.Within && l.data.Level && len(l.rows) > 0 {
			if days := l.groups(func(k int) int { return l.data.Inner[k] }); days.n() == l.groups(func(k int) int { return l.data.Outer[k] }).n() {
				add("day", "week", "each week has one day of trials, so day and week cannot be told apart")
			}
		}
	}
	return out
}

// mostNamed is how many changes are named one by one.
const mostNamed = 3

// changed is the weeks with which a factor changed.
func (l *line) changed(f int) (weeks []string) {
	last := ""
	more := 0
	for _, i := range l.rows {
		n := l.factors[f].of(l.on[i])
		if n != "" && last != "" && n != last {
			if len(weeks) == mostNamed {
				more++
			} else {
				weeks = append(weeks, inWords(l.label(l.periodOf(i))))
			}
		}
		if n != "" {
			last = n
		}
	}
	if more > 0 {
		weeks = append(weeks, fmt.Sprintf("%d weeks more", more))
	}
	return weeks
}
