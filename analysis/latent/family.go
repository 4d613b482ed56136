package latent

import "math"

// Family is the distribution of an observation around its place on the line.
type Family uint8

// The families. All but Normal are of positive values and live on logarithms.
const (
	Lognormal Family = iota
	Weibull
	Loglogistic
	Normal
)

func (f Family) String() string {
	switch f {
	case Lognormal:
		return "lognormal"
	case Weibull:
		return "Weibull"
	case Loglogistic:
		return "loglogistic"
	case Normal:
		return "normal"
	}
	return "unknown"
}

func (f Family) positive() bool { return f != Normal }

// curve is a function of the standardised value z with two derivatives.
type curve struct {
	v, d, dd float64
}

// density is the log density of the standardised value.
func (f Family) density(z float64) curve {
	switch f {
	case Weibull: // smallest extreme value
		t := math.Exp(z)
		return curve{z - t, 1 - t, -t}
	case Loglogistic:
		below, above := Logistic(z)
		return curve{-math.Abs(z) - 2*math.Log1p(math.Exp(-math.Abs(z))), above - below, -2 * above * below}
	}
	return curve{-z*z/2 - lnSqrt2Pi, -z, -1}
}

// above is the log probability of exceeding z, never formed as 1 - F.
func (f Family) above(z float64) curve {
	switch f {
	case Weibull:
		t := math.Exp(z)
		return curve{-t, -t, -t}
	case Loglogistic:
		below, above := Logistic(z)
		return curve{-softplus(z), -below, -below * above}
	}
	return normalAbove(z)
}

// below is the log probability of not exceeding z.
func (f Family) below(z float64) curve {
	switch f {
	case Weibull:
		return weibullBelow(z)
	case Loglogistic, Lognormal, Normal: // symmetric
		c := f.above(-z)
		return curve{c.v, -c.d, c.dd}
	}
	return curve{}
}

// median is the standardised value with half the probability below it.
func (f Family) median() float64 {
	if f == Weibull {
		return math.Log(math.Ln2)
	}
	return 0
}

// Logistic is the probability below and above z, both without cancellation.
func Logistic(z float64) (below, above float64) {
	t := math.Exp(-math.Abs(z))
	big, small := 1/(1+t), t/(1+t)
	if z < 0 {
		return small, big
	}
	return big, small
}

// softplus is ln(1 + e^z).
func softplus(z float64) float64 {
	return math.Max(z, 0) + math.Log1p(math.Exp(-math.Abs(z)))
}

// weibullBelow is ln(1 - exp(-t)), t = e^z, and its derivatives in z. The first
// is t/(e^t - 1); the second vanishes with t, so small t takes the series.
func weibullBelow(z float64) curve {
	t := math.Exp(z)
	if t < 0.05 {
		d := 1 - t/2 + t*t/12*(1-t*t/60)
		dd := -t/2 + t*t/6*(1-t*t/30)
		return curve{z - t/2 + t*t/24*(1-t*t/120), d, dd}
	}
	if t > 700 {
		return curve{}
	}
	d := t / math.Expm1(t)
	v := math.Log(-math.Expm1(-t))
	if t > math.Ln2 {
		v = math.Log1p(-math.Exp(-t))
	}
	return curve{v, d, d * (1 - t - d)}
}

const lnSqrt2Pi = 0.91893853320467274178

// normalAbove is ln of the upper normal tail. Its derivative is minus the ratio
// r = density/tail, its second -r (r - z); far out r - z is taken from the
// continued fraction of Laplace, r = z + 1/(z + 2/(z + 3/(z + ...))), since the
// difference would cancel.
func normalAbove(z float64) curve {
	const far, terms = 6, 40
	if z > far {
		excess := 0.0
		for k := float64(terms); k >= 1; k-- {
			excess = k / (z + excess)
		}
		r := z + excess
		return curve{-z*z/2 - lnSqrt2Pi - math.Log(r), -r, -r * excess}
	}
	tail := 0.5 * math.Erfc(z/math.Sqrt2)
	v := math.Log(tail)
	if z < -1 {
		v = math.Log1p(-0.5 * math.Erfc(-z/math.Sqrt2))
	}
	r := math.Exp(-z*z/2-lnSqrt2Pi) / tail
	return curve{v, -r, -r * (r - z)}
}
