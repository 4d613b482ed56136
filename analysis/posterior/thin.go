package posterior

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

const (
	// many is the most observations that every draw is held against, one by one.
	many = 4000
	// fewKept is about how many of more than that are.
	fewKept = 1000
)

// thinned is a density of many observations that costs as much as one of a few. Its log
// likelihood is that of all of them to second order about the mode, and what goes beyond
// that is estimated from a few: as often as an observation bends, it is one of them, and
// counts as many times as it stands for. The difference estimator of Quiroz, Kohn, Villani
// and Tran 2019, J. Am. Stat. Assoc. 114:831, with Taylor's polynomials for proxies.
// TestThinned has how far off it is.
type thinned struct {
	density // of the few
	times   []float64
	all     int

	centre []float64
	slope  []float64     // of what the few leave out, at the centre
	curve  *mat.SymDense // its negative Hessian
	each   *mat.Dense
}

// thin keeps few of the observations of a density that has its mode at centre.
func thin(d density, centre []float64, cov *mat.SymDense) *thinned {
	index, times := chosen(d.bends(centre, cov), fewKept)
	left := make([]float64, d.observations())
	for i := range left {
		left[i] = 1
	}
	for k, i := range index {
		left[i] -= times[k]
	}
	out := &thinned{density: d.some(index), times: times, all: d.observations(), centre: centre}
	_, out.slope, out.curve = d.likelihood(centre, left)
	return out
}

func (t *thinned) observations() int { return t.all }

func (t *thinned) batch(draws *mat.Dense, logDensity []float64, _ *mat.Dense) {
	n, _ := draws.Dims()
	if t.each == nil || t.each.RawMatrix().Rows < n {
		t.each = mat.NewDense(n, len(t.times), nil)
	}
	each := t.each.Slice(0, n, 0, len(t.times)).(*mat.Dense)
	t.density.batch(draws, logDensity, each)
	by := make([]float64, len(t.centre))
	for k := range n {
		floats.SubTo(by, draws.RawRowView(k), t.centre)
		sum := dot(by, t.slope) - Form(by, t.curve)/2
		for i, v := range each.RawRowView(k) {
			sum += (t.times[i] - 1) * v // once it is in the density of the few
		}
		logDensity[k] += sum
	}
}

// chosen is about n places of sizes, each as often as its size bids but once at most, and
// how many places each stands for.
func chosen(sizes []float64, n int) (index []int, times []float64) {
	// Nothing is so straight that it need not be looked at.
	least := 0.1 * floats.Sum(sizes) / float64(len(sizes))
	order := make([]int, len(sizes))
	rest := 0.0
	for i := range sizes {
		order[i] = i
		rest += sizes[i] + least
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sizes[b], sizes[a]) })
	left, reached := float64(n), 0.5
	for k, i := range order {
		share := (sizes[i] + least) * left / rest
		if share >= 1 && k == len(index) { // the largest are all taken
			left, rest = left-1, rest-sizes[i]-least
			index, times = append(index, i), append(times, 1)
			continue
		}
		if reached += share; reached >= 1 {
			reached--
			index, times = append(index, i), append(times, 1/math.Min(share, 1))
		}
	}
	return index, times
}

// evenly is m of n places.
func evenly(n, m int) []int {
	out := make([]int, m)
	for k := range out {
		out[k] = k * n / m
	}
	return out
}

// pick is the places of a list.
func pick[T any](from []T, index []int) []T {
	out := make([]T, len(index))
	for k, i := range index {
		out[k] = from[i]
	}
	return out
}
