package likeliest

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// slope is the gradient and the information (minus the second derivatives) of a
// log likelihood.
type slope struct {
	grad []float64
	info *mat.SymDense
}

func newSlope(p int) *slope {
	return &slope{grad: make([]float64, p), info: mat.NewSymDense(p, nil)}
}

func (s *slope) reset() {
	clear(s.grad)
	clear(s.info.RawSymmetric().Data)
}

// add adds a row's share: d times v to the gradient, and h times v vᵀ to the
// upper half of the information.
func (s *slope) add(v []float64, d, h float64) {
	raw := s.info.RawSymmetric()
	for j, vj := range v {
		s.grad[j] += d * vj
		hv := h * vj
		line := raw.Data[j*raw.Stride : j*raw.Stride+len(v)]
		for k := j; k < len(v); k++ {
			line[k] += hv * v[k]
		}
	}
}

// concave is a log likelihood that ascend can climb.
type concave interface {
	// at is the log likelihood at theta, -Inf outside its domain; it fills s.
	at(theta []float64, s *slope) float64
	// rises says whether moving along step never lowers any observation's
	// likelihood, which is to say that there is no largest value.
	rises(step []float64) bool
}

// summit is where ascend ended.
type summit struct {
	status     Status
	ll         float64
	decrement  float64
	iterations int
	step       []float64
	cov        *mat.SymDense // inverse information at theta
}

const (
	maxSteps   = 100
	settled    = 1e-18 // decrement at which the estimates are exact to rounding
	nearly     = 1e-10 // decrement at which rounding may stop further progress
	firstCheck = 5     // steps before looking for a likelihood without an end
)

// ascend climbs by Newton steps, halved until the likelihood rises, until a step
// promises no more than rounding.
func ascend(f concave, theta []float64) summit {
	p := len(theta)
	s, trial := newSlope(p), make([]float64, p)
	next := newSlope(p)
	step := mat.NewVecDense(p, nil)
	top := summit{status: NotConverged, step: step.RawVector().Data}
	if top.ll = f.at(theta, s); math.IsInf(top.ll, 0) {
		return top // values too far apart for numbers to tell
	}
	var chol mat.Cholesky
	for top.iterations = 0; top.iterations < maxSteps; top.iterations++ {
		if !solve(&chol, s, step) {
			break
		}
		last := top.decrement
		top.decrement = dot(s.grad, top.step)
		if top.iterations >= firstCheck && f.rises(top.step) {
			top.status = Separated
			return top
		}
		if top.decrement <= settled || top.decrement < nearly && top.iterations > 0 && top.decrement >= last/4 {
			top.status = Converged
			break
		}
		size := 1.0
		for ; size > 1e-12; size /= 2 {
			for j, t := range theta {
				trial[j] = t + size*top.step[j]
			}
			ll := f.at(trial, next)
			if ll >= top.ll+1e-4*size*top.decrement-1e-13*(1+math.Abs(top.ll)) {
				top.ll = ll
				break
			}
		}
		if size <= 1e-12 {
			if top.decrement < nearly {
				top.status = Converged
			}
			break
		}
		copy(theta, trial)
		s, next = next, s
	}
	if top.status == Converged {
		top.cov = mat.NewSymDense(p, nil)
		if !chol.Factorize(s.info) || chol.InverseTo(top.cov) != nil {
			top.status = NotConverged
		}
	}
	return top
}

// solve is the Newton step; where the information is not positive definite to
// rounding its diagonal is raised until it is.
func solve(chol *mat.Cholesky, s *slope, step *mat.VecDense) bool {
	grad := mat.NewVecDense(len(s.grad), s.grad)
	if chol.Factorize(s.info) {
		return chol.SolveVecTo(step, grad) == nil || finite(step.RawVector().Data)
	}
	raw := s.info.RawSymmetric()
	var top float64
	for j := range s.grad {
		top = math.Max(top, math.Abs(raw.Data[j*raw.Stride+j]))
	}
	if !(top > 0) || math.IsInf(top, 1) {
		return false
	}
	raised := mat.NewSymDense(len(s.grad), nil)
	for lift := 1e-12 * top; lift <= 1e3*top; lift *= 10 {
		raised.CopySym(s.info)
		for j := range s.grad {
			raised.SetSym(j, j, raised.At(j, j)+lift)
		}
		if chol.Factorize(raised) {
			return chol.SolveVecTo(step, grad) == nil || finite(step.RawVector().Data)
		}
	}
	return false
}

func finite(v []float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
