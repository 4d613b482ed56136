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
		{"drip (oz per 3 oz foam, after 25 min)", DrainedAmount, 85.048569375},
		{"serum g/60 g", DrainedAmount, 60},
		{"drained (g per 0.05 kg)", DrainedAmount, 50},
		{"exsudat (g pour 40 g de mousse)", DrainedAmount, 40},
		{"Drainage, g je 40 g Schaum", DrainedAmount, 40},
		{"uitgelekt (g op 40 g schuim)", DrainedAmount, 40},
		{"drenaje (g en 40 g de espuma)", DrainedAmount, 40},
		{"drained g/100 g", DrainedAmount, 0},
		{"drained (g) in 20 min", DrainedAmount, 0},
		{"GMS (g per 100 g)", Read("GMS (g per 100 g)").Role, 0},
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
