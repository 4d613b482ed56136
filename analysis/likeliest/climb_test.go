package likeliest

import (
	"fmt"
	"testing"
)

// slopeOf is the derivative of f at x by central differences of four points.
func slopeOf(f func(float64) float64, x float64) float64 {
	h := 1e-3
	return (8*(f(x+h)-f(x-h)) - (f(x+2*h) - f(x-2*h))) / (12 * h)
}

// The gradient and second derivatives that Newton's steps use, of whole samples.
func TestClimbsAgainstDifferences(t *testing.T) {
	x, y := bounded(t, "four_kinds_weighted")
	xa, ya := answers(t, "overlap")
	climbs := map[string]concave{}
	for _, fam := range all {
		d, err := NewSample(fam, y)
		if err != nil {
			t.Fatal(err)
		}
		b, err := orthonormal(whole(x))
		if err != nil {
			t.Fatal(err)
		}
		l := &line{Sample: d, basis: b, eta0: make([]float64, b.n), s0: 1}
		l.start()
		l.climb([]float64{0, 0, 0, 1})
		climbs[fam.String()] = l
	}
	o, _, err := newOdds(xa, ya)
	if err != nil {
		t.Fatal(err)
	}
	climbs["odds"] = o
	reduced := *o
	reduced.reduced = newReduction(o.basis)
	climbs["reduced odds"] = &reduced
	for name, f := range climbs {
		theta := []float64{0.4, -0.3, 0.6, 1.2}
		if name == "odds" || name == "reduced odds" {
			theta = theta[:3]
		}
		p := len(theta)
		s := newSlope(p)
		f.at(theta, s)
		scratch := newSlope(p)
		for j := range theta {
			move := func(v float64) []float64 {
				m := append([]float64(nil), theta...)
				m[j] = v
				return m
			}
			what := fmt.Sprintf("%s %d", name, j)
			within(t, what, s.grad[j], slopeOf(func(v float64) float64 { return f.at(move(v), scratch) }, theta[j]), 1e-9, 1e-9)
			for k := range theta {
				d := slopeOf(func(v float64) float64 { f.at(move(v), scratch); return scratch.grad[k] }, theta[j])
				within(t, fmt.Sprintf("%s,%d", what, k), -s.info.At(j, k), d, 1e-8, 1e-8)
			}
		}
	}
}
