package ingest

import (
	"math"
	"path/filepath"
	"strings"
	"testing"
)

// TestBatchSaid: the mass of every mix that a line beside the table says is used where percents
// stand beside grams, or the water is not logged; not where the masses are a whole by
// themselves or a column says the batch.
func TestBatchSaid(t *testing.T) {
	for _, c := range []struct {
		name, line, table string
		fat, emulsifier   []float64 // percent; NaN = not known
		said              bool
	}{
		{"percents beside grams", "Each mix 250 g in all.", `no | walnut oil % | emulsifier g | HLB | came out | hold min
1 | 44 | 5 | 8 | yes | 14
2 | 50 | 6 | 9 | yes | 18
3 | 55 | 7.5 | 9 | no |`, []float64{44, 50, 55}, []float64{2, 2.4, 3}, true},
		{"single emulsifiers", "Every mix 250 g.", `no | walnut oil % | GMS g | polysorbate 80 g | came out | hold min
1 | 44 | 3 | 2 | yes | 14
2 | 50 | 4 | 2 | yes | 18
3 | 55 | 4.5 | 3 | no |`, []float64{44, 50, 55}, []float64{2, 2.4, 3}, true},
		{"made up with water", "Every mix made up with water to 250 g.", `no | walnut oil % | emulsifier g | HLB | came out | hold min
1 | 44 | 5 | 8 | yes | 14
2 | 50 | 6 | 9 | yes | 18
3 | 55 | 7.5 | 9 | no |`, []float64{44, 50, 55}, []float64{2, 2.4, 3}, true},
		{"no water logged", "All batches 250 g", `no | walnut oil g | emulsifier g | HLB | came out | hold min
1 | 110 | 5 | 8 | yes | 14
2 | 125 | 6 | 9 | yes | 18
3 | 137.5 | 7.5 | 9 | no |`, []float64{44, 50, 55}, []float64{2, 2.4, 3}, true},
		{"masses of their own", "All batches 250 g", `no | walnut oil g | cider g | emulsifier g | HLB | came out | hold min
1 | 88 | 108 | 4 | 8 | yes | 14
2 | 100 | 95.2 | 4.8 | 9 | yes | 18
3 | 110 | 84 | 6 | 9 | no |`, []float64{44, 50, 55}, []float64{2, 2.4, 3}, false},
		{"a column of batches", "All batches 250 g", `no | walnut oil % | emulsifier g | batch g | HLB | came out | hold min
1 | 44 | 4 | 200 | 8 | yes | 14
2 | 50 | 4.8 | 200 | 9 | yes | 18
3 | 55 | 6 | 200 | 9 | no |`, []float64{44, 50, 55}, []float64{2, 2.4, 3}, false},
		{"of foam", "250 g of foam each time", `no | walnut oil % | emulsifier g | HLB | came out | hold min
1 | 44 | 5 | 8 | yes | 14
2 | 50 | 6 | 9 | yes | 18
3 | 55 | 7.5 | 9 | no |`, []float64{44, 50, 55}, []float64{math.NaN(), math.NaN(), math.NaN()}, false},
	} {
		log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"log", c.line + "\n" + c.table})}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		number := func(v *float64) float64 {
			if v == nil {
				return math.NaN()
			}
			return *v
		}
		alike := func(a, b float64) bool { return math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) < 1e-6 }
		for i := range c.fat {
			x := &log.Trials[i]
			if f, e := number(x.FatPercent), number(x.EmulsifierPercent); !alike(f, c.fat[i]) || !alike(e, c.emulsifier[i]) {
				t.Errorf("%s, trial %d: fat %g %%, emulsifier %g %%; want %g and %g", c.name, i+1, f, e, c.fat[i], c.emulsifier[i])
			}
		}
		said := 0
		for _, p := range log.Problems {
			if p.Kind == "said beside the table" && strings.Contains(p.Read, "every mix is taken as") {
				said++
			}
		}
		if (said == 1) != c.said || said > 1 {
			t.Errorf("%s: said %d times, want %v", c.name, said, c.said)
		}
	}
}
