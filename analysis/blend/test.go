package blend

import (
	"math"

	"foamfield/analysis/plan"
	"foamfield/analysis/regress"
	"foamfield/analysis/result/blended"
)

// HalfAndHalf is a test of so many mixes of each: old, new, new, old and so on, so that a
// day that drifts does not favour either.
func HalfAndHalf(each int) blended.Test {
	t := blended.Test{Each: each}
	for i := range 2 * each {
		t.Turns = append(t.Turns, i%4 == 1 || i%4 == 2)
	}
	for i, s := range plan.Scatter {
		sd := math.Sqrt(math.Log1p(s * s)) // of ln hold, where the holds vary by s of their mean
		t.Shows[i] = math.Exp(regress.SmallestShown(2*each-2) * sd * math.Sqrt(2/float64(each)))
	}
	return t
}
