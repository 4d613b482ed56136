package answers

import (
	"math"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
	"foamfield/analysis/works"
)

// reference is the mix that figures fix their other variables at: the surest
// start, or else the best trial made.
func reference(s *Ground, starts []result.Start) []float64 {
	if len(starts) > 0 {
		return s.Values(starts[0].Mix)
	}
	if best := Best(s.Surface); best != nil && best.Mix != nil {
		return best.Mix
	}
	return s.OnSurface()[0].Mix
}

// Best is the best trial made, as a cook would say: one that worked before one
// that may have, those made and worked more often first, then the longest hold,
// then the most fat. Nil if nothing came out.
func Best(s *surface.Surface) *surface.Placed {
	ahead := map[int]float64{} // of every formula, how many more times it worked than failed
	for i := range s.Trials {
		switch o := &s.Trials[i]; o.Works {
		case works.Yes:
			ahead[o.Group]++
		case works.No:
			ahead[o.Group]--
		}
	}
	rank := func(t *surface.Placed) [5]float64 {
		r := [5]float64{map[works.Tri]float64{works.Yes: 2, works.Unknown: 1}[t.Works], ahead[t.Group]}
		if t.Hold != nil {
			r[2] = t.Hold.Low
		}
		if t.Drained != nil && !math.IsInf(t.Drained.High, 1) {
			r[3] = -t.Drained.High
		}
		r[4] = works.Or(t.FatPercent, nil)
		return r
	}
	var best *surface.Placed
	var top [5]float64
	for i := range s.Trials {
		t := &s.Trials[i]
		if works.CameOut(t.Trial) != works.Yes || t.Flagged != "" || works.Broke(t.Trial) == works.Yes {
			continue
		}
		r := rank(t)
		if best == nil || before(r, top) {
			best, top = t, r
		}
	}
	return best
}

func before(a, b [5]float64) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] > b[i]
		}
	}
	return false
}

func bestSeen(s *surface.Surface, scale *weigh.Scale) *result.BestSeen {
	t := Best(s)
	if t == nil {
		return nil
	}
	out := &result.BestSeen{At: t.At.String(), ID: t.ID, Works: t.Works.Pointer(), Mix: s.MixOf(t),
		HoldMinutes: works.Interval(t.Hold), Drained: works.Interval(t.Drained), Ingredients: scale.AsMade(t)}
	for i := range s.Trials {
		if s.Trials[i].Group == t.Group {
			out.MadeTimes++
		}
	}
	return out
}
