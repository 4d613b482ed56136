package judging

import (
	"errors"
	"math"

	"foamfield/analysis/belief"
	"foamfield/analysis/latent"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

const (
	// leastForSD is the degrees of freedom below which there is no scatter: one value beside a
	// bound tells next to nothing of it.
	leastForSD = 1
	// leastForLimit is the degrees of freedom below which the upper limit of a scatter says
	// nothing, and worstCV the coefficient of variation above which it does not either.
	leastForLimit = 2
	worstCV       = 1000
	// mostBounded is how many formulas with bounds among their repeats are pooled; the others
	// would change little and cost minutes.
	mostBounded = 100
)

// repeatability pools the scatter of repeats on the log scale over groups of one
// formula, of the trials that the fits of the result rest on.
func repeatability(s *surface.Surface) (all []result.Repeatability) {
	for _, o := range []result.Outcome{result.HoldMinutes, result.DrainedPercent} {
		if s.Judged[o] {
			all = append(all, repeatabilityOf(o, repeated(s, o)))
		}
	}
	return all
}

// repeated is the results of each formula made more than once, in the log's order, as
// far as they can show a scatter.
func repeated(s *surface.Surface, o result.Outcome) (groups [][]latent.Obs) {
	of := map[int][]latent.Obs{}
	for _, t := range s.Trials {
		if !works.Tells(t.Trial, o) {
			continue
		}
		if seen := works.Watched(t.Trial, o); seen.High > 0 {
			of[t.Group] = append(of[t.Group], latent.Obs{Low: seen.Low, High: seen.High})
		}
	}
	bounded := 0
	for i := range s.Trials { // in order, so that sums do not depend on the map
		g := of[i]
		if belief.Told(g) <= 1 || belief.OneSided(g) {
			continue
		}
		if !allExact(g) {
			if bounded++; bounded > mostBounded {
				continue
			}
		}
		groups = append(groups, g)
	}
	return groups
}

func allExact(seen []latent.Obs) bool { return belief.Count(seen).Exact == len(seen) }

// repeatabilityOf is the scatter of groups. The likelihood has the variance about means
// that are estimated too small by (n - groups)/n, with n all trials; so widened it is the
// pooled one where nothing is bounded. Its limits count a bound on one side as half a trial:
// so they hold the truth in 88 to 90 of 100 where up to a quarter is bounded, counted whole
// in 83 to 89 (TestScatterHoldsTheTruth).
func repeatabilityOf(o result.Outcome, groups [][]latent.Obs) result.Repeatability {
	r := result.Repeatability{Result: string(o), Groups: len(groups)}
	for _, g := range groups {
		r.Trials += len(g)
		r.DF += belief.Told(g) - 1
		r.Bounded += len(g) - belief.Count(g).Exact
	}
	if r.DF == 0 {
		r.Note = "no formula was made twice with an exact result, so the spread of repeats is not known"
		return r
	}
	sd, err := pooled(groups)
	if err != nil || r.DF < leastForSD {
		r.Note = "the repeats are known too loosely to say how they scatter"
		return r
	}
	sd *= math.Sqrt(float64(r.Trials) / float64(r.Trials-r.Groups))
	chi := distuv.ChiSquared{K: r.DF}
	limit := func(p float64) *float64 { return coefficient(sd * math.Sqrt(r.DF/chi.Quantile(p))) }
	r.SDLn, r.CVPercent, r.CVLow = &sd, coefficient(sd), limit(0.95)
	if high := limit(0.05); r.DF >= leastForLimit && high != nil && *high <= worstCV {
		r.CVHigh = high
	}
	r.Note = howRough(r)
	return r
}

// howRough says what a scatter of few repeats is worth.
func howRough(r result.Repeatability) string {
	note := ""
	switch {
	case r.DF >= 3:
	case r.DF == 1:
		note = "from one repeat only: a rough figure"
	case r.DF == 2:
		note = "from 2 repeats only: a rough figure"
	default:
		note = "from few repeats, some known only up to bounds: a rough figure"
	}
	if r.CVHigh != nil {
		return note
	}
	if note == "" {
		note = "a wide scatter"
	}
	return note + ", without an upper limit that says anything"
}

// pooled is the standard deviation of logarithms by maximum likelihood, a mean a group.
// Of the groups known exactly only their sum of squares matters: two values of their
// weight stand for all of them, so that the design is no wider than it must be.
func pooled(groups [][]latent.Obs) (float64, error) {
	ss, n := 0.0, 0
	var seen []latent.Obs
	var at []int
	columns := 1
	for _, g := range groups {
		if allExact(g) {
			squares, df := scatter(logs(g))
			ss, n = ss+squares, n+df+1
			continue
		}
		for _, o := range g {
			seen, at = append(seen, o), append(at, columns)
		}
		columns++
	}
	if len(seen) == 0 {
		return math.Sqrt(ss / float64(n)), nil
	}
	first := 1
	if n > 0 {
		first = 0
		sd := math.Sqrt(ss / float64(n))
		for _, v := range []float64{math.Exp(sd), math.Exp(-sd)} {
			seen, at = append(seen, latent.Obs{Low: v, High: v, Weight: float64(n) / 2}), append(at, 0)
		}
	}
	x := mat.NewDense(len(seen), columns-first, nil)
	for i, k := range at {
		x.Set(i, k-first, 1)
	}
	fit, err := likeliest.FitScale(latent.Lognormal, x, seen)
	var refusal *likeliest.Refusal
	if errors.As(err, &refusal) && refusal.Status == likeliest.PerfectFit {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	return fit.Scale, nil
}

func logs(exact []latent.Obs) (out []float64) {
	for _, o := range exact {
		out = append(out, math.Log(o.Low))
	}
	return out
}
