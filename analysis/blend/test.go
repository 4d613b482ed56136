package blend

import (
	"math"

	"foamfield/analysis/plan"
	"foamfield/analysis/regress"
)

// Test is a way to find out whether a stand-in does: mixes of the old and of the new by
// turns, all else alike, in one day.
type Test struct {
	Each  int        // mixes of either
	Turns []bool     // in the order of making: whether it is the new one
	Shows [2]float64 // the factor between the two holds that would show 8 times in 10, at the least and the most scatter
}

// HalfAndHalf is a test of so many mixes of each: old, new, new, old and so on, so that a
// day that drifts does not favour either.
func HalfAndHalf(each int) Test {
	t := Test{Each: each}
	for i := range 2 * each {
		t.Turns = append(t.Turns, i%4 == 1 || i%4 == 2)
	}
	for i, s := range plan.Scatter {
		sd := math.Sqrt(math.Log1p(s * s)) // of ln hold, where the holds vary by s of their mean
		t.Shows[i] = math.Exp(regress.SmallestShown(2*each-2) * sd * math.Sqrt(2/float64(each)))
	}
	return t
}
