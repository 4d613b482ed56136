// Package trend asks of many weeks of one kitchen whether it is steady, what changed it, and
// whether an old optimum still holds. One line carries all weeks (line), of which is asked
// what moved it (asked), and which is looked at point by point (chart); here it is put
// together: levels, optima and chances by week, groups, what holds now. What is said of a
// week is drawn towards what the others say, as far as these differ no more than their
// scatter would make them.
package trend

import (
	"fmt"
	"slices"
	"sync"

	"foamfield/analysis/belief"
	"foamfield/analysis/logged"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/asked"
	"foamfield/analysis/trend/chart"
	"foamfield/analysis/trend/line"
	"foamfield/ingest/trial"
)

// Input is what a history is studied by.
type Input = line.Input

// Of studies a history.
func Of(in line.Input) *result.Trend {
	v := line.Look(in, line.MostRows)
	r := &result.Trend{Schema: result.TrendSchema, OrderBy: result.TrendByName, Trials: len(in.History.Trials), Notes: in.History.Notes,
		Inputs: logged.Inputs(in.Log), Questions: questions(in.History.Asked)}
	if in.History.ByDate {
		r.OrderBy = result.TrendByDate
	}
	if v.Ref.Mix != nil {
		m := in.Surface.Mix(v.Ref.Mix)
		r.Reference, r.ReferenceFrom = &m, v.Ref.From
	}
	v.Fit()
	r.Fitted = fitted(v)
	// None of these asks for what another makes, so that long histories take them side by side.
	var wg sync.WaitGroup
	wg.Go(func() { r.Groups = groups(v); r.Tests = asked.Of(v) })
	wg.Go(func() { r.Changes = chart.Changes(v); r.Control = chart.Control(v) })
	wg.Go(func() { r.Periods = periods(v); r.Optimum = optimum(v) })
	r.CannotSeparate = apart(v)
	r.Components = components(v)
	r.Disagree = disagree(v)
	r.Drainage = drainage(v)
	r.Foreseen = foreseen(v)
	wg.Wait()
	r.Now = now(v, r.Tests)
	r.Notes = append(r.Notes, notes(v)...)
	r.Summary = summary(r)
	fillEmpty(r)
	return r
}

func fitted(v *line.View) (out []result.Fitted) {
	for _, l := range v.Lines {
		if l.Main == nil {
			continue
		}
		f := result.Fitted{Outcome: l.Outcome, N: len(l.Rows), Observations: belief.Count(l.Seen), Order: l.Order, LogLikelihood: l.Main.LogML, Draws: l.Main.ESS}
		for j, c := range l.Columns {
			sd := l.Main.Value(l.Main.At(line.Unit(len(l.Columns), j), -1), line.Level).SD
			f.Terms = append(f.Terms, result.Term{Variables: c.Variables, Estimate: l.Main.B[j], StdError: &sd})
		}
		out = append(out, f)
	}
	return out
}

// questions is the questions as the results carry them.
func questions(list []trial.Question) (out []result.Question) {
	for _, q := range list {
		out = append(out, logged.Question(&q))
	}
	return out
}

func notes(v *line.View) (out []string) {
	if n := len(v.History.Periods); n == 1 && latestWeek(v) == "" {
		out = append(out, "the log names no weeks, so weeks cannot be compared; days, lots and cooks still are")
	} else if n == 1 {
		out = append(out, "all trials are of one week, so weeks cannot be compared; days, lots and cooks still are")
	}
	if v.History.Day == nil && len(v.History.Trials) > 0 {
		out = append(out, "the log does not say on which day a trial was made, so days cannot be compared")
	}
	if slices.ContainsFunc(v.Lines, func(l *line.Line) bool { return l.Main != nil && l.Said }) {
		out = append(out, "the log does not say of what its emulsifier is a percent: weeks are compared by it as logged")
	}
	for _, l := range v.Lines {
		if l.Why != "" {
			out = append(out, l.Why)
		}
		if l.Thinned > 0 {
			out = append(out, fmt.Sprintf("of so many trials one in %d of each day stands for all where %s is compared", l.Thinned, line.Named(l.Outcome)))
		}
	}
	return out
}

func fillEmpty(r *result.Trend) {
	none(&r.Inputs)
	none(&r.Fitted)
	none(&r.Summary)
	none(&r.Notes)
	none(&r.Questions)
	none(&r.Periods)
	none(&r.Optimum)
	none(&r.Groups)
	none(&r.Tests)
	none(&r.CannotSeparate)
	none(&r.Components)
	none(&r.Control)
	none(&r.Changes)
	none(&r.Foreseen)
	none(&r.Disagree)
	none(&r.Drainage)
}

func none[T any](list *[]T) {
	if *list == nil {
		*list = []T{}
	}
}
