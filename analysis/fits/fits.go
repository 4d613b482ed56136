// Package fits holds every result against every distribution and order that the trials can
// carry, in the mix alone, by maximum likelihood, and yes and no also by bias-reduced
// likelihood, which is finite where trials split cleanly; for somebody who checks the
// numbers elsewhere. Of each result one is chosen that it is judged by.
package fits

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/analysis/belief"
	"foamfield/analysis/latent"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/region"
	"foamfield/analysis/regress"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/mat"
)

// mostLeftOut is the largest log whose fits are each repeated without every
// trial; beyond it the score changes nothing and costs minutes.
const mostLeftOut = 300

// distributions are those a numeric result is fitted in.
var distributions = []struct {
	name, transform string
	family          latent.Family
}{
	{"lognormal", "ln", latent.Lognormal},
	{"weibull", "ln", latent.Weibull},
	{"loglogistic", "ln", latent.Loglogistic},
	{"normal", "none", latent.Normal},
}

// Fits is every fit of a log's results.
type Fits struct {
	All []result.Fit

	on     *surface.Surface
	links  []belief.Link    // whose results are fitted
	behind []*likeliest.Fit // behind each of All, nil for none of a number
}

// Of fits the results that every log can have, then those a kitchen measures beside them.
func Of(s *surface.Surface, links []belief.Link) *Fits {
	v := &Fits{on: s, links: slices.Clone(ours(links))}
	v.look()
	v.declare()
	return v
}

// look fits the results that every log can have.
func (v *Fits) look() {
	s := v.on
	coords := s.Basis.Coordinates
	for _, l := range v.links {
		for order := 1; order <= min(2, 1+len(coords)); order++ {
			terms := func() []result.Term { return estimates(s, Terms(s, order)) }
			if works.IsLine(l.Outcome) {
				for _, d := range distributions {
					v.All = append(v.All, result.Fit{Result: string(l.Outcome), Distribution: d.name, Transform: d.transform,
						Estimator: result.MaximumLikelihood, Order: order, Terms: terms()})
				}
				continue
			}
			for _, how := range []result.Estimator{result.MaximumLikelihood, result.BiasReduced} {
				v.All = append(v.All, result.Fit{Result: string(l.Outcome), Distribution: "logistic", Transform: "logit",
					Estimator: how, Order: order, Terms: terms()})
			}
		}
	}
	v.behind = make([]*likeliest.Fit, len(v.All))
	var tasks []task
	for k := range v.links {
		tasks = append(tasks, v.tasks(&v.links[k])...)
	}
	region.Parallel(len(tasks), func(i int) { v.fit(tasks[i]) })
	v.chooseJudged()
}

// ours is the links whose results every log can have; those a kitchen asks for beside
// them come last, and are fitted with all it measures.
func ours(links []belief.Link) []belief.Link {
	n := slices.IndexFunc(links, func(l belief.Link) bool { return !slices.Contains(result.Chain, l.Outcome) })
	if n < 0 {
		return links
	}
	return links[:n]
}

// estimates is the terms of a basis, yet without numbers.
func estimates(s *surface.Surface, b region.Basis) []result.Term {
	out := []result.Term{}
	for _, t := range b.Terms {
		out = append(out, result.Term{Variables: s.TermNames(t)})
	}
	return out
}

// Terms is the terms of an order: 1 = straight, 2 = with squares and products.
func Terms(s *surface.Surface, order int) region.Basis {
	if order == 2 {
		return region.Curved(s.Basis.Coordinates)
	}
	return region.Straight(s.Basis.Coordinates)
}

// design is the terms of an order for a link's trials.
func design(s *surface.Surface, l *belief.Link, order int) *mat.Dense {
	b := Terms(s, order)
	x := mat.NewDense(len(l.Trials), len(b.Terms), nil)
	for i, t := range l.Trials {
		x.SetRow(i, b.Features(t.Mix))
	}
	return x
}

// task is the fits that share a result, and a distribution if it is one of a number: one of each order.
type task struct {
	link    *belief.Link
	designs [2]*mat.Dense // of each order
	fits    []int         // of All
}

