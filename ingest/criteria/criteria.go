// Package criteria reads a teacher's own workbook: what is worth how many points, the
// rules that decide what is right, and who is in the class. Without it there are
// findings and no number.
package criteria

import (
	"time"

	"foamfield/ingest/ingredient"
)

// Criteria is a criteria workbook read.
type Criteria struct {
	File     string
	Rows     []Row
	OutOf    float64 // points there are
	Rules    Rules
	Class    []Member
	Problems []string // one sentence each: what is wrong with it; the rest is used
}

// Row is one criterion.
type Row struct {
	Name     string
	Points   float64
	LooksAt  []Look
	Looks    string // as typed
	OffEach  float64
	AtMost   float64
	Teacher  bool // nobody but the teacher decides
	Feedback string
	Line     int
}

// Look is a part of the work that a criterion looks at.
type Look string

// What can be looked at: the five parts of the work, or one kind of thing in them.
const (
	Record      Look = "record"
	Calculation Look = "calculation"
	Method      Look = "method"
	Conclusion  Look = "conclusion"
	Formal      Look = "formal"
	Total       Look = "totals"
	Fat         Look = "fat percent"
	Emulsifier  Look = "emulsifier percent"
	HLB         Look = "blend HLB"
	Means       Look = "means and differences"
	Drained     Look = "drained percent"
	Control     Look = "control"
	Repeats     Look = "repeats"
	OneChange   Look = "one change at a time"
	LeastTrials Look = "number of trials"
	Units       Look = "units"
	Dates       Look = "dates"
	Deadline    Look = "deadline"
	Safety      Look = "safety"
	Parts       Look = "parts"
	Nothing     Look = "the teacher"
)

// Rules decide what counts as right.
type Rules struct {
	FatWithin        float64 // points of percent
	EmulsifierWithin float64
	HLBWithin        float64
	TotalWithin      float64                     // percent of the total
	Basis            string                      // what percents are of where the header does not say: "mix"
	Fats             map[string]ingredient.Range // accepted fat percents, by the table's name
	HLBs             map[string]ingredient.Range // accepted HLBs
	Control          bool                        // one is needed
	Repeats          bool
	Trials           int // at least so many
	Dates, Units     bool
	Safety           bool
	Conclusion       bool
	Deadline         time.Time // the last day; zero = none
	Said             []Said
}

// Said is a rule as the workbook gives it.
type Said struct{ Rule, Value, At string }

// Member is a row of the class list.
type Member struct {
	Name    string
	Partner string
	File    string
	At      string
}

// Usual are the rules without a workbook, or where it leaves one open.
func Usual() Rules {
	return Rules{FatWithin: 0.5, EmulsifierWithin: 0.05, HLBWithin: 0.1, TotalWithin: 0.5, Basis: "mix",
		Fats:    map[string]ingredient.Range{"butter": {Low: 80, Value: 82, High: 84}},
		HLBs:    map[string]ingredient.Range{"glycerol monostearate": {Low: 3, Value: 3.8, High: 4.3}},
		Control: true, Repeats: true, Trials: 0, Dates: true, Units: true, Safety: true, Conclusion: true}
}
