package trend

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/nested"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"
)

// groups is every lot, cook, canister and supplier against the usual one; of what changed
// only with the weeks, each against the one before, lot or week.
func groups(v *line.View) (out []result.GroupStep) {
	each := make([][]result.GroupStep, len(v.Lines))
	region.Parallel(len(v.Lines), func(i int) {
		if v.Lines[i].Main != nil {
			each[i] = stepsOfGroups(v.Lines[i])
		}
	})
	return slices.Concat(each...)
}

func stepsOfGroups(l *line.Line) (out []result.GroupStep) {
	for f := range l.Factors {
		for _, j := range l.Of(f) {
			r := line.Ratio(l.Main.Value(nested.Combination{Line: line.Unit(len(l.Columns), j), Of: -1}, line.Level))
			name := l.Columns[j].Level
			out = append(out, result.GroupStep{By: l.Called(f), Of: name, Against: l.Bases[f], Outcome: l.Outcome,
				Ratio: r.Ratio, Low: r.Low, High: r.High, Trials: l.Counts[f][name]})
		}
		if l.InWeek[f] {
			out = append(out, orWeek(l, f)...)
		}
	}
	return out
}

// orWeek is the steps of what changed only with the weeks.
func orWeek(l *line.Line, f int) (out []result.GroupStep) {
	w := l.WithWeeks(f)
	if w.Fit == nil {
		return nil
	}
	names, columns, fit := w.Names, w.Columns, w.Fit
	for i := 1; i < len(names); i++ {
		x := line.Unit(fit.Columns(), columns[i-1])
		if i > 1 {
			x[columns[i-2]] = -1
		}
		r := line.Ratio(fit.Value(nested.Combination{Line: x, Of: -1}, line.Level))
		out = append(out, result.GroupStep{By: l.Factors[f].By + " or week", Of: names[i], Against: names[i-1], Outcome: l.Outcome,
			Ratio: r.Ratio, Low: r.Low, High: r.High, Trials: l.Counts[f][names[i]]})
	}
	return out
}

// apart says what these trials cannot tell apart.
func apart(v *line.View) (out []result.NotApart) {
	said := map[[2]string]bool{}
	add := func(a, b, sentence string) {
		if !said[[2]string{a, b}] {
			said[[2]string{a, b}] = true
			out = append(out, result.NotApart{A: a, B: b, Sentence: sentence})
		}
	}
	for _, l := range v.Lines {
		for f, way := range v.Factors {
			if l.InWeek[f] {
				add(way.By, "week", fmt.Sprintf("the %s changed with %s, so %s and week cannot be told apart", way.By, strings.Join(changed(l, f), " and with "), way.By))
			}
			if once := l.Once(f); !l.InWeek[f] && len(once) > 0 && len(once) <= line.MostNamed {
				var when []string
				for _, k := range once {
					when = append(when, l.When(k))
				}
				add(way.By, "time", fmt.Sprintf("the %s changed for good with %s, so %s and what else changed then cannot be told apart", way.By, strings.Join(when, " and with "), way.By))
			}
			if g, double := l.Double[f]; double && g >= 0 {
				add(way.By, v.Factors[g].By, fmt.Sprintf("the %s changed with the %s, so the two cannot be told apart", way.By, v.Factors[g].By))
			} else if double {
				add(way.By, "the mix", fmt.Sprintf("the %s changed with what was in the mix, so the two cannot be told apart", way.By))
			}
		}
		// One day a week: what a day does is what its week does.
		if l.Data.Within && l.Data.Level && len(l.Rows) > 0 {
			if days := l.Groups(func(k int) int { return l.Data.Inner[k] }); days.N() == l.Groups(func(k int) int { return l.Data.Outer[k] }).N() {
				add("day", "week", "each week has one day of trials, so day and week cannot be told apart")
			}
		}
	}
	return out
}

// changed is the weeks with which a factor changed.
func changed(l *line.Line, f int) (weeks []string) {
	last := ""
	more := 0
	for _, i := range l.Rows {
		n := l.Factors[f].Of(l.On[i])
		if n != "" && last != "" && n != last {
			if len(weeks) == line.MostNamed {
				more++
			} else {
				weeks = append(weeks, line.InWords(l.Label(l.PeriodOf(i))))
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
