package likeliest

import (
	"math"

	"foamfield/analysis/latent"
)

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
		if r.Kind != latent.IsAtMost {
			lo = (r.Lo - f.eta[i]) / f.Scale
		}
		if r.Kind != latent.IsAtLeast {
			hi = (r.Hi - f.eta[i]) / f.Scale
		}
		out[i] = Residual{Low: lo, High: hi, Score: f.Family.NormalScore(lo, hi)}
	}
	return out
}
