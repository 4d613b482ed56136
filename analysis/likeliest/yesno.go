package likeliest

import (
	"math"

	"foamfield/analysis/latent"

	"gonum.org/v1/gonum/mat"
)

// YesNoFit is a fitted logistic of a yes or no: Coef are log odds ratios.
type YesNoFit struct {
	Coef       []float64
	Covariance *mat.SymDense // inverse information
	LogLik     float64
	Penalised  float64 // log likelihood plus half ln of the information's determinant; LogLik when not reduced
	N          int
	Reduced    bool // fitted by the bias-reduced likelihood

	x *mat.Dense
	y []bool
}

// FitYesNo fits log odds by maximum likelihood. Separated answers, for which no
// largest likelihood exists, are refused with a *Refusal naming the columns.
func FitYesNo(x *mat.Dense, y []bool) (*YesNoFit, error) {
	o, refusal, err := newOdds(x, y)
	if err != nil {
		return nil, err
	}
	if refusal.Yes == 0 || refusal.Yes == o.n {
		refusal.Status = NoEvents
		return nil, refusal
	}
	return o.fit(x, refusal)
}

// odds is the likelihood of answers on a design, in the coordinates of its basis.
type odds struct {
	basis
	yes     []bool
	reduced *reduction
}

func newOdds(x *mat.Dense, y []bool) (*odds, *Refusal, error) {
	n, p := x.Dims()
	if n != len(y) {
		panic("likeliest: design and answers differ in length")
	}
	refusal := &Refusal{N: n, Parameters: p}
	for _, yes := range y {
		if yes {
			refusal.Yes++
		}
	}
	if n < p {
		refusal.Status = TooFew
		return nil, nil, refusal
	}
	b, err := orthonormal(whole(x))
	if err != nil {
		return nil, nil, err
	}
	return &odds{basis: b, yes: y}, refusal, nil
}

func (o *odds) fit(x *mat.Dense, refusal *Refusal) (*YesNoFit, error) {
	theta := make([]float64, o.p)
	top := ascend(o, theta)
	if top.status != Converged {
		refusal.Status = top.status
		refusal.Iterations, refusal.LogLik, refusal.Decrement = top.iterations, top.ll, top.decrement
		if top.status == Separated {
			refusal.Columns = o.columns(top.step)
		}
		return nil, refusal
	}
	f := &YesNoFit{
		Coef: o.coef(theta), Covariance: mat.NewSymDense(o.p, nil),
		LogLik: o.logLik(theta), Penalised: top.ll,
		N: o.n, Reduced: o.reduced != nil,
		x: x, y: o.yes,
	}
	cov := top.cov
	if o.reduced != nil { // the information itself, as Firth has it
		o.at(theta, newSlope(o.p))
		if cov = o.reduced.covariance(); cov == nil {
			refusal.Status = NotConverged
			return nil, refusal
		}
	}
	inv := mat.NewDense(o.p, o.p, o.inv)
	var half, full mat.Dense
	half.Mul(inv, cov)
	full.Mul(&half, inv.T())
	for i := range o.p {
		for j := i; j < o.p; j++ {
			f.Covariance.SetSym(i, j, (full.At(i, j)+full.At(j, i))/2)
		}
	}
	return f, nil
}

func (o *odds) eta(i int, theta []float64) float64 { return dot(o.row(i), theta) }

func (o *odds) logLik(theta []float64) (ll float64) {
	for i, yes := range o.yes {
		v, _, _ := latent.LogLikYesNo(yes, o.eta(i, theta))
		ll += v
	}
	return ll
}

func (o *odds) at(theta []float64, s *slope) float64 {
	if o.reduced != nil {
		return o.penalised(theta, s)
	}
	s.reset()
	var ll float64
	for i, yes := range o.yes {
		v, d, dd := latent.LogLikYesNo(yes, o.eta(i, theta))
		ll += v
		s.add(o.row(i), d, -dd)
	}
	if math.IsNaN(ll) {
		return math.Inf(-1)
	}
	return ll
}

// rises: along step every yes must gain odds and every no lose them.
func (o *odds) rises(step []float64) bool {
	if o.reduced != nil {
		return false // always has a largest value
	}
	const slack = 1e-7
	var reach float64
	for i := range o.yes {
		reach = math.Max(reach, math.Abs(dot(o.row(i), step)))
	}
	for i, yes := range o.yes {
		m := dot(o.row(i), step)
		if yes && m < -slack*reach || !yes && m > slack*reach {
			return false
		}
	}
	return reach > 0
}
