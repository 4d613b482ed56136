package say

import "testing"

func TestTimes(t *testing.T) {
	for n, want := range map[int]string{0: "0 times", 1: "once", 2: "twice", 3: "3 times", 12: "12 times"} {
		if got := Times(n); got != want {
			t.Errorf("%d: %q, want %q", n, got, want)
		}
	}
}
