package asked

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/nested"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"
)

// optimum asks whether weeks lean another way in a variable, which moves its optimum.
func (q *Question) optimum(i int) {
	l := q.l
	j := l.StraightOf(i)
	if j < 0 || math.IsNaN(l.Bend(i)) {
		q.Sentence = "not tested: too few trials to tell whether hold peaks over it"
		return
	}
	weeks := l.Groups(func(k int) int { return l.Data.Outer[k] })
	if weeks.Enough() < leastGroups {
		q.Sentence = "not tested: fewer than two weeks have three trials that tell of " + line.Named(q.Outcome)
		return
	}
	lean := slices.DeleteFunc(slices.Clone(l.Data.Lean), func(c int) bool { return c == j })
	if weeks.N() > mostFixed {
		at := 1 + slices.Index(l.Data.Lean, j)
		seen := line.Spread(weeks.N(), l.Main.Mode.Rest*l.Main.Mode.Rest/spreadOf(l, j))
		q.scatter(func(d *nested.Data) { d.Lean = lean }, func(s nested.Spreads) float64 { return s.Outer[at] }, seen)
		if q.P == nil {
			return
		}
		q.moved(i, l.Main.Spread(func(s nested.Spreads) float64 { return math.Sqrt2 * s.Outer[at] }, line.Level), math.Sqrt2*seen)
		return
	}
	fit, err := l.Refit(func(k int) []float64 {
		x := weeks.Steps(l.Data.Outer[k])
		for c := range x {
			x[c] *= l.Data.X[k][j]
		}
		return x
	}, func(d *nested.Data) { d.Lean = lean })
	if err != nil {
		q.Sentence = "not tested: in some week the variable hardly varied"
		return
	}
	columns := l.Span(weeks.N() - 1)
	q.answer(fit, columns)
	q.steadily(j, lean)
	high, low := q.largest(fit, columns, weeks.EnoughEach())
	p := fit.Columns()
	x := make([]float64, p)
	if high > 0 {
		x[columns[high-1]] += 1
	}
	if low > 0 {
		x[columns[low-1]] -= 1
	}
	apart := fit.Value(nested.Combination{Line: x, Of: -1}, line.Level)
	q.moved(i, apart, line.Power(len(columns))*apart.SD)
}

// steadily also asks whether a variable's slope moves steadily with time, which is seen
// sooner than any move; of the two answers the smaller counts, twice.
func (q *Question) steadily(j int, lean []int) {
	l := q.l
	time := l.Time()
	if time == nil {
		return
	}
	fit, err := l.Refit(func(k int) []float64 { return []float64{l.Data.X[k][j] * (time[k] - 0.5)} }, func(d *nested.Data) { d.Lean = lean })
	if err != nil {
		return
	}
	p := math.Min(1, 2*math.Min(*q.P, fit.Zero(l.Span(1)...)))
	q.P = &p
}

// spreadOf is how far a column spreads in a week of the usual size: the sum of its squares about the
// mean of its week, by week.
func spreadOf(l *line.Line, j int) float64 {
	weeks := l.Groups(func(k int) int { return l.Data.Outer[k] })
	sum := map[int]float64{}
	for k, x := range l.Data.X {
		sum[l.Data.Outer[k]] += x[j]
	}
	squares := 0.0
	for k, x := range l.Data.X {
		off := x[j] - sum[l.Data.Outer[k]]/float64(weeks.Count[l.Data.Outer[k]])
		squares += off * off
	}
	return squares / float64(weeks.N())
}

// leastBend is what a line bends at least where it has a peak to move.
const leastBend = 0.05

// moved turns a difference of slopes into how far an optimum moved, in the unit of its
// variable; of a logarithm as a ratio. An optimum moves at most from one end of what was tried to
// the other; the difference that would have been seen may be more than that, and then no move is.
func (q *Question) moved(i int, d nested.Value, least float64) {
	bend := math.Min(q.l.Bend(i), -leastBend)
	c := q.l.Surface.Basis.Coordinates[i]
	width := q.l.Surface.Vars[i]
	whole := c.Of(width.High) - c.Of(width.Low)
	inUnit := func(m float64) float64 {
		if c.Log {
			return line.Grow(m * c.Scale)
		}
		return m * c.Scale
	}
	by := func(slope float64) float64 { return slope / (-2 * bend) }
	within := func(slope float64) float64 { return inUnit(math.Min(math.Max(by(slope), -whole), whole)) }
	q.Effect = &result.Ratio{Ratio: within(d.Mean), Low: within(d.Low), High: within(d.High)}
	seen := by(least)
	q.beyond = seen > whole
	seen = inUnit(seen)
	q.SmallestSeen = &seen
	q.found = q.movedWords(q.Effect.Ratio, c.Log)
	if math.Abs(by(d.Mean)) >= whole {
		x, _ := q.variable()
		q.found = fmt.Sprintf("hold follows the %s otherwise from one week to another: it rises towards one end of what was tried in some, towards the other in others", x.Label)
	}
}

// movedWords says how far an optimum moved.
func (q *Question) movedWords(move float64, log bool) string {
	x, _ := q.variable()
	by := strings.TrimSpace(fmt.Sprintf("by %.2g %s", move, x.Unit))
	if log {
		by = fmt.Sprintf("by a factor of %.2f", move)
	}
	return fmt.Sprintf("the %s that holds longest moves from week to week, %s from its lowest week to its highest", x.Label, by)
}
