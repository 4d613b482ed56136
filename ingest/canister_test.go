package ingest

import (
	"testing"

	"foamfield/ingest/canister"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// TestCanisters: what no canister takes is said, and its trial set aside.
func TestCanisters(t *testing.T) {
	batch := 600.
	for _, c := range []struct {
		size  string
		x     map[string]float64
		batch *float64
		want  string
	}{
		{"0.5 L", map[string]float64{"chargers": 2, "fill_grams": 300}, nil, ""},
		{"0.5 L", map[string]float64{"fill_grams": 300}, &batch, ""}, // what was filled in, not what was made
		{"500 ml", map[string]float64{"chargers": 3}, nil,
			"3 chargers for 0.5 L is more than two for each half litre: check against your canister's marking; no formula is built on this trial"},
		{"500", map[string]float64{"chargers": 3}, &batch,
			"600 g in a canister of 0.5 L is more than two thirds full; 3 chargers for 0.5 L is more than two for each half litre: check against your canister's marking; no formula is built on this trial"},
		{"the blue one", map[string]float64{"chargers": 8, "fill_grams": 3000}, nil, ""},
		{"", map[string]float64{"chargers": 9}, nil, "9 chargers are more than any canister takes: no formula is built on this trial"},
	} {
		x := &trial.Trial{Canister: c.size, Extras: c.x}
		x.BatchGrams = c.batch
		var sizes canister.Sizes
		why, found := sizes.Flag(&scheme.Scheme{}, 0, x)
		if why != c.want || (len(found) > 0) != (why != "") {
			t.Errorf("%s with %v: %q and %d findings, want %q", c.size, c.x, why, len(found), c.want)
		}
	}
}
