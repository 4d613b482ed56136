package trend

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"foamfield/analysis/latent"
	"foamfield/analysis/nested"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
)

// prior is what spreads of groups on a logarithm may be before anything is seen: half of
// them below about these. Days are given more room than they need, so that what moves from
// one week to the next is not taken for more than its days allow.
var prior = nested.Prior{Inner: 0.25, Level: 0.3, Lean: 0.4}

// besideMove is the same beside a steady move, which takes most of what weeks differ by; what is
// left of them is little more than days.
var besideMove = nested.Prior{Inner: 0.25, Level: 0.07, Lean: 0.4}

// leastRest is how many trials there must be beyond the columns of a line.
const leastRest = 4

// column is one column of a line.
type column struct {
	variables []string
	factor    int // of view.factors, -1 for none
	level     string
}

// line is one outcome over all weeks.
type line struct {
	*view
	outcome  result.Outcome
	rows     []int // of view.on
	seen     []latent.Obs
	order    int
	columns  []column
	data     nested.Data
	straight []int          // columns of the variables themselves
	bases    map[int]string // the level that a factor's steps are against
	counts   map[int]map[string]int
	inWeek   map[int]bool // factors that changed only with a week
	double   map[int]int  // factors whose steps others make up, and which
	main     *nested.Fit
	said     bool   // emulsifiers count in percent of what is not said
	thinned  int    // one in so many rows stands for all, 0 = all count
	why      string // why there is no fit
}

// lineOf lays out the columns of one outcome.
func (v *view) lineOf(o result.Outcome) *line {
	l := &line{view: v, outcome: o, bases: map[int]string{}, counts: map[int]map[string]int{}, inWeek: map[int]bool{}, double: map[int]int{}}
	for i, t := range v.on {
		if works.Tells(t.Trial, o) {
			seen := works.Watched(t.Trial, o)
			l.rows, l.seen = append(l.rows, i), append(l.seen, latent.Obs{Low: seen.Low, High: seen.High, Weight: 1})
		}
	}
	l.thin()
	for order := 2; order > 0; order-- {
		if l.lay(order); len(l.rows) >= len(l.columns)+len(v.History.Periods)+leastRest {
			break
		}
	}
	return l
}

// mostRows is how many observations a line rests on; of more every second, third or tenth of
// each day stands for all.
const (
	mostRows = 15000
	// mostForReport is the same where a report only asks whether weeks matter.
	mostForReport = 4000
)

func (l *line) thin() {
	every := (len(l.rows) + l.most - 1) / l.most
	if every < 2 {
		return
	}
	l.thinned = every
	seen := map[[2]int]int{}
	rows, obs := l.rows[:0:0], l.seen[:0:0]
	for k, i := range l.rows {
		day := [2]int{l.periodOf(i), 0}
		if l.History.Day != nil {
			day[1] = l.History.Day[l.at[i]]
		}
		if seen[day]%every == 0 {
			rows, obs = append(rows, i), append(obs, l.seen[k])
		}
		seen[day]++
	}
	l.rows, l.seen = rows, obs
}

// basis is the terms of the mix of an order.
func (v *view) basis(order int) region.Basis {
	if order == 1 {
		return region.Straight(v.Surface.Basis.Coordinates)
	}
	return region.Curved(v.Surface.Basis.Coordinates)
}

// lay builds the columns with terms of an order.
func (l *line) lay(order int) {
	l.order = order
	s := l.Surface
	b := l.basis(order)
	l.columns, l.straight = nil, nil
	for _, t := range b.Terms {
		l.columns = append(l.columns, column{variables: s.TermNames(t), factor: -1})
	}
	var beside []int
	for k, t := range s.Terms {
		if !t.Averaged {
			beside = append(beside, k)
			l.columns = append(l.columns, column{variables: []string{t.Name}, factor: -1})
		}
	}
	said, told := l.emulsifierSaid()
	if l.said = told; told {
		l.columns = append(l.columns, column{variables: []string{saidName}, factor: -1})
	}
	l.steps()
	l.data = nested.Data{Within: l.History.Day != nil, Level: len(l.History.Periods) > 1, Outers: len(l.History.Periods)}
	for _, i := range l.rows {
		t := l.on[i]
		x := make([]float64, len(l.columns))
		b.FeaturesInto(x[:len(b.Terms)], t.Mix)
		for j, k := range beside {
			x[len(b.Terms)+j] = t.Beside[k]
		}
		if told {
			x[len(b.Terms)+len(beside)] = said[i]
		}
		for j, c := range l.columns {
			if c.factor >= 0 && l.factors[c.factor].of(t) == c.level {
				x[j] = 1
			}
		}
		low, high := watched(t.Trial, l.outcome)
		l.data.X = append(l.data.X, x)
		l.data.Low, l.data.High = append(l.data.Low, low), append(l.data.High, high)
		l.data.Outer = append(l.data.Outer, l.periodOf(i))
		day := 0
		if l.data.Within {
			day = l.History.Day[l.at[i]]
		}
		l.data.Inner = append(l.data.Inner, day)
	}
	l.independent()
	for j, c := range l.columns {
		if len(c.variables) == 1 && c.factor < 0 && s.Place(c.variables[0]) >= 0 {
			l.straight = append(l.straight, j)
		}
	}
	if l.data.Level {
		l.data.Lean = l.straight
	}
}

// saidName is the column of emulsifiers in percent of what is not said.
const saidName = "ln_emulsifier_percent_as_logged"

