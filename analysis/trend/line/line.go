// Package line lays a history out as one line an outcome: curved in the mix, with settings, lots,
// cooks, canisters and suppliers as steps, and with days and weeks that stand a little
// higher or lower, and weeks that lean another way in a variable, which is how an optimum
// moves. The rooms beside it ask it their questions.
package line

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"sync"

	"foamfield/analysis/latent"
	"foamfield/analysis/nested"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
)

// Prior is what spreads of groups on a logarithm may be before anything is seen: half of
// them below about these. Days are given more room than they need, so that what moves from
// one week to the next is not taken for more than its days allow.
var Prior = nested.Prior{Inner: 0.25, Level: 0.3, Lean: 0.4}

// besideMove is the same beside a steady move, which takes most of what weeks differ by; what is
// left of them is little more than days.
var besideMove = nested.Prior{Inner: 0.25, Level: 0.07, Lean: 0.4}

// LeastRest is how many trials there must be beyond the columns of a line.
const LeastRest = 4

// Column is one column of a line.
type Column struct {
	Variables []string
	Factor    int // of view.factors, -1 for none
	Level     string
}

// Line is one outcome over all weeks.
type Line struct {
	*View
	Outcome  result.Outcome
	Rows     []int // of view.on
	Seen     []latent.Obs
	Order    int
	Columns  []Column
	Data     nested.Data
	straight []int          // columns of the variables themselves
	Bases    map[int]string // the level that a factor's steps are against
	Counts   map[int]map[string]int
	InWeek   map[int]bool // factors that changed only with a week
	Double   map[int]int  // factors whose steps others make up, and which
	Main     *nested.Fit
	weekly   []func() *Weekly // the line by each factor that changed only with the weeks, fitted once
	Said     bool             // emulsifiers count in percent of what is not said
	Thinned  int              // one in so many rows stands for all, 0 = all count
	Why      string           // why there is no fit
}

// lineOf lays out the columns of one outcome.
func (v *View) lineOf(o result.Outcome) *Line {
	l := &Line{View: v, Outcome: o, Bases: map[int]string{}, Counts: map[int]map[string]int{}, InWeek: map[int]bool{}, Double: map[int]int{}}
	for f := range v.Factors {
		l.weekly = append(l.weekly, sync.OnceValue(func() *Weekly { return l.withWeeks(f) }))
	}
	for i, t := range v.On {
		if works.Tells(t.Trial, o) {
			seen := works.Watched(t.Trial, o)
			l.Rows, l.Seen = append(l.Rows, i), append(l.Seen, latent.Obs{Low: seen.Low, High: seen.High, Weight: 1})
		}
	}
	l.thin()
	for order := 2; order > 0; order-- {
		if l.lay(order); len(l.Rows) >= len(l.Columns)+len(v.History.Periods)+LeastRest {
			break
		}
	}
	return l
}

// mostRows is how many observations a line rests on; of more every second, third or tenth of
// each day stands for all.
const (
	MostRows = 15000
	// mostForReport is the same where a report only asks whether weeks matter.
	MostForReport = 4000
)

func (l *Line) thin() {
	every := (len(l.Rows) + l.most - 1) / l.most
	if every < 2 {
		return
	}
	l.Thinned = every
	seen := map[[2]int]int{}
	rows, obs := l.Rows[:0:0], l.Seen[:0:0]
	for k, i := range l.Rows {
		day := [2]int{l.PeriodOf(i), 0}
		if l.History.Day != nil {
			day[1] = l.History.Day[l.InHistory[i]]
		}
		if seen[day]%every == 0 {
			rows, obs = append(rows, i), append(obs, l.Seen[k])
		}
		seen[day]++
	}
	l.Rows, l.Seen = rows, obs
}

// basis is the terms of the mix of an order.
func (v *View) basis(order int) region.Basis {
	if order == 1 {
		return region.Straight(v.Surface.Basis.Coordinates)
	}
	return region.Curved(v.Surface.Basis.Coordinates)
}