// tasks is the fits of a link's result that are to be made; what they can share is made once.
func (v *Fits) tasks(l *belief.Link) (out []task) {
	var designs [2]*mat.Dense
	of := map[string]int{}
	for i := range v.All {
		f := &v.All[i]
		if f.Result != string(l.Outcome) {
			continue
		}
		if designs[f.Order-1] == nil {
			designs[f.Order-1] = design(v.on, l, f.Order)
		}
		kind := f.Distribution + string(f.Estimator)
		at, seen := of[kind]
		if !seen {
			at, of[kind] = len(out), len(out)
			out = append(out, task{link: l})
		}
		out[at].fits = append(out[at].fits, i)
	}
	for i := range out {
		out[i].designs = designs
	}
	return out
}

// fit fills the fits of a task in.
func (v *Fits) fit(t task) {
	var sample *likeliest.Sample
	var err error
	if t.link.Answers == nil {
		sample, err = likeliest.NewSample(FamilyOf(v.All[t.fits[0]].Distribution), t.link.Seen)
	}
	for _, i := range t.fits {
		f := &v.All[i]
		x := t.designs[f.Order-1]
		f.N, f.VariedBeside = len(t.link.Trials), variedBeside(v.on, t.link.Trials)
		switch {
		case t.link.Answers != nil:
			fitAnswers(v.on, f, t.link, x)
		case err != nil:
			f.Observations = belief.Count(t.link.Seen)
			refused(v.on, f, err)
		default:
			f.Observations = belief.Count(t.link.Seen)
			v.behind[i] = fitNumbers(v.on, f, t.link, x, sample)
		}
	}
}

// fitNumbers fills a fit of a number in, and returns it.
func fitNumbers(s *surface.Surface, f *result.Fit, l *belief.Link, x *mat.Dense, sample *likeliest.Sample) *likeliest.Fit {
	fit, err := sample.Fit(x)
	if err != nil {
		refused(s, f, err)
		return nil
	}
	f.LogLikelihood, f.Scale = &fit.LogLik, &fit.Scale
	fill(f, fit.Coef, fit.Covariance)
	if fit.Freedom() > 0 {
		f.TMultiplier, f.StdErrorFactor = Multipliers(fit)
	}
	if r, err := fit.LikelihoodR2(); err == nil {
		f.LikelihoodRSquared = &r
	}
	if fit.Family != latent.Normal && f.N <= mostLeftOut {
		f.LeaveOneOutScore, f.NoScoreReason = leftOutScore(fit.LeaveOneOut(), func(i int) bool { return l.Seen[i].Low == l.Seen[i].High })
	}
	switch bounded := f.Observations.AtLeast + f.Observations.AtMost + f.Observations.Between; {
	case bounded > 0:
		f.NullReason = fmt.Sprintf("%d of %d results are known only up to bounds", bounded, f.N)
	case fit.Family != latent.Lognormal && fit.Family != latent.Normal:
		f.NullReason = "R² belongs to least squares: see the log-normal and normal fits"
	default:
		leastSquares(f, l, x, fit.Family)
	}
	return fit
}

// variedBeside names the terms beside the mix in which trials differ.
func variedBeside(s *surface.Surface, trials []*surface.Placed) []string {
	out := []string{}
	for k, term := range s.Terms {
		if slices.ContainsFunc(trials, func(t *surface.Placed) bool { return t.Beside[k] != trials[0].Beside[k] }) {
			out = append(out, term.Name)
		}
	}
	return out
}

// fitAnswers fills a fit of yes and no in.
func fitAnswers(s *surface.Surface, f *result.Fit, l *belief.Link, x *mat.Dense) {
	f.Observations.Exact = f.N
	estimate := likeliest.FitYesNo
	// Answers all alike tell nothing; a bias-reduced fit would answer all the same.
	if f.Estimator == result.BiasReduced && slices.Contains(l.Answers, !l.Answers[0]) {
		estimate = likeliest.FitYesNoFirth
	}
	fit, err := estimate(x, l.Answers)
	if err != nil {
		refused(s, f, err)
		return
	}
	f.LogLikelihood = &fit.LogLik
	fill(f, fit.Coef, fit.Covariance)
	z, plain := fit.Multiplier(belief.Level), 1.0
	f.TMultiplier, f.StdErrorFactor = &z, &plain
	f.NullReason = "a yes/no result has no R²"
	if f.N <= mostLeftOut {
		f.LeaveOneOutScore, f.NoScoreReason = leftOutScore(fit.LeaveOneOut(), func(int) bool { return true })
	}
}

