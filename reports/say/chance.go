package say

import (
	"fmt"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/document"
)

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
	case wording.Chance(low) == wording.Chance(mean):
		return ""
	case low < 0.01:
		return "hardly any"
	case mean > 0.99:
		return fmt.Sprintf("only %d in %d", n, of)
	}
	return fmt.Sprintf("only %d", n)
}

// Chance says a chance with its origin.
func Chance(path string, p float64) document.Span {
	return document.Span{Text: wording.Chance(p), Num: &document.Num{Path: path, Value: p}}
}

// lower is ", perhaps only 62", or nothing where that says nothing new.
func lower(path string, mean, low float64) document.Text {
	if AtLeast(mean, low) == "" {
		return nil
	}
	return Text(", perhaps ", document.Span{Text: fewAs(mean, low), Num: &document.Num{Path: path + ".low", Value: low}})
}

// ChanceAndLimit says a chance of working and how low it may be, for a cell.
func ChanceAndLimit(path string, mean, low, wanted float64) document.Text {
	first := document.Span{Text: wording.ChanceAgainst(mean, wanted), Strong: true, Num: &document.Num{Path: path + ".mean", Value: mean}}
	return Text(first, lower(path, mean, low))
}

// WorksAndLimit says the same as a sentence without its stop: "Of 100 such foams about
// 86 work, perhaps only 62".
func WorksAndLimit(path string, mean, low, wanted float64) document.Text {
	said := wording.ChanceAgainst(mean, wanted)
	of100, counted := strings.CutSuffix(said, " in 100")
	first := document.Span{Text: of100, Strong: true, Num: &document.Num{Path: path + ".mean", Value: mean}}
	work := " work"
	if strings.HasSuffix(of100, " 1") {
		work = " works"
	}
	switch {
	case counted:
		return Text("Of 100 such foams ", first, work, lower(path, mean, low))
	case mean > 0.99:
		first.Text = "nearly always"
		return Text("Such foams ", first, " work", lower(path, mean, low))
	}
	return Text("How often such foams work is ", first)
}

// UpTo words the upper limit of a failure of which Chance(mean) has just been said.
func UpTo(path string, c result.Chance) document.Text {
	if !(c.High > c.Mean) || wording.Chance(c.High) == wording.Chance(c.Mean) {
		return nil
	}
	n, _ := wording.Share(c.High)
	return Text("perhaps ", document.Span{Text: fmt.Sprint(n), Num: &document.Num{Path: path + ".high", Value: c.High}})
}

// OfHundred counts a failure among 100 foams: "4", "fewer than 1".
func OfHundred(path string, p float64) document.Span {
	s := document.Span{Text: FewerThanOne, Num: &document.Num{Path: path, Value: p}}
	if p >= AtLeastOne {
		n, _ := wording.Share(p)
		s.Text = fmt.Sprint(n)
	}
	return s
}

const (
	AtLeastOne   = 0.005 // a chance that counts one of 100
	FewerThanOne = "fewer than 1"
)

// Clogging says how often a mix clogs and how often it may: "2 in 100, perhaps 9".
func Clogging(path string, c result.Chance) document.Text {
	t := Text(OfHundred(path+".clogging.mean", c.Mean), " in 100")
	if more := UpTo(path+".clogging", c); len(more) > 0 && c.High >= 0.01 {
		t = Text(t, ", ", more)
	}
	return t
}