// emulsifierSaid is the logarithm of what each trial of the line has of emulsifiers in percent of
// what is not said, over the mean of these: where the log does not say of what, no formula
// comes of it, but trials of different emulsifier are not alike. One without is taken as the
// mean; told is false where a surface variable tells of it, or too few trials do.
func (l *line) emulsifierSaid() (said map[int]float64, told bool) {
	if l.Surface.Place(surface.EmulsifierPercent) >= 0 || l.Surface.Place(surface.EmulsifierGrams) >= 0 {
		return nil, false
	}
	said = map[int]float64{}
	sum, low, high := 0.0, math.Inf(1), math.Inf(-1)
	for _, i := range l.rows {
		if e := l.on[i].EmulsifierSaid; e != nil && *e > 0 {
			said[i] = math.Log(*e)
			sum += said[i]
			low, high = math.Min(low, said[i]), math.Max(high, said[i])
		}
	}
	if n := len(said); n*10 < 9*len(l.rows) || n == 0 || high-low < 0.05 {
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
func (l *line) steps() {
	for f, way := range l.factors {
		counts, periods := map[string]int{}, map[int]map[string]bool{}
		for _, i := range l.rows {
			name := way.of(l.on[i])
			if name == "" {
				continue
			}
			counts[name]++
			p := l.periodOf(i)
			if periods[p] == nil {
				periods[p] = map[string]bool{}
			}
			periods[p][name] = true
		}
		l.counts[f] = counts
		if len(counts) < 2 || len(counts) > mostLevels || 2*len(counts) > len(l.rows) {
			continue
		}
		names := slices.SortedFunc(maps.Keys(counts), func(a, b string) int { return cmp.Or(cmp.Compare(counts[b], counts[a]), cmp.Compare(a, b)) })
		l.bases[f] = names[0]
		alone := len(l.History.Periods) > 1
		for _, in := range periods {
			alone = alone && len(in) == 1
		}
		if l.inWeek[f] = alone; alone {
			continue
		}
		for _, name := range names[1:] {
			l.columns = append(l.columns, column{variables: []string{way.by + ": " + name}, factor: f, level: name})
		}
	}
}

// independent leaves out the columns that those before them make up, and notes of which
// factor such a column is.
func (l *line) independent() {
	n, p := len(l.data.X), len(l.columns)
	var kept []int
	var base [][]float64 // orthonormal
	out := map[int]bool{}
	for j := range p {
		v := make([]float64, n)
		for i := range v {
			v[i] = l.data.X[i][j]
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
		f := l.columns[j].factor
		if f < 0 {
			continue
		}
		l.double[f] = l.same(f)
	}
	// Of a factor that lost a column none is kept: what the others say would not be its own.
	kept = slices.DeleteFunc(kept, func(j int) bool { _, lost := l.double[l.columns[j].factor]; return lost })
	columns := make([]column, len(kept))
	for k, j := range kept {
		columns[k] = l.columns[j]
	}
	for i, x := range l.data.X {
		row := make([]float64, len(kept))
		for k, j := range kept {
			row[k] = x[j]
		}
		l.data.X[i] = row
	}
	l.columns = columns
}

// same is the factor before f that changed whenever f did, or -1.
func (l *line) same(f int) int {
	for g := range f {
		to := map[string]string{}
		one := len(l.counts[g]) > 1
		for _, i := range l.rows {
			a, b := l.factors[g].of(l.on[i]), l.factors[f].of(l.on[i])
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
func (l *line) fit() {
	n := len(l.rows)
	if n == 0 {
		l.why = named(l.outcome) + " is not logged of trials whose mix is known"
		return
	}
	if n < len(l.columns)+leastRest {
		l.why = fmt.Sprintf("%d trials tell of %s, too few for all that they vary: weeks are not compared by it", n, named(l.outcome))
		return
	}
	exact := 0
	for i := range l.data.Low {
		if l.data.Low[i] == l.data.High[i] {
			exact++
		}
	}
	if exact < 3 {
		l.why = "nearly all that was seen of " + named(l.outcome) + " is bounds, so weeks are not compared by it"
		return
	}
	fit, err := nested.Of(l.data, prior)
	if err != nil {
		l.why = "weeks are not compared by " + named(l.outcome) + ": the trials do not settle the line of it"
		return
	}
	l.main = fit
}

// reference is the row of the reference mix.
func (l *line) reference() []float64 { return l.row(l.ref.mix, l.ref.beside, nil) }

// row is a mix as a row of the line, with what is beside it and the levels of factors
// that are not the usual ones.
func (l *line) row(mix, beside []float64, levels map[int]string) []float64 {
	b := l.basis(l.order)
	all := b.Features(mix)
	names := map[string]float64{}
	for t, term := range b.Terms {
		names[key(l.Surface.TermNames(term))] = all[t]
	}
	for k, t := range l.Surface.Terms {
		names[key([]string{t.Name})] = beside[k]
	}
	x := make([]float64, len(l.columns))
	for j, c := range l.columns {
		if c.factor < 0 {
			x[j] = names[key(c.variables)]
		} else if levels[c.factor] == c.level {
			x[j] = 1
		}
	}
	return x
}

func key(variables []string) string { return fmt.Sprint(variables) }

// own is a trial's own row.
func (l *line) own(k int) []float64 { return l.data.X[k] }

// of is the steps of a factor: its columns and their levels.
func (l *line) of(f int) (columns []int) {
	for j, c := range l.columns {
		if c.factor == f {
			columns = append(columns, j)
		}
	}
	return columns
}

// placedOf is the trial of a row.
func (l *line) placedOf(k int) *surface.Placed { return l.on[l.rows[k]] }