// lay builds the columns with terms of an order.
func (l *Line) lay(order int) {
	l.Order = order
	s := l.Surface
	b := l.basis(order)
	l.Columns, l.straight = nil, nil
	for _, t := range b.Terms {
		l.Columns = append(l.Columns, Column{Variables: s.TermNames(t), Factor: -1})
	}
	var beside []int
	for k, t := range s.Terms {
		if !t.Averaged {
			beside = append(beside, k)
			l.Columns = append(l.Columns, Column{Variables: []string{t.Name}, Factor: -1})
		}
	}
	said, told := l.emulsifierSaid()
	if l.Said = told; told {
		l.Columns = append(l.Columns, Column{Variables: []string{saidName}, Factor: -1})
	}
	l.steps()
	l.Data = nested.Data{Within: l.History.Day != nil, Level: len(l.History.Periods) > 1, Outers: len(l.History.Periods)}
	for _, i := range l.Rows {
		t := l.On[i]
		x := make([]float64, len(l.Columns))
		b.FeaturesInto(x[:len(b.Terms)], t.Mix)
		for j, k := range beside {
			x[len(b.Terms)+j] = t.Beside[k]
		}
		if told {
			x[len(b.Terms)+len(beside)] = said[i]
		}
		for j, c := range l.Columns {
			if c.Factor >= 0 && l.Factors[c.Factor].Of(t) == c.Level {
				x[j] = 1
			}
		}
		low, high := Watched(t.Trial, l.Outcome)
		l.Data.X = append(l.Data.X, x)
		l.Data.Low, l.Data.High = append(l.Data.Low, low), append(l.Data.High, high)
		l.Data.Outer = append(l.Data.Outer, l.PeriodOf(i))
		day := 0
		if l.Data.Within {
			day = l.History.Day[l.InHistory[i]]
		}
		l.Data.Inner = append(l.Data.Inner, day)
	}
	l.independent()
	for j, c := range l.Columns {
		if len(c.Variables) == 1 && c.Factor < 0 && s.Place(c.Variables[0]) >= 0 {
			l.straight = append(l.straight, j)
		}
	}
	if l.Data.Level {
		l.Data.Lean = l.straight
	}
}

// saidName is the column of emulsifiers in percent of what is not said.
const saidName = "ln_emulsifier_percent_as_logged"

// emulsifierSaid is the logarithm of what each trial of the line has of emulsifiers in percent of
// what is not said, over the mean of these: where the log does not say of what, no formula
// comes of it, but trials of different emulsifier are not alike. One without is taken as the
// mean; told is false where a surface variable tells of it, or too few trials do.
func (l *Line) emulsifierSaid() (said map[int]float64, told bool) {
	if l.Surface.Place(surface.EmulsifierPercent) >= 0 || l.Surface.Place(surface.EmulsifierGrams) >= 0 {
		return nil, false
	}
	said = map[int]float64{}
	sum, low, high := 0.0, math.Inf(1), math.Inf(-1)
	for _, i := range l.Rows {
		if e := l.On[i].EmulsifierSaid; e != nil && *e > 0 {
			said[i] = math.Log(*e)
			sum += said[i]
			low, high = math.Min(low, said[i]), math.Max(high, said[i])
		}
	}
	if n := len(said); n*10 < 9*len(l.Rows) || n == 0 || high-low < 0.05 {
		return nil, false
	}
	mean := sum / float64(len(said))
	for i := range said {
		said[i] -= mean
	}
	return said, true
}

// mostLevels is how many lots or cooks are still compared one by one.
const mostLevels = 40

