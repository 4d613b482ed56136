package groups

import (
	"errors"
	"math"
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/fits"
	"foamfield/analysis/latent"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/regress"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// against tests a question beside a stand: it fills in the design it has, what it cannot
// be told from, the test and its sizes. The error is why there is no test.
func (v *comparison) against(e *result.GroupEffect, q question, l *belief.Link, st stand) error {
	fam, name := v.family(l.Outcome)
	trials, seen, at := answering(e, q, l)
	null, columns := v.beside(st, q.setting, trials)
	x := withGroup(null, e.DF, q, trials, at)
	_, p := x.Dims()
	rest := belief.Told(seen) - float64(p)
	e.ResidualDF, e.Order = &rest, st.order
	e.Beside = [][]string{}
	for _, c := range columns {
		e.Beside = append(e.Beside, c.variables)
	}
	if rest < leastRest {
		return nil
	}
	separate(e, null, x, columns)
	alone := v.fits.Fitted(l.Outcome, name, st.order) // of the same trials and terms, if nothing else is beside
	if alone == nil || alone.N != len(seen) || len(alone.Coef) != len(columns) || columns[len(columns)-1].beside {
		var err error
		if alone, err = likeliest.FitScale(fam, null, seen); err != nil {
			return err
		}
	}
	return test(e, alone.LogLik, fam, x, seen, at)
}

// answering is the trials that name a level, what was seen of them, and which level each
// has; it fills in the levels. Of a number all trials answer.
func answering(e *result.GroupEffect, q question, l *belief.Link) (trials []*surface.Placed, seen []latent.Obs, at []int) {
	e.DF = 1
	if q.of == nil {
		return l.Trials, l.Seen, make([]int, len(l.Trials))
	}
	names, level := Levels(l.Trials, q.of)
	e.DF = len(names) - 1
	e.Levels = nil
	for _, name := range names {
		e.Levels = append(e.Levels, result.Level{Name: name})
	}
	for i, t := range l.Trials {
		if level[i] >= 0 {
			e.Levels[level[i]].Trials++
			trials, seen, at = append(trials, t), append(seen, l.Seen[i]), append(at, level[i])
		}
	}
	return trials, seen, at
}

// withGroup is a design with a column a level but the first, or with the number asked for.
func withGroup(null *mat.Dense, df int, q question, trials []*surface.Placed, at []int) *mat.Dense {
	n, k := null.Dims()
	x := mat.NewDense(n, k+df, nil)
	for i, t := range trials {
		copy(x.RawRowView(i), null.RawRowView(i))
		switch {
		case q.of == nil:
			x.Set(i, k, q.number(t))
		case at[i] > 0:
			x.Set(i, k+at[i]-1, 1)
		}
	}
	return x
}

// separate finds the terms whose own effect the group hides: those it makes dependent, or
// whose variance it swells beyond measure.
func separate(e *result.GroupEffect, null, x *mat.Dense, columns []column) {
	hides := func(c int) {
		if words := columns[c].words; !slices.Contains(e.NotToldFrom, words) {
			e.NotToldFrom = append(e.NotToldFrom, words)
		}
	}
	with, err := regress.Inflation(x)
	var rank *regress.RankError
	if errors.As(err, &rank) {
		for _, d := range rank.Dependent {
			for _, c := range d.Of {
				if c > 0 && c < len(columns) {
					hides(c)
				}
			}
		}
		return
	}
	if err != nil || len(columns) == 1 {
		return
	}
	without, err := regress.Inflation(null)
	if err != nil {
		return
	}
	worst := 1.0
	for c := 1; c < len(columns); c++ {
		swells := with[c] / without[c]
		worst = math.Max(worst, swells)
		if swells > inseparable {
			hides(c)
		}
	}
	e.Inflation = works.Finite(worst)
}

// test fills in the likelihood-ratio test and the size of each level.
//
// A level whose results are all bounds on one side fits best infinitely far out,
// where its results have probability 1: the largest likelihood is that of the
// other trials, and the level has no size.
func test(e *result.GroupEffect, null float64, fam latent.Family, x *mat.Dense, seen []latent.Obs, at []int) error {
	n, p := x.Dims()
	k := p - e.DF
	open := make([]bool, len(e.Levels))
	for i := range open {
		open[i] = belief.OneSided(ofLevel(seen, at, i))
	}
	endless := func(i int) bool { return len(open) > 0 && open[at[i]] }
	inner, place, rest := within(x, k, open, endless)
	if len(rest) == 0 {
		return &likeliest.Refusal{Status: likeliest.Separated, N: n, Parameters: p}
	}
	var kept []latent.Obs
	for _, i := range rest {
		kept = append(kept, seen[i])
	}
	fit, err := likeliest.FitScale(fam, inner, kept)
	if err != nil {
		return err
	}
	statistic := math.Max(0, 2*(fit.LogLik-null))
	f := smallSampleF(statistic, e.DF, belief.Told(seen), *e.ResidualDF)
	if works.Finite(statistic) != nil && works.Finite(f.F) != nil {
		p := distuv.F{D1: float64(f.DF1), D2: f.DF2}.Survival(f.F)
		e.LikelihoodRatio, e.F, e.P = &statistic, &f, works.Finite(p)
	}
	sizes(e, fit, k, place)
	return nil
}

// smallSampleF is a likelihood-ratio statistic as F(df, rest), in the form that without
// bounds is the F test of least squares itself.
func smallSampleF(statistic float64, df int, counted, rest float64) result.FTest {
	return result.FTest{F: math.Expm1(statistic/counted) * rest / float64(df), DF1: df, DF2: rest, Counted: counted}
}

func ofLevel(seen []latent.Obs, at []int, level int) (mine []latent.Obs) {
	for i, o := range seen {
		if at[i] == level {
			mine = append(mine, o)
		}
	}
	return mine
}

// within is the design of the trials that are not endless, with a column for
// every level left but the first of them, and where each level's column is: 0 for
// the first, -1 for a level that is out. A design without levels stays as it is.
func within(x *mat.Dense, k int, open []bool, endless func(int) bool) (inner *mat.Dense, place, rest []int) {
	n, _ := x.Dims()
	for i := range n {
		if !endless(i) {
			rest = append(rest, i)
		}
	}
	if len(open) == 0 {
		return x, nil, rest
	}
	next := 0
	for _, out := range open {
		switch {
		case out:
			place = append(place, -1)
		case next == 0:
			place, next = append(place, 0), k
		default:
			place, next = append(place, next), next+1
		}
	}
	inner = mat.NewDense(max(len(rest), 1), max(next, k), nil)
	for row, i := range rest {
		for c := range k {
			inner.Set(row, c, x.At(i, c))
		}
		for level, c := range place {
			if c > 0 {
				inner.Set(row, c, x.At(i, k+level-1))
			}
		}
	}
	return inner, place, rest
}

// sizes fills in the drift, what a setting does, or each level against the mean of those
// that have a size.
func sizes(e *result.GroupEffect, fit *likeliest.Fit, k int, place []int) {
	if fit.Freedom() > 0 {
		e.TMultiplier, e.StdErrorFactor = fits.Multipliers(fit)
	}
	factor := func(a []float64) *result.Band {
		w := fit.Wald(a, belief.Level)
		b := &result.Band{Mid: math.Exp(w.Estimate), Low: math.Exp(w.Low), High: math.Exp(w.High)}
		if works.Finite(b.Mid) == nil || works.Finite(b.Low) == nil || works.Finite(b.High) == nil {
			return nil
		}
		return b
	}
	a := make([]float64, len(fit.Coef))
	if place == nil {
		a[k] = 1
		if e.OrderBy != "" {
			e.Drift = factor(a)
		} else {
			e.Change = factor(a)
		}
		return
	}
	share := 1 / float64(len(fit.Coef)-k+1)
	for i, own := range place {
		if own < 0 || len(fit.Coef) == k {
			continue
		}
		for c := k; c < len(a); c++ {
			a[c] = -share
		}
		if own > 0 {
			a[own]++
		}
		e.Levels[i].Factor = factor(a)
	}
}
