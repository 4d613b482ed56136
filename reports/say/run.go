package say

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/plots/drawing"
	"foamfield/plots/wording"
	"foamfield/reports/document"
)

// Run is one run to be worded: its results and the figures they carry.
type Run struct {
	R       *result.Results
	Figures map[string]drawing.Figure
}

// LogName names the log: its dish where there are several, and its file, or the first of several.
func (b Run) LogName() string {
	if b.R.Dish != "" {
		return b.R.Dish + ", " + b.files()
	}
	return b.files()
}

func (b Run) files() string {
	switch n := len(b.R.Inputs); n {
	case 0:
		return "a log"
	case 1:
		return b.R.Inputs[0].File
	default:
		return fmt.Sprintf("%s and %d more", b.firstLog(), n-1)
	}
}

// firstLog is the file that the others go on from, where plans say so.
func (b Run) firstLog() string {
	for _, in := range b.R.Inputs {
		if !slices.ContainsFunc(b.R.Plans, func(p result.PlanFile) bool { return p.File == in.File && p.Number > 1 }) {
			return in.File
		}
	}
	return b.R.Inputs[0].File
}

// Place shortens a place in the only file read: "sheet Tue, row 6".
func (b Run) Place(at string) string {
	if len(b.R.Inputs) == 1 {
		return strings.TrimPrefix(at, b.R.Inputs[0].File+", ")
	}
	return at
}

// PlaceOf is the place of a trial, without the sheet that all trials are on.
func (b Run) PlaceOf(at string) string {
	sheet := func(at string) string { return at[:strings.LastIndex(at, ", ")+1] }
	for _, t := range b.R.Trials {
		if sheet(t.At) != sheet(at) {
			return b.Place(at)
		}
	}
	return strings.TrimPrefix(at[len(sheet(at)):], " ")
}

// Subtitle counts the trials and what became of them.
func (b Run) Subtitle() string {
	c := b.R.Counts
	var parts []string
	add := func(n int, words string) {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, words))
		}
	}
	add(c.Worked, "worked")
	add(c.Failed, "did not")
	add(c.Unknown, "unclear")
	said := fmt.Sprintf("%d %s", c.Used, Plural(c.Used, "trial", "trials"))
	if len(parts) > 0 {
		said += ": " + strings.Join(parts, ", ")
	}
	if n := len(b.R.Rows.SetAside); n > 0 {
		said += fmt.Sprintf("; %d more set aside", n)
	}
	return said
}

// links name what a chance is about.
var links = map[result.Outcome]string{
	result.CameOut: "coming out", result.Broke: "splitting",
	result.HoldMinutes: "hold", result.DrainedPercent: "drainage",
}

// Subject names what a chance of an outcome is about.
func (b Run) Subject(o result.Outcome) string {
	if asked := b.R.Targets.Asked(o); asked != nil {
		return asked.Label
	}
	return links[o]
}

// Unknown are the targets that no mix is recommended without and no chance is about.
func (b Run) Unknown() []document.Text {
	var names []document.Text
	for _, o := range b.R.NotJudged {
		if b.R.Targets.Needs(o) {
			names = append(names, Text(b.Subject(o)))
		}
	}
	return names
}

// Bare says that the chances leave out something that was asked for, so that
// nothing may be called sure.
func (b Run) Bare() bool { return b.R.HoldIsAGuess || len(b.Unknown()) > 0 }

// Condition is the proviso inside a sentence.
func (b Run) Condition() document.Text {
	if names := b.Unknown(); len(names) > 0 {
		return Text("with ", Listed(names), " left out")
	}
	if b.R.HoldIsAGuess && b.R.WatchedMinutes != nil {
		return Text("if foams hold on as they did in the ", Trimmed("watched_minutes", *b.R.WatchedMinutes, 1), " minutes watched")
	}
	return nil
}

// Given is the condition after a chance.
func (b Run) Given() document.Text {
	if c := b.Condition(); len(c) > 0 {
		return Text(", ", c)
	}
	return nil
}

// RestMinutes is the name results.json gives the minutes of rest.
const RestMinutes = "rest_minutes"

// Amount says a value of a variable: "45.0 % fat", "HLB 8.2".
func (b Run) Amount(path, name string, v float64) document.Text {
	switch name {
	case wording.FatPercent:
		return Text(Num(path, v, 1), " % fat")
	case wording.EmulsifierPercent:
		return Text(Num(path, v, 1), " % emulsifier")
	case wording.EmulsifierGrams:
		return Text(Num(path, v, 1), " g emulsifier")
	case wording.BlendHLB:
		return Text("HLB ", Num(path, v, 1))
	}
	switch {
	case name == "chargers" && v == 1:
		return Text(Trimmed(path, v, 2), " charger")
	case name == "chargers":
		return Text(Trimmed(path, v, 2), " chargers")
	case name == RestMinutes:
		return Text(Trimmed(path, v, 2), " min rest before serving")
	}
	if name == "temperature_c" {
		return Text(b.Label(name)+" ", Trimmed(path, v, 1), " °C")
	}
	if _, unit := b.called(name); unit != "" {
		return Text(b.Label(name)+" ", Trimmed(path, v, 2), " "+unit)
	}
	return Text(b.Label(name)+" ", Trimmed(path, v, 2))
}

// Known are the variables every log can have, as a sentence names them.
var Known = map[string]string{wording.FatPercent: "fat", wording.EmulsifierPercent: "emulsifier", wording.EmulsifierGrams: "emulsifier", wording.BlendHLB: "HLB"}

// Label is a variable's name in a sentence.
func (b Run) Label(name string) string {
	if s := Known[name]; s != "" {
		return s
	}
	if name == RestMinutes {
		return "rest before serving"
	}
	if label, _ := b.called(name); label != "" {
		return label
	}
	return strings.ReplaceAll(name, "_", " ")
}

// called is what the log calls a variable, and its unit.
func (b Run) called(name string) (label, unit string) {
	for _, v := range b.R.Variables {
		if v.Name == name {
			return v.Label, v.Unit
		}
	}
	for _, v := range b.R.SetAside {
		if v.Name == name {
			return v.Label, v.Unit
		}
	}
	return "", ""
}

// Failings names how mixes of this run fail by an outcome.
func (b Run) Failings(o result.Outcome) string { return Failings(b.R, o) }
