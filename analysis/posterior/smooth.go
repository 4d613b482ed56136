package posterior

import "math"

// smooth is a function between two ends as Taylor polynomials about the middles of even
// cells. The sampler asks for chances and their logarithms millions of times, and a
// polynomial costs a tenth of an erfc and a logarithm; TestSmooth has how near it is, to
// 1e-11 of the value.
type smooth struct {
	low, cells float64 // the lower end, cells to a unit
	terms      [][8]float64
}

// smoothed lays a function out; about gives its value at a point and the Taylor series of
// its derivative there.
func smoothed(low, high float64, cells int, about func(x float64) (float64, [7]float64)) *smooth {
	s := &smooth{low, float64(cells), make([][8]float64, int((high-low)*float64(cells))+1)}
	for k := range s.terms {
		value, slopes := about(low + (float64(k)+0.5)/s.cells)
		s.terms[k][0] = value
		width := 1.0
		for i, a := range slopes { // the integral, in cells
			width /= s.cells
			s.terms[k][i+1] = a / float64(i+1) * width
		}
	}
	return s
}

// cell is the polynomial of the cell in which x lies, and how far from its middle. The two are
// apart so that each is short enough to be compiled into whoever calls it.
func (s *smooth) cell(x float64) (c *[8]float64, t float64) {
	u := (x - s.low) * s.cells
	k := int(u)
	return &s.terms[k], u - float64(k) - 0.5
}

func polynomial(c *[8]float64, t float64) float64 {
	t2 := t * t
	return c[0] + c[1]*t + (c[2]+c[3]*t)*t2 + (c[4]+c[5]*t+(c[6]+c[7]*t)*t2)*(t2*t2)
}

const (
	tailLow, tailHigh = -30, 7 // ln Φ is a polynomial between; beyond 7 it is 0 to 1e-12
	tail              = 8      // Φ is a polynomial between this far below and above
	flat              = 37     // ln(1+e^-x) is below 1e-16 from here
)

var (
	// The derivative of ln Φ is the inverse Mills ratio m = φ/Φ, and m' = -m(z + m).
	lnPhi = smoothed(tailLow, tailHigh, 16, func(z float64) (float64, [7]float64) {
		value := logPhi(z)
		m := [7]float64{math.Exp(-z*z/2-value) / math.Sqrt(2*math.Pi)}
		for k := range len(m) - 1 {
			sum := z * m[k]
			if k > 0 {
				sum += m[k-1]
			}
			for i := range k + 1 {
				sum += m[i] * m[k-i]
			}
			m[k+1] = -sum / float64(k+1)
		}
		return value, m
	})
	// That of Φ is φ, and φ' = -zφ.
	phi = smoothed(-tail, tail, 32, func(z float64) (float64, [7]float64) {
		d := [7]float64{math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)}
		for k := range len(d) - 1 {
			d[k+1] = -z * d[k] / float64(k+1)
			if k > 0 {
				d[k+1] -= d[k-1] / float64(k+1)
			}
		}
		return 0.5 * math.Erfc(-z/math.Sqrt2), d
	})
	// That of ln(1+e^-x) is -p with p = 1/(1+e^x), and p' = -p(1 - p).
	softplus = smoothed(0, flat, 8, func(x float64) (float64, [7]float64) {
		d := [7]float64{-1 / (1 + math.Exp(x))}
		for k := range len(d) - 1 {
			sum := -d[k]
			for i := range k + 1 {
				sum -= d[i] * d[k-i]
			}
			d[k+1] = sum / float64(k+1)
		}
		return math.Log1p(math.Exp(-x)), d
	})
	// That of p = 1/(1+e^-x) is p - p².
	odds = smoothed(-flat, flat, 8, func(x float64) (float64, [7]float64) {
		p := [8]float64{1 / (1 + math.Exp(-x))}
		var d [7]float64
		for k := range d {
			d[k] = p[k]
			for i := range k + 1 {
				d[k] -= p[i] * p[k-i]
			}
			p[k+1] = d[k] / float64(k+1)
		}
		return p[0], d
	})
)

// logBelow is ln Φ(z).
func logBelow(z float64) float64 {
	switch {
	case z > tailHigh:
		return 0
	case !(z >= tailLow):
		return logPhi(z)
	}
	return polynomial(lnPhi.cell(z))
}

// chanceBelow is Φ(z), the chance of lying below z standard deviations; relative to itself
// it keeps its digits far into the lower tail.
func chanceBelow(z float64) float64 {
	if !(z >= -tail && z <= tail) {
		return 0.5 * math.Erfc(-z/math.Sqrt2)
	}
	return polynomial(phi.cell(z))
}

// logNos turns lines into the log chances of a no, -ln(1+e^eta).
func logNos(eta []float64) {
	for i, v := range eta {
		x := math.Abs(v)
		v = min(-v, 0)
		if x < flat {
			v -= polynomial(softplus.cell(x))
		}
		eta[i] = v
	}
}

// logistic is 1/(1+e^-x).
func logistic(x float64) float64 {
	if !(x >= -flat && x <= flat) {
		return 1 / (1 + math.Exp(-x))
	}
	return polynomial(odds.cell(x))
}
