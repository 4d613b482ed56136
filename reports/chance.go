package reports

import (
	"fmt"
	"math"
)

// shares are the shares people say; a chance is given the nearest one.
var shares = []struct{ n, of int }{
	{1, 100}, {1, 50}, {1, 30}, {1, 25}, {1, 20}, {1, 15}, {1, 12}, {1, 10}, {1, 8}, {1, 6}, {1, 5}, {1, 4},
	{3, 10}, {1, 3}, {4, 10}, {1, 2}, {6, 10}, {7, 10}, {8, 10}, {9, 10}, {19, 20},
}

// share is the nearest share people say. The ends are not shares: they are
// words, since nothing here is known to one in a hundred.
func share(p float64) (n, of int) {
	near := math.Inf(1)
	for _, s := range shares {
		if d := math.Abs(float64(s.n)/float64(s.of) - p); d < near {
			n, of, near = s.n, s.of, d
		}
	}
	return n, of
}

// Chance words a chance: "about 9 in 10", "nearly always".
func Chance(p float64) string {
	switch {
	case !(p >= 0 && p <= 1):
		return "not known"
	case p > 0.99:
		return "nearly always"
	case p < 0.01:
		return "less than 1 in 100"
	}
	n, of := share(p)
	return fmt.Sprintf("about %d in %d", n, of)
}

// AtLeast words the lower limit of a chance of which Chance(mean) has just been
// said: "perhaps as few as 6". It is empty if the two would sound the same.
func AtLeast(mean, low float64) string {
	if !(low >= 0 && low <= mean && mean <= 1) {
		return ""
	}
	said := fewAs(mean, low)
	if said == "" {
		return ""
	}
	return "perhaps as few as " + said
}

func fewAs(mean, low float64) string {
	if n, of := share(mean); mean <= 0.99 && of >= 10 && n > 1 {
		switch few := int(math.Round(low * float64(of))); {
		case few >= n:
			return ""
		case few > 0:
			return fmt.Sprint(few)
		}
	}
	switch said := Chance(low); {
	case said == Chance(mean):
		return ""
	case low < 0.01:
		return said
	default:
		n, of := share(low)
		return fmt.Sprintf("%d in %d", n, of)
	}
}

// chance says a chance with its origin.
func chance(path string, p float64) Span {
	return Span{Text: Chance(p), Num: &Num{Path: path, Value: p}}
}

// chanceAndLimit says a chance of working and how low it may be. A chance that
// misses the wanted one by less than the words show is said to be under it.
func chanceAndLimit(path string, mean, low, wanted float64) Text {
	first := chance(path+".mean", mean)
	if mean < wanted && Chance(mean) == Chance(wanted) {
		n, of := share(mean)
		first.Text = fmt.Sprintf("a little under %d in %d", n, of)
	}
	first.Strong = true
	few := fewAs(mean, low)
	if AtLeast(mean, low) == "" {
		return say(first)
	}
	return say(first, ", perhaps as few as ", Span{Text: few, Num: &Num{Path: path + ".low", Value: low}})
}
