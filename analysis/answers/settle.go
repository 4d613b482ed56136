package answers

import (
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/result"
)

const (
	settledAt   = 0.9 // how sure that the long-run share reaches what is wanted
	mostConfirm = 30
)

// confirm foresees what may be said of a mix after it was made so and so many times
// more and always worked: the draws are weighed by their share to that power. The
// last entry settles it; without one no number up to 30 does.
func confirm(shares []float64, wanted float64) []result.Confirm {
	slices.Sort(shares)
	out := []result.Confirm{}
	weights := make([]float64, len(shares))
	for i := range weights {
		weights[i] = 1
	}
	for made := 0; made <= mostConfirm; made++ {
		total := 0.0
		for _, w := range weights {
			total += w
		}
		if total < 1e-200 { // no draw thinks it ever works so often
			break
		}
		c := result.Confirm{Made: made, AllWork: total / float64(len(shares)), Chance: result.Chance{Mean: weighted(shares, weights), Level: belief.Level}}
		c.Chance.MeanOfDraws = c.Chance.Mean
		c.Chance.Low = quantileOf(shares, weights, total*(1-belief.Level)/2)
		c.Chance.High = quantileOf(shares, weights, total*(1+belief.Level)/2)
		for i, v := range shares {
			if v >= wanted {
				c.ReachesWanted += weights[i] / total
			}
		}
		c.Settles = c.ReachesWanted >= settledAt
		if made <= 3 || c.Settles {
			out = append(out, c)
		}
		if c.Settles {
			break
		}
		for i, v := range shares {
			weights[i] *= v
		}
	}
	return out
}

// quantileOf is where the weights of sorted values reach a sum.
func quantileOf(sorted, weights []float64, reach float64) float64 {
	sum := 0.0
	for i, w := range weights {
		if sum += w; sum >= reach {
			return sorted[i]
		}
	}
	return sorted[len(sorted)-1]
}

func weighted(x, weights []float64) float64 {
	sum, total := 0.0, 0.0
	for k, v := range x {
		sum += v * weights[k]
		total += weights[k]
	}
	return sum / total
}
