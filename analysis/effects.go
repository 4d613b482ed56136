package analysis

import (
	"math"

	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"gonum.org/v1/gonum/stat/distuv"
)

const (
	effectSteps = 41
	likelyFrom  = 0.9
	clearFrom   = 0.975
)

// effects is how hold follows each variable, the others as at the given mix.
func (s *study) effects(at []float64) {
	line := s.lineOf(result.HoldMinutes)
	if line == nil {
		return
	}
	t := s.search.Tested
	z := distuv.UnitNormal.Quantile((1 + limitsLevel) / 2)
	for v := range s.vars {
		e := result.Effect{Variable: s.vars[v].Name, Fixed: s.mixOf(at)}
		low, high := -1, -1
		for i, x := range region.Steps(s.basis.Coordinates[v], t.Low[v], t.High[v], effectSteps) {
			mix := moved(at, v, x)
			m, sd := line.Level(s.basis.Features(mix))
			e.X = append(e.X, x)
			e.Hold = append(e.Hold, result.Band{Mid: math.Exp(m), Low: math.Exp(m - z*sd), High: math.Exp(m + z*sd)})
			tested := t.Holds(mix)
			e.Tested = append(e.Tested, tested)
			if tested {
				if low < 0 {
					low = i
				}
				high = i
			}
		}
		e.Change, e.Verdict, e.ShareUp = result.Band{Mid: 1, Low: 1, High: 1}, result.CannotTell, 0.5
		if high > low {
			m, sd := s.rise(at, v, e.X[low], e.X[high])
			e.Change = result.Band{Mid: math.Exp(m), Low: math.Exp(m - z*sd), High: math.Exp(m + z*sd)}
			e.ShareUp = distuv.UnitNormal.CDF(m / sd)
			s.shape(&e, at, v, low, high)
		}
		if e.Verdict == result.CannotTell {
			e.Shape = ""
		}
		s.out.Effects = append(s.out.Effects, e)
	}
}

// shape says how the hold runs from the low to the high end of the tested part: up,
// down, or up to a peak and down beyond it, whichever the trials say most firmly.
func (s *study) shape(e *result.Effect, at []float64, v, low, high int) {
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
	up, upSD := s.rise(at, v, e.X[low], e.X[peak])
	down, downSD := s.rise(at, v, e.X[peak], e.X[high])
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

// rise is the mean and spread of the change in ln hold when a variable goes from
// one value to another.
func (s *study) rise(at []float64, v int, from, to float64) (mean, sd float64) {
	a, b := s.basis.Features(moved(at, v, from)), s.basis.Features(moved(at, v, to))
	for i := range b {
		b[i] -= a[i]
	}
	return s.lineOf(result.HoldMinutes).Level(b)
}

// peaks says where each variable serves the chance best, the others as at the
// start, and how likely it is that going on to the upper end no longer lengthens
// the hold.
func (s *study) peaks(at []float64) {
	hold := s.lineOf(result.HoldMinutes)
	t := s.search.Tested
	for v := range s.vars {
		p := result.Peak{Variable: s.vars[v].Name, Best: at[v]}
		best, first, last := -1.0, 0.0, 0.0
		seen := false
		for _, x := range region.Steps(s.basis.Coordinates[v], t.Low[v], t.High[v], effectSteps) {
			mix := moved(at, v, x)
			if !t.Holds(mix) {
				continue
			}
			if !seen {
				first, seen = x, true
			}
			last = x
			if c := s.chain.Chance(mix); c > best {
				best, p.Best = c, x
			}
		}
		switch p.Best {
		case first:
			p.AtEdge = "low"
		case last:
			p.AtEdge = "high"
		}
		if hold != nil && last > p.Best {
			m, sd := s.rise(at, v, p.Best, last)
			c := distuv.UnitNormal.CDF(-m / sd)
			p.NoLongerPay = &c
		}
		s.out.Peaks = append(s.out.Peaks, p)
	}
}
