package cook

import (
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/document"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// Nobody is told to make for guests what mostly fails.
func TestServiceOfAMixThatFails(t *testing.T) {
	for _, c := range []struct {
		chance     float64
		status     result.Status
		want, none string
	}{
		{0.9, result.Recommended, "Make 1200 g", "No grams for service"},
		{0.6, result.BestAvailable, "Make 1200 g", "No grams for service"},
		{0.4, result.Recommended, "Make 1200 g", "No grams for service"}, // somebody asked for no more
		{0.4, result.BestAvailable, "No grams for service: this mix fails more often than it works.", "Make "},
	} {
		r := &result.Results{Starts: []result.Start{{Status: c.status, Chance: result.Chance{Mean: c.chance}}},
			Service: &result.Service{Grams: 1200, From: "--batch", Ingredients: []result.FormulaLine{{Name: "cider", Grams: 1200}}, Fills: []result.Fill{{Grams: 1200}}}}
		said := ""
		for _, b := range (pages{mixes.Run{Run: say.Run{R: r}}}).service() {
			if p, ok := b.(document.Paragraph); ok {
				said += p.Text.String() + "\n"
			}
		}
		if !strings.Contains(said, c.want) || strings.Contains(said, c.none) {
			t.Errorf("%v, %s: %q", c.chance, c.status, said)
		}
	}
}

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
