// Package trend asks of many weeks of one kitchen whether it is steady, what changed it, and
// whether an old optimum still holds. One line carries all weeks: curved in the mix, with
// settings, lots, cooks, canisters and suppliers as steps, and with days and weeks that
// stand a little higher or lower, and weeks that lean another way in a variable, which is
// how an optimum moves. What is said of a week is drawn towards what the others say, as far
// as these differ no more than their scatter would make them.
package trend

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/belief"
	"foamfield/analysis/history"
	"foamfield/analysis/logged"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Input is a log as the other rooms left it: laid out, judged and answered with all weeks
// taken for one.
type Input struct {
	Log     *trial.Log
	History *history.History
	Surface *surface.Surface
	Want    result.Targets
	Starts  []result.Start
	Held    []result.HeldTerm // what the starts are made with beside their mix
	Seed    uint64
}

// view is an input on its way to its answer.
type view struct {
	Input
	on      []*surface.Placed // on the surface, in the order of time
	at      []int             // the place of each in the history
	factors []factor
	ref     reference
	lines   []*line
	most    int // rows that a line may rest on
}

// reference is the mix at which weeks are compared.
type reference struct {
	mix    []float64
	beside []float64
	from   string
	start  *result.Start
}

// factor is a way in which trials may differ by steps.
type factor struct {
	what, by string // "lot", "butter lot"
	of       func(*surface.Placed) string
}

// Of studies a history.
func Of(in Input) *result.Trend {
	v := look(in, mostRows)
	r := &result.Trend{Schema: result.TrendSchema, OrderBy: result.TrendByName, Trials: len(in.History.Trials), Notes: in.History.Notes,
		Inputs: logged.Inputs(in.Log), Questions: asked(in.History.Asked)}
	if in.History.ByDate {
		r.OrderBy = result.TrendByDate
	}
	if v.ref.mix != nil {
		m := in.Surface.Mix(v.ref.mix)
		r.Reference, r.ReferenceFrom = &m, v.ref.from
	}
	v.fit()
	r.Fitted = v.fitted()
	r.Periods = v.periods()
	r.Optimum = v.optimum()
	r.Groups = v.groups()
	r.CannotSeparate = v.apart()
	r.Tests = v.tests()
	r.Components = v.components()
	r.Control = v.control()
	r.Changes = v.changes()
	r.Disagree = v.disagree()
	r.Drainage = v.drainage()
	r.Now = v.now(r.Tests)
	r.Foreseen = v.foreseen()
	r.Notes = append(r.Notes, v.notes()...)
	r.Summary = summary(r)
	fillEmpty(r)
	return r
}

// look gathers what the history has on the surface and what may differ there.
func look(in Input, most int) *view {
	v := &view{Input: in, most: most}
	placed := map[*trial.Trial]*surface.Placed{}
	for _, t := range in.Surface.OnSurface() {
		placed[t.Trial] = t
	}
	for i, t := range in.History.Trials {
		if p := placed[t]; p != nil {
			v.on, v.at = append(v.on, p), append(v.at, i)
		}
	}
	v.factors = factors(in.Log)
	v.ref = v.reference()
	return v
}

// factors are the columns of a log that may make steps: lots first, since what a lot does
// is most often asked.
func factors(log *trial.Log) (out []factor) {
	label := func(name string) func(*surface.Placed) string {
		return func(t *surface.Placed) string { return t.Raw[name] }
	}
	for _, name := range log.Labels {
		switch what := kindOf(name); what {
		case "lot":
			out = append(out, factor{"lot", name, label(name)})
		case "supplier", "canister":
			defer func() { out = append(out, factor{what, name, label(name)}) }()
		}
	}
	return append(out, factor{"canister", "canister size", func(t *surface.Placed) string { return t.Canister }},
		factor{"cook", "cook", func(t *surface.Placed) string { return t.Cook }})
}

// kindOf is what a column of labels names.
func kindOf(name string) string {
	switch {
	case name == "week":
		return "week"
	case name == "canister no":
		return "canister"
	case strings.Contains(name, "lot"):
		return "lot"
	}
	return "supplier"
}

