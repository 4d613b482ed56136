package regress

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// SmallestShown is how many standard errors apart two things must be for Student's
// two-sided test at 0.05 to find it 8 times in 10.
func SmallestShown(df int) float64 {
	critical := distuv.StudentsT{Sigma: 1, Nu: float64(df)}.Quantile(0.975)
	// The test statistic is a shifted normal over s, an estimated standard error in
	// true ones: the power is integrated over s.
	chi := distuv.ChiSquared{K: float64(df)}
	const nodes = 300
	at, weight := make([]float64, nodes), make([]float64, nodes)
	quad.Legendre{}.FixedLocations(at, weight, 0, math.Sqrt(chi.Quantile(1-1e-12)/float64(df)))
	for i, s := range at {
		weight[i] *= 2 * float64(df) * s * chi.Prob(float64(df)*s*s)
	}
	power := func(shift float64) (p float64) {
		for i, s := range at {
			p += weight[i] * (distuv.UnitNormal.CDF(shift-critical*s) + distuv.UnitNormal.CDF(-shift-critical*s))
		}
		return p
	}
	low, high := 0.0, 40.0
	for high-low > 1e-9 {
		if mid := (low + high) / 2; power(mid) < 0.8 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
