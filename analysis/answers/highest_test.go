package answers

import "testing"

// Three draws of which each is highest somewhere else, and one that is level: its first
// place counts.
func TestHighest(t *testing.T) {
	h := newHighest(4)
	h.look(5, []float64{0.9, 0.2, 0.1, 0.5})
	h.look(6, []float64{0.1, 0.8, 0.3, 0.5})
	h.look(7, []float64{0.1, 0.2, 0.7, 0.5})
	for _, c := range []struct{ level, low, high float64 }{{1, 5, 7}, {0.3, 5, 6}} {
		if low, high := h.limits(c.level); low != c.low || high != c.high {
			t.Errorf("level %.1f: %g to %g", c.level, low, high)
		}
	}
}
