package compose

import (
	"testing"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
)

// TestWeighedAs: which percents say the share of what was weighed once more, of how many grams.
func TestWeighedAs(t *testing.T) {
	named := func(name string, kind ingredient.Kind, amount float64, basis column.Basis) Dose {
		d := dose(kind, amount, basis)
		d.What.Name = name
		return d
	}
	weighed := []Dose{named("seed oil", ingredient.Fat, 120, column.NoBasis), named("olive oil", ingredient.Fat, 30, column.NoBasis),
		named("juice", ingredient.Water, 145, column.NoBasis), named("sucrose ester", ingredient.Emulsifier, 5, column.NoBasis)}
	for _, c := range []struct {
		share  Dose
		batch  float64
		grams  float64
		double bool
	}{
		{named("olive oil", ingredient.Fat, 10, column.OfMix), 0, 30, true},
		{named("olive oil", ingredient.Fat, 20, column.OfFat), 0, 30, true},
		{named("oil", ingredient.Fat, 50, column.OfMix), 0, 150, true},
		{named("oil", ingredient.Fat, 40, column.OfMix), 0, 150, true}, // and they differ, which is said
		{named("butter", ingredient.Fat, 50, column.OfMix), 0, 150, true},
		{named("butter", ingredient.Fat, 40, column.OfMix), 0, 0, false},
		{named("butter", ingredient.Fat, 37.5, column.OfMix), 400, 150, true},
		{named("water", ingredient.Water, 48.3, column.OfMix), 0, 145, true},
		{named("water", ingredient.Water, 20, column.OfMix), 0, 0, false},
		{named("water", ingredient.Water, 48.3, column.OfFat), 0, 0, false},
		{named("glycerol monostearate", ingredient.Emulsifier, 1.7, column.OfMix), 0, 0, false},
		{named("starch", ingredient.Other, 48.3, column.OfMix), 0, 0, false},
	} {
		r := &Recipe{Doses: append(weighed[:len(weighed):len(weighed)], c.share)}
		if c.batch > 0 {
			r.Batch = Known{Value: c.batch, Col: 9}
		}
		grams, double := weighedAs(r, c.share)
		if double != c.double || double && grams != c.grams {
			t.Errorf("%g %% of %s: %g g, %v; want %g g, %v", c.share.Amount, c.share.What.Name, grams, double, c.grams, c.double)
		}
	}
}
