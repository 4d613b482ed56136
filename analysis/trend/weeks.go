package trend

import (
	"math"
	"slices"

	"foamfield/analysis/history"
	"foamfield/analysis/nested"
	"foamfield/analysis/result"
	"foamfield/analysis/trend/line"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/stat/distuv"
)

// periods says of every week how it stands.
func periods(v *line.View) (out []result.Period) {
	for k, w := range counts(v.History) {
		if l := v.LineFor(result.HoldMinutes); l != nil {
			w.Level = level(l, k)
			value := l.Main.Value(l.Main.At(l.Reference(), k), line.Level)
			w.HoldMinutes = &result.Band{Mid: line.Grow(value.Mean), Low: line.Grow(value.Low), High: line.Grow(value.High)}
		}
		if l := v.LineFor(result.DrainedPercent); l != nil {
			w.DrainedLevel = level(l, k)
		}
		out = append(out, w)
	}
	for k, c := range chances(v) {
		out[k].Chance = c
	}
	return out
}

// counts is how many trials every week has, and how many of them clogged and split.
func counts(h *history.History) (out []result.Period) {
	came, split := make([][]bool, len(h.Periods)), make([][]bool, len(h.Periods))
	for _, p := range h.Periods {
		out = append(out, result.Period{Label: p.Label, FirstDate: p.First, LastDate: p.Last})
	}
	for i, t := range h.Trials {
		k := h.Of[i]
		out[k].Trials++
		if out := works.CameOut(t); out != works.Unknown {
			came[k] = append(came[k], out == works.No)
		}
		if broke := works.Broke(t); works.CameOut(t) == works.Yes && broke != works.Unknown {
			split[k] = append(split[k], broke == works.Yes)
		}
	}
	for k := range out {
		out[k].Clogged, out[k].Split = counted(came[k]), counted(split[k])
	}
	return out
}

// Recount counts the trials of every week anew, of a history with more than were studied.
func Recount(t *result.Trend, h *history.History) {
	of := map[string]result.Period{}
	for _, w := range counts(h) {
		of[w.Label] = w
	}
	for k := range t.Periods {
		p := &t.Periods[k]
		w := of[p.Label]
		p.Trials, p.Clogged, p.Split, p.FirstDate, p.LastDate = w.Trials, w.Clogged, w.Split, w.FirstDate, w.LastDate
	}
}

// counted is a share with exact limits (Clopper and Pearson 1934, Biometrika 26:404).
func counted(answers []bool) result.TrendCount {
	c := result.TrendCount{Of: len(answers), High: 1}
	for _, yes := range answers {
		if yes {
			c.Count++
		}
	}
	k, n := float64(c.Count), float64(c.Of)
	if c.Count > 0 {
		c.Low = distuv.Beta{Alpha: k, Beta: n - k + 1}.Quantile((1 - line.Level) / 2)
	}
	if c.Count < c.Of {
		c.High = distuv.Beta{Alpha: k + 1, Beta: n - k}.Quantile((1 + line.Level) / 2)
	}
	return c
}

// level is an outcome at the reference mix in one week, over all weeks.
func level(l *line.Line, k int) *result.Ratio {
	if !l.Data.Level {
		return nil
	}
	x := l.Reference()
	return line.Ratio(l.Main.Value(l.Main.At(x, k).Minus(l.Main.At(x, -1)), line.Level))
}

// truths is how many possible truths stand for all where there are so many weeks.
func truths(weeks int) int { return max(300, min(2000, 200000/max(weeks, 1))) }

// optimum is where hold peaks over each variable of the mix, week by week, the others in the
// middle of what was tried. Away from there, as at a start, it rests on the products of the
// line, which whatever is no square bends: the limits would be wider and hold the truth less.
func optimum(v *line.View) (out []result.Optimum) {
	l := v.LineFor(result.HoldMinutes)
	if l == nil || l.Order < 2 {
		return nil
	}
	draws := l.Main.Draws(truths(len(v.History.Periods)), v.Stream(1))
	place := v.Surface.Basis.Place(v.Middle())
	for i, x := range v.Surface.Vars {
		if math.IsNaN(l.Bend(i)) {
			continue
		}
		for k := range v.History.Periods {
			var at []float64
			inside := 0
			for _, d := range draws {
				p, in := l.Peak(d, k, i, place)
				at = append(at, p)
				if in {
					inside++
				}
			}
			slices.Sort(at)
			q := func(share float64) float64 { return at[min(int(share*float64(len(at))), len(at)-1)] }
			out = append(out, result.Optimum{Variable: x.Name, Label: x.Label, Unit: x.Unit, Outcome: l.Outcome, Period: v.History.Periods[k].Label,
				At: q(0.5), Low: q((1 - line.Level) / 2), High: q((1 + line.Level) / 2), Inside: float64(inside) / float64(len(at))})
		}
	}
	return out
}

// components is how much of the scatter comes from what.
func components(v *line.View) (out []result.Component) {
	for _, l := range v.Lines {
		if l.Main == nil {
			continue
		}
		add := func(of string, s nested.Value) {
			out = append(out, result.Component{Of: of, Outcome: l.Outcome, SD: s.Mean, Low: s.Low, High: s.High})
		}
		add("repeat", l.Main.Spread(func(s nested.Spreads) float64 { return s.Rest }, line.Level))
		if l.Data.Within {
			add("day", l.Main.Spread(func(s nested.Spreads) float64 { return s.Inner }, line.Level))
		}
		if l.Data.Level {
			add("week", l.Main.Spread(func(s nested.Spreads) float64 { return s.Outer[0] }, line.Level))
		}
		for f := range v.Factors {
			if columns := l.Of(f); len(columns) > 0 {
				add(v.Factors[f].By, l.Main.Among(columns, line.Prior.Level, line.Level))
			}
		}
	}
	return out
}