// steps adds the columns of every factor whose steps these trials can tell from weeks.
func (l *Line) steps() {
	for f, way := range l.Factors {
		counts, periods := map[string]int{}, map[int]map[string]bool{}
		for _, i := range l.Rows {
			name := way.Of(l.On[i])
			if name == "" {
				continue
			}
			counts[name]++
			p := l.PeriodOf(i)
			if periods[p] == nil {
				periods[p] = map[string]bool{}
			}
			periods[p][name] = true
		}
		l.Counts[f] = counts
		if len(counts) < 2 || len(counts) > mostLevels || 2*len(counts) > len(l.Rows) {
			continue
		}
		names := slices.SortedFunc(maps.Keys(counts), func(a, b string) int { return cmp.Or(cmp.Compare(counts[b], counts[a]), cmp.Compare(a, b)) })
		l.Bases[f] = names[0]
		alone := len(l.History.Periods) > 1
		for _, in := range periods {
			alone = alone && len(in) == 1
		}
		if l.InWeek[f] = alone; alone {
			continue
		}
		for _, name := range names[1:] {
			l.Columns = append(l.Columns, Column{Variables: []string{way.By + ": " + name}, Factor: f, Level: name})
		}
	}
}

// independent leaves out the columns that those before them make up, and notes of which
// factor such a column is.
func (l *Line) independent() {
	n, p := len(l.Data.X), len(l.Columns)
	var kept []int
	var base [][]float64 // orthonormal
	out := map[int]bool{}
	for j := range p {
		v := make([]float64, n)
		for i := range v {
			v[i] = l.Data.X[i][j]
		}
		size := math.Sqrt(dot(v, v))
		for range 2 {
			for _, e := range base {
				f := dot(v, e)
				for i := range v {
					v[i] -= f * e[i]
				}
			}
		}
		if rest := math.Sqrt(dot(v, v)); rest > 1e-7*size && rest > 0 {
			for i := range v {
				v[i] /= rest
			}
			base, kept = append(base, v), append(kept, j)
			continue
		}
		out[j] = true
	}
	for j := range out {
		f := l.Columns[j].Factor
		if f < 0 {
			continue
		}
		l.Double[f] = l.same(f)
	}
	// Of a factor that lost a column none is kept: what the others say would not be its own.
	kept = slices.DeleteFunc(kept, func(j int) bool { _, lost := l.Double[l.Columns[j].Factor]; return lost })
	columns := make([]Column, len(kept))
	for k, j := range kept {
		columns[k] = l.Columns[j]
	}
	for i, x := range l.Data.X {
		row := make([]float64, len(kept))
		for k, j := range kept {
			row[k] = x[j]
		}
		l.Data.X[i] = row
	}
	l.Columns = columns
}

// same is the factor before f that changed whenever f did, or -1.
func (l *Line) same(f int) int {
	for g := range f {
		to := map[string]string{}
		one := len(l.Counts[g]) > 1
		for _, i := range l.Rows {
			a, b := l.Factors[g].Of(l.On[i]), l.Factors[f].Of(l.On[i])
			if was, known := to[a]; known && was != b {
				one = false
			}
			to[a] = b
		}
		if one {
			return g
		}
	}
	return -1
}

func dot(a, b []float64) (t float64) {
	for i := range a {
		t += a[i] * b[i]
	}
	return t
}

// fit fits the line over all weeks.
func (l *Line) fit() {
	n := len(l.Rows)
	if n == 0 {
		l.Why = "no trial has both a mix that is known and a result for " + Named(l.Outcome) + ": foamfield check says what could not be read"
		return
	}
	if n < len(l.Columns)+LeastRest {
		l.Why = fmt.Sprintf("%d trials tell of %s, too few for all that they vary: weeks are not compared by it", n, Named(l.Outcome))
		return
	}
	exact := 0
	for i := range l.Data.Low {
		if l.Data.Low[i] == l.Data.High[i] {
			exact++
		}
	}
	if exact < 3 {
		l.Why = "nearly all that was seen of " + Named(l.Outcome) + " is bounds, so weeks are not compared by it"
		return
	}
	fit, err := nested.Of(l.Data, Prior)
	if err != nil {
		l.Why = "weeks are not compared by " + Named(l.Outcome) + ": the trials are too alike to fit it"
		return
	}
	l.Main = fit
}

// Reference is the row of the reference mix.
func (l *Line) Reference() []float64 { return l.Row(l.Ref.Mix, l.Ref.Beside, nil) }

