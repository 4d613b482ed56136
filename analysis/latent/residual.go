package latent

import (
	"cmp"
	"math"
	"slices"
)

// Residual is what is left of an observation once its location is taken out, in
// units of the scale: an interval like the observation itself, equal ends for an
// exact value. Score is the normal score of the middle of the probability the
// fit gives the interval: for an exact value the normal score of its place in
// the distribution, comparable across families, and drawn towards what the
// bound leaves open otherwise.
type Residual struct {
	Low, High, Score float64
}

// Residuals are those of every observation.
func (f *Fit) Residuals() []Residual {
	out := make([]Residual, f.N)
	for i, r := range f.data.rows {
		lo, hi := math.Inf(-1), math.Inf(1)
		if r.kind != atMost {
			lo = (r.lo - f.eta[i]) / f.Scale
		}
		if r.kind != atLeast {
			hi = (r.hi - f.eta[i]) / f.Scale
		}
		out[i] = Residual{Low: lo, High: hi, Score: f.Family.score(lo, hi)}
	}
	return out
}

// score is the normal score of the mean of the probabilities below lo and hi,
// formed in whichever tail is the smaller.
func (f Family) score(lo, hi float64) float64 {
	above := logMean(f.logAbove(lo), f.logAbove(hi))
	if above <= -math.Ln2 {
		return normalScore(above)
	}
	return -normalScore(logMean(f.logBelow(lo), f.logBelow(hi)))
}

func (f Family) logAbove(z float64) float64 {
	if math.IsInf(z, 0) {
		return math.Min(0, -z)
	}
	return f.above(z).v
}

func (f Family) logBelow(z float64) float64 {
	if math.IsInf(z, 0) {
		return math.Min(0, z)
	}
	return f.below(z).v
}

func logMean(a, b float64) float64 {
	big, small := math.Max(a, b), math.Min(a, b)
	if math.IsInf(big, -1) {
		return big
	}
	return big + math.Log1p(math.Exp(small-big)) - math.Ln2
}

// normalScore is the z with log upper tail lp, for lp up to ln 1/2 or a rounding
// above. The log tail is concave and at the start below lp, so Newton's steps
// come down on the root from one side.
func normalScore(lp float64) float64 {
	z := math.Sqrt(-2 * lp)
	if math.IsInf(z, 1) {
		return z
	}
	for range 50 {
		c := normalAbove(z)
		step := (c.v - lp) / c.d
		z -= step
		if math.Abs(step) <= 1e-14*(1+math.Abs(z)) {
			break
		}
	}
	return z
}

// PlotPoint is a point of the probability plot: standardised residuals up to and
// including those from Low to High make up the share Cumulative (counted to the
// middle of their own share), and Expected is where the fitted distribution has
// that share. Good points lie on Expected = Low = High.
type PlotPoint struct {
	Low, High, Cumulative, Expected float64
}

// ProbabilityPlot places the standardised residuals by their distribution-free
// maximum-likelihood estimate (Turnbull 1976, J. R. Statist. Soc. B 38:290-295),
// which is the product-limit estimate when bounds are at-least ones and the
// plain step function when there are none. Shares that reach to infinity, whose
// place is unknown, have no point.
func (f *Fit) ProbabilityPlot() []PlotPoint {
	ends := make([]span, f.N)
	for i, r := range f.Residuals() {
		ends[i] = span{r.Low, r.High, f.data.rows[i].weight}
	}
	var points []PlotPoint
	var before float64
	for _, s := range turnbull(ends) {
		mid := before + s.weight/2
		before += s.weight
		if s.weight > 1e-9 && !math.IsInf(s.low, 0) && !math.IsInf(s.high, 0) {
			points = append(points, PlotPoint{s.low, s.high, mid, f.Family.quantile(math.Min(mid, 1))})
		}
	}
	return points
}

// span is an interval (low, high], or the single value when the ends are equal.
type span struct {
	low, high, weight float64
}

// turnbull is the distribution-free estimate: the innermost intervals in order,
// each with its share, found by the self-consistency iteration.
func turnbull(obs []span) []span {
	inner := innermost(obs)
	from, to := make([]int, len(obs)), make([]int, len(obs)) // the inner intervals each contains
	var total float64
	for i, o := range obs {
		inside := func(s span) bool {
			return s.low >= o.low && s.high <= o.high && (s.low > o.low || s.low < s.high || o.low == o.high)
		}
		from[i] = slices.IndexFunc(inner, inside)
		to[i] = from[i] + 1
		for to[i] < len(inner) && inside(inner[to[i]]) {
			to[i]++
		}
		total += o.weight
	}
	for k := range inner {
		inner[k].weight = 1 / float64(len(inner))
	}
	next := make([]float64, len(inner))
	for range 20000 {
		clear(next)
		for i, o := range obs {
			var mass float64
			for _, s := range inner[from[i]:to[i]] {
				mass += s.weight
			}
			for k := from[i]; k < to[i]; k++ {
				next[k] += o.weight / total * inner[k].weight / mass
			}
		}
		var moved float64
		for k := range inner {
			moved = math.Max(moved, math.Abs(next[k]-inner[k].weight))
			inner[k].weight = next[k]
		}
		if moved < 1e-13 {
			break
		}
	}
	return inner
}

// innermost is the intervals that start where some observation starts and end
// where the next one ends, with nothing starting between: all the probability
// can be placed there.
func innermost(obs []span) []span {
	type end struct {
		at    float64
		order int // at one value: a single value's start, any end, an open start
	}
	var ends []end
	for _, o := range obs {
		start := end{o.low, 2}
		if o.low == o.high {
			start.order = 0
		}
		ends = append(ends, start, end{o.high, 1})
	}
	slices.SortFunc(ends, func(a, b end) int {
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.order, b.order))
	})
	var inner []span
	for i := 1; i < len(ends); i++ {
		if ends[i].order == 1 && ends[i-1].order != 1 {
			inner = append(inner, span{low: ends[i-1].at, high: ends[i].at})
		}
	}
	return inner
}
