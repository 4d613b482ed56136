// Package regress is least squares and what is needed to judge it. The design
// is taken apart by Householder reflections and the estimates are improved with
// remainders in twice the precision, so they are the least-squares estimates of
// the numbers given, to rounding.
//
// A number that does not exist, such as a left-out residual of an observation
// that alone decides a coefficient, is NaN.
package regress

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/mathext"
)

// Fit is a least-squares fit.
type Fit struct {
	N, DF    int       // observations; those less the number of terms
	Coef, SE []float64 // of each column
	Constant bool      // the columns can make up a constant, so sums of squares are about the mean

	RSS, TSS      float64 // residual and total sum of squares, weighted
	ResidualSD    float64
	R2            float64
	AdjustedR2    float64
	LeaveOneOutR2 float64 // 1 - sum of squared left-out residuals over TSS
	F             float64 // of all terms but the constant together, on (terms, DF); +Inf for a perfect fit

	Fitted    []float64
	Residuals []float64 // observed less fitted
	Leverage  []float64
	LeftOut   []float64 // what the others foresee

	Inflation []float64 // of each coefficient's variance through the other columns; NaN for a constant

	x          *mat.Dense
	y, weights []float64
	unitSE     []float64 // standard errors for a residual SD of 1
}

// Least fits y on the columns of x, with a column of ones where a constant is
// wanted. Weights are inverse variances up to a factor; nil means all alike. The
// error is a *DataError, a *RankError or a *Refusal.
func Least(x *mat.Dense, y, weights []float64) (*Fit, error) {
	n, p := x.Dims()
	if n != len(y) || weights != nil && n != len(weights) {
		panic("regress: design, results and weights differ in length")
	}
	if err := check(x, y, weights); err != nil {
		return nil, err
	}
	if n <= p {
		return nil, &Refusal{Status: TooFew, N: n, Parameters: p}
	}
	root := make([]float64, n)
	for i := range root {
		root[i] = 1
		if weights != nil {
			root[i] = math.Sqrt(weights[i])
		}
	}
	columns, low := make([]float64, n*p), make([]float64, n*p)
	for j := range p {
		for i := range n {
			w := weighted(x.At(i, j), root[i])
			columns[j*n+i], low[j*n+i] = w.hi, w.lo
		}
	}
	q, err := decompose(columns, low, n, p)
	if err != nil {
		return nil, err
	}
	unit := powerOfTwo(y)
	scaled := make([]twofold, n)
	for i, v := range y {
		w := weighted(v, root[i])
		scaled[i] = twofold{w.hi / unit, w.lo / unit}
	}
	f := &Fit{N: n, DF: n - p, x: x, y: y, weights: weights}
	f.Constant = q.spans(root)
	var mean twofold
	if f.Constant {
		mean = average(scaled, root)
	}
	if alike(y) && (f.Constant || y[0] == 0) {
		return nil, &Refusal{Status: NoSpread, N: n, Parameters: p, Value: y[0]}
	}
	s := q.solve(scaled, nil)
	f.sums(s.r, scaled, root, mean)
	f.ResidualSD = unit * math.Sqrt(f.RSS/float64(f.DF))
	f.Coef = make([]float64, p)
	for j, b := range s.b {
		f.Coef[j] = b.value() * (unit / q.scale[j])
	}
	f.standardErrors(q)
	f.diagnose(q, s.r, root, unit)
	f.collinearity(q, root)
	f.RSS *= unit * unit
	f.TSS *= unit * unit
	return f, nil
}

func alike(y []float64) bool {
	for _, v := range y {
		if v != y[0] {
			return false
		}
	}
	return true
}

func check(x *mat.Dense, y, weights []float64) error {
	bad := func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }
	for i, v := range y {
		for j, c := range x.RawRowView(i) {
			if bad(c) {
				return &DataError{Row: i, Column: j, Value: c}
			}
		}
		if bad(v) {
			return &DataError{Row: i, Column: -1, Value: v}
		}
		if weights != nil && (!(weights[i] > 0) || bad(weights[i])) {
			return &DataError{Row: i, Column: -2, Value: weights[i]}
		}
	}
	return nil
}

// spans says whether the columns make up the vector v.
func (q *qr) spans(v []float64) bool {
	t := append([]float64(nil), v...)
	q.turn(t)
	return norm(t[q.p:]) <= 1e-10*norm(v)
}

// average is the mean of y, both weighted by root: Σ y root / Σ root².
func average(y []twofold, root []float64) twofold {
	var top, under twofold
	for i, v := range y {
		top.addProduct(v.hi, root[i])
		top.lo += v.lo * root[i]
		under.addProduct(root[i], root[i])
	}
	top.renormalise()
	under.renormalise()
	m := twofold{hi: top.hi / under.hi}
	m.lo = (math.FMA(-m.hi, under.hi, top.hi) + top.lo - m.hi*under.lo) / under.hi
	return m
}

// sums fills the sums of squares and what follows from them. The explained part
// is summed itself: taken as a difference it would lose a small R².
func (f *Fit) sums(r, y []twofold, root []float64, mean twofold) {
	var rss, tss, explained twofold
	for i, e := range r {
		v := e.value()
		rss.addProduct(v, v)
		about := y[i]
		about.addProduct(-mean.hi, root[i])
		about.lo -= mean.lo * root[i]
		d := about.value()
		tss.addProduct(d, d)
		about.add(-e.hi)
		about.lo -= e.lo
		m := about.value()
		explained.addProduct(m, m)
	}
	f.RSS, f.TSS = rss.value(), tss.value()
	terms := f.N - f.DF
	total := f.N
	if f.Constant {
		terms--
		total--
	}
	f.R2 = math.Min(1, explained.value()/f.TSS)
	f.AdjustedR2 = 1 - f.RSS/float64(f.DF)/(f.TSS/float64(total))
	f.F = math.NaN()
	if terms > 0 {
		f.F = explained.value() / float64(terms) / (f.RSS / float64(f.DF))
	}
}

// aboveF is the upper tail of the F distribution.
func aboveF(x, d1, d2 float64) float64 {
	return mathext.RegIncBeta(d2/2, d1/2, d2/(d2+d1*x))
}

// standardErrors are from refined rows of the pseudo-inverse: their lengths.
func (f *Fit) standardErrors(q *qr) {
	f.SE, f.unitSE = make([]float64, q.p), make([]float64, q.p)
	row, unit := make([]float64, q.n), make([]float64, q.p)
	for j := range q.p {
		clear(unit)
		unit[j] = 1
		for i, r := range q.solve(nil, unit).r {
			row[i] = r.value()
		}
		f.unitSE[j] = norm(row) / q.scale[j]
		f.SE[j] = f.ResidualSD * f.unitSE[j]
	}
}
