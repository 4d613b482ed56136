package record

import (
	"strconv"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// TestResultsToldTurned: texts that tell the hold of one trial to be what stands under its drainage.
// The trials are K1 to K5, but for those of numbers; K4 has a hold of 8 and 23 drained.
func TestResultsToldTurned(t *testing.T) {
	for _, c := range []struct {
		text     string
		numbered bool
		holds    []float64
		drained  []float64
		asked    bool
	}{
		{"All but the first are good (K4: 23 min).", false, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, true},
		{"K4 held 23 min, like K3", false, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, true},
		{"Versuch 4 hielt 23 min", true, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, true},
		{"trial 4 (23 min) is the one to take", true, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, true},
		{"trials 2 to 4 held 23 min", true, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, false},  // of several
		{"K4: 22 min", false, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, false},                // neither of the two
		{"K4: 8 min, 23 mL", false, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, false},          // as typed
		{"K3: 23 min", false, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, false},                // another trial
		{"K4 was blended for 23 min", false, []float64{18, 25, 21, 8, 30}, []float64{9, 5, 7, 23, 4}, false}, // no hold
		{"K4: 23 min", false, []float64{118, 125, 121, 108, 130}, []float64{9, 5, 7, 23, 4}, false},          // it would fit neither column
		{"K4: 23 min", false, []float64{18, 25, 21, 80, 30}, []float64{9, 5, 7, 23, 4}, false},               // nor would the other
	} {
		powder := numbers(2, column.IngredientAmount, 3, 3, 3, 3, 3)
		powder.Field = &scheme.Field{InGrams: true}
		hold, drained := numbers(3, column.Hold, c.holds...), numbers(4, column.DrainedAmount, c.drained...)
		table := tableOf(powder, hold, drained)
		for i, x := range table.Trials {
			x.ID = "K" + strconv.Itoa(i+1)
			if c.numbered {
				x.ID = strconv.Itoa(i + 1)
			}
		}
		w := &handin.Work{Tables: []*handin.Table{table}, Words: []handin.Phrase{{At: trial.Place{Row: 12, Col: 1}, Text: c.text}}}
		r := fresh()
		if r.resultsToldTurned(w, table); len(r.out) > 0 != c.asked || c.asked && (r.meant[hold.Cells[3].At] != 23 || r.meant[drained.Cells[3].At] != 8) {
			t.Errorf("%q %v %v: %v", c.text, c.holds, c.drained, r.out)
		}
	}
}
