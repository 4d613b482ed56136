package recalc

import (
	"testing"

	"foamfield/ingest/column"
)

// TestHundred: what all else is reckoned from, and a 100 that is of something else.
func TestHundred(t *testing.T) {
	for text, want := range map[string]column.Basis{
		"Reckoned like bread, milk = 100":            column.OfWater,
		"percent of the bakers (whole milk = 100 %)": column.OfWater,
		"shares, water = 100 Cream %":                column.OfWater,
		"all per cent here: butter is 100":           column.OfFat,
		"ghee = 100 % fat":                           column.NoBasis,
		"the oil is 100 % (pure)":                    column.NoBasis,
		"milk = 100 g":                               column.NoBasis,
		"water is 100 °C":                            column.NoBasis,
		"score = 100":                                column.NoBasis,
		"milk = 100.5":                               column.NoBasis,
	} {
		if got := hundred(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