// Row is a mix as a row of the line, with what is beside it and the levels of factors
// that are not the usual ones.
func (l *Line) Row(mix, beside []float64, levels map[int]string) []float64 {
	b := l.basis(l.Order)
	all := b.Features(mix)
	names := map[string]float64{}
	for t, term := range b.Terms {
		names[key(l.Surface.TermNames(term))] = all[t]
	}
	for k, t := range l.Surface.Terms {
		names[key([]string{t.Name})] = beside[k]
	}
	x := make([]float64, len(l.Columns))
	for j, c := range l.Columns {
		if c.Factor < 0 {
			x[j] = names[key(c.Variables)]
		} else if levels[c.Factor] == c.Level {
			x[j] = 1
		}
	}
	return x
}

func key(variables []string) string { return fmt.Sprint(variables) }

// Own is a trial's own row.
func (l *Line) Own(k int) []float64 { return l.Data.X[k] }

// Of is the steps of a factor: its columns and their levels.
func (l *Line) Of(f int) (columns []int) {
	for j, c := range l.Columns {
		if c.Factor == f {
			columns = append(columns, j)
		}
	}
	return columns
}

// PlacedOf is the trial of a row.
func (l *Line) PlacedOf(k int) *surface.Placed { return l.On[l.Rows[k]] }

// Latest is the level of every factor of lots and suppliers that was used last.
func (l *Line) Latest() map[int]string {
	out := map[int]string{}
	for f, way := range l.Factors {
		if way.What != "lot" && way.What != "supplier" {
			continue
		}
		for _, i := range l.Rows {
			if n := way.Of(l.On[i]); n != "" {
				out[f] = n
			}
		}
	}
	return out
}

// StraightOf is the column of a variable itself.
func (l *Line) StraightOf(i int) int {
	for _, j := range l.straight {
		if l.Surface.Place(l.Columns[j].Variables[0]) == i {
			return j
		}
	}
	return -1
}

// Bend is the square of a variable on the line.
func (l *Line) Bend(i int) float64 {
	for j, c := range l.Columns {
		if n := c.Variables; c.Factor < 0 && len(n) == 2 && l.Surface.Place(n[0]) == i && l.Surface.Place(n[1]) == i {
			return l.Main.B[j]
		}
	}
	return math.NaN()
}

// Called is what a factor's steps are of: "butter lot or cook" where a cook changed whenever
// the lot did.
func (l *Line) Called(f int) string {
	name := l.Factors[f].By
	for g := range l.Factors {
		if of, double := l.Double[g]; double && of == f {
			name += " or " + l.Factors[g].By
		}
	}
	if len(l.Once(f)) > 0 {
		name += " or what else changed then"
	}
	return name
}

// Once is where a factor changed for good, each of its levels being used in one stretch of days
// and never again: the rows with which a next one began. It is empty where levels alternate.
func (l *Line) Once(f int) (rows []int) {
	time := l.Time()
	if time == nil {
		return nil
	}
	last, at, ended := "", -1.0, map[string]bool{}
	for k, i := range l.Rows {
		name := l.Factors[f].Of(l.On[i])
		if name == "" {
			continue
		}
		if name != last {
			if ended[name] || time[k] == at { // used again, or both on one day
				return nil
			}
			if last != "" {
				ended[last] = true
				rows = append(rows, k)
			}
		}
		last, at = name, time[k]
	}
	return rows
}

func One(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

func Unit(n, j int) []float64 {
	e := make([]float64, n)
	e[j] = 1
	return e
}

// Peak is where one possible truth peaks over variable i in week k: within what was tried,
// or at the end towards which it rises.
func (l *Line) Peak(d nested.Draw, k, i int, place []float64) (at float64, inside bool) {
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
func (l *Line) slopeOf(d nested.Draw, k, i int, place []float64) (slope, bend float64) {
	s := l.Surface
	for j, c := range l.Columns {
		if c.Factor >= 0 {
			continue
		}
		switch n := c.Variables; {
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
	for a, j := range l.Data.Lean {
		if s.Place(l.Columns[j].Variables[0]) == i {
			slope += d.U[k][a+1]
		}
	}
	return slope, bend
}
