// Package posterior believes: given a prior and observations it returns what is
// believed of the terms of a line, as weighted draws and as moments. It knows
// no domain: feature rows and observations in, numbers out.
//
// The recipe is importance sampling. Newton finds the mode; draws from a heavy-
// tailed t distribution around it are weighted by the true density over the
// drawn one; the weighted mean and covariance recentre the proposal for a second,
// larger round. Nothing rests on the curvature at the mode alone, which for
// yes/no outcomes with few events is off by several points of a chance. Of thousands of
// observations a few stand for all (see thinned).
package posterior

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"foamfield/analysis/leaning"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// Normal is a normal prior of one number.
type Normal struct{ Mean, SD float64 }

// EnoughESS is the effective number of draws below which another round is drawn.
const EnoughESS = 1000

const quickESS = 250 // the same of a quick one

const (
	searchRounds = 12
	firstDraws   = 1000
	secondDraws  = 2500
	thirdDraws   = 6000
	moreDraws    = 16000
	tailDF       = 7 // of the t proposal
)

// Posterior is the weighted draws of a parameter vector and their moments.
type Posterior struct {
	Mean   []float64
	Cov    *mat.SymDense
	ESS    float64
	draws  *mat.Dense // one a row
	weight []float64  // sums to 1
	loglik *mat.Dense // draws × observations
	// evidence is the log of the density's integral, up to what depends on the number of
	// parameters only.
	evidence float64
}

// Draws is the number of draws the moments rest on.
func (p *Posterior) Draws() int { return len(p.weight) }

// density is what the sampler needs of a model.
type density interface {
	size() int
	observations() int
	// newton returns the log density at theta, its gradient and the negative Hessian.
	newton(theta []float64) (float64, []float64, *mat.SymDense)
	// likelihood is the part of newton that the observations make up, each of them counted
	// so many times; nil for once.
	likelihood(theta, times []float64) (float64, []float64, *mat.SymDense)
	// bends is how far the log likelihood of every observation is from its second order,
	// two standard deviations from the centre.
	bends(centre []float64, cov *mat.SymDense) []float64
	// some is the density with only these observations.
	some(index []int) density
	// batch fills the log density of every draw and, unless it is nil, the log likelihood
	// of every observation (draws × observations).
	batch(draws *mat.Dense, logDensity []float64, each *mat.Dense)
	start() []float64
}

// ErrNoMode reports that Newton found no maximum; it carries where it stopped.
type ErrNoMode struct{ Steps int }

func (e ErrNoMode) Error() string {
	return fmt.Sprintf("posterior: no mode after %d steps", e.Steps)
}

// sample runs the recipe, with the part of its draws that share says.
func sample(d density, quick bool, share float64, rng *rand.Rand) (*Posterior, error) {
	centre, cov, err := mode(d)
	if err != nil {
		return nil, err
	}
	// Early rounds only find the place and the spread: they start wide, since the
	// curvature at the mode of a skewed density is too narrow, and stop once the
	// proposal hits often.
	first, rounds, enough := firstDraws, []int{secondDraws, thirdDraws, moreDraws}, float64(EnoughESS)
	if d.observations() > mostKept { // nearly normal, so fewer draws reach far
		first, rounds = firstDraws/2, []int{secondDraws, moreDraws}
	}
	if d.observations() > many { // a round of as many draws, better placed, is enough
		d, rounds = thin(d, centre, cov), []int{secondDraws, secondDraws, moreDraws}
	}
	if quick {
		first, rounds, enough = firstDraws/2, []int{secondDraws / 2, thirdDraws}, quickESS
	}
	part := func(draws int) int { return 2 * int(share*float64(draws)/2) } // pairs
	first, enough = part(first), share*enough
	wide := wider(cov, 2)
	var p *Posterior
	var again room
	for range searchRounds {
		if p, err = again.round(d, centre, wide, first, false, rng); err != nil {
			return nil, err
		}
		p.moments()
		centre, cov = p.Mean, p.Cov
		if p.ESS >= float64(first)/4 {
			break
		}
		// The moments of few effective draws are trusted in proportion to their
		// number; the rest stays as wide as before.
		trust := p.ESS / (p.ESS + 10*float64(d.size()))
		next := wider(cov, 1.5*trust)
		next.AddSym(next, wider(wide, 1-trust))
		wide = next
	}
	for _, n := range rounds {
		if p, err = again.round(d, centre, cov, part(n), !quick, rng); err != nil {
			return nil, err
		}
		p.moments()
		if p.ESS >= enough {
			break
		}
		centre, cov = p.Mean, wider(p.Cov, 1.3)
	}
	return p, nil
}

