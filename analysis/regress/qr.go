package regress

import "math"

// qr is a design taken apart by Householder reflections, X = Q R, its columns
// first brought near length 1 by powers of two, which rounds nothing.
type qr struct {
	n, p  int
	x     []float64 // the scaled design, p columns of n
	low   []float64 // what the numbers as written exceed x by
	a     []float64 // reflectors on and below the diagonal, R above it
	diag  []float64 // diagonal of R
	half  []float64 // half the squared length of each reflector
	scale []float64 // column j of x times scale[j] is the design's
}

// dependent is the share of a column's length that must remain once the columns
// before it are taken out.
const dependent = 1e-12

// decompose takes columns in order, so of several dependent ones the first is
// kept and each later one is named with what it is made of.
func decompose(columns, low []float64, n, p int) (*qr, error) {
	q := &qr{n: n, p: p, x: columns, low: low, diag: make([]float64, p), half: make([]float64, p), scale: make([]float64, p)}
	for j := range p {
		c := q.x[j*n : (j+1)*n]
		q.scale[j] = powerOfTwo(c)
		for i := range c {
			c[i] /= q.scale[j]
			low[j*n+i] /= q.scale[j]
		}
	}
	q.a = append([]float64(nil), q.x...)
	var kept []int
	var bad []Dependence
	for j := range p {
		c := q.a[j*n : (j+1)*n]
		length := norm(c)
		for k, done := range kept {
			q.reflect(done, k, c)
		}
		k := len(kept)
		left := 0.0
		if k < n {
			left = norm(c[k:])
		}
		if left <= dependent*length {
			bad = append(bad, Dependence{Column: j, Of: q.combination(kept, c)})
			continue
		}
		alpha := -math.Copysign(left, c[k])
		c[k] -= alpha
		q.diag[j] = alpha
		q.half[j] = left * math.Abs(c[k])
		kept = append(kept, j)
	}
	if bad != nil {
		return nil, &RankError{Dependent: bad}
	}
	return q, nil
}

// reflect applies the reflector in column j, which starts at row k, to v.
func (q *qr) reflect(j, k int, v []float64) {
	h := q.a[j*q.n+k : (j+1)*q.n]
	v = v[k:]
	s := dot(h, v) / q.half[j]
	for i, x := range h {
		v[i] -= s * x
	}
}

// combination is which kept columns a reflected column is made of.
func (q *qr) combination(kept []int, c []float64) (of []int) {
	coef := append([]float64(nil), c[:len(kept)]...)
	var top float64
	for k := len(kept) - 1; k >= 0; k-- {
		for l := k + 1; l < len(kept); l++ {
			coef[k] -= q.a[kept[l]*q.n+k] * coef[l]
		}
		coef[k] /= q.diag[kept[k]]
		top = math.Max(top, math.Abs(coef[k]))
	}
	for k, j := range kept {
		if math.Abs(coef[k]) > 1e-8*top {
			of = append(of, j)
		}
	}
	return of
}

// turn is Qᵀv in place, turnBack Q v.
func (q *qr) turn(v []float64) {
	for j := range q.p {
		q.reflect(j, j, v)
	}
}

func (q *qr) turnBack(v []float64) {
	for j := q.p - 1; j >= 0; j-- {
		q.reflect(j, j, v)
	}
}

// backward solves R b = c in place of c, forward Rᵀ z = g in place of g.
func (q *qr) backward(c []float64) {
	for j := q.p - 1; j >= 0; j-- {
		c[j] /= q.diag[j]
		for i := range j {
			c[i] -= q.a[j*q.n+i] * c[j]
		}
	}
}

func (q *qr) forward(g []float64) {
	for j := range q.p {
		g[j] = (g[j] - dot(q.a[j*q.n:j*q.n+j], g[:j])) / q.diag[j]
	}
}

// powerOfTwo is the power of two nearest above the largest magnitude, 1 for
// zeros.
func powerOfTwo(v []float64) float64 {
	var top float64
	for _, x := range v {
		top = math.Max(top, math.Abs(x))
	}
	if top == 0 {
		return 1
	}
	_, e := math.Frexp(top)
	return math.Ldexp(1, min(e, 1023))
}

func dot(a, b []float64) float64 {
	var s float64
	for i, x := range a {
		s += x * b[i]
	}
	return s
}

func norm(v []float64) float64 { return math.Sqrt(dot(v, v)) }
