package region

import (
	"math"

	"foamfield/analysis/posterior"
	"gonum.org/v1/gonum/mat"
)

// Tested is where the trials support a statement: inside the box of what was
// tried, and no further out, in leverage, than the furthest trial itself.
type Tested struct {
	Low, High []float64 // of each variable
	basis     Basis
	info      mat.Cholesky
	inverse   *mat.SymDense
	limit     float64
}

// NewTested takes the mixes tried. weight is how many trials' worth of prior
// knowledge a term carries: it keeps terms the layout never varied from having
// endless leverage.
func NewTested(b Basis, mixes [][]float64, weight float64) *Tested {
	d, p := len(b.Coordinates), len(b.Terms)
	t := &Tested{basis: b, Low: make([]float64, d), High: make([]float64, d)}
	for i := range d {
		t.Low[i], t.High[i] = math.Inf(1), math.Inf(-1)
	}
	info := mat.NewSymDense(p, nil)
	for i := range p {
		info.SetSym(i, i, weight)
	}
	for _, m := range mixes {
		for i, v := range m {
			t.Low[i], t.High[i] = math.Min(t.Low[i], v), math.Max(t.High[i], v)
		}
		info.SymRankOne(info, 1, mat.NewVecDense(p, b.Features(m)))
	}
	t.info.Factorize(info) // weight > 0 makes it positive definite
	t.inverse = mat.NewSymDense(p, nil)
	_ = t.info.InverseTo(t.inverse)
	for _, m := range mixes {
		t.limit = math.Max(t.limit, t.Leverage(m))
	}
	return t
}

// Leverage is f'(F'F + weight·I)⁻¹f.
func (t *Tested) Leverage(mix []float64) float64 {
	var buf [48]float64
	f := t.basis.FeaturesInto(buf[:len(t.basis.Terms)], mix)
	return posterior.Form(f, t.inverse)
}

// Holds reports whether a mix lies in the tested range.
func (t *Tested) Holds(mix []float64) bool {
	for i, v := range mix {
		slack := 1e-9 * math.Max(1, math.Abs(v))
		if v < t.Low[i]-slack || v > t.High[i]+slack {
			return false
		}
	}
	return t.Leverage(mix) <= t.limit*(1+1e-9)
}
