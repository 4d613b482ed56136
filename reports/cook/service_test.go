package cook

import (
	"testing"

	"foamfield/analysis/result"
)

func TestUntriedFills(t *testing.T) {
	litre, half := 1.0, 0.5
	for _, c := range []struct {
		fills []result.Fill
		want  string
	}{
		{[]result.Fill{{Grams: 400, Beyond: true}, {Grams: 400, Beyond: true}}, "How large these canisters are is not said, so no trial tells whether so much goes in."},
		{[]result.Fill{{Canister: "1 L", Litres: &litre, Beyond: true}, {Canister: "1 L", Litres: &litre, Beyond: true}, {Canister: "0.5 L", Litres: &half}}, "No trial had as much in a canister of 1 L."},
		{[]result.Fill{{Canister: "1 L", Litres: &litre, Beyond: true}, {Canister: "0.5 L", Litres: &half, Beyond: true}}, "No trial had as much in a canister of 1 L or 0.5 L."},
	} {
		if got := untried(c.fills); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
