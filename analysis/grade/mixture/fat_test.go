package mixture

import (
	"math"
	"testing"

	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/ingredient"
)

// TestOtherFats: of 60 g of butter at 82 %, 60 g of cream at 36 % and 100 g of milk at 3.5 %, the
// ways in which one of them is counted at what is not its own.
func TestOtherFats(t *testing.T) {
	part := func(name string, kind ingredient.Kind, grams, fat float64) Part {
		return Part{Name: name, What: &ingredient.Ingredient{Name: name, Kind: kind}, Grams: grams, Fat: verdict.Exactly(fat)}
	}
	m := Mixture{Parts: []Part{part("butter", ingredient.Fat, 60, 82), part("cream", ingredient.Fat, 60, 36), part("milk", ingredient.Water, 100, 3.5)}, Sum: 220, total: 220}
	got := map[string]float64{}
	for _, o := range OtherFats(&m) {
		got[o.Class] = o.Grams
	}
	for class, want := range map[string]float64{
		"pure butter":         60 + 21.6 + 3.5,
		"pure cream":          49.2 + 60 + 3.5,
		"cream as butter":     49.2 + 49.2 + 3.5,
		"butter as cream":     21.6 + 21.6 + 3.5,
		"without fat of milk": 49.2 + 21.6,
	} {
		if math.Abs(got[class]-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", class, got[class], want)
		}
	}
}
