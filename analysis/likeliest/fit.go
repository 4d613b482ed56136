// Package likeliest finds the line by which observations are likeliest: the coefficients of
// a design and the scale of values and bounds, or the log odds of a yes or no. Estimates
// are maximum likelihood (or, for yes and no, Firth's bias-reduced likelihood), found by
// Newton steps on analytic derivatives. Whatever cannot be fitted is refused with an error
// that carries the numbers.
package likeliest

import (
	"math"
	"sync"

	"foamfield/analysis/latent"

	"gonum.org/v1/gonum/mat"
)

// Fit is a fitted location-scale line.
type Fit struct {
	Family     latent.Family
	Coef       []float64     // effect of each column of the design, on the line
	Scale      float64       // sigma on the line; 1/shape of the Weibull
	Covariance *mat.SymDense // of the coefficients and then ln Scale: inverse observed information
	LogLik     float64       // in the original unit: exact values by density, bounds by probability
	N          int

	data *Sample
	x    *mat.Dense
	eta  []float64 // fitted location of each row
}

// Sample is values and bounds on the line of a family, which several designs may be fitted to.
type Sample struct {
	family latent.Family
	rows   []latent.Row
	counts latent.Counts
	alone  func() (*Fit, error) // the fit of a constant, made once
}

// FitScale fits the scale model by maximum likelihood. The design x has a row an
// observation and a column a term, with a column of ones where a constant is
// wanted. The error is a *DataError, a *RankError or a *Refusal.
func FitScale(fam latent.Family, x *mat.Dense, y []latent.Obs) (*Fit, error) {
	data, err := NewSample(fam, y)
	if err != nil {
		return nil, err
	}
	return data.Fit(x)
}

// NewSample puts observations on the line; the error is a *DataError.
func NewSample(fam latent.Family, y []latent.Obs) (*Sample, error) {
	rows := make([]latent.Row, len(y))
	for i, o := range y {
		r, err := fam.Row(o)
		if err != nil {
			return nil, &DataError{Row: i, Column: -1, Reason: err.Error()}
		}
		rows[i] = r
	}
	return sampleOf(fam, rows), nil
}

func sampleOf(fam latent.Family, rows []latent.Row) *Sample {
	d := &Sample{family: fam, rows: rows, counts: latent.Count(rows)}
	d.alone = sync.OnceValues(func() (*Fit, error) { return d.fit(constant(len(d.rows))) })
	return d
}

// Fit is FitScale of a sample that is used again.
func (d *Sample) Fit(x *mat.Dense) (*Fit, error) {
	f, err := d.fit(whole(x))
	if err != nil {
		return nil, err
	}
	f.x = x
	return f, nil
}

func (d *Sample) fit(x design) (*Fit, error) {
	n, p := x.n, x.p
	if n != len(d.rows) {
		panic("likeliest: design and observations differ in length")
	}
	refusal := &Refusal{N: n, Parameters: p + 1, Counts: d.counts}
	c := d.counts
	if c.Exact+c.Between == 0 && (c.AtLeast == 0 || c.AtMost == 0) {
		refusal.Status = NoEvents
		return nil, refusal
	}
	if n < p+1 {
		refusal.Status = TooFew
		return nil, refusal
	}
	b, err := orthonormal(x)
	if err != nil {
		return nil, err
	}
	l := &line{Sample: d, basis: b, eta0: make([]float64, n), s0: 1}
	beta0, ok := l.start()
	if !ok {
		refusal.Status = PerfectFit
		return nil, refusal
	}
	theta := make([]float64, p+1)
	theta[p] = 1
	top := l.climb(theta)
	if top.status != Converged {
		refusal.Status = top.status
		refusal.Iterations, refusal.LogLik, refusal.Decrement = top.iterations, top.ll, top.decrement
		if top.status == Separated {
			refusal.Status, refusal.Columns = l.separated(top.step)
		}
		return nil, refusal
	}
	f := &Fit{Family: d.family, LogLik: top.ll, N: n, data: d, eta: l.eta(theta)}
	a := theta[p]
	f.Scale = l.s0 / a
	f.Coef = b.coef(theta[:p])
	for j := range f.Coef {
		f.Coef[j] = beta0[j] + l.s0/a*f.Coef[j]
	}
	f.Covariance = l.covariance(theta, top.cov)
	return f, nil
}

// line is a sample on a design, measured from the origin eta0 in units of s0:
// the standardised value of u is a (u - eta0)/s0 - Q gamma, with the scale s0/a.
type line struct {
	*Sample
	basis
	eta0  []float64
	s0    float64
	work  []latent.Row // rows measured from the origin
	shift float64
}

