// Package nested fits one idea: a straight line of known columns on which groups, and
// groups within these, stand a little higher or lower than the others, and on which an
// outer group may lean another way. An observation is an interval, so a value known up to
// a bound enters by its probability.
//
//	y = X b + u0[outer] + Σ X[,j] uj[outer] + v[inner] + e
//
// with e, v, u0 and each uj normal around 0, of spreads that are not known. Coefficients
// are integrated with a flat prior (which for exact values is what restricted maximum
// likelihood does), spreads over draws from their own distribution, so what is said of a
// coefficient allows for not knowing them. Bounds are taken at the mode (Laplace).
//
// Inner groups are folded into their outer group, and these into the line, one after
// another: the work grows with the rows, not with the square of the groups.
package nested

import (
	"errors"
	"math"
)

// Data is what was observed. Rows of one inner group are of one outer group.
type Data struct {
	Low, High    []float64   // the same where exact; infinite where there is no bound
	X            [][]float64 // a row an observation
	Outer, Inner []int       // the groups of a row, from 0
	Outers       int         // how many outer groups there are at least, of which some may have no row
	Lean         []int       // columns of X that have a slope of their own in each outer group
	Level        bool        // outer groups have a level of their own
	Within       bool        // inner groups have
}

// Spreads are the standard deviations of a model. Outer has the level of the outer groups
// first, if there is one, then one for each Lean.
type Spreads struct {
	Rest, Inner float64
	Outer       []float64
}

// ErrNoFit is a line that the observations do not settle: its columns make each other up,
// or nothing but bounds stands on one side.
var ErrNoFit = errors.New("nested: the observations do not settle the line")

// problem is the data, sorted into groups, with the sums that exact rows need only once.
type problem struct {
	Data
	p      int     // columns
	random []int   // of X whose coefficient varies by outer group, -1 = the level
	q      int     // len(random)
	outers []outer // in the order of their number
	exact  int

	// What one solution at a time needs, used over and over.
	cross, sum, half []float64
	pending          [][]float64 // by outer group: of each of its inner groups the p+1 sums over their precision
	spare            *state      // one that nobody needs any more
}

// outer is one outer group: its inner groups and sums over its exact rows.
type outer struct {
	inners []inner
	cross  []float64 // (p+1)² sums of products of [x y], exact rows
	count  int       // exact rows
}

type inner struct {
	sum     []float64 // p+1 sums of [x y] over the exact rows
	count   float64
	bounded []int // rows known up to a bound
}

func newProblem(d Data) *problem {
	s := &problem{Data: d, p: len(d.X[0])}
	if d.Level {
		s.random = append(s.random, -1)
	}
	s.random = append(s.random, d.Lean...)
	s.q = len(s.random)
	w := s.p + 1
	for len(s.outers) < d.Outers {
		s.outers = append(s.outers, outer{cross: make([]float64, w*w)})
	}
	at := map[[2]int]int{} // an inner group that spans two outer ones is two
	for i := range d.X {
		o := d.Outer[i]
		for len(s.outers) <= o {
			s.outers = append(s.outers, outer{cross: make([]float64, w*w)})
		}
		g := &s.outers[o]
		where, known := at[[2]int{o, d.Inner[i]}]
		if !known {
			where = len(g.inners)
			at[[2]int{o, d.Inner[i]}] = where
			g.inners = append(g.inners, inner{sum: make([]float64, w)})
		}
		in := &g.inners[where]
		if d.Low[i] != d.High[i] {
			in.bounded = append(in.bounded, i)
			continue
		}
		s.exact++
		in.count++
		g.count++
		add(g.cross, in.sum, d.X[i], d.Low[i], 1)
	}
	s.cross, s.sum, s.half, s.pending = make([]float64, w*w), make([]float64, w), make([]float64, s.q*w), make([][]float64, len(s.outers))
	for o := range s.outers {
		if d.Within {
			s.pending[o] = make([]float64, len(s.outers[o].inners)*w)
		}
	}
	return s
}

// add adds a row [x z] of a weight to the sums of its outer and inner group.
func add(cross, sum, x []float64, z, weight float64) {
	w := len(x) + 1
	for j := range x {
		f := weight * x[j]
		if f == 0 {
			continue
		}
		row := cross[j*w : j*w+j+1]
		for k, v := range x[:j+1] {
			row[k] += f * v
		}
		cross[(w-1)*w+j] += f * z
		sum[j] += f
	}
	cross[w*w-1] += weight * z * z
	sum[w-1] += weight * z
}

// state is a solution at one set of spreads.
type state struct {
	Spreads
	b         []float64
	chol      []float64 // of the precision of b
	groups    []solved
	logML     float64
	eta       []float64 // of the bounded rows, for the next start
	freedom   float64   // rows that count, less columns
	converged bool
}

// solved is one outer group given b: u = base - towards b, with precision chol.
type solved struct {
	base, towards []float64 // q, q×p
	chol          []float64 // q×q
}

// mills are value, slope and curvature of ln P(low < y < high) by the mean.
func bounds(low, high, mean, sd float64) (ln, slope, curve float64) {
	switch {
	case math.IsInf(high, 1):
		return tail((mean-low)/sd, 1, sd)
	case math.IsInf(low, -1):
		return tail((high-mean)/sd, -1, sd)
	}
	a, b := (low-mean)/sd, (high-mean)/sd
	p := 0.5 * (math.Erfc(a/math.Sqrt2) - math.Erfc(b/math.Sqrt2))
	if a > 0 {
		p = 0.5 * (math.Erfc(a/math.Sqrt2) - math.Erfc(b/math.Sqrt2))
	} else if b < 0 {
		p = 0.5 * (math.Erfc(-b/math.Sqrt2) - math.Erfc(-a/math.Sqrt2))
	}
	if p < 1e-290 { // far off: as if read at the nearer end
		y := low
		if mean > high {
			y = high
		}
		z := (y - mean) / sd
		return -z*z/2 + math.Log((high-low)/sd), z / sd, 1 / (sd * sd)
	}
	fa, fb := density(a), density(b)
	slope = (fa - fb) / p
	curve = slope*slope - (a*fa-b*fb)/p
	return math.Log(p), slope / sd, math.Max(curve, 1e-12) / (sd * sd)
}

func density(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

// tail is ln Φ(z) with its slope and curvature by the mean, which moves z by sign/sd.
func tail(z, sign, sd float64) (ln, slope, curve float64) {
	var ratio float64
	if z > -30 {
		ln = math.Log(0.5 * math.Erfc(-z/math.Sqrt2))
		ratio = math.Exp(-z*z/2-ln) / math.Sqrt(2*math.Pi)
	} else {
		ratio = -z / (1 - 1/(z*z) + 3/(z*z*z*z))
		ln = -z*z/2 - math.Log(ratio) - 0.5*math.Log(2*math.Pi)
	}
	return ln, sign * ratio / sd, math.Max(ratio*(z+ratio), 1e-12) / (sd * sd)
}
