package analysis

import (
	"cmp"
	"math"
	"slices"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
)

// What a card for the bench needs beside the grams: the order of addition, how
// exactly to weigh, and ounces where they are asked for.

// gramsInAnOunce is exact: an avoirdupois pound is 0.45359237 kg (international
// agreement of 1959) and has 16 ounces.
const gramsInAnOunce = 28.349523125

// ounces is nil unless they are asked for.
func (s *study) ounces(grams float64) *float64 {
	if s.out.Batch.Ounces == nil {
		return nil
	}
	oz := grams / gramsInAnOunce
	return &oz
}

// parts puts a formula in the order of addition: the fats with what is melted into
// them, the water part with what is dispersed in it, and what belongs to neither by
// its kind, for which the kitchen's own method has to say when. That thickeners,
// proteins and lecithin go into the water part is common practice, no source.
func (s *study) parts(lines []result.FormulaLine) []result.Part {
	out := []result.Part{}
	for _, name := range []string{"fat", "water", ""} {
		p := result.Part{Part: name}
		for i, l := range lines {
			if goesInto(l) == name {
				p.Lines = append(p.Lines, i)
				p.Grams += l.Grams
				p.PercentOfMix += l.PercentOfMix
			}
		}
		if len(p.Lines) == 0 {
			continue
		}
		slices.SortStableFunc(p.Lines, func(a, b int) int { return cmp.Compare(turn[lines[a].Kind], turn[lines[b].Kind]) })
		p.Ounces = s.ounces(p.Grams)
		out = append(out, p)
	}
	return out
}

func goesInto(l result.FormulaLine) string {
	switch {
	case l.Part != "":
		return l.Part
	case l.Kind == ingredient.Ionic.String(), l.Kind == ingredient.Thickener.String():
		return "water"
	}
	return ""
}

// turn is when an ingredient comes within its part.
var turn = map[string]int{ingredient.Fat.String(): 0, ingredient.Water.String(): 0,
	ingredient.Emulsifier.String(): 1, ingredient.Ionic.String(): 2, ingredient.Thickener.String(): 3, ingredient.Other.String(): 4}

// withinMost is the most that a weight may be off, as a fraction of it, however
// little the chance minds. Common practice, no source.
const withinMost = 0.05

// setWithin works out how exactly a formula is to be weighed: first how far each
// ingredient may be off alone, then the share of that which all may be off at once,
// in whatever direction the mix goes by it.
func (s *study) setWithin(lines []result.FormulaLine, f *formula.Formula) {
	n := len(f.Lines)
	exactly := make([]float64, n)
	chance, _ := s.misweighed(f, exactly)
	passes := func(by []float64) bool {
		c, clogs := s.misweighed(f, by)
		return c >= chance-slackDrop && (clogs == nil || *clogs <= clogLimitStart)
	}
	alone := make([]float64, n)
	slopes := make([][]float64, n) // of the places on the surface
	from := s.placeOff(f, exactly)
	for i, l := range f.Lines {
		only := func(grams float64) []float64 {
			by := make([]float64, n)
			by[i] = grams
			return by
		}
		most := withinMost * l.Grams
		alone[i] = most * largestShare(func(share float64) bool { return passes(only(share*most)) && passes(only(-share*most)) })
		for k, x := range s.placeOff(f, only(most)) {
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
	step := s.out.Batch.ScaleStepGrams
	for i := range lines {
		grams := formula.OnScale(int(share*alone[i]/step+1e-9), step)
		lines[i].WithinGrams = &grams
	}
}

// misweighed is the chance that a formula works whose grams are off by so much, and that
// it clogs.
func (s *study) misweighed(f *formula.Formula, by []float64) (chance float64, clogs *float64) {
	mix, beside := s.pointOff(f, by)
	return s.chain.With(beside).Chance(mix), s.clogs(s.Basis.With(beside).Features(mix))
}

// pointOff is the mix that such a formula makes, and the values of the terms beside it:
// an addition's percent is one.
func (s *study) pointOff(f *formula.Formula, by []float64) (values, besides []float64) {
	parts := make([]mix.Part, len(f.Lines))
	for i, l := range f.Lines {
		parts[i] = mix.Part{Grams: l.Grams + by[i], What: l.What}
	}
	t := mix.Total(parts)
	made := formula.Formula{BatchGrams: t.Grams, FatPercent: works.Or(t.FatPercent, nil), EmulsifierPercent: works.Or(t.EmulsifierPercent, nil)}
	if t.BlendHLB != nil {
		made.BlendHLB = &t.BlendHLB.Value
	}
	besides = slices.Clone(s.Basis.Beside)
	for k, b := range s.Terms {
		for _, v := range s.Settings {
			for i, l := range f.Lines {
				if v.Name == b.Name && v.Ingredient == l.Name {
					besides[k] += (100*parts[i].Grams/t.Grams - l.PercentOfMix) / v.Scale
				}
			}
		}
	}
	return s.valuesOf(&made), besides
}

// placeOff is the same as coordinates of the surface.
func (s *study) placeOff(f *formula.Formula, by []float64) []float64 {
	values, besides := s.pointOff(f, by)
	var out []float64
	for k, x := range values {
		out = append(out, s.Basis.Coordinates[k].Of(x))
	}
	for k, b := range s.Terms {
		if slices.Contains(s.Additions, b.Name) {
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
