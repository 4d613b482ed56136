// Package series knows numbers in the order of time and nothing else: a chart of single
// observations, a slope that no wild value moves, and whether they keep rising.
package series

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// d2 is what the mean range of two normal values is in standard deviations, 2/√π
// (NIST/SEMATECH e-Handbook, 6.3.2.2).
const d2 = 1.128

// Chart is the limits of single observations: three standard deviations either side, by the
// mean move from one to the next.
type Chart struct{ Centre, Low, High, Move float64 }

// Individuals is the chart of values in the order of time; false below two.
func Individuals(values []float64) (Chart, bool) {
	n := len(values)
	if n < 2 {
		return Chart{}, false
	}
	sum, move := 0.0, 0.0
	for i, v := range values {
		sum += v
		if i > 0 {
			move += math.Abs(v - values[i-1])
		}
	}
	c := Chart{Centre: sum / float64(n), Move: move / float64(n-1)}
	c.Low, c.High = c.Centre-3*c.Move/d2, c.Centre+3*c.Move/d2
	return c, true
}

// Rise is Mann's test whether values keep rising (1945, Econometrica 13:245; Kendall 1975).
type Rise struct {
	S int // pairs that rise less pairs that fall
	Z float64
	P float64 // of so steady a move either way were there none
}

// Rising counts pairs; compare says how the later of two stands to the earlier: 1, -1, or 0
// where that is not known. times that are equal are no pair; values that are equal, and
// pairs that are not known, shrink the variance as ties do.
func Rising(times []float64, compare func(i, j int) int, values []float64) Rise {
	n := len(times)
	r := Rise{}
	for i := range n {
		for j := range i {
			switch {
			case times[i] > times[j]:
				r.S += compare(j, i)
			case times[i] < times[j]:
				r.S += compare(i, j)
			}
		}
	}
	variance := func(t int) float64 { return float64(t*(t-1)) * float64(2*t+5) }
	v := variance(n) - tied(times, variance) - tied(values, variance)
	if f := func(k int) float64 { return float64(k * (k - 1)) }; n > 2 {
		v += tied(times, f) * tied(values, f) / (2 * f(n)) * 18
		g := func(k int) float64 { return f(k) * float64(k-2) }
		v += tied(times, g) * tied(values, g) / (9 * g(n)) * 18
	}
	sd := math.Sqrt(math.Max(v, 0) / 18)
	r.P = 1
	if sd > 0 && r.S != 0 {
		r.Z = (math.Abs(float64(r.S)) - 1) / sd
		r.P = math.Min(1, 2*distuv.UnitNormal.CDF(-r.Z))
		if r.S < 0 {
			r.Z = -r.Z
		}
	}
	return r
}

// tied sums a function of the sizes of groups of equal values.
func tied(values []float64, of func(int) float64) (t float64) {
	sorted := slices.Sorted(slices.Values(values))
	for i := 0; i < len(sorted); {
		j := i
		for j < len(sorted) && sorted[j] == sorted[i] {
			j++
		}
		t += of(j - i)
		i = j
	}
	return t
}

// Slope is the middle of the slopes between all pairs (Theil 1950; Sen 1968, J. Am. Stat.
// Ass. 63:1379), with limits by the ranks of the test above.
type Slope struct{ Mid, Low, High float64 }

// mostPairs is how many values are still held against each other, each with each.
const mostPairs = 1500

// TheilSen is the slope of values over times with limits of the level; false where there
// are not two times, or too many values.
func TheilSen(times, values []float64, level float64) (Slope, bool) {
	if len(times) > mostPairs {
		return Slope{}, false
	}
	var slopes []float64
	for i := range times {
		for j := range i {
			if times[i] != times[j] {
				slopes = append(slopes, (values[i]-values[j])/(times[i]-times[j]))
			}
		}
	}
	if len(slopes) == 0 {
		return Slope{}, false
	}
	slices.Sort(slopes)
	n := len(slopes)
	s := Slope{Mid: slopes[n/2]}
	if n%2 == 0 {
		s.Mid = (slopes[n/2-1] + slopes[n/2]) / 2
	}
	variance := func(t int) float64 { return float64(t*(t-1)) * float64(2*t+5) / 18 }
	sd := math.Sqrt(math.Max(variance(len(times))-tied(values, variance)-tied(times, variance), 0))
	c := distuv.UnitNormal.Quantile((1+level)/2) * sd
	// Between two ranks: as Gilbert 1987, Statistical Methods for Environmental Pollution
	// Monitoring, 16.5, has it.
	rank := func(m float64) float64 {
		m = math.Min(math.Max(m, 1), float64(n))
		low := int(math.Floor(m))
		high := min(low+1, n)
		f := m - float64(low)
		return slopes[low-1]*(1-f) + slopes[high-1]*f
	}
	s.Low, s.High = rank((float64(n)-c)/2), rank((float64(n)+c)/2+1)
	return s, true
}