// reference is the surest start, else the middle of what was tried.
func (v *view) reference() reference {
	s := v.Surface
	if len(v.on) == 0 {
		return reference{}
	}
	beside := slices.Clone(s.Basis.Beside)
	for k, t := range s.Terms {
		for _, h := range v.Held {
			if h.Term == t.Name {
				beside[k] = h.Value
			}
		}
	}
	if len(v.Starts) > 0 {
		return reference{s.Values(v.Starts[0].Mix), beside, "the surest start", &v.Starts[0]}
	}
	mid := make([]float64, len(s.Vars))
	for i, x := range s.Vars {
		mid[i] = x.Centre
		if x.Log {
			mid[i] = math.Exp(x.Centre)
		}
	}
	return reference{mid, beside, "the middle of what was tried", nil}
}

// fit fits hold and drainage over all weeks, where enough trials tell of them.
func (v *view) fit() {
	outcomes := []result.Outcome{result.HoldMinutes, result.DrainedPercent}
	v.lines = make([]*line, len(outcomes))
	for i, o := range outcomes {
		v.lines[i] = v.lineOf(o)
	}
	region.Parallel(len(v.lines), func(i int) { v.lines[i].fit() })
}

// lineFor is the fitted line of an outcome, nil if there is none.
func (v *view) lineFor(o result.Outcome) *line {
	for _, l := range v.lines {
		if l.outcome == o && l.main != nil {
			return l
		}
	}
	return nil
}

func (v *view) fitted() (out []result.Fitted) {
	for _, l := range v.lines {
		if l.main == nil {
			continue
		}
		f := result.Fitted{Outcome: l.outcome, N: len(l.rows), Observations: belief.Count(l.seen), Order: l.order, LogLikelihood: l.main.LogML, Draws: l.main.ESS}
		for j, c := range l.columns {
			sd := l.main.Value(l.main.At(unit(len(l.columns), j), -1), level).SD
			f.Terms = append(f.Terms, result.Term{Variables: c.variables, Estimate: l.main.B[j], StdError: &sd})
		}
		out = append(out, f)
	}
	return out
}

func unit(n, j int) []float64 {
	e := make([]float64, n)
	e[j] = 1
	return e
}

// level is that of all limits.
const level = belief.Level

// periodOf is the week of the i-th trial on the surface.
func (v *view) periodOf(i int) int { return v.History.Of[v.at[i]] }

// asked is the questions as the results carry them.
func asked(list []trial.Question) (out []result.Question) {
	for _, q := range list {
		out = append(out, logged.Question(&q))
	}
	return out
}

func (v *view) notes() (out []string) {
	if n := len(v.History.Periods); n == 1 {
		out = append(out, "all trials are of one week, so weeks cannot be compared; days, lots and cooks still are")
	}
	if v.History.Day == nil && len(v.History.Trials) > 0 {
		out = append(out, "the log does not say on which day a trial was made, so days cannot be compared")
	}
	if slices.ContainsFunc(v.lines, func(l *line) bool { return l.main != nil && l.said }) {
		out = append(out, "the log does not say of what its emulsifier is a percent: weeks are compared by it as logged")
	}
	for _, l := range v.lines {
		if l.why != "" {
			out = append(out, l.why)
		}
		if l.thinned > 0 {
			out = append(out, fmt.Sprintf("of so many trials one in %d of each day stands for all where %s is compared", l.thinned, named(l.outcome)))
		}
	}
	return out
}

// leastRead is the smallest that anybody reads, half a minute or half a percent: nothing at all
// is at most so much.
const leastRead = 0.5

// named is an outcome in a sentence.
func named(o result.Outcome) string {
	if o == result.DrainedPercent {
		return "what drains"
	}
	return "hold"
}

// watched is what was seen of an outcome on the line: logarithms, infinite where there is
// no bound.
func watched(t *trial.Trial, o result.Outcome) (low, high float64) {
	i := works.Watched(t, o)
	low, high = math.Inf(-1), math.Inf(1)
	if i.Low > 0 {
		low = math.Log(i.Low)
	}
	if !math.IsInf(i.High, 1) {
		high = math.Log(math.Max(i.High, leastRead))
	}
	return low, high
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