func wider(cov *mat.SymDense, factor float64) *mat.SymDense {
	w := mat.NewSymDense(cov.SymmetricDim(), nil)
	w.ScaleSym(factor, cov)
	return w
}

// mode climbs by damped Newton steps; the prior makes the density bounded.
func mode(d density) ([]float64, *mat.SymDense, error) {
	const steps = 200
	theta := d.start()
	if d.observations() > many { // one in so many finds the place, all of them the mode
		if near, _, err := mode(d.some(evenly(d.observations(), many/2))); err == nil {
			theta = near
		}
	}
	ll, grad, info := d.newton(theta)
	var chol mat.Cholesky
	for k := range steps {
		ridge := 0.0
		for !chol.Factorize(plusDiagonal(info, ridge)) {
			ridge = math.Max(2*ridge, 1e-3)
			if ridge > 1e12 {
				return nil, nil, ErrNoMode{k}
			}
		}
		var step mat.VecDense
		if err := chol.SolveVecTo(&step, mat.NewVecDense(len(grad), grad)); err != nil && !conditioned(err) {
			return nil, nil, ErrNoMode{k}
		}
		gain := mat.Dot(&step, mat.NewVecDense(len(grad), grad))
		if gain < 1e-10 && ridge == 0 {
			var inv mat.SymDense
			if err := chol.InverseTo(&inv); err != nil && !conditioned(err) {
				return nil, nil, ErrNoMode{k}
			}
			return theta, &inv, nil
		}
		moved := false
		for scale := 1.0; scale > 1e-9; scale /= 2 {
			next := make([]float64, len(theta))
			for i := range next {
				next[i] = theta[i] + scale*step.AtVec(i)
			}
			nll, ngrad, ninfo := d.newton(next)
			if !math.IsNaN(nll) && nll >= ll {
				theta, ll, grad, info, moved = next, nll, ngrad, ninfo, true
				break
			}
		}
		if !moved { // at the limit of rounding
			var inv mat.SymDense
			if err := chol.InverseTo(&inv); err != nil && !conditioned(err) {
				return nil, nil, ErrNoMode{k}
			}
			if gain < 1e-4 {
				return theta, &inv, nil
			}
			return nil, nil, ErrNoMode{k}
		}
	}
	return nil, nil, ErrNoMode{steps}
}

func conditioned(err error) bool {
	var c mat.Condition
	return errors.As(err, &c)
}

func plusDiagonal(a *mat.SymDense, ridge float64) *mat.SymDense {
	if ridge == 0 {
		return a
	}
	b := mat.NewSymDense(a.SymmetricDim(), nil)
	b.CopySym(a)
	for i := range b.SymmetricDim() {
		b.SetSym(i, i, b.At(i, i)*(1+ridge)+ridge)
	}
	return b
}

// room is the memory of a round. The next round of the same room writes over what the last
// one drew, and so costs no memory that is new.
type room struct{ draws, proposed, weight, loglik []float64 }

// of is so many numbers of a list, which is made longer if it must.
func of(list *[]float64, n int) []float64 {
	if cap(*list) < n {
		*list = make([]float64, n)
	}
	return (*list)[:n]
}

// round draws n times from a t around centre and weighs the draws. Their moments are not
// yet worked out.
func (r *room) round(d density, centre []float64, cov *mat.SymDense, n int, keep bool, rng *rand.Rand) (*Posterior, error) {
	out := &Posterior{draws: mat.NewDense(n, len(centre), of(&r.draws, n*len(centre)))}
	proposed := of(&r.proposed, n)
	logDet, err := propose(out.draws, proposed, centre, cov, rng)
	if err != nil {
		return nil, err
	}
	if width := max(d.observations(), 1); keep && width <= mostKept {
		rows := min(n, drawsLeftOut)
		out.loglik = mat.NewDense(rows, width, of(&r.loglik, rows*width))
	}
	logw := of(&r.weight, n)
	weigh(d, out.draws, logw, out.loglik)
	for k := range logw {
		logw[k] -= proposed[k]
	}
	mean, err := out.count(logw)
	if err != nil {
		return nil, err
	}
	out.evidence = mean + logDet/2
	return out, nil
}

