package plots

import (
	"fmt"
	"math"
)

// shares are the shares people say; a chance is given the nearest one.
var shares = []struct{ n, of int }{
	{1, 100}, {1, 50}, {1, 30}, {1, 25}, {1, 20}, {1, 15}, {1, 12}, {1, 10}, {1, 8}, {1, 6}, {1, 5}, {1, 4},
	{3, 10}, {1, 3}, {4, 10}, {1, 2}, {6, 10}, {7, 10}, {8, 10}, {9, 10}, {19, 20},
}

// Share is the nearest share people say. The ends are not shares: they are
// words, since nothing here is known to one in a hundred.
func Share(p float64) (n, of int) {
	near := math.Inf(1)
	for _, s := range shares {
		if d := math.Abs(float64(s.n)/float64(s.of) - p); d < near {
			n, of, near = s.n, s.of, d
		}
	}
	return n, of
}

// Chance words a chance, in figures and in the text around them: "about 9 in
// 10", "nearly always".
func Chance(p float64) string {
	switch {
	case !(p >= 0 && p <= 1):
		return "not known"
	case p > 0.99:
		return "nearly always"
	case p < 0.01:
		return "less than 1 in 100"
	}
	n, of := Share(p)
	return fmt.Sprintf("about %d in %d", n, of)
}

// ChanceAgainst words a chance beside the wanted one: one that misses it by less
// than the words show is said to be under it.
func ChanceAgainst(p, wanted float64) string {
	if said := Chance(p); p < wanted && said == Chance(wanted) && p <= 0.99 && p >= 0.01 {
		n, of := Share(p)
		return fmt.Sprintf("a little under %d in %d", n, of)
	}
	return Chance(p)
}
