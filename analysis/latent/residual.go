package latent

import "math"

// Residual is what is left of an observation once its location is taken out, in
// units of the scale: an interval like the observation itself, equal ends for an
// exact value. Score is the normal score of the middle of the probability the
// fit gives the interval: for an exact value the normal score of its place in
// the distribution, comparable across families, and drawn towards what the
// bound leaves open otherwise.
type Residual struct {
	Low, High, Score float64
}

// Residuals are those of every observation.
func (f *Fit) Residuals() []Residual {
	out := make([]Residual, f.N)
	for i, r := range f.data.rows {
		lo, hi := math.Inf(-1), math.Inf(1)
		if r.kind != atMost {
			lo = (r.lo - f.eta[i]) / f.Scale
		}
		if r.kind != atLeast {
			hi = (r.hi - f.eta[i]) / f.Scale
		}
		out[i] = Residual{Low: lo, High: hi, Score: f.Family.score(lo, hi)}
	}
	return out
}

// score is the normal score of the mean of the probabilities below lo and hi,
// formed in whichever tail is the smaller.
func (f Family) score(lo, hi float64) float64 {
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
