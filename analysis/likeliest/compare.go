package likeliest

import (
	"math"

	"foamfield/analysis/latent"

	"gonum.org/v1/gonum/mat"
)

// LikelihoodR2 is 1 - exp(-2 (ll - ll0)/n), with ll0 the log likelihood of a
// constant alone.
func (f *Fit) LikelihoodR2() (float64, error) {
	null, err := f.data.alone()
	if err != nil {
		return math.NaN(), err
	}
	return -math.Expm1(-2 * (f.LogLik - null.LogLik) / float64(f.N)), nil
}

// LeftOut is an observation foreseen by the fit of all the others.
type LeftOut struct {
	Eta, Scale float64 // on the line
	LogLik     float64 // of the observation, in the original unit
	Err        error   // why the others could not be fitted
}

// LeaveOneOut fits the others once for each observation. The sum of LogLik is
// the score by which families and orders can be compared.
func (f *Fit) LeaveOneOut() []LeftOut {
	out := make([]LeftOut, f.N)
	rows := make([]latent.Row, f.N-1)
	for i := range out {
		copy(rows, f.data.rows[:i])
		copy(rows[i:], f.data.rows[i+1:])
		others := sampleOf(f.Family, rows)
		p := len(f.Coef)
		fit, err := others.fit(design{f.N - 1, p, func(k, j int) float64 {
			if k >= i {
				k++
			}
			return f.x.At(k, j)
		}})
		if err != nil {
			out[i] = LeftOut{Eta: math.NaN(), Scale: math.NaN(), LogLik: math.NaN(), Err: err}
			continue
		}
		out[i].Eta, out[i].Scale = dot(f.x.RawRowView(i), fit.Coef), fit.Scale
		r := f.data.rows[i]
		r.Lo -= out[i].Eta
		r.Hi -= out[i].Eta
		out[i].LogLik = r.Weight * (f.Family.At(r, 0, 1/fit.Scale).LL + r.Jacobian)
	}
	return out
}

// LeaveOneOut fits the others, in the same way, once for each answer; the scale is
// 1. The sum of LogLik is the logarithmic score by which terms and ways to fit them
// can be compared.
func (f *YesNoFit) LeaveOneOut() []LeftOut {
	out := make([]LeftOut, f.N)
	for i := range out {
		out[i] = LeftOut{Eta: math.NaN(), Scale: 1, LogLik: math.NaN()}
		coef, err := f.without(i)
		if out[i].Err = err; err == nil {
			out[i].Eta = dot(f.x.RawRowView(i), coef)
			out[i].LogLik, _, _ = latent.LogLikYesNo(f.y[i], out[i].Eta)
		}
	}
	return out
}

// without is the coefficients of the fit to all answers but one; it climbs from
// those of all, which are near.
func (f *YesNoFit) without(i int) ([]float64, error) {
	p := len(f.Coef)
	if f.N == 1 {
		return nil, &Refusal{Status: TooFew, Parameters: p} // a design needs a row
	}
	x, y, eta := mat.NewDense(f.N-1, p, nil), make([]bool, f.N-1), make([]float64, f.N-1)
	for k := range y {
		from := k
		if k >= i {
			from++
		}
		row := f.x.RawRowView(from)
		x.SetRow(k, row)
		y[k], eta[k] = f.y[from], dot(row, f.Coef)
	}
	o, refusal, err := newOdds(x, y)
	switch {
	case err != nil:
		return nil, err
	case f.Reduced:
		o.reduced = newReduction(o.basis)
	case refusal.Yes == 0 || refusal.Yes == o.n:
		refusal.Status = NoEvents
		return nil, refusal
	}
	theta := o.project(eta)
	top := ascend(o, theta)
	if top.status != Converged {
		refusal.Status, refusal.Iterations, refusal.LogLik, refusal.Decrement = top.status, top.iterations, top.ll, top.decrement
		return nil, refusal
	}
	return o.coef(theta), nil
}

// Predict is the location of row x of a design on the line.
func (f *Fit) Predict(x []float64) float64 { return dot(x, f.Coef) }
