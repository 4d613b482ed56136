package weigh

import (
	"cmp"
	"slices"

	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
)

// What a card for the bench needs beside the grams: the order of addition, how
// exactly to weigh, and ounces where they are asked for.

// GramsInAnOunce is exact: an avoirdupois pound is 0.45359237 kg (international
// agreement of 1959) and has 16 ounces.
const GramsInAnOunce = 28.349523125

// ounces is nil unless they are asked for.
func ounces(batch result.Batch, grams float64) *float64 {
	if batch.Ounces == nil {
		return nil
	}
	oz := grams / GramsInAnOunce
	return &oz
}

// Parts puts a formula in the order of addition: the fats with what is melted into
// them, the water part with what is dispersed in it, and what belongs to neither by
// its kind, for which the kitchen's own method has to say when. That thickeners,
// proteins and lecithin go into the water part is common practice, no source.
func Parts(lines []result.FormulaLine, batch result.Batch) []result.Part {
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
		p.Ounces = ounces(batch, p.Grams)
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
