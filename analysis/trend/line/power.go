package line

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	alarm = 0.05 // p below which a difference is seen
	often = 0.8  // how often one is that would most likely have been seen
)

// Power is how many standard errors two groups must be apart to be seen 8 times in 10 by a test that
// asks for so many steps at once, the others lying in the middle: the more steps, the further.
func Power(steps int) float64 {
	k := float64(steps)
	limit := distuv.ChiSquared{K: k}.Quantile(1 - alarm)
	low, high := 0.0, 1000.0
	for range 60 {
		if middle := (low + high) / 2; seenAt(k, middle, limit) < often {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Sqrt(high)
}

// seenAt is how often a chi-squared of so much noncentrality is beyond a limit: a sum over central
// ones, as often as a Poisson count of half of it says.
func seenAt(k, noncentral, limit float64) (sum float64) {
	ln := -noncentral / 2
	last := int(noncentral) + 60
	for j := range last {
		sum += math.Exp(ln) * distuv.ChiSquared{K: k + 2*float64(j)}.Survival(limit)
		ln += math.Log(noncentral/2) - math.Log(float64(j+1))
	}
	return sum
}

// Spread is how large the standard deviation of groups must be for it to be seen 8 times in 10 that
// they scatter, where each is known with an error of a variance.
func Spread(groups int, variance float64) float64 {
	chi := distuv.ChiSquared{K: math.Max(1, float64(groups-1))}
	return math.Sqrt(variance * (chi.Quantile(1-alarm)/chi.Quantile(1-often) - 1))
}
