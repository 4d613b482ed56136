package wording

import (
	"fmt"
	"math"
	"strings"
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

// Work is a chance as what foams do: "about 51 in 100 work", "nearly always works".
func Work(chance string) string {
	if strings.Contains(chance, " in 10") {
		return chance + " work"
	}
	return chance + " works"
}

// wantedShare words a chance somebody set, exactly: "8 in 10", "17 in 20".
func wantedShare(p float64) (count, of int) {
	for _, of := range []int{10, 20, 100} {
		n := p * float64(of)
		if math.Abs(n-math.Round(n)) < 1e-6 {
			return int(math.Round(n)), of
		}
	}
	return int(math.Round(p * 1000)), 1000
}

// WantedInTen words a wanted chance: "8 in 10".
func WantedInTen(p float64) string {
	n, of := wantedShare(p)
	return fmt.Sprintf("%d in %d", n, of)
}

// WantedTimes words it as a count: "8 times in 10".
func WantedTimes(p float64) string {
	n, of := wantedShare(p)
	return fmt.Sprintf("%s in %d", Times(n), of)
}
