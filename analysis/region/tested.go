package region

import (
	"math"
	"slices"

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
	limit     float64 // the furthest trial's leverage
	core      float64 // up to here a mix may be named
}

// NewTested takes the mixes tried. weight is how many trials' worth of prior
// knowledge a term carries: it keeps terms the layout never varied from having
// endless leverage.
func NewTested(b Basis, mixes [][]float64, weight float64) *Tested {
	b = b.With(nil) // what is beside the mix does not move
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
	var each []float64
	for _, m := range mixes {
		each = append(each, t.Leverage(m))
	}
	slices.Sort(each)
	if len(each) > 0 {
		t.limit = each[len(each)-1]
		t.core = math.Max(CoreShare*t.limit, each[len(each)/2])
	}
	return t
}

// Leverage is f'(F'F + weight·I)⁻¹f.
func (t *Tested) Leverage(mix []float64) float64 {
	var buf [48]float64
	f := t.basis.FeaturesInto(buf[:len(t.basis.Terms)], mix)
	return posterior.Form(f, t.inverse)
}

// CoreShare is how near, in the furthest trial's leverage, a mix may be named: half of it,
// or that of the middle trial. Further out a claim rests on few trials and a surface that
// is only an approximation: on simulated kitchens of 12 trials, claims of 0.9 and more at
// the edge were truly 0.86, inside the core 0.93.
const CoreShare = 0.5

// Holds reports whether a mix lies in the tested range.
func (t *Tested) Holds(mix []float64) bool {
	tested, _ := t.reaches(mix)
	return tested
}

// reaches says whether a mix lies in the tested range, and whether in its core, where it may
// be named.
func (t *Tested) reaches(mix []float64) (tested, core bool) {
	for i, v := range mix {
		slack := 1e-9 * math.Max(1, math.Abs(v))
		if v < t.Low[i]-slack || v > t.High[i]+slack {
			return false, false
		}
	}
	leverage := t.Leverage(mix)
	tested = leverage <= t.limit*(1+1e-9)
	return tested, tested && leverage <= t.core*(1+1e-9)
}

// Form is what the leverage is worked out from, (F'F + weight·I)⁻¹ by the terms of the
// basis, and the furthest trial's leverage.
func (t *Tested) Form() (inverse [][]float64, limit float64) {
	p := t.inverse.SymmetricDim()
	for i := range p {
		row := make([]float64, p)
		for j := range p {
			row[j] = t.inverse.At(i, j)
		}
		inverse = append(inverse, row)
	}
	return inverse, t.limit
}
