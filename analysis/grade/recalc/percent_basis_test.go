package recalc

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
)

// TestBasisOf: what a head says that its percents are of, and what it says that they are not of.
func TestBasisOf(t *testing.T) {
	for head, want := range map[string]column.Basis{
		"Emulsifier (% of the fat, not of the mix)":  column.OfFat,
		"Emulsifier % of oil (not % of total)":       column.OfFat,
		"Emulsifier (% of the mix, not of the fat)":  column.OfMix,
		"Emulsifier % of the mix":                    column.OfMix,
		"Emulsifier % of butter":                     column.OfFat,
		"Powders in % (of the milk, not of the mix)": column.OfWater,
		"Emulsifier %": column.NoBasis,
	} {
		j := &job{}
		if got := j.basisOf(&handin.Column{Header: head, Role: column.EmulsifierAmount, Field: &scheme.Field{}}); got != want {
			t.Errorf("%s: %v", head, got)
		}
	}
}
