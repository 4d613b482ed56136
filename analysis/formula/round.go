package formula

import (
	"math"
	"slices"

	"foamfield/ingest/ingredient"
)

// dust is added to each ingredient's steps, so that 14.5 of them are never taken for less:
// a share that was itself weighed comes back a few last digits off. The page rounds so too.
const dust = 1e-9

// round turns shares into whole steps of the scale that add up to total; exact
// is the unrounded total in steps. All but one pool of ingredients go to the
// nearest step; the pool takes what is left, its largest remainders rounded up.
// The pool is the water part, or the fat where there is none, or everything.
func round(template []Part, shares []float64, total int, exact float64) []int {
	for _, kinds := range [][]ingredient.Kind{{ingredient.Water}, {ingredient.Fat}, nil} {
		steps := make([]int, len(shares))
		var pool []int
		rest, quota := total, 0.0
		for i, share := range shares {
			switch {
			case share <= 0:
			case kinds == nil || slices.Contains(kinds, template[i].What.Kind):
				pool = append(pool, i)
				quota += share * exact
			default:
				steps[i] = int(math.Floor(share*exact + 0.5 + dust))
				rest -= steps[i]
			}
		}
		// A pool of a few steps cannot take up the others' rounding.
		if kinds != nil && (quota < float64(len(shares)) || rest < 0) {
			continue
		}
		type part struct {
			index     int
			remainder float64
		}
		var parts []part
		for _, i := range pool {
			q := shares[i] * exact / quota * float64(rest)
			steps[i] = int(q + dust)
			parts = append(parts, part{i, q - float64(steps[i])})
		}
		for _, i := range pool {
			rest -= steps[i]
		}
		slices.SortStableFunc(parts, func(a, b part) int {
			switch {
			case a.remainder > b.remainder:
				return -1
			case a.remainder < b.remainder:
				return 1
			}
			return 0
		})
		for k := range rest {
			steps[parts[k%len(parts)].index]++
		}
		return steps
	}
	return nil
}
