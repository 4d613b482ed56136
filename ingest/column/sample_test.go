package column

import "testing"

// TestSampleInHeader: of how much foam a header says that its drainage is; 0 = not said.
func TestSampleInHeader(t *testing.T) {
	for _, c := range []struct {
		header string
		role   Role
		sample float64
	}{
		{"drained off 50 g foam, g", DrainedAmount, 50},
		{"liquid out of 50 g (g)", DrainedAmount, 50},
		{"drip % (of 50 g)", DrainedAmount, 50},
		{"drained (% of 40 g foam)", DrainedAmount, 40},
		{"Liquid (% of foam)", DrainedAmount, 0},
		{"drained at 20 min (g)", DrainedAmount, 0},
		{"butter out of 50 g (g)", Read("butter out of 50 g (g)").Role, 0},
		{"water (g)", IngredientAmount, 0},
	} {
		if m := Read(c.header); m.Role != c.role || m.Sample != c.sample {
			t.Errorf("%q: %s of %g g, want %s of %g g", c.header, m.Role, m.Sample, c.role, c.sample)
		}
	}
}
