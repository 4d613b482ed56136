package plots

import (
	"fmt"
	"math"
)

// Share is a chance as people count: so many of 100. The ends are not shares: they are
// words, since nothing here is known to one in a hundred.
func Share(p float64) (n, of int) {
	return int(math.Min(99, math.Max(1, math.Round(100*p)))), 100
}

// Chance words a chance, in figures and in the text around them: "about 86 in
// 100", "nearly always".
func Chance(p float64) string {
	switch {
	case !(p >= 0 && p <= 1):
		return "not known"
	case p > 0.99:
		return "nearly always"
	case p < 0.01:
		return "fewer than 1 in 100"
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
