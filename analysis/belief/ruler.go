package belief

import (
	"math"
	"slices"

	"foamfield/analysis/latent"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"

	"gonum.org/v1/gonum/stat"
)

// ruler is how a result that a kitchen measures beside hold and drainage reads: a plain
// number, or a score, which is a whole number on a short scale and stands for half a
// step either side. Its line is (value - centre)/scale, of whatever unit it is.
type ruler struct {
	centre, scale float64
	half          float64 // a step of a score, halved; 0 = a plain number
	lowest, top   float64 // of a score: there it stands for everything beyond as well
}

// rulerOf reads the ruler off the trials: the middle and the spread of what was logged.
func rulerOf(s *surface.Surface, name string) ruler {
	var values []float64
	whole := true
	for i := range s.Trials {
		if v, ok := s.Trials[i].Extras[name]; ok {
			values = append(values, v)
			whole = whole && v == math.Trunc(v)
		}
	}
	r := ruler{scale: 1}
	if len(values) == 0 {
		return r
	}
	low, high := slices.Min(values), slices.Max(values)
	r.centre, r.scale = stat.MeanStdDev(values, nil)
	if whole && low >= 0 && high <= 10 {
		// Unless the header says so the scale's end is not logged: 5 or 10, from 1 or, where
		// one was given, 0.
		r.half, r.lowest, r.top = 0.5, math.Min(1, low), 5
		if high > 5 {
			r.top = 10
		}
		for _, x := range s.Extras {
			if x.Name == name && float64(x.OutOf) >= high {
				r.top = float64(x.OutOf)
			}
		}
	}
	// Equal results, or one alone, have no spread to go by: a step, or a tenth of them.
	if !(r.scale > 1e-6*math.Abs(r.centre)) {
		r.scale = math.Max(2*r.half, math.Max(0.1*math.Abs(r.centre), 1e-3))
	}
	return r
}

// seen is what a logged value says of the result.
func (r ruler) seen(v float64) latent.Obs {
	if r.half == 0 {
		return latent.Exact(v)
	}
	return latent.Score(int(v), int(r.lowest), int(r.top))
}

// Score is the scale of a score, nil of a plain number.
func (r ruler) Score() *result.Score {
	if r.half == 0 {
		return nil
	}
	return &result.Score{Lowest: r.lowest, Highest: r.top}
}

// onLine is the same on the line, as the exponentials that a line is fitted to.
func (r ruler) onLine(v float64) latent.Obs {
	o := r.seen(v)
	o.Low, o.High = math.Exp((o.Low-r.centre)/r.scale), math.Exp((o.High-r.centre)/r.scale)
	return o
}

// within is a target on the line: a score of 6 is wanted from 5 1/2 on.
func (r ruler) within(asked *result.ResultTarget) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if asked.Low != nil {
		low = (*asked.Low - r.half - r.centre) / r.scale
	}
	if asked.High != nil && (r.half == 0 || *asked.High < r.top) {
		high = (*asked.High + r.half - r.centre) / r.scale
	}
	if r.half > 0 && asked.Low != nil && *asked.Low <= r.lowest {
		low = math.Inf(-1)
	}
	return low, high
}
