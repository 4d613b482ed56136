package live

import (
	"math"
	"testing"
)

// A page draws what lies at equal steps, in logarithms where the variable does.
func TestEven(t *testing.T) {
	for _, tt := range []struct {
		log    bool
		values []float64
		want   bool
	}{
		{false, []float64{30, 32, 34, 36}, true},
		{true, []float64{1, 2, 4, 8}, true},
		{true, []float64{1, 2, 3, 4}, false},
		{false, []float64{1, 2, 4, 8}, false},
		{false, []float64{1, math.NaN(), 3}, false},
		{true, []float64{0, 1, 2}, false},
		{false, []float64{3, 2, 1}, false},
		{false, []float64{3, 3}, false},
		{false, []float64{3}, false},
		{false, nil, false},
	} {
		if got := even(tt.log, tt.values); got != tt.want {
			t.Errorf("%v in logarithms (%v): %v", tt.values, tt.log, got)
		}
	}
}
