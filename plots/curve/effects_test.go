package curve

import "testing"

func TestTimes(t *testing.T) {
	for _, tt := range []struct {
		factor float64
		want   string
	}{{2.34, "2.3 times"}, {1, "1 times"}, {0.42, "0.42 times"}, {37.4, "37 times"}, {1e-5, "under 0.01 times"}} {
		if got := times(tt.factor); got != tt.want {
			t.Errorf("%v: %q, want %q", tt.factor, got, tt.want)
		}
	}
}
