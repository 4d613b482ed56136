package wording

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A share that is said is never far from the chance, and a larger chance is
// never said to be smaller.
func TestShareIsNearAndRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := rapid.Float64Range(0.01, 0.99).Draw(t, "p"), rapid.Float64Range(0.01, 0.99).Draw(t, "q")
		if p > q {
			p, q = q, p
		}
		n, of := Share(p)
		m, over := Share(q)
		if d := math.Abs(float64(n)/float64(of) - p); d > 0.0051 {
			t.Errorf("%v is said as %d in %d", p, n, of)
		}
		if float64(n)/float64(of) > float64(m)/float64(over) {
			t.Errorf("%v is said as %d in %d, the larger %v as %d in %d", p, n, of, q, m, over)
		}
	})
}