// together is how many draws are worked out side by side. Each is added up in its own
// order, so that it comes out as it would alone; the processor, which waits for one sum, goes on
// with the others.
const together = 4

// propose fills draws from a t around centre, each draw with its mirror image so that the mean
// is off by little, and the logarithm of the density they were drawn with; it returns that
// of the covariance's determinant.
func propose(draws *mat.Dense, log, centre []float64, cov *mat.SymDense, rng *rand.Rand) (logDet float64, err error) {
	n, p := draws.Dims()
	var chol mat.Cholesky
	ridge := 0.0
	for !chol.Factorize(plusDiagonal(cov, ridge)) {
		if ridge = math.Max(10*ridge, 1e-12); ridge > 1 {
			return 0, errors.New("posterior: the spread of the draws is not a covariance")
		}
	}
	var l mat.TriDense
	chol.LTo(&l)
	lower := make([]float64, 0, p*(p+1)/2)
	for i := range p {
		for j := range i + 1 {
			lower = append(lower, l.At(i, j))
		}
	}
	z := make([]float64, p)
	side := make([][together]float64, p) // z of draws side by side
	for k := 0; k < n; k += 2 * together {
		pairs := min(together, (n-k)/2)
		for m := range pairs {
			density := standard(z, rng)
			log[k+2*m], log[k+2*m+1] = density, density
			for i, v := range z {
				side[i][m] = v
			}
		}
		rest := lower
		for i, c := range centre {
			var s0, s1, s2, s3 float64
			with := side[:i+1]
			for j, v := range rest[:len(with)] {
				z := &with[j]
				s0 += v * z[0]
				s1 += v * z[1]
				s2 += v * z[2]
				s3 += v * z[3]
			}
			rest = rest[i+1:]
			sums := [together]float64{s0, s1, s2, s3}
			for m, s := range sums[:pairs] {
				draws.RawRowView(k + 2*m)[i], draws.RawRowView(k + 2*m + 1)[i] = c+s, c-s
			}
		}
	}
	return chol.LogDet(), nil
}

// standard fills z with a t of unit spread and returns the logarithm of its density, up to
// a constant.
func standard(z []float64, rng *rand.Rand) float64 {
	chi := 0.0
	for range tailDF {
		g := rng.NormFloat64()
		chi += g * g
	}
	stretch := math.Sqrt(tailDF / chi)
	q := 0.0
	for i := range z {
		z[i] = rng.NormFloat64() * stretch
		q += z[i] * z[i]
	}
	return -0.5 * (tailDF + float64(len(z))) * math.Log1p(q/tailDF)
}

// count turns logarithms of weights into weights, in their place, and returns the
// logarithm of their mean.
func (p *Posterior) count(logw []float64) (float64, error) {
	top := math.Inf(-1)
	for k, v := range logw {
		if math.IsNaN(v) {
			logw[k] = math.Inf(-1)
		}
		top = math.Max(top, logw[k])
	}
	if math.IsInf(top, 0) {
		return 0, errors.New("posterior: no draw has a finite density")
	}
	sum, sumsq := 0.0, 0.0
	for k, v := range logw {
		w := math.Exp(v - top)
		logw[k] = w
		sum += w
		sumsq += w * w
	}
	for k := range logw {
		logw[k] /= sum
	}
	p.weight, p.ESS = logw, sum*sum/sumsq
	return top + math.Log(sum/float64(len(logw))), nil
}

const (
	// mostKept is the most observations whose likelihoods are kept draw by draw, for
	// leaving one out.
	mostKept = 512
	block    = 128 // draws weighed at once, while they are in the processor's cache
)

// weigh fills the log density of every draw and, unless it is nil, the log likelihoods of
// single observations for the first draws, as many as kept has rows.
func weigh(d density, draws *mat.Dense, logw []float64, kept *mat.Dense) {
	n, p := draws.Dims()
	rows, width := 0, 0
	if kept != nil {
		rows, width = kept.Dims()
	}
	for from := 0; from < n; {
		to := min(from+block, n)
		var each *mat.Dense
		if from < rows {
			to = min(to, rows)
			each = kept.Slice(from, to, 0, width).(*mat.Dense)
		}
		d.batch(draws.Slice(from, to, 0, p).(*mat.Dense), logw[from:to], each)
		from = to
	}
}

