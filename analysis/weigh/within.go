package weigh

import (
	"math"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/works"
	"foamfield/ingest/mix"
)

// withinMost is the most that a weight may be off, as a fraction of it, however
// little the chance minds. Common practice, no source.
const withinMost = 0.05

// Within works out how exactly a formula is to be weighed, in grams a line: first how far
// each ingredient may be off alone, then the share of that which all may be off at once,
// in whatever direction the mix goes by it. May says of a mix and the values beside it
// whether it may still be named.
func (s *Scale) Within(f *formula.Formula, may func(mix, beside []float64) bool) []float64 {
	n := len(f.Lines)
	passes := func(by []float64) bool { return may(s.Point(f, by)) }
	alone := make([]float64, n)
	slopes := make([][]float64, n) // of the places on the surface
	from := s.place(f, make([]float64, n))
	for i, l := range f.Lines {
		only := func(grams float64) []float64 {
			by := make([]float64, n)
			by[i] = grams
			return by
		}
		most := withinMost * l.Grams
		alone[i] = most * largestShare(func(share float64) bool { return passes(only(share*most)) && passes(only(-share*most)) })
		for k, x := range s.place(f, only(most)) {
			slopes[i] = append(slopes[i], x-from[k])
		}
	}
	share := 1.0
	for _, way := range directions(min(len(from), mostDirections)) {
		by := make([]float64, n)
		share = min(share, largestShare(func(share float64) bool {
			for i := range by {
				along := 0.0
				for k, d := range way {
					along += d * slopes[i][k]
				}
				by[i] = math.Copysign(share*alone[i], along)
			}
			return passes(by)
		}))
	}
	step := s.batch.ScaleStepGrams
	for i := range alone {
		alone[i] = formula.OnScale(int(share*alone[i]/step+1e-9), step)
	}
	return alone
}

// Point is the mix that a formula makes whose grams are off by so much, and the values
// of the terms beside it: an addition's percent is one.
func (s *Scale) Point(f *formula.Formula, by []float64) (values, besides []float64) {
	parts := make([]mix.Part, len(f.Lines))
	for i, l := range f.Lines {
		parts[i] = mix.Part{Grams: l.Grams + by[i], What: l.What}
	}
	t := mix.Total(parts)
	made := formula.Formula{BatchGrams: t.Grams, FatPercent: works.Or(t.FatPercent, nil), EmulsifierPercent: works.Or(t.EmulsifierPercent, nil)}
	if t.BlendHLB != nil {
		made.BlendHLB = &t.BlendHLB.Value
	}
	besides = slices.Clone(s.held)
	for k, b := range s.on.Terms {
		for _, v := range s.on.Settings {
			for i, l := range f.Lines {
				if v.Name == b.Name && v.Ingredient == l.Name {
					besides[k] += (100*parts[i].Grams/t.Grams - l.PercentOfMix) / v.Scale
				}
			}
		}
	}
	return s.Values(&made), besides
}

// place is the same as coordinates of the surface.
func (s *Scale) place(f *formula.Formula, by []float64) []float64 {
	values, besides := s.Point(f, by)
	var out []float64
	for k, x := range values {
		out = append(out, s.on.Basis.Coordinates[k].Of(x))
	}
	for k, b := range s.on.Terms {
		if slices.Contains(s.on.Additions, b.Name) {
			out = append(out, besides[k])
		}
	}
	return out
}

// mostDirections keeps their number to 3^5; further additions move the chance as the
// last direction tried happens to move them.
const mostDirections = 5

// largestShare is the largest share, from 0 to 1, up to which all passes.
func largestShare(passes func(share float64) bool) float64 {
	if passes(1) {
		return 1
	}
	low, high := 0.0, 1.0
	for range 20 {
		if mid := (low + high) / 2; passes(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// directions are those in which every one of n numbers falls, stays or rises.
func directions(n int) [][]float64 {
	out := [][]float64{{}}
	for range n {
		var longer [][]float64
		for _, d := range out {
			for _, x := range []float64{-1, 0, 1} {
				longer = append(longer, append(slices.Clone(d), x))
			}
		}
		out = longer
	}
	return out
}
