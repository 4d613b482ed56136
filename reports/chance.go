package reports

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
)

// Chance words a chance as the figures do: "about 86 in 100", "nearly always".
func Chance(p float64) string { return wording.Chance(p) }

// AtLeast words the lower limit of a chance of which Chance(mean) has just been
// said: "perhaps only 62". It is empty if the two would sound the same.
func AtLeast(mean, low float64) string {
	if !(low >= 0 && low <= mean && mean <= 1) {
		return ""
	}
	said := fewAs(mean, low)
	if said == "" {
		return ""
	}
	return "perhaps " + said
}

func fewAs(mean, low float64) string {
	n, of := wording.Share(low)
	switch {
	case Chance(low) == Chance(mean):
		return ""
	case low < 0.01:
		return "hardly any"
	case mean > 0.99:
		return fmt.Sprintf("only %d in %d", n, of)
	}
	return fmt.Sprintf("only %d", n)
}

// chance says a chance with its origin.
func chance(path string, p float64) Span {
	return Span{Text: Chance(p), Num: &Num{Path: path, Value: p}}
}

// lower is ", perhaps only 62", or nothing where that says nothing new.
func lower(path string, mean, low float64) Text {
	if AtLeast(mean, low) == "" {
		return nil
	}
	return say(", perhaps ", Span{Text: fewAs(mean, low), Num: &Num{Path: path + ".low", Value: low}})
}

// chanceAndLimit says a chance of working and how low it may be, for a cell.
func chanceAndLimit(path string, mean, low, wanted float64) Text {
	first := Span{Text: wording.ChanceAgainst(mean, wanted), Strong: true, Num: &Num{Path: path + ".mean", Value: mean}}
	return say(first, lower(path, mean, low))
}

// worksAndLimit says the same as a sentence without its stop: "Of 100 such foams about
// 86 work, perhaps only 62".
func worksAndLimit(path string, mean, low, wanted float64) Text {
	said := wording.ChanceAgainst(mean, wanted)
	of100, counted := strings.CutSuffix(said, " in 100")
	first := Span{Text: of100, Strong: true, Num: &Num{Path: path + ".mean", Value: mean}}
	work := " work"
	if strings.HasSuffix(of100, " 1") {
		work = " works"
	}
	switch {
	case counted:
		return say("Of 100 such foams ", first, work, lower(path, mean, low))
	case mean > 0.99:
		first.Text = "nearly always"
		return say("Such foams ", first, " work", lower(path, mean, low))
	}
	return say("How often such foams work is ", first)
}

// upTo words the upper limit of a failure of which Chance(mean) has just been said.
func upTo(path string, c result.Chance) Text {
	if !(c.High > c.Mean) || Chance(c.High) == Chance(c.Mean) {
		return nil
	}
	n, _ := wording.Share(c.High)
	return say("perhaps ", Span{Text: fmt.Sprint(n), Num: &Num{Path: path + ".high", Value: c.High}})
}

// ofHundred counts a failure among 100 foams: "4", "fewer than 1".
func ofHundred(path string, p float64) Span {
	s := Span{Text: fewerThanOne, Num: &Num{Path: path, Value: p}}
	if p >= atLeastOne {
		n, _ := wording.Share(p)
		s.Text = fmt.Sprint(n)
	}
	return s
}

const (
	atLeastOne   = 0.005 // a chance that counts one of 100
	fewerThanOne = "fewer than 1"
)

// Clogging says how often a mix clogs and how often it may: "2 in 100, perhaps 9".
func Clogging(c result.Chance) string { return clogging("", c).String() }

// clogging says how often a mix clogs and how often it may.
func clogging(path string, c result.Chance) Text {
	t := say(ofHundred(path+".clogging.mean", c.Mean), " in 100")
	if more := upTo(path+".clogging", c); len(more) > 0 && c.High >= 0.01 {
		t = say(t, ", ", more)
	}
	return t
}
