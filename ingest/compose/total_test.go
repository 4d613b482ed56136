package compose

import (
	"math"
	"testing"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"

	"pgregory.net/rapid"
)

// dose is an amount in percent of a basis, in grams for NoBasis.
func dose(kind ingredient.Kind, amount float64, basis column.Basis) Dose {
	return Dose{What: &ingredient.Ingredient{Kind: kind}, Amount: amount, Basis: basis, InGrams: basis == column.NoBasis}
}

// Common practice: 20 g of flakes in 250 g oil is 8 % of the oil; 1 g in 250 g
// water phase is 0.4 %.
func TestPercentsOfParts(t *testing.T) {
	r := &Recipe{Doses: []Dose{
		dose(ingredient.Fat, 250, column.NoBasis), dose(ingredient.Water, 250, column.NoBasis),
		dose(ingredient.Emulsifier, 8, column.OfFat), dose(ingredient.Emulsifier, 0.4, column.OfWater),
	}}
	all := total(r, sum(r.Doses), false)
	if !all.ok || math.Abs(all.batch-521) > 1e-9 || math.Abs(all.gramsOf(&r.Doses[2])-20) > 1e-9 || math.Abs(all.gramsOf(&r.Doses[3])-1) > 1e-9 {
		t.Errorf("%+v", all)
	}
}

// Grams to percent and back, whatever the doses are percents of, whether the batch
// is logged or not, and with the water by difference.
func TestTotalRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kinds := []ingredient.Kind{ingredient.Fat, ingredient.Water, ingredient.Emulsifier, ingredient.Ionic, ingredient.Other}
		weighed := []Dose{dose(ingredient.Fat, 100, column.NoBasis), dose(ingredient.Water, 100, column.NoBasis)}
		for range rapid.IntRange(0, 6).Draw(t, "more") {
			weighed = append(weighed, dose(rapid.SampledFrom(kinds).Draw(t, "kind"), rapid.Float64Range(0, 200).Draw(t, "g"), column.NoBasis))
		}
		s := sum(weighed)
		basis := map[column.Basis]float64{column.OfMix: s.all.grams, column.OfFat: s.fat.grams, column.OfWater: s.water.grams}
		r := &Recipe{}
		var want []float64
		for i, d := range weighed {
			bases := []column.Basis{column.NoBasis, column.OfMix, column.OfFat, column.OfWater}
			switch {
			case i < 2:
				bases = bases[:1]
			case d.What.Kind == ingredient.Fat || d.What.Kind == ingredient.Water:
				bases = bases[:2]
			}
			if b := rapid.SampledFrom(bases).Draw(t, "basis"); b != column.NoBasis {
				d = dose(d.What.Kind, 100*d.Amount/basis[b], b)
			}
			r.Doses, want = append(r.Doses, d), append(want, weighed[i].Amount)
		}
		hold := func(all whole) {
			for i := range r.Doses {
				if got := all.gramsOf(&r.Doses[i]); !all.ok || math.Abs(got-want[i]) > 1e-8*max(1, want[i]) {
					t.Fatalf("%+v of %+v is %v g, want %v", r.Doses[i], all, got, want[i])
				}
			}
		}
		hold(total(r, sum(r.Doses), false))
		r.Batch = Known{Value: s.all.grams, Col: 1}
		hold(total(r, sum(r.Doses), false))
		r.Doses, want = append(r.Doses[:1:1], r.Doses[2:]...), append(want[:1:1], want[2:]...)
		all := total(r, sum(r.Doses), true)
		hold(all)
		if math.Abs(all.byDifference-100) > 1e-7 {
			t.Fatalf("water by difference %v, want 100", all.byDifference)
		}
	})
}
