package nested

import "math"

// cholesky replaces the lower half of a by its factor; false if it is not positive, or so
// nearly so that a column is made up by the others.
func cholesky(a []float64, n int) bool {
	for j := range n {
		d := a[j*n+j]
		whole := d
		for k := range j {
			d -= a[j*n+k] * a[j*n+k]
		}
		if !(d > 1e-11*whole) || math.IsInf(d, 1) {
			return false
		}
		d = math.Sqrt(d)
		a[j*n+j] = d
		for i := j + 1; i < n; i++ {
			v := a[i*n+j]
			for k := range j {
				v -= a[i*n+k] * a[j*n+k]
			}
			a[i*n+j] = v / d
		}
	}
	return true
}

// forward solves L X = B in place for the n rows of B, each w wide.
func forward(l []float64, n int, b []float64, w int) {
	for i := range n {
		for k := range i {
			f := l[i*n+k]
			for j := range w {
				b[i*w+j] -= f * b[k*w+j]
			}
		}
		for j := range w {
			b[i*w+j] /= l[i*n+i]
		}
	}
}

// backward solves Lᵀ X = B likewise.
func backward(l []float64, n int, b []float64, w int) {
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			f := l[k*n+i]
			for j := range w {
				b[i*w+j] -= f * b[k*w+j]
			}
		}
		for j := range w {
			b[i*w+j] /= l[i*n+i]
		}
	}
}

func solveCholesky(l []float64, n int, b []float64) {
	forward(l, n, b, 1)
	backward(l, n, b, 1)
}
