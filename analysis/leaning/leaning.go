// Package leaning is how far a belief leans away from a normal one: its third moments, and what
// they make of a chance.
package leaning

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Rows are how far a belief leans: the third central moment of a combination f of its
// parameters is Σ (row·f)³. Foams that still stood when watching stopped may have stood for
// long, so hold leans to the long side; a normal of the same spread gives a start too many
// short ones.
type Rows [][]float64

// enough is how many rows carry a leaning: more move a chance by less than 0.001.
const enough = 6

// Third is the third central moment of combination f.
func (l Rows) Third(f []float64) float64 {
	sum := 0.0
	for _, a := range l {
		d := dot(a, f)
		sum += d * d * d
	}
	return sum
}

// dot adds up every fourth product apart, so that none waits for the last sum.
func dot(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	for len(a) >= 4 {
		s0 += a[0] * b[0]
		s1 += a[1] * b[1]
		s2 += a[2] * b[2]
		s3 += a[3] * b[3]
		a, b = a[4:], b[4:]
	}
	for i, v := range a {
		s0 += v * b[i]
	}
	return s0 + s2 + (s1 + s3)
}

// Of finds the rows from weighted draws less their mean, whose covariance is cov: of the
// third moments of what is standardised, the largest at a time (the symmetric higher-order
// power method: De Lathauwer, De Moor and Vandewalle 2000, SIAM J. Matrix Anal. Appl.
// 21:1324), what each explains taken off before the next.
func Of(rests *mat.Dense, weight []float64, cov *mat.SymDense) Rows {
	var chol mat.Cholesky
	if !chol.Factorize(cov) {
		return nil
	}
	var root mat.TriDense
	chol.LTo(&root)
	n := cov.SymmetricDim()
	left := thirdsOf(rests, weight, &root)
	out := make(Rows, enough)
	for r := range out {
		size, along := left.largest()
		left.take(size, along)
		out[r] = make([]float64, n)
		for i := range n {
			for j := 0; j <= i; j++ {
				out[r][i] += math.Cbrt(size) * root.At(i, j) * along[j]
			}
		}
	}
	return out
}

// Skewness of a third central moment; beyond what expansions hold for, as much as they do.
func Skewness(third, sd float64) float64 {
	return math.Max(-mostSkew, math.Min(third/(sd*sd*sd), mostSkew))
}

const mostSkew = 1.2

// thirds are the third moments of n things, those of i, j and k at [i][j][k]. They are
// added up and turned by plain loops and kept to a decimal place that draws say nothing of,
// so that every build finds the same rows: a climb enlarges what the last digits differ by.
type thirds [][][]float64

const decimalPlaces = 1e7

// together is how many draws are worked out side by side, each sum in its own order.
const together = 4

func thirdsOf(rests *mat.Dense, weight []float64, root *mat.TriDense) thirds {
	rows, n := rests.Dims()
	packed := make([]float64, n*(n+1)*(n+2)/6) // those of i <= j <= k, in this order
	lower := make([][]float64, n)              // the root row by row, its diagonal turned over
	for i := range lower {
		for k := range i {
			lower[i] = append(lower[i], root.At(i, k))
		}
		lower[i] = append(lower[i], 1/root.At(i, i))
	}
	y := make([][together]float64, n) // what is standardised
	for r := 0; r < rows; r += together {
		var w [together]float64 // none beyond the last
		for m := range min(together, rows-r) {
			w[m] = weight[r+m]
			for i, v := range rests.RawRowView(r + m) {
				y[i][m] = v
			}
		}
		for i, row := range lower {
			y0, y1, y2, y3 := y[i][0], y[i][1], y[i][2], y[i][3]
			for k, a := range row[:i] {
				done := &y[k]
				y0 -= a * done[0]
				y1 -= a * done[1]
				y2 -= a * done[2]
				y3 -= a * done[3]
			}
			over := row[i]
			y[i] = [together]float64{y0 * over, y1 * over, y2 * over, y3 * over}
		}
		left := packed
		for i := range y {
			a := &y[i]
			w0, w1, w2, w3 := w[0]*a[0], w[1]*a[1], w[2]*a[2], w[3]*a[3]
			for j := i; j < n; j++ {
				b, with := &y[j], y[j:]
				p0, p1, p2, p3 := w0*b[0], w1*b[1], w2*b[2], w3*b[3]
				sums := left[:len(with)]
				for k := range with {
					c := &with[k]
					sums[k] = sums[k] + p0*c[0] + p1*c[1] + p2*c[2] + p3*c[3]
				}
				left = left[len(with):]
			}
		}
	}
	return unpacked(packed, n)
}

func unpacked(packed []float64, n int) thirds {
	out := make(thirds, n)
	for i := range out {
		out[i] = make([][]float64, n)
		for j := range out[i] {
			out[i][j] = make([]float64, n)
		}
	}
	for i := range n {
		for j := i; j < n; j++ {
			for k := j; k < n; k++ {
				v := math.Round(packed[0]*decimalPlaces) / decimalPlaces
				out[i][j][k], out[i][k][j], out[j][i][k] = v, v, v
				out[j][k][i], out[k][i][j], out[k][j][i] = v, v, v
				packed = packed[1:]
			}
		}
	}
	return out
}

// along is the third moments once u has been put in twice, and how long that is.
func (t thirds) along(u []float64) (out []float64, length float64) {
	out = make([]float64, len(t))
	for i, slice := range t {
		for j, row := range slice {
			sum := 0.0
			for k, v := range row {
				sum += v * u[k]
			}
			out[i] += u[j] * sum
		}
		length += out[i] * out[i]
	}
	return out, math.Sqrt(length)
}

// largest is the direction along which the third moment is largest, near enough, and that
// moment: the best of climbs from the axes along which it is.
func (t thirds) largest() (size float64, direction []float64) {
	steepest := make([]int, len(t))
	for k := range t {
		steepest[k] = k
	}
	slices.SortStableFunc(steepest, func(a, b int) int {
		return cmp.Compare(math.Abs(t[b][b][b]), math.Abs(t[a][a][a]))
	})
	direction = make([]float64, len(t))
	for _, k := range steepest[:min(4, len(t))] {
		u := make([]float64, len(t))
		u[k] = 1
		next, length := t.along(u)
		for range 10 {
			if length == 0 {
				break
			}
			for i, v := range next {
				u[i] = v / length
			}
			next, length = t.along(u)
		}
		s := 0.0
		for i, v := range next {
			s += v * u[i]
		}
		if s > size {
			size, direction = s, u
		}
	}
	return size, direction
}

// take removes what one direction explains.
func (t thirds) take(size float64, u []float64) {
	for i, slice := range t {
		for j, row := range slice {
			for k := range row {
				row[k] -= size * u[i] * u[j] * u[k]
			}
		}
	}
}

// Leaned is the standard normal that lies where a variable of this skewness does that lies
// z standard deviations above its mean: Cornish and Fisher's expansion turned round
// (Fisher and Cornish 1960, Technometrics 2:209), up to the square of the skewness and with
// the fourth moment that a gamma variable of that skewness has.
func Leaned(z, skew float64) float64 {
	return z - skew/6*(z*z-1) + skew*skew/144*z*(7*z*z-1)
}

// Leans is the other way, to first order and of variance 1.
func Leans(x, skew float64) float64 {
	return (x + skew/6*(x*x-1)) / math.Sqrt(1+skew*skew/18)
}
