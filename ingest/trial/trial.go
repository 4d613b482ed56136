// Package trial has the types of a log that was read: its trials, what is known
// of each and where it stands, and the problems that were found. Types only.
package trial

import (
	"fmt"
	"math"
	"strings"

	"foamfield/ingest/cellname"
	"foamfield/ingest/ingredient"
)

// Place is where something stands in the log; Row and Col are 1-based, 0 = the
// whole sheet or row.
type Place struct {
	File, Sheet string
	Row, Col    int
}

// String is the place as a person would look it up: "week.xlsx, sheet Tue, cell C6".
func (p Place) String() string {
	s := p.File
	if p.Sheet != "" {
		s += ", sheet " + p.Sheet
	}
	switch {
	case p.Row > 0 && p.Col > 0:
		s += ", cell " + cellname.Of(p.Row, p.Col)
	case p.Row > 0:
		s += fmt.Sprintf(", row %d", p.Row)
	case p.Col > 0:
		s += ", " + cellname.Of(0, p.Col)
	}
	return s
}

// Severity grades a problem.
type Severity uint8

// MustFix stops a value or trial from being used; PleaseLook was read but may
// be wrong; ForInformation says what was done.
const (
	MustFix Severity = iota
	PleaseLook
	ForInformation
)

// Problem is something a person should know of: where, what was read, what to
// type instead. Problems of one Kind in one column are grouped by Grouped.
type Problem struct {
	Kind     string
	Severity Severity
	At       Place
	Count    int
	Read     string
	Do       string
}

// Interval is a number known up to bounds: Low = High when exact, -Inf or +Inf
// where there is no bound.
type Interval struct{ Low, High float64 }

// Exact reports the value if there is just one.
func (i Interval) Exact() (float64, bool) { return i.Low, i.Low == i.High }

// AtLeast reports whether only a lower bound is known.
func (i Interval) AtLeast() bool { return math.IsInf(i.High, 1) && !math.IsInf(i.Low, -1) }

// Answer is yes, partly or no; Unknown when not logged.
type Answer uint8

// The answers.
const (
	Unknown Answer = iota
	Yes
	Partly
	No
)

// Why a result is absent.
type Why uint8

// The two reasons a result can be absent.
const (
	NotMeasured Why = iota
	DidNotComeOut
)

// Amount is grams of one ingredient in a trial.
type Amount struct {
	Name  string // as the column header calls it
	Grams float64
	What  *ingredient.Ingredient // shared by all trials that have it
}

// Composition is a trial's mix. Nil = not known.
type Composition struct {
	Parts             []Amount // empty when only percents were logged
	BatchGrams        *float64
	FatPercent        *float64
	EmulsifierPercent *float64
	EmulsifierGrams   *float64
	BlendHLB          *float64 // nil without emulsifier, never 0
	HLBLow, HLBHigh   *float64 // range from the ingredients' own ranges
	// EmulsifierSaid is all emulsifiers together in percent of what is not said: no formula can be
	// built on it, but trials can be compared by it.
	EmulsifierSaid *float64
}

// Trial is one mix in one canister, dispensed once.
type Trial struct {
	At    Place
	Rows  []int
	ID    string
	Order int // 1 = first in the log

	Day, Cook, Student string
	Named              string // the dish, as the log names it
	Canister           string // "0.5 L" as typed
	Note               string

	Composition
	Extras map[string]float64 // chargers, rest_minutes, temperature_c, declared ones; key = variable name

	Hold    *Interval // minutes
	Drained *Interval // percent of the foam at the target minute
	Curve   *Curve    // of drainage over the minutes, where it was read often enough
	CameOut Answer
	Broke   Answer            // Yes or No; Partly never
	Missing map[string]Why    // "hold_minutes", "drained_percent", "came_out", "broke"
	Raw     map[string]string // text as typed where it differs from the number; key = role; the label of each of Log.Labels

	Flagged string // not "" = a reason not to build a start on this trial
	Aside   string // not "" = set aside, with the reason
	MixOpen bool   // set aside only as what was in it is not known
}

// Curve is drainage over the minutes: Most · tⁿ/(tⁿ + Halfⁿ) percent at t minutes, n the Power.
type Curve struct {
	Most, Half, Power float64
	Minutes, Percents []float64 // its readings
	At                Place     // of the first
	Around            *Interval // the readings before and after the target's minute, nil if it was read, or lies not between two
}

