// Package region works out the chance of working over mixes: coordinates and
// terms, the chain of outcomes, the tested range, and the searches for the
// surest and the richest mix. It knows no ingredient and no log: numbers in,
// numbers out.
package region

import "math"

// Coordinate turns one variable's value into the number the terms are built of:
// (x - Centre)/Scale, of ln x if Log.
type Coordinate struct {
	Log           bool
	Centre, Scale float64
}

// Of is the coordinate of a value.
func (c Coordinate) Of(value float64) float64 {
	if c.Log {
		value = math.Log(value)
	}
	return (value - c.Centre) / c.Scale
}

// Basis is the terms of a line over some variables.
type Basis struct {
	Coordinates []Coordinate
	Terms       [][]int // the variables a term multiplies; none = the constant
	// Beside is the values of further terms that do not follow from the mix: they stay
	// as they are while the mix moves.
	Beside []float64
}

// With is the basis with other values beside the mix.
func (b Basis) With(beside []float64) Basis {
	b.Beside = beside
	return b
}

// Width is the number of features.
func (b Basis) Width() int { return len(b.Terms) + len(b.Beside) }

// Straight is the basis of a plane, Curved adds squares and products.
func Straight(c []Coordinate) Basis {
	b := Basis{Coordinates: c, Terms: [][]int{{}}}
	for i := range c {
		b.Terms = append(b.Terms, []int{i})
	}
	return b
}

// Curved is Straight with every square and product.
func Curved(c []Coordinate) Basis {
	b := Straight(c)
	for i := range c {
		for j := i; j < len(c); j++ {
			b.Terms = append(b.Terms, []int{i, j})
		}
	}
	return b
}

// Place is a mix in coordinates.
func (b Basis) Place(mix []float64) []float64 {
	z := make([]float64, len(b.Coordinates))
	for i, c := range b.Coordinates {
		z[i] = c.Of(mix[i])
	}
	return z
}

// Features is the value of every term at a mix, then what is beside it.
func (b Basis) Features(mix []float64) []float64 {
	return b.FeaturesInto(make([]float64, b.Width()), mix)
}

// FeaturesInto is Features without an allocation.
func (b Basis) FeaturesInto(f, mix []float64) []float64 {
	var buf [8]float64
	z := buf[:0]
	for i, c := range b.Coordinates {
		z = append(z, c.Of(mix[i]))
	}
	for t, vars := range b.Terms {
		v := 1.0
		for _, i := range vars {
			v *= z[i]
		}
		f[t] = v
	}
	copy(f[len(b.Terms):], b.Beside)
	return f
}

// Slope is what every term changes by, per unit of variable v's coordinate, at the
// given coordinates.
func (b Basis) Slope(z []float64, v int) []float64 {
	out := make([]float64, b.Width())
	for t, vars := range b.Terms {
		for k, i := range vars {
			if i != v {
				continue
			}
			rest := 1.0
			for m, j := range vars {
				if m != k {
					rest *= z[j]
				}
			}
			out[t] += rest
		}
	}
	return out
}
