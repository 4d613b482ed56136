package latent

import "math"

// Terms is the log likelihood of one observation with its derivatives in c and
// a, where the standardised value is z = a*u - c. In these two the likelihood of
// every family is concave (Burridge 1981, J. R. Statist. Soc. B 43:41-45), which
// is why the fit works in them and not in location and scale.
type Terms struct {
	LL, C, A, CC, CA, AA float64
}

// At is the log likelihood of r, without the jacobian and without its weight.
func (f Family) At(r Row, c, a float64) Terms {
	switch r.Kind {
	case IsExact:
		return f.exact(r.Lo, c, a)
	case IsAtLeast:
		return chain(f.above(a*r.Lo-c), r.Lo)
	case IsAtMost:
		return chain(f.below(a*r.Hi-c), r.Hi)
	}
	return f.between(r, c, a)
}

func (f Family) exact(u, c, a float64) Terms {
	t := chain(f.density(a*u-c), u)
	t.LL += math.Log(a)
	t.A += 1 / a
	t.AA -= 1 / (a * a)
	return t
}

// chain carries derivatives in z over to c and a.
func chain(h curve, u float64) Terms {
	return Terms{h.v, -h.d, u * h.d, h.dd, -u * h.dd, u * u * h.dd}
}

// between is the probability of an interval, from the tail that is nearer. While
// the two ends differ little the difference of tails would cancel, so there the
// density is integrated instead.
func (f Family) between(r Row, c, a float64) Terms {
	zLo, zHi := a*r.Lo-c, a*r.Hi-c
	var near, far Terms // the likelihood is near - far, as probabilities
	if zLo+zHi > 2*f.median() {
		near, far = chain(f.above(zLo), r.Lo), chain(f.above(zHi), r.Hi)
	} else {
		near, far = chain(f.below(zHi), r.Hi), chain(f.below(zLo), r.Lo)
	}
	drop := near.LL - far.LL
	const cancels = 0.5
	if drop < cancels {
		return f.narrow(r, c, a)
	}
	if math.IsInf(far.LL, -1) {
		return near
	}
	q := 1 / math.Expm1(drop) // far over the difference
	p, pq := 1+q, q*(1+q)
	dc, da := near.C-far.C, near.A-far.A
	return Terms{
		LL: near.LL + math.Log(-math.Expm1(-drop)),
		C:  p*near.C - q*far.C,
		A:  p*near.A - q*far.A,
		CC: p*near.CC - q*far.CC - pq*dc*dc,
		CA: p*near.CA - q*far.CA - pq*dc*da,
		AA: p*near.AA - q*far.AA - pq*da*da,
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
func (f Family) narrow(r Row, c, a float64) Terms {
	mid, half := r.Lo+r.Width/2, r.Width/2
	var part [8]Terms
	for i, x := range gaussNode {
		part[2*i] = f.exact(mid-half*x, c, a)
		part[2*i+1] = f.exact(mid+half*x, c, a)
	}
	top := part[0].LL
	var total float64
	var share [8]float64
	for i, t := range part {
		share[i] = gaussWeight[i/2] * math.Exp(t.LL-top)
		total += share[i]
	}
	var m Terms
	for i, t := range part {
		share[i] /= total
		m.C += share[i] * t.C
		m.A += share[i] * t.A
	}
	for i, t := range part {
		dc, da := t.C-m.C, t.A-m.A
		m.CC += share[i] * (t.CC + dc*dc)
		m.CA += share[i] * (t.CA + dc*da)
		m.AA += share[i] * (t.AA + da*da)
	}
	m.LL = top + math.Log(total*half)
	return m
}

// LogLik is the log likelihood of one observation, in the original unit, at
// location eta and ln scale lnScale on the line, with its first and second
// derivatives in the two. An exact value gives its log density, a bounded one
// the log of a probability. Where that is -Inf the derivatives mean nothing; an
// observation that is none (see Obs) gives NaN.
func LogLik(fam Family, o Obs, eta, lnScale float64) (ll, dEta, dLnS, dEtaEta, dEtaLnS, dLnSLnS float64) {
	r, err := fam.Row(o)
	if err != nil {
		nan := math.NaN()
		return nan, nan, nan, nan, nan, nan
	}
	a := math.Exp(-lnScale)
	r.Lo -= eta
	r.Hi -= eta
	t := fam.At(r, 0, a)
	w := r.Weight
	return w * (t.LL + r.Jacobian),
		w * a * t.C,
		-w * a * t.A,
		w * a * a * t.CC,
		-w * a * (t.C + a*t.CA),
		w * a * (t.A + a*t.AA)
}

// LogLikYesNo is the log likelihood of a yes or no at log odds eta, with its
// first and second derivative.
func LogLikYesNo(yes bool, eta float64) (ll, d, dd float64) {
	below, above := Logistic(eta)
	if yes {
		return -softplus(-eta), above, -below * above
	}
	return -softplus(eta), -below, -below * above
}
