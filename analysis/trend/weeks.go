package trend

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"foamfield/analysis/history"
	"foamfield/analysis/nested"
	"foamfield/analysis/result"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/stat/distuv"
)

// periods says of every week how it stands.
func (v *view) periods() (out []result.Period) {
	for k, w := range counts(v.History) {
		if l := v.lineFor(result.HoldMinutes); l != nil {
			w.Level = l.level(k)
			value := l.main.Value(l.main.At(l.reference(), k), level)
			w.HoldMinutes = &result.Band{Mid: grow(value.Mean), Low: grow(value.Low), High: grow(value.High)}
		}
		if l := v.lineFor(result.DrainedPercent); l != nil {
			w.DrainedLevel = l.level(k)
		}
		out = append(out, w)
	}
	for k, c := range v.chances() {
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
		c.Low = distuv.Beta{Alpha: k, Beta: n - k + 1}.Quantile((1 - level) / 2)
	}
	if c.Count < c.Of {
		c.High = distuv.Beta{Alpha: k + 1, Beta: n - k}.Quantile((1 + level) / 2)
	}
	return c
}

// level is an outcome at the reference mix in one week, over all weeks.
func (l *line) level(k int) *result.Ratio {
	if !l.data.Level {
		return nil
	}
	x := l.reference()
	return ratio(l.main.Value(l.main.At(x, k).Minus(l.main.At(x, -1)), level))
}

// grow is e^x, kept a number where a limit is all but unknown.
func grow(x float64) float64 { return math.Exp(math.Max(-30, math.Min(30, x))) }

func ratio(v nested.Value) *result.Ratio {
	return &result.Ratio{Ratio: grow(v.Mean), Low: grow(v.Low), High: grow(v.High)}
}

// truths is how many possible truths stand for all where there are so many weeks.
func truths(weeks int) int { return max(300, min(2000, 200000/max(weeks, 1))) }

func (v *view) stream(purpose uint64) *rand.Rand {
	return rand.New(rand.NewPCG(v.Seed, 0x74726e64+purpose))
}

// optimum is where hold peaks over each variable of the mix, week by week.
func (v *view) optimum() (out []result.Optimum) {
	l := v.lineFor(result.HoldMinutes)
	if l == nil || l.order < 2 {
		return nil
	}
	draws := l.main.Draws(truths(len(v.History.Periods)), v.stream(1))
	place := v.Surface.Basis.Place(v.ref.mix)
	for i, x := range v.Surface.Vars {
		if math.IsNaN(l.bend(i)) {
			continue
		}
		for k := range v.History.Periods {
			var at []float64
			inside := 0
			for _, d := range draws {
				p, in := l.peak(d, k, i, place)
				at = append(at, p)
				if in {
					inside++
				}
			}
			slices.Sort(at)
			q := func(share float64) float64 { return at[min(int(share*float64(len(at))), len(at)-1)] }
			out = append(out, result.Optimum{Variable: x.Name, Label: x.Label, Unit: x.Unit, Outcome: l.outcome, Period: v.History.Periods[k].Label,
				At: q(0.5), Low: q((1 - level) / 2), High: q((1 + level) / 2), Inside: float64(inside) / float64(len(at))})
		}
	}
	return out
}

// peak is where one possible truth peaks over variable i in week k: within what was tried,
// or at the end towards which it rises.
func (l *line) peak(d nested.Draw, k, i int, place []float64) (at float64, inside bool) {
	s := l.Surface
	slope, bend := l.slopeOf(d, k, i, place)
	x := s.Vars[i]
	c := s.Basis.Coordinates[i]
	low, high := c.Of(x.Low), c.Of(x.High)
	z := -slope / (2 * bend)
	switch inside = bend < 0 && z > low && z < high; {
	case inside:
	case bend < 0:
		z = math.Max(low, math.Min(high, z))
	case slope*(low+high)/2+bend*(high*high-low*low) == 0, slope*high+bend*high*high > slope*low+bend*low*low:
		z = high
	default:
		z = low
	}
	z = z*c.Scale + c.Centre
	if c.Log {
		z = math.Exp(z)
	}
	return z, inside
}

// slopeOf is the slope of the line over variable i where it is 0, the others at place, and half
// its bend, in one possible truth and week.
func (l *line) slopeOf(d nested.Draw, k, i int, place []float64) (slope, bend float64) {
	s := l.Surface
	for j, c := range l.columns {
		if c.factor >= 0 {
			continue
		}
		switch n := c.variables; {
		case len(n) == 1 && s.Place(n[0]) == i:
			slope += d.B[j]
		case len(n) == 2 && s.Place(n[0]) == i && s.Place(n[1]) == i:
			bend = d.B[j]
		case len(n) == 2 && s.Place(n[0]) == i:
			slope += d.B[j] * place[s.Place(n[1])]
		case len(n) == 2 && s.Place(n[1]) == i:
			slope += d.B[j] * place[s.Place(n[0])]
		}
	}
	for a, j := range l.data.Lean {
		if s.Place(l.columns[j].variables[0]) == i {
			slope += d.U[k][a+1]
		}
	}
	return slope, bend
}

// components is how much of the scatter comes from what.
func (v *view) components() (out []result.Component) {
	for _, l := range v.lines {
		if l.main == nil {
			continue
		}
		add := func(of string, s nested.Value) {
			out = append(out, result.Component{Of: of, Outcome: l.outcome, SD: s.Mean, Low: s.Low, High: s.High})
		}
		add("repeat", l.main.Spread(func(s nested.Spreads) float64 { return s.Rest }, level))
		if l.data.Within {
			add("day", l.main.Spread(func(s nested.Spreads) float64 { return s.Inner }, level))
		}
		if l.data.Level {
			add("week", l.main.Spread(func(s nested.Spreads) float64 { return s.Outer[0] }, level))
		}
		for f := range v.factors {
			if columns := l.of(f); len(columns) > 0 {
				add(v.factors[f].by, l.main.Among(columns, prior.Level, level))
			}
		}
	}
	return out
}

// label is what a week is called.
func (v *view) label(k int) string { return v.History.Periods[k].Label }

// inWords is a week's label in a sentence: "the week of 2 Mar 2026".
func inWords(label string) string {
	if strings.HasPrefix(label, "week ") {
		return "the " + label
	}
	return label
}
