package posterior

import (
	"math"

	quadrature "gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
)

// hermite returns the nodes and weights of an n-point Gauss-Hermite rule for
// the mean of a function of a standard normal.
func hermite(n int) (x, w []float64) {
	x, w = make([]float64, n), make([]float64, n)
	quadrature.Hermite{}.FixedLocations(x, w, math.Inf(-1), math.Inf(1))
	for i := range x {
		w[i] /= math.SqrtPi // the library's weight function is e^(-x²)
		x[i] *= math.Sqrt2
	}
	return x, w
}

func logNormals(theta []float64, prior []Normal) float64 {
	s := 0.0
	for i, p := range prior {
		z := (theta[i] - p.Mean) / p.SD
		s -= z * z / 2
	}
	return s
}

func dense(x [][]float64, cols int) *mat.Dense {
	if len(x) == 0 {
		return nil
	}
	d := mat.NewDense(len(x), cols, nil)
	for i, row := range x {
		d.SetRow(i, row)
	}
	return d
}

// lines works out the line of every draw at every row of x. It turns x over once: a draw
// is added up from whole columns, which is three times as quick as row by row.
type lines struct{ columns, room *mat.Dense }

// of puts the lines in out, or where that is nil where the next call writes over them.
func (l *lines) of(draws, x, out *mat.Dense) *mat.Dense {
	if x == nil {
		return nil
	}
	if l.columns == nil {
		l.columns = mat.DenseCopyOf(x.T())
	}
	if out == nil {
		n, _ := draws.Dims()
		_, width := l.columns.Dims()
		if l.room == nil || l.room.RawMatrix().Rows < n {
			l.room = mat.NewDense(n, width, nil)
		}
		out = l.room.Slice(0, n, 0, width).(*mat.Dense)
	}
	out.Mul(draws, l.columns)
	return out
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i, v := range a {
		s += v * b[i]
	}
	return s
}

// Form is the quadratic form f'Af of a symmetric A.
func Form(f []float64, a *mat.SymDense) float64 {
	raw := a.RawSymmetric()
	s := 0.0
	for i, v := range f {
		row := raw.Data[i*raw.Stride : i*raw.Stride+raw.N]
		t := 0.5 * v * row[i]
		for j := i + 1; j < len(f); j++ {
			t += row[j] * f[j]
		}
		s += 2 * v * t
	}
	return s
}

// logPhi is ln Φ(x), good far into the lower tail, where Φ itself is zero; logBelow is the
// same, quicker.
func logPhi(x float64) float64 {
	if x > -30 {
		return math.Log(0.5 * math.Erfc(-x/math.Sqrt2))
	}
	// Φ(x) = φ(x)/|x| · (1 - 1/x² + 3/x⁴ - 15/x⁶ + …), Abramowitz & Stegun 26.2.12
	u := 1 / (x * x)
	return -x*x/2 - math.Log(-x) - 0.5*math.Log(2*math.Pi) + math.Log1p(-u*(1-3*u*(1-5*u)))
}

// logBetween is ln(Φ(hi) - Φ(lo)) for lo < hi, either of them infinite or none.
func logBetween(lo, hi float64) float64 {
	switch {
	case math.IsInf(lo, -1):
		return logBelow(hi)
	case math.IsInf(hi, 1):
		return logBelow(-lo)
	}
	if lo > 0 { // work in the lower tail, where differences keep their digits
		lo, hi = -hi, -lo
	}
	a, b := logBelow(hi), logBelow(lo)
	return a + math.Log(1-math.Exp(b-a))
}
