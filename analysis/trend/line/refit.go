package line

import (
	"slices"

	"foamfield/analysis/history"
	"foamfield/analysis/nested"
)

// Refit fits the line with columns added, and a part of it left out.
func (l *Line) Refit(add func(k int) []float64, change func(*nested.Data)) (*nested.Fit, error) {
	return l.refit(Prior, add, change)
}

// Weekly is the line without levels of weeks and with a step for each level but the first of a
// factor that changed only with the weeks: the levels as they came, and the steps' columns.
type Weekly struct {
	Names   []string
	Columns []int
	Fit     *nested.Fit // nil where the steps and what else changed cannot be told apart
}

// WithWeeks is the line by a factor that changed only with the weeks.
func (l *Line) WithWeeks(f int) *Weekly { return l.weekly[f]() }

func (l *Line) withWeeks(f int) *Weekly {
	way := l.Factors[f]
	w := &Weekly{}
	for _, i := range l.Rows {
		if n := way.Of(l.On[i]); n != "" && !slices.Contains(w.Names, n) {
			w.Names = append(w.Names, n)
		}
	}
	fit, err := l.Refit(func(k int) []float64 {
		var x []float64
		for _, n := range w.Names[1:] {
			x = append(x, One(way.Of(l.PlacedOf(k)) == n))
		}
		return x
	}, func(d *nested.Data) { d.Level = false })
	if err == nil {
		w.Fit = fit
	}
	w.Columns = l.Span(len(w.Names) - 1)
	return w
}

// RefitBesideMove is the same where the columns are a steady move.
func (l *Line) RefitBesideMove(add func(k int) []float64) (*nested.Fit, error) {
	return l.refit(besideMove, add, func(*nested.Data) {})
}

func (l *Line) refit(pr nested.Prior, add func(k int) []float64, change func(*nested.Data)) (*nested.Fit, error) {
	d := l.Data
	d.X = make([][]float64, len(l.Data.X))
	for k, x := range l.Data.X {
		d.X[k] = append(slices.Clone(x), add(k)...)
	}
	change(&d)
	return nested.From(d, pr, l.Near(&d))
}

// Near is the likeliest spreads of the line, of those that a changed one still has.
func (l *Line) Near(d *nested.Data) nested.Spreads {
	all := l.Main.Mode
	s := nested.Spreads{Rest: all.Rest, Inner: all.Inner}
	if d.Level {
		s.Outer = append(s.Outer, all.Outer[0])
	}
	for _, c := range d.Lean {
		s.Outer = append(s.Outer, all.Outer[1+slices.Index(l.Data.Lean, c)])
	}
	return s
}

// Span is the added columns of a fit.
func (l *Line) Span(n int) (columns []int) {
	for j := range n {
		columns = append(columns, len(l.Columns)+j)
	}
	return columns
}

// Time is when each row was, from 0 at the first to 1 at the last; nil if there is one
// time only.
func (l *Line) Time() []float64 {
	h := l.History
	if len(l.Rows) == 0 {
		return nil
	}
	out := make([]float64, len(l.Rows))
	for k, i := range l.Rows {
		switch at := l.InHistory[i]; {
		case h.When != nil:
			out[k] = h.When[at].Sub(h.When[l.InHistory[l.Rows[0]]]).Hours()
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

// When is the date of a row, or its week.
func (l *Line) When(k int) string {
	at := l.InHistory[l.Rows[k]]
	if h := l.History; h.When != nil && !h.When[at].IsZero() {
		return history.Written(h.When[at])
	}
	return l.Label(l.PeriodOf(l.Rows[k]))
}
