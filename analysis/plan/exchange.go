package plan

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// coded is a point by half sides from the middle of the box.
func (g region) coded(p point) []float64 {
	x := make([]float64, len(g.sides))
	for i, s := range g.sides {
		x[i] = 2*p[s] - 1
	}
	return x
}

// straight and curved are the terms of a surface at a coded point.
func straight(x []float64) []float64 { return append([]float64{1}, x...) }

func curved(x []float64) []float64 {
	out := straight(x)
	for i := range x {
		for j := range i + 1 {
			out = append(out, x[i]*x[j])
		}
	}
	return out
}

// information is X'X of the coded points, over what is known before.
func information(points [][]float64, terms func([]float64) []float64, before *mat.SymDense) *mat.SymDense {
	m := before
	for _, x := range points {
		f := terms(x)
		if m == nil {
			m = mat.NewSymDense(len(f), nil)
		}
		m.SymRankOne(m, 1, mat.NewVecDense(len(f), f))
	}
	return m
}

// ridge is what is believed of the terms before any trial, as trials of one mix: the
// widths of the belief about hold (analysis/belief) over a scatter of a quarter. It lets
// fewer trials than terms be placed.
func ridge(sides int) *mat.SymDense {
	const scatter, slope, square, level = 0.25, 1.2, 0.7, 2.5
	k := len(curved(make([]float64, sides)))
	m := mat.NewSymDense(k, nil)
	for i := range k {
		width := square
		switch {
		case i == 0:
			width = level
		case i <= sides:
			width = slope
		}
		m.SetSym(i, i, scatter*scatter/(width*width))
	}
	return m
}

// exchange swaps points for places of the region as long as that gains (Fedorov's way; D:
// the determinant of the information, I: the mean variance over the region).
func (g region) exchange(n int, beside []point, l Layout) []point {
	at := g.spread(n, beside)
	k := len(curved(g.coded(at[0])))
	moments := mat.NewSymDense(k, nil)
	terms := make([]*mat.VecDense, len(g.places))
	for i, p := range g.places {
		terms[i] = mat.NewVecDense(k, curved(g.coded(p)))
		moments.SymRankOne(moments, 1/float64(len(g.places)), terms[i])
	}
	worth := func(m *mat.SymDense) float64 {
		var c mat.Cholesky
		if !c.Factorize(m) {
			return math.Inf(-1)
		}
		if l == Sharp {
			return c.LogDet()
		}
		var inverse mat.SymDense
		if c.InverseTo(&inverse) != nil {
			return math.Inf(-1)
		}
		sum := 0.0
		for i := range k {
			for j := range k {
				sum -= inverse.At(i, j) * moments.At(i, j)
			}
		}
		return sum
	}
	const passes = 4
	m := ridge(len(g.sides))
	for _, p := range slices.Concat(at, beside) {
		m.SymRankOne(m, 1, mat.NewVecDense(k, curved(g.coded(p))))
	}
	best := worth(m)
	for moved, pass := true, 0; moved && pass < passes; pass++ {
		moved = false
		for i := range at {
			own := mat.NewVecDense(k, curved(g.coded(at[i])))
			var without, with mat.SymDense
			without.SymRankOne(m, -1, own)
			to := -1
			for j := range g.places {
				with.SymRankOne(&without, 1, terms[j])
				if w := worth(&with); w > best+1e-9 {
					best, to = w, j
				}
			}
			if to >= 0 {
				at[i], moved = g.places[to], true
				m.SymRankOne(&without, 1, terms[to])
			}
		}
	}
	return at
}
