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
		q.scatter(func(d *nested.Data) { d.Lean = lean }, func(s nested.Spreads) float64 { return s.Outer[at] })
		q.moved(i, l.Main.Spread(func(s nested.Spreads) float64 { return math.Sqrt2 * s.Outer[at] }, line.Level), math.NaN())
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
	q.moved(i, fit.Value(nested.Combination{Line: x, Of: -1}, line.Level), l.Bend(i))
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

// moved turns a difference of slopes into how far an optimum moved, in the unit of its
// variable; of a logarithm as a ratio. A line that hardly bends down has no optimum to move.
func (q *Question) moved(i int, d nested.Value, bend float64) {
	if math.IsNaN(bend) {
		bend = q.l.Bend(i)
	}
	bend = math.Min(bend, -0.05)
	c := q.l.Surface.Basis.Coordinates[i]
	width := q.l.Surface.Vars[i]
	whole := c.Of(width.High) - c.Of(width.Low)
	move := func(slope float64) float64 {
		m := math.Min(math.Max(slope/(-2*bend), -whole), whole) * c.Scale
		if c.Log {
			return math.Exp(m)
		}
		return m
	}
	q.Effect = &result.Ratio{Ratio: move(d.Mean), Low: move(d.Low), High: move(d.High)}
	if d.SD > 0 {
		seen := move(line.Power * d.SD)
		q.SmallestSeen = &seen
	} else {
		q.SmallestSeen = nil
	}
	q.found = q.movedWords(q.Effect.Ratio, c.Log)
}

// movedWords says from where to where an optimum moved, by the weeks' own.
func (q *Question) movedWords(move float64, log bool) string {
	x, _ := q.variable()
	by := strings.TrimSpace(fmt.Sprintf("by %.2g %s", move, x.Unit))
	if log {
		by = fmt.Sprintf("by a factor of %.2f", move)
	}
	return fmt.Sprintf("the %s that holds longest moves from week to week, %s between the furthest", x.Label, by)
}
