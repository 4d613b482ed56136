package likeliest

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// design is the columns of a fit: those of a matrix, with or without a row, or a constant.
type design struct {
	n, p int
	at   func(i, j int) float64
}

func whole(x *mat.Dense) design {
	n, p := x.Dims()
	return design{n, p, x.At}
}

func constant(n int) design {
	return design{n, 1, func(int, int) float64 { return 1 }}
}

// basis is a design as an orthonormal basis: X = Q R. Fits run in Q, where
// columns of 1e-12 and 1e12 are alike and nothing is collinear.
type basis struct {
	n, p int
	q    []float64 // n rows of p
	inv  []float64 // p rows of p: R⁻¹, upper triangular
	size []float64 // largest magnitude in each column of X
}

// dependent is the share of a column's length that must remain once the columns
// before it are taken out.
const dependent = 1e-12

// orthonormal makes the basis by Gram-Schmidt done twice, which keeps Q
// orthogonal to rounding, taking columns in order so that the first of several
// dependent ones is kept.
func orthonormal(x design) (basis, error) {
	n, p := x.n, x.p
	b := basis{n: n, p: p, q: make([]float64, n*p), inv: make([]float64, p*p), size: make([]float64, p)}
	cols := make([]float64, n*p) // p columns of n
	r := make([]float64, p*p)    // of the scaled columns
	var bad []Dependence         // dependent columns
	kept := make([]bool, p)
	for j := range p {
		v := cols[j*n : (j+1)*n]
		for i := range v {
			v[i] = x.at(i, j)
			if math.IsNaN(v[i]) || math.IsInf(v[i], 0) {
				return b, &DataError{Row: i, Column: j, Reason: "it is not a finite number"}
			}
			b.size[j] = math.Max(b.size[j], math.Abs(v[i]))
		}
		if b.size[j] == 0 {
			bad = append(bad, Dependence{Column: j})
			continue
		}
		for i := range v {
			v[i] /= b.size[j]
		}
		length := norm(v)
		for range 2 {
			for k := range j {
				if kept[k] {
					u := cols[k*n : (k+1)*n]
					s := dot(u, v)
					r[k*p+j] += s
					for i := range v {
						v[i] -= s * u[i]
					}
				}
			}
		}
		left := norm(v)
		if left <= dependent*length {
			bad = append(bad, Dependence{Column: j, Of: combination(r, kept, p, j)})
			continue
		}
		kept[j] = true
		r[j*p+j] = left
		for i := range v {
			v[i] /= left
		}
	}
	if bad != nil {
		return b, &RankError{Dependent: bad}
	}
	for i := range n {
		for j := range p {
			b.q[i*p+j] = cols[j*n+i]
		}
	}
	b.invert(r)
	return b, nil
}

// combination is which kept columns make up column j: the coefficients of its
// projection that are not rounding.
func combination(r []float64, kept []bool, p, j int) []int {
	coef := make([]float64, j)
	var top float64
	for k := j - 1; k >= 0; k-- {
		if !kept[k] {
			continue
		}
		s := r[k*p+j]
		for l := k + 1; l < j; l++ {
			s -= r[k*p+l] * coef[l]
		}
		coef[k] = s / r[k*p+k]
		top = math.Max(top, math.Abs(coef[k]))
	}
	var of []int
	for k, c := range coef {
		if math.Abs(c) > 1e-8*top {
			of = append(of, k)
		}
	}
	return of
}

// invert fills R⁻¹ of the unscaled design by back substitution.
func (b *basis) invert(r []float64) {
	p := b.p
	for j := range p {
		b.inv[j*p+j] = 1 / r[j*p+j]
		for i := j - 1; i >= 0; i-- {
			var s float64
			for k := i + 1; k <= j; k++ {
				s += r[i*p+k] * b.inv[k*p+j]
			}
			b.inv[i*p+j] = -s / r[i*p+i]
		}
	}
	for i := range p {
		for j := range p {
			b.inv[i*p+j] /= b.size[i]
		}
	}
}

func (b *basis) row(i int) []float64 { return b.q[i*b.p : (i+1)*b.p] }

// project is Qᵀv.
func (b *basis) project(v []float64) []float64 {
	g := make([]float64, b.p)
	for i, vi := range v {
		for j, q := range b.row(i) {
			g[j] += q * vi
		}
	}
	return g
}

// coef carries coordinates in Q back to coefficients of X.
func (b *basis) coef(g []float64) []float64 {
	beta := make([]float64, b.p)
	for i := range beta {
		beta[i] = dot(b.inv[i*b.p:(i+1)*b.p], g)
	}
	return beta
}

// columns are the ones whose effects move along direction g of Q.
func (b *basis) columns(g []float64) []int {
	move := b.coef(g)
	var top float64
	for j := range move {
		move[j] = math.Abs(move[j]) * b.size[j]
		top = math.Max(top, move[j])
	}
	var cols []int
	for j, m := range move {
		if m > 1e-6*top {
			cols = append(cols, j)
		}
	}
	return cols
}

func dot(a, b []float64) float64 {
	var s float64
	for i, x := range a {
		s += x * b[i]
	}
	return s
}

func norm(v []float64) float64 { return math.Sqrt(dot(v, v)) }
