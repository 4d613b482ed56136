package cook

import (
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// TestMarkingGoesWithTheFill: a rest in the fridge has nothing to do with the canister's marking.
func TestMarkingGoesWithTheFill(t *testing.T) {
	for name, want := range map[string]bool{"chargers": true, "fill_grams": true, "rest_minutes": false} {
		b := pages{mixes.Run{Run: say.Run{R: &result.Results{}}}}
		said := b.mindful("mix", result.Mix{Extras: map[string]float64{name: 1}})[0].String()
		if got := strings.Contains(said, "marking"); got != want {
			t.Errorf("%s: %q", name, said)
		}
	}
}
