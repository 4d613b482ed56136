package regress

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// hatOne is how near 1 a leverage must be to be 1: the observation alone decides
// a coefficient and nothing can be said of it without itself.
const hatOne = 1 - 1e-10

func (f *Fit) diagnose(q *qr, r []twofold, root []float64, unit float64) {
	n := q.n
	f.Fitted, f.Residuals, f.Leverage, f.LeftOut = make([]float64, n), make([]float64, n), q.leverage(), make([]float64, n)
	var press float64
	for i, e := range r {
		h := f.Leverage[i]
		v := e.value() * unit // times the root of the weight
		f.Residuals[i] = v / root[i]
		f.Fitted[i] = f.y[i] - f.Residuals[i]
		if h >= hatOne {
			f.LeftOut[i], press = math.NaN(), math.NaN()
			continue
		}
		out := v / (1 - h)
		f.LeftOut[i] = f.y[i] - out/root[i]
		press += out / unit * (out / unit)
	}
	f.LeaveOneOutR2 = 1 - press/f.TSS
}

// leverage is the diagonal of Q Qᵀ, from the first p columns of Q.
func (q *qr) leverage() []float64 {
	h := make([]float64, q.n)
	v := make([]float64, q.n)
	for j := range q.p {
		clear(v)
		v[j] = 1
		q.turnBack(v)
		for i, x := range v {
			h[i] += x * x
		}
	}
	return h
}

// collinearity: the inflation of a coefficient's variance is its variance times
// the column's own spread; with a constant among the columns the spread is about
// the mean.
func (f *Fit) collinearity(q *qr, root []float64) {
	n, p := q.n, q.p
	f.Inflation = make([]float64, p)
	for j := range p {
		c := q.x[j*n : (j+1)*n]
		var top, under, mean float64
		for i, x := range c {
			top += x * root[i]
			under += root[i] * root[i]
		}
		if f.Constant {
			mean = top / under
		}
		var spread, size float64
		for i, x := range c {
			d := x - mean*root[i]
			spread += d * d
			size += x * x
		}
		f.Inflation[j] = math.NaN()
		if spread > dependent*dependent*size {
			k := f.unitSE[j] * q.scale[j]
			f.Inflation[j] = math.Max(1, spread*k*k)
		}
	}
}

// Inflation is how much the variance of each coefficient is swollen by the other columns, of
// a design alone: the same as a Fit's to rounding, in a small part of its time. The error
// is a *RankError or a *Refusal.
func Inflation(x *mat.Dense) ([]float64, error) {
	n, p := x.Dims()
	if n <= p {
		return nil, &Refusal{Status: TooFew, N: n, Parameters: p}
	}
	columns, root := make([]float64, n*p), make([]float64, n)
	for i := range n {
		root[i] = 1
		for j, v := range x.RawRowView(i) {
			columns[j*n+i] = v
		}
	}
	q, err := decompose(columns, make([]float64, n*p), n, p)
	if err != nil {
		return nil, err
	}
	f := &Fit{Constant: q.spans(root), unitSE: make([]float64, p)}
	row := make([]float64, p) // of R inverse: its length is the standard error
	for j := range p {
		clear(row)
		row[j] = 1
		q.forward(row)
		f.unitSE[j] = norm(row) / q.scale[j]
	}
	f.collinearity(q, root)
	return f.Inflation, nil
}
