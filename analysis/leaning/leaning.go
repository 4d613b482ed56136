// Package leaning is how far a belief leans away from a normal one: its third moments, and what
// they make of a chance.
package leaning

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
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
		d := floats.Dot(a, f)
		sum += d * d * d
	}
	return sum
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

func thirdsOf(rests *mat.Dense, weight []float64, root *mat.TriDense) thirds {
	rows, n := rests.Dims()
	packed := make([]float64, n*(n+1)*(n+2)/6) // those of i <= j <= k, in this order
	var standard mat.Dense
	if err := standard.Solve(root, rests.T()); err != nil && standard.IsEmpty() {
		return unpacked(packed, n)
	}
	y := make([]float64, n)
	for r := range rows {
		mat.Col(y, r, &standard)
		left := packed
		for i := range n {
			for j := i; j < n; j++ {
				pair, with := weight[r]*y[i]*y[j], y[j:]
				for k, third := range with {
					left[k] += pair * third
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
