package record

import (
	"slices"
	"testing"

	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

// TestPointOfRepeat: what drained of four makings, the last two of one formula; a point is asked of where
// these are ten times apart, and the grams were measured.
func TestPointOfRepeat(t *testing.T) {
	for _, c := range []struct {
		drained []float64
		want    units.Dimension
		asked   bool
	}{
		{[]float64{21, 9.5, 3, 25}, units.Mass, true},
		{[]float64{21, 9.5, 3, 2.5}, units.Mass, false},
		{[]float64{21, 9.5, 3, 9}, units.Mass, false},
		{[]float64{21, 9.5, 3, 25}, units.Percent, false}, // worked out: its sum says more
	} {
		a, b := numbers(2, column.IngredientAmount, 90, 90, 90, 90), numbers(3, column.IngredientAmount, 5, 4, 3, 3)
		a.Field, b.Field = &scheme.Field{InGrams: true}, &scheme.Field{InGrams: true}
		d := numbers(4, column.DrainedAmount, c.drained...)
		d.Field = &scheme.Field{Want: c.want}
		table := tableOf(a, b, d)
		r := fresh()
		found := slices.ContainsFunc([]int{2, 3}, func(i int) bool { return r.slipOfRepeat(table, d, i, massUnits) })
		if found != c.asked {
			t.Errorf("%v in %v: %v", c.drained, c.want, r.out)
		}
	}
}

// TestOddOfTwo: of two makings sixty times apart, the one that is far from all others is asked of.
func TestOddOfTwo(t *testing.T) {
	for _, c := range []struct {
		holds []float64
		asked int // the row, -1 for none
	}{
		{[]float64{9, 15, 0.5, 28}, 2},
		{[]float64{9, 15, 28, 0.5}, 3},
		{[]float64{0.3, 0.4, 0.5, 28}, 3},
		{[]float64{9, 15, 27, 28}, -1},
	} {
		a, b := numbers(2, column.IngredientAmount, 60, 80, 90, 90), numbers(3, column.IngredientAmount, 5, 4, 3, 3)
		a.Field, b.Field = &scheme.Field{InGrams: true}, &scheme.Field{InGrams: true}
		hold := numbers(4, column.Hold, c.holds...)
		table := tableOf(a, b, hold)
		r, got := fresh(), -1
		for _, i := range farFirst(hold) {
			if got < 0 && r.slipOfRepeat(table, hold, i, timeUnits) {
				got = i
			}
		}
		if got != c.asked {
			t.Errorf("%v: row %d, want %d", c.holds, got, c.asked)
		}
	}
}
