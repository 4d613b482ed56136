package say

import "testing"

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		step float64
		want int
	}{{0.1, 1}, {0.01, 2}, {0.5, 1}, {0.05, 2}, {1, 0}, {5, 0}, {0.25, 2}, {0.001, 3}, {0.0001, 3}, {0, 3}} {
		if got := Decimals(c.step); got != c.want {
			t.Errorf("decimals(%v) = %d, want %d", c.step, got, c.want)
		}
	}
}

func TestNum(t *testing.T) {
	for _, c := range []struct {
		v      float64
		digits int
		want   string
	}{{107.1, 1, "107.1"}, {186, 1, "186.0"}, {-0.04, 1, "0.0"}, {-0.06, 1, "−0.1"}, {20, 0, "20"}, {0.25, 1, "0.2"}} {
		if got := Num("x", c.v, c.digits).Text; got != c.want {
			t.Errorf("num(%v, %d) = %q, want %q", c.v, c.digits, got, c.want)
		}
	}
}
