package reports

import (
	"fmt"
	"math"

	"foamfield/analysis/result"
	"foamfield/plots"
)

// Chance words a chance as the figures do: "about 9 in 10", "nearly always".
func Chance(p float64) string { return plots.Chance(p) }

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
	if n, of := plots.Share(mean); mean <= 0.99 && of >= 10 && n > 1 {
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
		n, of := plots.Share(low)
		return fmt.Sprintf("%d in %d", n, of)
	}
}

// chance says a chance with its origin.
func chance(path string, p float64) Span {
	return Span{Text: Chance(p), Num: &Num{Path: path, Value: p}}
}

// chanceAndLimit says a chance of working and how low it may be.
func chanceAndLimit(path string, mean, low, wanted float64) Text {
	first := Span{Text: plots.ChanceAgainst(mean, wanted), Strong: true, Num: &Num{Path: path + ".mean", Value: mean}}
	few := fewAs(mean, low)
	if AtLeast(mean, low) == "" {
		return say(first)
	}
	return say(first, ", perhaps as few as ", Span{Text: few, Num: &Num{Path: path + ".low", Value: low}})
}

// oneIn words a failure finer than a chance, so that several add up: "1 in 55".
func oneIn(path string, p float64) Span {
	n, of := 1, 1
	switch every := 1 / p; {
	case p >= 0.1:
		n, of = plots.Share(p)
	case every <= 20:
		of = int(math.Round(every))
	case every <= 100:
		of = 5 * int(math.Round(every/5))
	default:
		of = 10 * int(math.Round(every/10))
	}
	return Span{Text: fmt.Sprintf("%d in %d", n, of), Num: &Num{Path: path, Value: p}}
}

// clogging says how often a mix clogs and how often it may.
func clogging(path string, c result.Chance) Text {
	first, most := oneIn(path+".clogging.mean", c.Mean), oneIn(path+".clogging.high", c.High)
	if first.Text == most.Text {
		return say(first)
	}
	return say(first, ", perhaps as many as ", most)
}
