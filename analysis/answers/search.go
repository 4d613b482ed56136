package answers

import (
	"math"
	"slices"

	"foamfield/analysis/region"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/floats"
)

// searchOf searches where one way was tried.
func searchOf(s *Ground, w surface.Way) *region.Search {
	var mixes, flagged [][]float64
	for _, t := range w.Trials {
		if t.Flagged == "" {
			mixes = append(mixes, t.Mix)
		} else {
			flagged = append(flagged, t.Mix)
		}
	}
	if len(mixes) == 0 {
		mixes = flagged
	}
	tested := region.NewTested(s.Basis, mixes, priorWeight)
	kept := s.Scale.KeepsLimits()
	s.Kept = func(mix []float64) bool { return kept == nil || kept(mix) }
	return region.NewSearch(s.Chain, tested, region.Rules{Allowed: func(p region.Point) bool {
		return p.Core && s.PointClogs(p) <= clogSearched && s.Kept(p.Mix)
	}, Known: known(s.Basis, w)})
}

// stray is how much a mix's chance is marked down with its mean squared distance, in half
// ranges, from the few nearest that worked: the highest point of a surface is where it
// flatters most, and among mixes of nearly one chance the trials themselves know best.
// On simulated kitchens of 24 trials 0.1 to 0.5 do alike: starts work more often by 0.01,
// and claims of 0.8 and more that truly are below 0.7 fall from 3 to 1 % (easy) and from
// 6 to 3 % (hard).
const (
	stray     = 0.3
	few       = 3
	mostKnown = 500 // trials that worked; of more, as many evenly among them
)

// known marks down the mixes of a way that lie far from any trial that worked.
func known(b region.Basis, w surface.Way) func([]float64) float64 {
	var worked [][]float64
	for _, t := range w.Trials {
		if t.Works == works.Yes && t.Flagged == "" {
			worked = append(worked, t.Mix)
		}
	}
	if len(worked) == 0 {
		return nil
	}
	every := (len(worked) + mostKnown - 1) / mostKnown
	var places [][]float64
	for i := 0; i < len(worked); i += every {
		places = append(places, b.Place(worked[i]))
	}
	return func(mix []float64) float64 {
		at := b.Place(mix)
		nearest := slices.Repeat([]float64{math.Inf(1)}, min(few, len(places)))
		for _, place := range places {
			d := floats.Distance(at, place, 2)
			for i := range nearest { // the few nearest, in order
				if d < nearest[i] {
					d, nearest[i] = nearest[i], d
				}
			}
		}
		return math.Exp(-stray * floats.Dot(nearest, nearest) / float64(len(nearest)))
	}
}
