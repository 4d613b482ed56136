package handin

import (
	"math"
	"testing"
)

// TestRounded: what formulas round to, in any of their languages.
func TestRounded(t *testing.T) {
	for formula, want := range map[string]float64{
		"=ROUND(A1/B1*100,0)": 0.5, "ROUND(SUM(A1:A4)/4, 1)": 0.05, "=ARRONDI(A1;2)": 0.005, "=A1/B1": 0, "": 0, "=ROUND(A1,0)+B1": 0,
	} {
		if got := (Cell{Formula: formula}).Rounded(); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %g", formula, got)
		}
	}
}
