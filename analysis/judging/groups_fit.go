package judging

import (
	"errors"
	"math"
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/latent"
	"foamfield/analysis/regress"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// groupDesign is straight terms, then a column a level but the first, or the
// order from 0 to 1; beside it each row's level. Trials that name no level are
// left out.
func groupDesign(s *surface.Surface, e *result.GroupEffect, of func(*surface.Placed) string, l *belief.Link) (*mat.Dense, []latent.Obs, []int) {
	b := termsOf(s, 1)
	level := make([]int, len(l.Trials))
	e.DF = 1
	if of != nil {
		var names []string
		names, level = levels(l.Trials, of)
		e.DF = len(names) - 1
		for _, name := range names {
			e.Levels = append(e.Levels, result.Level{Name: name})
		}
	}
	first, last := math.Inf(1), math.Inf(-1)
	for _, t := range l.Trials {
		first, last = math.Min(first, float64(t.Order)), math.Max(last, float64(t.Order))
	}
	var data []float64
	var seen []latent.Obs
	var at []int
	for i, t := range l.Trials {
		if level[i] < 0 {
			continue
		}
		extra := make([]float64, e.DF)
		if of == nil {
			extra[0] = (float64(t.Order) - first) / math.Max(last-first, 1)
		} else {
			e.Levels[level[i]].Trials++
			if level[i] > 0 {
				extra[level[i]-1] = 1
			}
		}
		data = append(append(data, b.Features(t.Mix)...), extra...)
		seen = append(seen, l.Seen[i])
		at = append(at, level[i])
	}
	return mat.NewDense(len(seen), len(b.Terms)+e.DF, data), seen, at
}

// separate finds the variables whose own effect the group hides: those it makes
// dependent, or whose variance it swells beyond measure.
func separate(s *surface.Surface, e *result.GroupEffect, x *mat.Dense) {
	n, p := x.Dims()
	k := p - e.DF // straight terms, the constant first
	y := make([]float64, n)
	for i := range y {
		y[i] = float64(i) // inflation does not depend on the results
	}
	with, err := regress.Least(x, y, nil)
	var rank *regress.RankError
	if errors.As(err, &rank) {
		for _, d := range rank.Dependent {
			if d.Column < k {
				continue // variables that hide each other
			}
			for _, c := range d.Of {
				if c > 0 && c < k {
					e.NotToldFrom = append(e.NotToldFrom, s.Vars[c-1].Label)
				}
			}
		}
		slices.Sort(e.NotToldFrom)
		e.NotToldFrom = slices.Compact(e.NotToldFrom)
		return
	}
	if err != nil || k == 1 {
		return
	}
	without, err := regress.Least(mat.DenseCopyOf(x.Slice(0, n, 0, k)), y, nil)
	if err != nil {
		return
	}
	worst := 1.0
	for c := 1; c < k; c++ {
		worst = math.Max(worst, with.Inflation[c])
		if with.Inflation[c] > inseparable && without.Inflation[c] <= inseparable {
			e.NotToldFrom = append(e.NotToldFrom, s.Vars[c-1].Label)
		}
	}
	e.Inflation = works.Finite(worst)
}

// test fills in the likelihood-ratio test and the size of each level.
//
// A level whose results are all bounds on one side fits best infinitely far out,
// where its results have probability 1: the largest likelihood is that of the
// other trials, and the level has no size.
//
// null is the straight fit of all trials, if there is one: without it, or where some
// trial names no level, the straight fit is made anew.
func test(e *result.GroupEffect, null *latent.Fit, fam latent.Family, x *mat.Dense, seen []latent.Obs, at []int) error {
	n, p := x.Dims()
	k := p - e.DF
	open := make([]bool, len(e.Levels))
	for i := range open {
		open[i] = oneSided(ofLevel(seen, at, i))
	}
	if null == nil || null.N != n {
		var err error
		if null, err = latent.FitScale(fam, mat.DenseCopyOf(x.Slice(0, n, 0, k)), seen); err != nil {
			return err
		}
	}
	endless := func(i int) bool { return len(open) > 0 && open[at[i]] }
	inner, place, rest := within(x, k, open, endless)
	if len(rest) == 0 {
		return &latent.Refusal{Status: latent.Separated, N: n, Parameters: p}
	}
	var kept []latent.Obs
	for _, i := range rest {
		kept = append(kept, seen[i])
	}
	fit, err := latent.FitScale(fam, inner, kept)
	if err != nil {
		return err
	}
	statistic := math.Max(0, 2*(fit.LogLik-null.LogLik))
	e.LikelihoodRatio = works.Finite(statistic)
	e.P = works.Finite(smallSampleP(statistic, e.DF, told(seen), *e.ResidualDF))
	sizes(e, fit, k, place)
	return nil
}

// told is how many trials' worth the observations tell: one known only up to a
// bound on one side counts half. So counted, a day effect that is not there is
// called at p < 0.05 in 3 to 9 of 100 logs of simulated kitchens; counted whole, in
// 6 to 12 (TestFalseAlarms).
func told(seen []latent.Obs) float64 {
	c := belief.Count(seen)
	return float64(len(seen)) - float64(c.AtLeast+c.AtMost)/2
}

// smallSampleP refers a likelihood-ratio statistic to F(df, rest), in the form that
// without bounds is the F test of least squares itself.
func smallSampleP(statistic float64, df int, n, rest float64) float64 {
	ratio := math.Expm1(statistic/n) * rest / float64(df)
	return distuv.F{D1: float64(df), D2: rest}.Survival(ratio)
}

func ofLevel(seen []latent.Obs, at []int, level int) (mine []latent.Obs) {
	for i, o := range seen {
		if at[i] == level {
			mine = append(mine, o)
		}
	}
	return mine
}

// oneSided says whether results are all bounds on the same side.
func oneSided(seen []latent.Obs) bool {
	c := belief.Count(seen)
	return len(seen) > 0 && (c.AtLeast == len(seen) || c.AtMost == len(seen))
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

// sizes fills in the drift, or each level against the mean of those that have a
// size.
func sizes(e *result.GroupEffect, fit *latent.Fit, k int, place []int) {
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
		e.Drift = factor(a)
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
