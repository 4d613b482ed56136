package column

import (
	"strings"
	"testing"
)

// TestFactors: the letters of a design before the names of its factors and results.
func TestFactors(t *testing.T) {
	for headers, want := range map[string]string{
		"run | A: Fat, % of mix | B: Emulsifier, % of mix | C: HLB of blend | Y1: hold, min | Y2: drained, % at 20 min": "trial, fat percent, emulsifier, all together, blend HLB, hold, drained",
		"run | X1 = fat % | X2 = emulsifier % | Y₁: hold (min)":                                                         "trial, fat percent, emulsifier, all together, hold",
		"Lauf | Faktor A: Fett % | Faktor B: Emulgator % | Antwort 1: Standzeit (min)":                                  "trial, fat percent, emulsifier, all together, hold",
		"run | Factors / A: fat % | Factors / B: emulsifier % | Response / R1: hold (min)":                              "trial, fat percent, emulsifier, all together, hold",
		"run | A: GMS g | B: PS80 g":       "trial, amount of an ingredient, amount of an ingredient",
		"run | hold min | A: HLB | B: HLB": "trial, hold, HLB of an ingredient, HLB of an ingredient",
		"run | fat % | C: hold min":        "trial, fat percent, not used",
	} {
		var got []string
		for _, m := range ReadAll(strings.Split(headers, " | ")) {
			got = append(got, m.Role.String())
		}
		if strings.Join(got, ", ") != want {
			t.Errorf("%s: %s, want %s", headers, strings.Join(got, ", "), want)
		}
	}
}

// TestBesideItsHLB: the grams of what has an HLB of its own, by a name that could be a minute.
func TestBesideItsHLB(t *testing.T) {
	for headers, want := range map[string]string{
		"run | butter g | T60 g | T60 HLB":              "T60",
		"run | butter g | T60 % of mix | T60 HLB":       "T60",
		"run | butter g | T60 g | hold min | GMS HLB":   "",
		"run | butter g | T60 min | hold min | T60 HLB": "",
		"run | butter g | T60 g | hold min | T6 HLB":    "",
	} {
		if m := ReadAll(strings.Split(headers, " | "))[2]; m.Ingredient != want || (m.Role == IngredientAmount) != (want != "") {
			t.Errorf("%s: %s %q, want %q", headers, m.Role, m.Ingredient, want)
		}
	}
}

// TestMeanOf: what a mean was taken of says nothing more.
func TestMeanOf(t *testing.T) {
	for header, want := range map[string]Role{
		"hold min (mean of A and B)": Hold, "hold (min), average of 3 readings": Hold, "Standzeit min (Mittelwert aus 2 Messungen)": Hold, "tenue (min) (moyenne des deux siphons)": Hold,
		"aguante min (media de las dos lecturas)": Hold, "drained % (mean of 1, 2 and 3)": DrainedAmount,
		"hold min (mean of the panel)": None, "hold min (mean of A and butter)": None, "hold siphon A, min": None,
	} {
		if m := Read(header); m.Role != want {
			t.Errorf("%s: %s, want %s", header, m.Role, want)
		}
	}
}
