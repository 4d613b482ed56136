package trial

import (
	"fmt"
	"slices"
	"strings"
)

// Finding is a problem as a room of the reader returns it, with how often it is
// worth saying.
type Finding struct {
	Problem
	Scope Scope
	Name  string    // of what an OnceAName is about
	Ask   *Question // what only the kitchen can answer, nil if there is nothing to ask
}

// Scope says how often a finding is worth saying.
type Scope uint8

// EachCell is said wherever it is found. OnceAColumn is said at the first cell of
// a column and then only counted. OnceAName is one thing to mend in a file however
// many cells need it, such as an ingredient's HLB.
const (
	EachCell Scope = iota
	OnceAColumn
	OnceAName
)

// Fix is a finding that stops a value from being used.
func Fix(kind string, at Place, read, do string) Finding {
	return Finding{Problem: Problem{Kind: kind, Severity: MustFix, At: at, Count: 1, Read: read, Do: do}}
}

// Check is a finding of something that was read and may be wrong.
func Check(kind string, at Place, read, do string) Finding {
	return Finding{Problem: Problem{Kind: kind, Severity: PleaseLook, At: at, Count: 1, Read: read, Do: do}}
}

// Note is a finding of what was done and may be left as it is.
func Note(kind string, at Place, read, do string) Finding {
	return Finding{Problem: Problem{Kind: kind, Severity: ForInformation, At: at, Count: 1, Read: read, Do: do}}
}

// Once is the finding, said once for its column.
func (f Finding) Once() Finding {
	f.Scope = OnceAColumn
	return f
}

// OnceOf is the finding, said once in a file for what bears the name.
func (f Finding) OnceOf(name string) Finding {
	f.Scope, f.Name = OnceAName, name
	return f
}

// Asking is the finding with the question that it puts.
func (f Finding) Asking(q Question) Finding {
	q.At = f.At
	f.Ask = &q
	return f
}

// Cure is what a kitchen types to answer a question: a row of one of its own
// sheets. Open stands in it for the answer.
type Cure struct {
	Sheet string
	Row   []string
}

// Header is the header of the sheet as far as the row reaches.
func (c Cure) Header() []string { return Headers[c.Sheet][:len(c.Row)] }

// Headers are the headers of the sheets on which a kitchen says how its log is
// meant.
var Headers = map[string][]string{
	"Ingredients": {"Name in the log", "What it is", "HLB", "Fat %", "Use limit %", "Allergens", "Note", "Prices"},
	"Columns":     {"Header in the log", "Meaning", "Unit", "Basis"},
}

// Open stands in a Cure for what only the kitchen knows.
const Open = "…"

// Question is one thing that cannot be read without the kitchen's word: where it
// stands, what is asked, what the answer may be and where to type it.
type Question struct {
	At      Place
	Asked   string
	Choices []string // empty for a number
	Cure    Cure
	Blocks  bool   // a recipe, or the only result, rests on it: no start until it is answered
	Only    Rests  // what of the mix it settles, 0 = all that rests on its column
	Type    string // what to type in the log itself, "" = only the cure answers it
}

// Do says what to type, in a sentence.
func (q Question) Do() string {
	if q.Type != "" && q.Cure.Sheet == "" {
		return q.Type
	}
	do := fmt.Sprintf("type on a sheet %s of the log, under the header “%s”, the row “%s”",
		q.Cure.Sheet, strings.Join(q.Cure.Header(), " | "), strings.Join(q.Cure.Row, " | "))
	open := slices.ContainsFunc(q.Cure.Row, func(cell string) bool { return strings.Contains(cell, Open) })
	if open {
		do += ", with your answer in place of " + Open
	}
	if strings.HasSuffix(strings.ToLower(q.At.File), ".csv") {
		do = "save the log as .xlsx and " + do
	}
	if len(q.Choices) > 0 {
		do += ": one of " + strings.Join(q.Choices, "; ")
	}
	switch {
	case q.Type != "" && open:
		do = q.Type + "; or " + do
	case q.Type != "":
		do = q.Type + "; or, to do without it, " + do
	}
	return do
}