// moments fills the weighted mean and covariance.
func (p *Posterior) moments() {
	n, c := p.draws.Dims()
	p.Mean, p.Cov = make([]float64, c), mat.NewSymDense(c, nil)
	mean, raw := p.Mean, p.Cov.RawSymmetric()
	at := func(k int) (w float64, draw []float64) { return p.weight[k], p.draws.RawRowView(k)[:len(mean)] }
	k := 0
	for ; k+together <= n; k += together {
		w0, d0 := at(k)
		w1, d1 := at(k + 1)
		w2, d2 := at(k + 2)
		w3, d3 := at(k + 3)
		for i, m := range mean {
			mean[i] = m + w0*d0[i] + w1*d1[i] + w2*d2[i] + w3*d3[i]
		}
	}
	for ; k < n; k++ {
		w, draw := at(k)
		for i, v := range draw {
			mean[i] += w * v
		}
	}
	side := make([][together]float64, c) // how far draws side by side are from the mean
	for k := 0; k < n; k += together {
		var w [together]float64 // none beyond the last
		for m := range min(together, n-k) {
			var draw []float64
			w[m], draw = at(k + m)
			for i, v := range draw {
				side[i][m] = v - mean[i]
			}
		}
		for i := range side {
			d := &side[i]
			a0, a1, a2, a3 := w[0]*d[0], w[1]*d[1], w[2]*d[2], w[3]*d[3]
			after := side[i:]
			row := raw.Data[i*raw.Stride+i:][:len(after)]
			for j := range after {
				d := &after[j]
				row[j] = row[j] + a0*d[0] + a1*d[1] + a2*d[2] + a3*d[3]
			}
		}
	}
}

// drawsLeftOut is how many of the draws a left-out mean rests on.
const drawsLeftOut = 1000

// CanLeaveOut reports whether MeanWithout may be asked.
func (p *Posterior) CanLeaveOut() bool { return p.loglik != nil }

// MeanWithout is the mean of a function of the parameters in the belief without
// one observation: its likelihood is divided out of the weights. What is left
// rests on the draws at hand, so weights are capped by the square-root rule of
// truncated importance sampling (Ionides 2008, J. Comput. Graph. Stat. 17:295).
func (p *Posterior) MeanWithout(obs int, of func(draw []float64) float64) float64 {
	n := min(drawsLeftOut, len(p.weight)) // pairs of draws are independent, so the first ones are a sample too
	// ratio is one over the observation's likelihood, relative to the largest that
	// matters, so that nothing overflows.
	top := math.Inf(-1)
	logw := make([]float64, n)
	for k := range n {
		logw[k] = math.Log(p.weight[k])
		top = math.Max(top, logw[k]-p.loglik.At(k, obs))
	}
	ratio := make([]float64, n)
	sum, total := 0.0, 0.0
	for k := range ratio {
		u := -p.loglik.At(k, obs) - top
		ratio[k] = math.Exp(math.Min(u, 600))
		sum += math.Exp(logw[k] + u)
		total += p.weight[k]
	}
	limit := sum / total * math.Sqrt(float64(n))
	sum, total = 0, 0
	for k := range ratio {
		w := p.weight[k] * math.Min(ratio[k], limit)
		sum += w * of(p.draws.RawRowView(k))
		total += w
	}
	return sum / total
}

// leaning is how far the draws lean.
func (p *Posterior) leaning() leaning.Rows {
	rests := mat.DenseCopyOf(p.draws)
	for k := range p.weight {
		floats.Sub(rests.RawRowView(k), p.Mean)
	}
	return leaning.Of(rests, p.weight, p.Cov)
}

// MeanOf is the mean of a function of the parameters over the draws.
func (p *Posterior) MeanOf(of func(draw []float64) float64) float64 {
	sum := 0.0
	for k, w := range p.weight {
		sum += w * of(p.draws.RawRowView(k))
	}
	return sum
}

// Equal returns n draws of equal weight, in random order, so that draws of
// independent outcomes can be paired by index: systematic resampling, then a
// shuffle.
func (p *Posterior) Equal(n int, rng *rand.Rand) *mat.Dense {
	_, c := p.draws.Dims()
	out := mat.NewDense(n, c, nil)
	order := rng.Perm(n)
	u := rng.Float64()
	k, cum := 0, p.weight[0]
	for i := range n {
		at := (u + float64(i)) / float64(n)
		for cum < at && k < len(p.weight)-1 {
			k++
			cum += p.weight[k]
		}
		copy(out.RawRowView(order[i]), p.draws.RawRowView(k))
	}
	return out
}