// start puts the origin at the least-squares fit of the values and bounds. It
// reports false when the values are all exact and lie on that fit.
func (l *line) start() (beta0 []float64, ok bool) {
	u := make([]float64, l.n)
	var size, width float64
	for i, r := range l.rows {
		u[i] = r.Middle()
		size = math.Max(size, math.Abs(u[i]))
		if r.Kind == latent.IsBetween {
			width = math.Max(width, r.Width)
		}
	}
	total := make([]float64, l.p)
	for range 2 { // the second round removes the rounding of the first
		g := l.project(u)
		for i := range u {
			u[i] -= dot(l.row(i), g)
		}
		for j := range total {
			total[j] += g[j]
		}
	}
	rms := norm(u) / math.Sqrt(float64(l.n))
	if !(rms > 1e-13*size) {
		if l.counts.Bounded() == 0 {
			return nil, false
		}
		rms = math.Max(width, 1e-13*size)
		if rms == 0 {
			rms = 1
		}
	}
	for i := range l.eta0 {
		l.eta0[i] = dot(l.row(i), total)
	}
	l.s0 = rms
	return l.coef(total), true
}

// climb measures the rows from the origin and ascends from theta = (gamma, a).
func (l *line) climb(theta []float64) summit {
	l.work = append(l.work[:0], l.rows...)
	l.shift = 0
	for i := range l.work {
		r := &l.work[i]
		r.Lo = (r.Lo - l.eta0[i]) / l.s0
		r.Hi = (r.Hi - l.eta0[i]) / l.s0
		r.Width /= l.s0
		if r.Kind == latent.IsExact {
			l.shift += r.Weight * (r.Jacobian - math.Log(l.s0))
		}
	}
	return ascend(l, theta)
}

// at is the log likelihood of (gamma, a); see terms for the derivatives.
func (l *line) at(theta []float64, s *slope) float64 {
	p := l.p
	gamma, a := theta[:p], theta[p]
	if !(a > 0) {
		return math.Inf(-1)
	}
	s.reset()
	raw := s.info.RawSymmetric()
	ll, lost := l.shift, 0.0 // near the summit of a long log the rise is less than plain adding loses
	for i, r := range l.work {
		q := l.row(i)
		t := l.family.At(r, dot(q, gamma), a)
		w := r.Weight
		term := w*t.LL - lost
		sum := ll + term
		lost = sum - ll - term
		ll = sum
		for j, qj := range q {
			s.grad[j] += w * t.C * qj
			h := w * t.CC * qj
			at := raw.Data[j*raw.Stride : j*raw.Stride+p+1]
			for k := j; k < p; k++ {
				at[k] -= h * q[k]
			}
			at[p] -= w * t.CA * qj
		}
		s.grad[p] += w * t.A
		raw.Data[p*raw.Stride+p] -= w * t.AA
	}
	if math.IsNaN(ll) {
		return math.Inf(-1)
	}
	return ll
}

// rises: an exact value must stay where it is and every bound move outwards.
func (l *line) rises(step []float64) bool {
	const slack = 1e-7
	p := l.p
	var reach float64
	for i, r := range l.work {
		reach = math.Max(reach, math.Abs(dot(l.row(i), step[:p]))+math.Abs(step[p]*r.Middle()))
	}
	if !(reach > 0) || step[p] < -slack*reach {
		return false
	}
	moves := step[p] > slack*reach
	for i, r := range l.work {
		c := dot(l.row(i), step[:p])
		up, down := step[p]*r.Hi-c, step[p]*r.Lo-c // of the high and the low end
		switch {
		case (r.Kind == latent.IsExact || r.Kind == latent.IsAtMost || r.Kind == latent.IsBetween) && up < -slack*reach,
			(r.Kind == latent.IsExact || r.Kind == latent.IsAtLeast || r.Kind == latent.IsBetween) && down > slack*reach:
			return false
		}
		moves = moves || r.Kind != latent.IsExact && (r.Kind != latent.IsAtLeast && up > slack*reach || r.Kind != latent.IsAtMost && down < -slack*reach)
	}
	return moves
}

// separated tells a spread that tends to 0 from effects that run away.
func (l *line) separated(step []float64) (Status, []int) {
	p := l.p
	if math.Abs(step[p]) > 1e-6*norm(step[:p]) {
		return PerfectFit, nil
	}
	return Separated, l.columns(step[:p])
}

func (l *line) eta(theta []float64) []float64 {
	eta := make([]float64, l.n)
	for i := range eta {
		eta[i] = l.eta0[i] + l.s0/theta[l.p]*dot(l.row(i), theta[:l.p])
	}
	return eta
}

// covariance carries that of (gamma, a) to the coefficients and ln scale. At the
// summit the gradient is zero, so the change of variables is exact.
func (l *line) covariance(theta []float64, c *mat.SymDense) *mat.SymDense {
	p := l.p
	a := theta[p]
	jac := mat.NewDense(p+1, p+1, nil)
	for i, b := range l.coef(theta[:p]) {
		for j := range p {
			jac.Set(i, j, l.s0/a*l.inv[i*p+j])
		}
		jac.Set(i, p, -l.s0/(a*a)*b)
	}
	jac.Set(p, p, -1/a)
	var half, full mat.Dense
	half.Mul(jac, c)
	full.Mul(&half, jac.T())
	out := mat.NewSymDense(p+1, nil)
	for i := range p + 1 {
		for j := i; j <= p; j++ {
			out.SetSym(i, j, (full.At(i, j)+full.At(j, i))/2)
		}
	}
	return out
}
