package cellname

import "testing"

func TestOf(t *testing.T) {
	for _, c := range []struct {
		row, col int
		want     string
	}{{6, 3, "C6"}, {1, 26, "Z1"}, {1, 27, "AA1"}, {1048576, 16384, "XFD1048576"}, {3, 0, "row 3"}, {0, 28, "column AB"}} {
		if got := Of(c.row, c.col); got != c.want {
			t.Errorf("Of(%d, %d) = %q, want %q", c.row, c.col, got, c.want)
		}
	}
}
