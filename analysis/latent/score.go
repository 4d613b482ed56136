package latent

import "math"

// NormalScore is the normal score of the mean of the probabilities below lo and hi,
// standardised values: for lo equal to hi of its place in the distribution, comparable
// across families. It is formed in whichever tail is the smaller.
func (f Family) NormalScore(lo, hi float64) float64 {
	above := logMean(f.logAbove(lo), f.logAbove(hi))
	if above <= -math.Ln2 {
		return normalScore(above)
	}
	return -normalScore(logMean(f.logBelow(lo), f.logBelow(hi)))
}

func (f Family) logAbove(z float64) float64 {
	if math.IsInf(z, 0) {
		return math.Min(0, -z)
	}
	return f.above(z).v
}

func (f Family) logBelow(z float64) float64 {
	if math.IsInf(z, 0) {
		return math.Min(0, z)
	}
	return f.below(z).v
}

func logMean(a, b float64) float64 {
	big, small := math.Max(a, b), math.Min(a, b)
	if math.IsInf(big, -1) {
		return big
	}
	return big + math.Log1p(math.Exp(small-big)) - math.Ln2
}

// normalScore is the z with log upper tail lp, for lp up to ln 1/2 or a rounding
// above. The log tail is concave and at the start below lp, so Newton's steps
// come down on the root from one side.
func normalScore(lp float64) float64 {
	z := math.Sqrt(-2 * lp)
	if math.IsInf(z, 1) {
		return z
	}
	for range 50 {
		c := normalAbove(z)
		step := (c.v - lp) / c.d
		z -= step
		if math.Abs(step) <= 1e-14*(1+math.Abs(z)) {
			break
		}
	}
	return z
}