// Multipliers is what a fit's standard errors are multiplied by to reach its limits.
func Multipliers(f *likeliest.Fit) (t, widened *float64) {
	a, b := f.Multipliers(belief.Level)
	return &a, &b
}

// Fitted is a result's fit in a distribution and order, nil if it was refused.
func (v *Fits) Fitted(o result.Outcome, distribution string, order int) *likeliest.Fit {
	for i, f := range v.All {
		if f.Result == string(o) && f.Distribution == distribution && f.Order == order {
			return v.behind[i]
		}
	}
	return nil
}

// FamilyOf is the distribution of a name; the normal where it is none of a number.
func FamilyOf(name string) latent.Family {
	for _, d := range distributions {
		if d.name == name {
			return d.family
		}
	}
	return latent.Normal
}

// Judged is the fit a result is judged by, nil if there is none.
func (v *Fits) Judged(o result.Outcome) *result.Fit {
	for i := range v.All {
		if f := &v.All[i]; f.JudgedBy && f.Result == string(o) {
			return f
		}
	}
	return nil
}

// fill copies estimates, with standard errors and covariance where they exist.
func fill(f *result.Fit, coef []float64, cov *mat.SymDense) {
	for i := range f.Terms {
		f.Terms[i].Estimate = coef[i]
		if v := math.Sqrt(cov.At(i, i)); !math.IsNaN(v) && !math.IsInf(v, 0) {
			f.Terms[i].StdError = &v
		}
	}
	f.Covariance = belief.Rows(cov)
}

// nothing is the log density below which a number cannot hold the density itself.
const nothing = -1074 * math.Ln2

// impossible is why a fit has no score that the others of its result have.
const impossible = "without some trials the fit calls them impossible, so the score says nothing"

// leftOutScore is the mean log density of the exactly seen results, or log chance of
// the answers, each foreseen from all others, or why there is none.
func leftOutScore(left []likeliest.LeftOut, exact func(i int) bool) (score *float64, why string) {
	sum, n := 0.0, 0
	for i, o := range left {
		if !exact(i) {
			continue
		}
		if o.Err != nil || math.IsNaN(o.LogLik) {
			return nil, "without some single trials these terms cannot be fitted"
		}
		if o.LogLik < nothing {
			why = impossible
		}
		sum += o.LogLik
		n++
	}
	if n == 0 {
		why = "no result is known exactly"
	}
	if why != "" {
		return nil, why
	}
	sum /= float64(n)
	return &sum, ""
}

// leastSquares adds what only least squares on exact results has.
func leastSquares(f *result.Fit, l *belief.Link, x *mat.Dense, fam latent.Family) {
	y := make([]float64, len(l.Seen))
	groups := make([]int, len(l.Seen))
	for i, o := range l.Seen {
		y[i], groups[i] = o.Low, l.Trials[i].Group
		if fam == latent.Lognormal {
			y[i] = math.Log(o.Low)
		}
	}
	ls, err := regress.Least(x, y, nil)
	if err != nil {
		f.NullReason = "least squares: " + err.Error()
		return
	}
	f.ResidualSD, f.ResidualDF = works.Finite(ls.ResidualSD), &ls.DF
	f.RSquared, f.AdjustedRSquared, f.LeaveOneOutRSquared = works.Finite(ls.R2), works.Finite(ls.AdjustedR2), works.Finite(ls.LeaveOneOutR2)
	lack, err := ls.LackOfFit(groups)
	if err != nil {
		f.NullReason = "lack of fit: " + err.Error()
		return
	}
	f.LackOfFit = &result.LackOfFit{F: works.Finite(lack.F), DF1: lack.LackDF, DF2: lack.PureDF, P: works.Finite(lack.P)}
}

