package main

import (
	"cmp"
	"math"
	"slices"

	"foamfield/analysis/nested"
)

// plainRow is a trial as whoever simulated it knows it: its mix on scales of about -1 to 1,
// and the logarithm of its hold.
type plainRow struct {
	week  int
	time  float64
	lot   string
	mix   []float64 // fat, emulsifier, HLB
	hold  float64
	bound bool // it held at least so long
}

// plainSeen is what the same questions come to without any pooling.
type plainSeen struct{ found, falsely bool }

// plainly asks what a trend asks of hold without pooling, as a regression of all trials does that
// knows of no days and no weeks but what it is asked about: each term added to a line curved
// in the mix, with the tail of F, Holm adjusted.
func (c *course) plainly(rows []plainRow) (s plainSeen) {
	type ask struct {
		what string
		add  func(r *plainRow) []float64
		p    float64
	}
	weekly := func(r *plainRow, x float64) []float64 {
		out := make([]float64, historyWeeks-1)
		if r.week > 0 {
			out[r.week-1] = x
		}
		return out
	}
	asks := []ask{{what: "drift", add: func(r *plainRow) []float64 { return []float64{r.time} }},
		{what: "week", add: func(r *plainRow) []float64 { return weekly(r, 1) }}}
	for j, name := range []string{"fat_percent", "emulsifier_percent", "blend_hlb"} {
		asks = append(asks, ask{what: "optimum:" + name, add: func(r *plainRow) []float64 { return weekly(r, r.mix[j]) }})
	}
	if slices.ContainsFunc(rows, func(r plainRow) bool { return r.lot != rows[0].lot }) {
		asks = append(asks, ask{what: "lot", add: func(r *plainRow) []float64 {
			if r.lot == rows[0].lot {
				return []float64{0}
			}
			return []float64{1}
		}})
	}
	for i := range asks {
		asks[i].p = unpooled(rows, asks[i].add)
	}
	slices.SortStableFunc(asks, func(a, b ask) int { return cmp.Compare(a.p, b.p) })
	for i, a := range asks {
		if a.p*float64(len(asks)-i) >= 0.05 {
			break
		}
		if c.is(a.what) {
			s.found = true
		} else if !c.follows(a.what) {
			s.falsely = true
		}
	}
	return s
}

// unpooled is how often columns as far from 0 come by chance, beside the mix alone.
func unpooled(rows []plainRow, add func(*plainRow) []float64) float64 {
	d := nested.Data{}
	var columns []int
	for i := range rows {
		r := &rows[i]
		x := []float64{1}
		for a := range r.mix {
			x = append(x, r.mix[a])
			for b := range a + 1 {
				x = append(x, r.mix[a]*r.mix[b])
			}
		}
		first := len(x)
		x = append(x, add(r)...)
		for columns = nil; first < len(x); first++ {
			columns = append(columns, first)
		}
		high := r.hold
		if r.bound {
			high = math.Inf(1)
		}
		d.X, d.Low, d.High = append(d.X, x), append(d.Low, r.hold), append(d.High, high)
		d.Outer, d.Inner = append(d.Outer, 0), append(d.Inner, 0)
	}
	fit, err := nested.Of(d, nested.Prior{Inner: 1, Level: 1, Lean: 1})
	if err != nil {
		return 1
	}
	return fit.Zero(columns...)
}
