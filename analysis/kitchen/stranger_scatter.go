package kitchen

import (
	"math"
	"math/rand/v2"
)

// tail is how repeats stray.
type tail uint8

// Even repeats stray normally; wild ones far to both sides now and then (Student's
// law with three degrees of freedom); frail ones are mostly alike, and some much
// worse (Gumbel's).
const (
	even tail = iota
	wild
	frail
)

// scatter is of the log of a result, upwards good. The middle four fifths of every
// tail span as much as those of a normal law with this spread.
type scatter struct {
	tail   tail
	spread float64
}

// Half of what the middle four fifths span, over the normal law's.
const (
	wildSpan  = 1.6377 / 1.2816
	frailSpan = 1.5422 / 1.2816
)

func (s scatter) draw(rng *rand.Rand) float64 {
	switch s.tail {
	case wild:
		a, b, c := rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()
		return s.spread / wildSpan * rng.NormFloat64() / math.Sqrt((a*a+b*b+c*c)/3)
	case frail:
		return s.spread / frailSpan * (math.Log(rng.ExpFloat64()) - math.Log(math.Ln2))
	}
	return s.spread * rng.NormFloat64()
}

// below is the chance to draw less than x.
func (s scatter) below(x float64) float64 {
	switch s.tail {
	case wild:
		return student3CDF(x * wildSpan / s.spread)
	case frail:
		return -math.Expm1(-math.Ln2 * math.Exp(x*frailSpan/s.spread))
	}
	return normalCDF(x / s.spread)
}

func student3CDF(t float64) float64 {
	if math.IsInf(t, 0) {
		return normalCDF(t)
	}
	x := t / math.Sqrt(3)
	return 0.5 + (x/(1+x*x)+math.Atan(x))/math.Pi
}