// Used reports whether the analysis counts the trial.
func (t *Trial) Used() bool { return t.Aside == "" }

// Rows accounts for the rows of all log tables.
type Rows struct{ Read, Furniture int }

// Input is one file read.
type Input struct{ File, SHA256 string }

// Refusal is the error of a log that cannot be read: one sentence that says what was
// found and what to do instead.
type Refusal struct{ Found, Do string }

func (r *Refusal) Error() string { return r.Found + ": " + r.Do + "." }

// NotRead is a file among several that could not be read, why, and what to do.
type NotRead struct{ File, Reason, Do string }

// Column says what a column was read as.
type Column struct {
	At                   Place // Row = header row
	Header, ReadAs, Unit string
	Rests                Rests // what of a mix rests on it
}

// Target is a value set in a Targets sheet and where it stands.
type Target struct {
	Value float64
	At    Place
}

// Targets are those the kitchen's sheets set; nil = not set there.
type Targets struct {
	HoldMinutes, DrainedPercent, DrainedAtMinutes, WantedChance *Target
	BatchGrams, ScaleStepGrams                                  *Target
	Canisters                                                   []Canister // that a service fills; none = not said
	Results                                                     []ResultTarget
}

// Canister is one that a service fills.
type Canister struct {
	Text   string  // as typed
	Litres float64 // 0 = not said
	Grams  float64 // to go into it; 0 = by its size
}

// Variable is a numeric column a kitchen declared, or one the reader knows as
// an extra.
type Variable struct {
	Name, Label, Unit string
	Result            bool // measured on the foam, not set before it
	OutOf             int  // the top of a score's scale, 0 = not known
}

// VariableName is a header as the name of a variable: lower case words joined by _.
func VariableName(header string) string {
	words := strings.FieldsFunc(strings.ToLower(header), func(r rune) bool {
		return !('a' <= r && r <= 'z' || '0' <= r && r <= '9' || r > 127)
	})
	if len(words) == 0 {
		return "variable"
	}
	return strings.Join(words, "_")
}

// Step is a row of a Method sheet.
type Step struct {
	Text     string
	Critical bool
	Limit    string // what stands under Critical instead of a yes: "4 h at least"
}

// Planned is a file that a plan of ours wrote, and what it said of itself.
type Planned struct {
	File    string
	Number  int    // of the plan: 1 = before any log
	Follows string // the start it went on from, in words; "" = none
	Start   *Try   // the same, understood: nil = no start was named
}

// Log is everything read.
type Log struct {
	Dish        string // of which all trials are, where the files tell of several: see ByDish
	Inputs      []Input
	NotRead     []NotRead
	Rows        Rows
	Trials      []Trial
	Problems    []Problem
	Questions   []Question
	Columns     []Column
	Targets     Targets
	Extras      []Variable
	Ingredients []ingredient.Ingredient // every one met, by the log's name for it (Known: the table's), with the values used and whose they are
	Tries       []Try                   // the formulas of a Try sheet
	Method      []Step                  // of a Method sheet, in order
	Plans       []Planned               // the files that a plan of ours wrote
	WeekSaid    map[Place]string        // of each sheet (file and sheet alone) above whose rows one line says of which week they are
	Years       map[string]int          // of each file that says of which year it is, in its name or beside its tables
	Labels      []string                // columns of labels in Raw: "canister no", "charger lot", "butter lot"
}

// Try is a formula somebody asks about: what is its chance of working? What it
// leaves open is filled in by the analysis.
type Try struct {
	Name string // as typed, or as the Try sheet calls it
	From string // "--try" or the place in the log
	// Fat and Emulsifier are percent of the mix.
	Fat, Emulsifier, EmulsifierGrams, HLB *float64
	// Parts are amounts by the kitchen's own names instead; what is not among them is open.
	Parts []TryPart
}

// TryPart is so much of one ingredient: grams of a batch, or percent of the mix.
type TryPart struct {
	Name    string
	Amount  float64
	Percent bool
}

// ResultTarget is what a Targets sheet asks of something the kitchen measures of
// its foams: "taste | 6 to 8". Best may be the middle, so both sides can be asked.
type ResultTarget struct {
	Result Variable // of Log.Extras
	Interval
	At Place
}

// String is the answer in words.
func (a Answer) String() string { return [...]string{"unknown", "yes", "partly", "no"}[a] }
