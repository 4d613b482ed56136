package likeliest

import (
	"math"

	"foamfield/analysis/latent"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// FitYesNoFirth fits log odds by the bias-reduced likelihood of Firth (1993,
// Biometrika 80:27-38): the log likelihood plus half the ln of the determinant of
// the information. It has a finite largest value even when the answers are
// separated or all alike.
func FitYesNoFirth(x *mat.Dense, y []bool) (*YesNoFit, error) {
	o, refusal, err := newOdds(x, y)
	if err != nil {
		return nil, err
	}
	o.reduced = newReduction(o.basis)
	return o.fit(x, refusal)
}

// reduction is the penalty.
type reduction struct {
	shift  float64 // ln |det R|: from the basis to the design's own columns
	info   *mat.SymDense
	chol   mat.Cholesky
	solved mat.Dense // I⁻¹ Qᵀ
}

func newReduction(b basis) *reduction {
	r := &reduction{info: mat.NewSymDense(b.p, nil)}
	for j := range b.p {
		r.shift -= math.Log(math.Abs(b.inv[j*b.p+j]))
	}
	return r
}

// penalised is the log likelihood plus half ln |information|, with derivatives.
// With w the variance of an answer and K = Q I⁻¹ Qᵀ the penalty has gradient
// 1/2 Σ w' K_ii q and second derivatives 1/2 Σ w" K_ii q qᵀ - 1/2 ΣΣ w'w' K_ij² q qᵀ.
// The double sum is one of products of third moments, so the work grows with n
// and not with its square.
func (o *odds) penalised(theta []float64, s *slope) float64 {
	s.reset()
	r := o.reduced
	n, p := o.n, o.p
	first, second := make([]float64, n), make([]float64, n)
	raw := r.info.RawSymmetric()
	clear(raw.Data)
	var ll float64
	for i, yes := range o.yes {
		eta := o.eta(i, theta)
		v, d, dd := latent.LogLikYesNo(yes, eta)
		ll += v
		q := o.row(i)
		s.add(q, d, -dd)
		below, above := latent.Logistic(eta)
		w := below * above
		first[i] = w * (above - below)
		second[i] = w * (1 - 6*w)
		for j := range q {
			for k := j; k < len(q); k++ {
				raw.Data[j*raw.Stride+k] += w * q[j] * q[k]
			}
		}
	}
	if math.IsNaN(ll) || !r.chol.Factorize(r.info) {
		return math.Inf(-1)
	}
	q := mat.NewDense(n, p, o.q)
	if r.chol.SolveTo(&r.solved, q.T()) != nil {
		return math.Inf(-1)
	}
	plain, solved := mat.NewDense(p, p*p, nil), mat.NewDense(p, p*p, nil)
	u := make([]float64, p)
	for i := range n {
		row := o.row(i)
		mat.Col(u, i, &r.solved)
		k := dot(row, u)
		s.add(row, first[i]*k/2, -second[i]*k/2)
		for l, x := range row {
			c := first[i] * x
			a, b := plain.RawRowView(l), solved.RawRowView(l)
			for d, f := range row {
				floats.AddScaled(a[d*p:(d+1)*p], c*f, row)
				floats.AddScaled(b[d*p:(d+1)*p], c*u[d], u)
			}
		}
	}
	var curve mat.Dense
	curve.Mul(plain, solved.T())
	for j := range p {
		for k := j; k < p; k++ {
			s.info.SetSym(j, k, s.info.At(j, k)+curve.At(j, k)/2)
		}
	}
	return ll + r.chol.LogDet()/2 + r.shift
}

// covariance is the inverse of the information itself, which is what the
// covariance of a bias-reduced estimate is.
func (r *reduction) covariance() *mat.SymDense {
	var c mat.SymDense
	if r.chol.InverseTo(&c) != nil && !finite(c.RawSymmetric().Data) {
		return nil
	}
	return &c
}