// refused says in plain words why there is no fit.
func refused(s *surface.Surface, f *result.Fit, err error) {
	f.Terms, f.Covariance = []result.Term{}, nil
	f.NullReason = "not fitted"
	var rank *likeliest.RankError
	if errors.As(err, &rank) {
		var names []string
		for _, d := range rank.Dependent {
			names = append(names, TermWords(s, Terms(s, f.Order).Terms[d.Column]))
		}
		f.Failure = "these trials do not separate " + strings.Join(names, ", ") + " from the other terms"
		return
	}
	var refusal *likeliest.Refusal
	if errors.As(err, &refusal) {
		f.Failure = Refusals[refusal.Status]
		if f.Failure != "" {
			return
		}
	}
	f.Failure = err.Error()
}

// Refusals are the ways a fit is refused, in plain words.
var Refusals = map[likeliest.Status]string{
	likeliest.TooFew:       "more terms than trials: these cannot all be estimated",
	likeliest.NoEvents:     "every result lies on one side: there is nothing to tell apart",
	likeliest.Separated:    "the trials split cleanly into yes and no along these terms, so plain maximum likelihood has no finite answer",
	likeliest.PerfectFit:   "the terms fit every result exactly, so no scatter can be estimated",
	likeliest.NotConverged: "the fit did not settle",
}

// TermWords names a term: "fat", "fat × blend HLB", "fat squared".
func TermWords(s *surface.Surface, t []int) string {
	switch {
	case len(t) == 0:
		return "the constant"
	case len(t) == 1:
		return s.Vars[t[0]].Label
	case t[0] == t[1]:
		return s.Vars[t[0]].Label + " squared"
	}
	return s.Vars[t[0]].Label + " × " + s.Vars[t[1]].Label
}

// chooseJudged marks, for each result, the fit the report shows, and says why.
func (v *Fits) chooseJudged() {
	for _, l := range v.links {
		var best *result.Fit
		for i := range v.All {
			f := &v.All[i]
			if f.Result == string(l.Outcome) && f.Failure == "" && (best == nil || judgesBetter(f, best)) {
				best = f
			}
		}
		if best != nil {
			best.JudgedBy, best.JudgedReason = true, whyJudged(best)
		}
	}
}

// judgesBetter puts the fit that foresees left-out results better first; without
// a score, the lognormal or logistic, curved if it could be fitted.
func judgesBetter(a, b *result.Fit) bool {
	if a.LeaveOneOutScore != nil && b.LeaveOneOutScore != nil {
		return *a.LeaveOneOutScore > *b.LeaveOneOutScore
	}
	if (a.LeaveOneOutScore != nil) != (b.LeaveOneOutScore != nil) {
		return a.LeaveOneOutScore != nil
	}
	if failsA, failsB := a.NoScoreReason == impossible, b.NoScoreReason == impossible; failsA != failsB {
		return failsB
	}
	plain := func(f *result.Fit) bool {
		return f.Distribution == "lognormal" || f.Distribution == "logistic" && f.Estimator == result.MaximumLikelihood
	}
	if plain(a) != plain(b) {
		return plain(a)
	}
	if !plain(a) || a.NoScoreReason == impossible { // so few trials do not carry more than straight terms
		return a.Order < b.Order
	}
	return a.Order > b.Order
}

func whyJudged(f *result.Fit) string {
	switch {
	case f.LeaveOneOutScore != nil && f.Estimator == result.BiasReduced:
		return "it predicts left-out answers best of those fitted (the highest left-out score); its estimates are bias-reduced (Firth 1993)"
	case f.LeaveOneOutScore != nil:
		return "it predicts left-out results best of those fitted (the highest left-out score)"
	case f.Estimator == result.BiasReduced:
		return "maximum likelihood has no answer here; bias-reduced estimates (Firth 1993) are finite, and are shown for the fewest terms"
	case f.Distribution == "logistic":
		return "it has the most terms that maximum likelihood could fit"
	}
	return "no fit could be scored on left-out results; of those that could be fitted it is the usual one"
}
