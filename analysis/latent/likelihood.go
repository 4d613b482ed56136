package latent

import "math"

// terms is the log likelihood of one observation with its derivatives in c and
// a, where the standardised value is z = a*u - c. In these two the likelihood of
// every family is concave (Burridge 1981, J. R. Statist. Soc. B 43:41-45), which
// is why the fit works in them and not in location and scale.
type terms struct {
	ll, c, a, cc, ca, aa float64
}

// at is the log likelihood of r, without the jacobian and without its weight.
func (f Family) at(r row, c, a float64) terms {
	switch r.kind {
	case exact:
		return f.exact(r.lo, c, a)
	case atLeast:
		return chain(f.above(a*r.lo-c), r.lo)
	case atMost:
		return chain(f.below(a*r.hi-c), r.hi)
	}
	return f.between(r, c, a)
}

func (f Family) exact(u, c, a float64) terms {
	t := chain(f.density(a*u-c), u)
	t.ll += math.Log(a)
	t.a += 1 / a
	t.aa -= 1 / (a * a)
	return t
}

// chain carries derivatives in z over to c and a.
func chain(h curve, u float64) terms {
	return terms{h.v, -h.d, u * h.d, h.dd, -u * h.dd, u * u * h.dd}
}

// between is the probability of an interval, from the tail that is nearer. While
// the two ends differ little the difference of tails would cancel, so there the
// density is integrated instead.
func (f Family) between(r row, c, a float64) terms {
	zLo, zHi := a*r.lo-c, a*r.hi-c
	var near, far terms // the likelihood is near - far, as probabilities
	if zLo+zHi > 2*f.median() {
		near, far = chain(f.above(zLo), r.lo), chain(f.above(zHi), r.hi)
	} else {
		near, far = chain(f.below(zHi), r.hi), chain(f.below(zLo), r.lo)
	}
	drop := near.ll - far.ll
	const cancels = 0.5
	if drop < cancels {
		return f.narrow(r, c, a)
	}
	if math.IsInf(far.ll, -1) {
		return near
	}
	q := 1 / math.Expm1(drop) // far over the difference
	p, pq := 1+q, q*(1+q)
	dc, da := near.c-far.c, near.a-far.a
	return terms{
		ll: near.ll + math.Log(-math.Expm1(-drop)),
		c:  p*near.c - q*far.c,
		a:  p*near.a - q*far.a,
		cc: p*near.cc - q*far.cc - pq*dc*dc,
		ca: p*near.ca - q*far.ca - pq*dc*da,
		aa: p*near.aa - q*far.aa - pq*da*da,
	}
}

// Gauss-Legendre nodes and weights on (-1, 1), eight points (Abramowitz and
// Stegun 1964, table 25.4).
var (
	gaussNode   = [4]float64{0.183434642495649805, 0.525532409916328986, 0.796666477413626740, 0.960289856497536232}
	gaussWeight = [4]float64{0.362683783378361983, 0.313706645877887287, 0.222381034453374471, 0.101228536290376259}
)

// narrow integrates the density over a short interval. The derivatives are then
// the mean of the exact observation's score, and the mean of its second
// derivative plus the variance of its score: no differences, so the shorter the
// interval the closer all of it is to the exact value's.
func (f Family) narrow(r row, c, a float64) terms {
	mid, half := r.lo+r.width/2, r.width/2
	var part [8]terms
	for i, x := range gaussNode {
		part[2*i] = f.exact(mid-half*x, c, a)
		part[2*i+1] = f.exact(mid+half*x, c, a)
	}
	top := part[0].ll
	var total float64
	var share [8]float64
	for i, t := range part {
		share[i] = gaussWeight[i/2] * math.Exp(t.ll-top)
		total += share[i]
	}
	var m terms
	for i, t := range part {
		share[i] /= total
		m.c += share[i] * t.c
		m.a += share[i] * t.a
	}
	for i, t := range part {
		dc, da := t.c-m.c, t.a-m.a
		m.cc += share[i] * (t.cc + dc*dc)
		m.ca += share[i] * (t.ca + dc*da)
		m.aa += share[i] * (t.aa + da*da)
	}
	m.ll = top + math.Log(total*half)
	return m
}

// LogLik is the log likelihood of one observation, in the original unit, at
// location eta and ln scale lnScale on the line, with its first and second
// derivatives in the two. An exact value gives its log density, a bounded one
// the log of a probability. Where that is -Inf the derivatives mean nothing; an
// observation that is none (see Obs) gives NaN.
func LogLik(fam Family, o Obs, eta, lnScale float64) (ll, dEta, dLnS, dEtaEta, dEtaLnS, dLnSLnS float64) {
	r, err := fam.row(o)
	if err != nil {
		nan := math.NaN()
		return nan, nan, nan, nan, nan, nan
	}
	a := math.Exp(-lnScale)
	r.lo -= eta
	r.hi -= eta
	t := fam.at(r, 0, a)
	w := r.weight
	return w * (t.ll + r.jacobian),
		w * a * t.c,
		-w * a * t.a,
		w * a * a * t.cc,
		-w * a * (t.c + a*t.ca),
		w * a * (t.a + a*t.aa)
}

// LogLikYesNo is the log likelihood of a yes or no at log odds eta, with its
// first and second derivative.
func LogLikYesNo(yes bool, eta float64) (ll, d, dd float64) {
	below, above := logistic(eta)
	if yes {
		return -softplus(-eta), above, -below * above
	}
	return -softplus(eta), -below, -below * above
}
