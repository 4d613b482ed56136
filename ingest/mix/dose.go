package mix

import (
	"fmt"
	"slices"

	"foamfield/ingest/ingredient"
)

// Basis says what a logged percent is a percent of.
type Basis uint8

// The bases: all that goes into the canister; the fat ingredients as weighed;
// the water-part ingredients, without emulsifiers.
const (
	OfMix Basis = iota
	OfFat
	OfWater
)

var basisNames = [...]string{"% of mix", "% of fat", "% of water"}

// String is the basis as a person would type it.
func (b Basis) String() string { return basisNames[b] }

// Grams is the basis in a mix: what 100 % of it weighs.
func (b Basis) Grams(t Totals) float64 {
	switch b {
	case OfFat:
		return t.FatPartGrams
	case OfWater:
		return t.WaterPartGrams
	}
	return t.Grams
}

// Dose is an ingredient given as a percent.
type Dose struct {
	Percent float64
	Basis   Basis
	What    ingredient.Ingredient
}

// BadDose is a set of percents that no mix can have.
type BadDose struct{ Reason string }

func (e *BadDose) Error() string { return e.Reason }

// Weigh turns doses into grams: the weighed parts first, then one part for each
// dose, in their order; fats and waters are dosed in % of mix only. The mix's total is the weighed parts and the doses
// together, unless batch is more than 0: then it is the batch, which the parts
// must add up to (within 1e-9 of it) or stay below (when water is not logged).
func Weigh(weighed []Part, doses []Dose, batch float64) ([]Part, error) {
	// With T the total, F and W the fat and water parts: T = weighed + ΣpT + ΣpF +
	// ΣpW, where F and W hold doses in % of mix. Linear in T.
	var ofMix []Part           // the doses in % of mix, as they stand in 1 g of it
	var onFat, onWater float64 // doses on the parts
	for _, d := range doses {
		switch d.Basis {
		case OfMix:
			ofMix = append(ofMix, Part{Grams: d.Percent / 100, What: d.What})
		case OfFat:
			onFat += d.Percent / 100
		case OfWater:
			onWater += d.Percent / 100
		}
		if d.Basis != OfMix && (d.What.Kind == ingredient.Fat || d.What.Kind == ingredient.Water) {
			return nil, &BadDose{fmt.Sprintf("%s is itself a fat or water: give its grams, or its %% of mix", d.What.Name)}
		}
	}
	base, inOne := Total(weighed), Total(ofMix)
	fixed := base.Grams + onFat*base.FatPartGrams + onWater*base.WaterPartGrams
	share := inOne.Grams + onFat*inOne.FatPartGrams + onWater*inOne.WaterPartGrams
	total := batch
	if total <= 0 {
		if share >= 1 {
			return nil, &BadDose{fmt.Sprintf("the percents leave no room for the rest of the mix: they come to %.4g %% of it", 100*share)}
		}
		total = fixed / (1 - share)
	}
	if sum := fixed + share*total; sum > total*(1+1e-9) {
		return nil, &BadDose{fmt.Sprintf("the ingredients come to %.5g g, more than the batch of %.5g g", sum, total)}
	}
	whole := Totals{
		Grams:          total,
		FatPartGrams:   base.FatPartGrams + inOne.FatPartGrams*total,
		WaterPartGrams: base.WaterPartGrams + inOne.WaterPartGrams*total,
	}
	parts := slices.Clone(weighed)
	for _, d := range doses {
		parts = append(parts, Part{Grams: d.Percent / 100 * d.Basis.Grams(whole), What: d.What})
	}
	return parts, nil
}
