package answers

import (
	"math"
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/posterior"
	"foamfield/analysis/region"
	"foamfield/analysis/result"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	effectSteps = 41
	likelyFrom  = 0.9
	clearFrom   = 0.975
	peakDraws   = 400
)

// effects is how hold follows each variable, the others as at the given mix.
func effects(s *Ground, at []float64) (out []result.Effect) {
	line := s.LineOf(result.HoldMinutes)
	if line == nil {
		return nil
	}
	t := s.Search.Tested
	for v := range s.Vars {
		xs := region.Steps(s.Basis.Coordinates[v], t.Low[v], t.High[v], effectSteps)
		e := effect(line, s.Vars[v], xs, func(x float64) ([]float64, bool) {
			mix := moved(at, v, x)
			return s.Basis.Features(mix), t.Holds(mix)
		})
		e.Fixed = s.Mix(at)
		out = append(out, e)
	}
	for i, v := range s.Settings {
		xs := region.Steps(region.Coordinate{}, v.Low, v.High, effectSteps)
		e := effect(line, v, xs, func(x float64) ([]float64, bool) {
			return s.Basis.With(moved(s.Basis.Beside, i, (x-v.Centre)/v.Scale)).Features(at), true
		})
		e.Fixed = s.Mix(at)
		out = append(out, e)
	}
	return out
}

// effect is the hold over the values of one variable; feature gives the features there
// and whether that was tested.
func effect(line *posterior.LinePosterior, v result.Variable, xs []float64, feature func(x float64) ([]float64, bool)) result.Effect {
	z := distuv.UnitNormal.Quantile((1 + belief.Level) / 2)
	e := result.Effect{Variable: v.Name, X: xs}
	features := make([][]float64, len(xs))
	low, high := -1, -1
	for i, x := range xs {
		f, tested := feature(x)
		m, sd := line.Level(f)
		features[i] = f
		e.Hold = append(e.Hold, result.Band{Mid: math.Exp(m), Low: math.Exp(m - z*sd), High: math.Exp(m + z*sd)})
		e.Tested = append(e.Tested, tested)
		if tested {
			if low < 0 {
				low = i
			}
			high = i
		}
	}
	e.Change, e.Verdict, e.ShareUp = result.Band{Mid: 1, Low: 1, High: 1}, result.CannotTell, 0.5
	if high > low && e.X[high] > e.X[low] { // the way that starts are made in may have one value only
		m, sd := rise(line, features[low], features[high])
		e.Change = result.Band{Mid: math.Exp(m), Low: math.Exp(m - z*sd), High: math.Exp(m + z*sd)}
		e.ShareUp = distuv.UnitNormal.CDF(m / sd)
		shape(line, &e, features, low, high)
	}
	if e.Verdict == result.CannotTell {
		e.Shape = ""
	}
	return e
}

// shape says how the hold runs from the low to the high end of the tested part: up,
// down, or up to a peak and down beyond it, whichever the trials say most firmly.
func shape(line *posterior.LinePosterior, e *result.Effect, features [][]float64, low, high int) {
	e.Shape = result.Rises
	if e.Change.Mid < 1 {
		e.Shape = result.Falls
	}
	e.Verdict = verdict(math.Max(e.ShareUp, 1-e.ShareUp))
	peak := low
	for i := low; i <= high; i++ {
		if e.Hold[i].Mid > e.Hold[peak].Mid {
			peak = i
		}
	}
	if peak == low || peak == high || e.Verdict == result.Clear {
		return
	}
	up, upSD := rise(line, features[low], features[peak])
	down, downSD := rise(line, features[peak], features[high])
	// both sides must hold, so the less sure one counts
	if sure := math.Min(distuv.UnitNormal.CDF(up/upSD), distuv.UnitNormal.CDF(-down/downSD)); verdict(sure) != result.CannotTell {
		e.Shape, e.Peak, e.Verdict = result.Peaks, &peak, verdict(sure)
	}
}

func verdict(sure float64) result.Verdict {
	switch {
	case sure >= clearFrom:
		return result.Clear
	case sure >= likelyFrom:
		return result.Likely
	}
	return result.CannotTell
}

func moved(at []float64, v int, x float64) []float64 {
	m := append([]float64(nil), at...)
	m[v] = x
	return m
}

// rise is the mean and spread of the change in ln hold from one row of features to
// another.
func rise(line *posterior.LinePosterior, from, to []float64) (mean, sd float64) {
	change := make([]float64, len(to))
	for i := range to {
		change[i] = to[i] - from[i]
	}
	return line.Level(change)
}

// peaks says where each variable serves the chance best, the others as at the
// start, between which limits that lies, and how likely it is that going on to the upper end no longer lengthens
// the hold.
func peaks(s *Ground, at []float64) (out []result.Peak) {
	hold := s.LineOf(result.HoldMinutes)
	t := s.Search.Tested
	for v := range s.Vars {
		p := result.Peak{Variable: s.Vars[v].Name, Best: at[v]}
		best, first, last := -1.0, 0.0, 0.0
		drawn := newHighest(peakDraws)
		seen := false
		for _, x := range region.Steps(s.Basis.Coordinates[v], t.Low[v], t.High[v], effectSteps) {
			mix := moved(at, v, x)
			if !t.Holds(mix) {
				continue
			}
			if !seen {
				first, seen = x, true
			}
			last = x
			drawn.look(x, s.Draws.Believed(mix, peakDraws))
			if c := s.Chain.Chance(mix); c > best {
				best, p.Best = c, x
			}
		}
		p.Low, p.High = p.Best, p.Best
		if seen {
			p.Low, p.High = drawn.limits(belief.Level)
			p.Low, p.High = min(p.Low, p.Best), max(p.High, p.Best)
		}
		switch p.Best {
		case first:
			p.AtEdge = "low"
		case last:
			p.AtEdge = "high"
		}
		if hold != nil && last > p.Best {
			m, sd := rise(hold, s.Basis.Features(moved(at, v, p.Best)), s.Basis.Features(moved(at, v, last)))
			c := distuv.UnitNormal.CDF(-m / sd)
			p.NoLongerPay = &c
		}
		out = append(out, p)
	}
	return out
}

// highest is where each draw has its highest share among the values looked at.
type highest struct{ share, at []float64 }

func newHighest(draws int) *highest {
	h := &highest{make([]float64, draws), make([]float64, draws)}
	for k := range h.share {
		h.share[k] = -1
	}
	return h
}

func (h *highest) look(x float64, shares []float64) {
	for k, share := range shares {
		if share > h.share[k] {
			h.share[k], h.at[k] = share, x
		}
	}
}

func (h *highest) limits(level float64) (low, high float64) {
	slices.Sort(h.at)
	n := float64(len(h.at) - 1)
	return h.at[int(math.Round(n*(1-level)/2))], h.at[int(math.Round(n*(1+level)/2))]
}
