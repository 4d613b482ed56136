// Package graded has the types of grade.json: what was found in each hand-in of a
// class, and what it costs by the teacher's own weights. Types only.
package graded

import (
	"encoding/json"
	"strconv"
)

// Schema names the format; added keys keep it.
const Schema = "foamfield/grade/1"

// Class is grade.json.
type Class struct {
	Schema    string      `json:"schema"`
	Version   string      `json:"version"`
	Criteria  []Criterion `json:"criteria"` // empty without a criteria workbook
	OutOf     float64     `json:"out_of"`   // points there are; 0 without criteria
	Rules     []Rule      `json:"rules"`    // in force, with where they stand
	Students  []Student   `json:"students"`
	SameData  []SameData  `json:"same_data"` // for the teacher only; never a deduction
	NotRead   []NotRead   `json:"not_read"`
	Tasks     []Task      `json:"tasks"`
	Commonest []Common    `json:"commonest"` // mistakes by how many students made them
	Problems  []string    `json:"problems"`  // with the criteria workbook or the class list
	Changed   []Change    `json:"changed"`   // since the last run, with --again
	Anonymous bool        `json:"anonymous"`
}

// Criterion is a row of the criteria workbook.
type Criterion struct {
	Name     string  `json:"criterion"`
	Points   float64 `json:"points"`
	LooksAt  string  `json:"looks_at"`
	OffEach  float64 `json:"off_each"`
	AtMost   float64 `json:"at_most"`
	Teacher  bool    `json:"teacher_decides"`
	Feedback string  `json:"feedback"`
}

// Rule is a rule in force.
type Rule struct {
	Rule  string `json:"rule"`
	Value string `json:"value"`
	From  string `json:"from"`
}

// Student is one row of the class: a student, or a declared pair.
type Student struct {
	Student  string    `json:"student"`
	Files    []string  `json:"files"`
	Partners []string  `json:"partners"`
	Task     string    `json:"task"`
	Tasks    []string  `json:"tasks"`
	Trials   int       `json:"trials"`
	Late     bool      `json:"late"`
	Findings []Finding `json:"findings"`
	Points   []Points  `json:"points"` // empty without criteria
	Total    *float64  `json:"total"`  // proposed; null without criteria
	Good     []string  `json:"good"`   // what was done well
	Next     string    `json:"next"`   // the next step
	Remark   string    `json:"remark"` // what the teacher typed, with --again
}

// Finding is one cause at its cell. What is not certain costs nothing and is a
// question for the student.
type Finding struct {
	File    string   `json:"file"`
	Sheet   *string  `json:"sheet"` // null in a text file
	Cell    string   `json:"cell"`  // the first cell
	Cells   []string `json:"cells"` // all that the one cause explains
	About   About    `json:"about"`
	Kind    string   `json:"kind"`    // what is wrong, in a word or two: "blend HLB"
	Typed   Value    `json:"typed"`   // null where nothing is typed
	Formula *string  `json:"formula"` // the student's own
	Right   Value    `json:"right"`   // recalculated; null where nobody can know
	Certain bool     `json:"certain"`
	Off     float64  `json:"off"`
	Words   string   `json:"words"`
}

// About says what part of the work a finding is about.
type About string

// The parts.
const (
	Record      About = "record"
	Calculation About = "calculation"
	Method      About = "method"
	Conclusion  About = "conclusion"
	Formal      About = "formal"
)

// Value is a number or a text as it stands in a cell.
type Value struct {
	Text   string
	Number float64
	Kind   ValueKind
}

// ValueKind says which of the two a Value is.
type ValueKind uint8

// The kinds.
const (
	Absent ValueKind = iota
	ANumber
	AText
)

// Num is a number.
func Num(x float64) Value { return Value{Number: x, Kind: ANumber} }

// Txt is a text, absent if it is empty.
func Txt(s string) Value {
	if s == "" {
		return Value{}
	}
	return Value{Text: s, Kind: AText}
}

// MarshalJSON writes a number, a text or null.
func (v Value) MarshalJSON() ([]byte, error) {
	switch v.Kind {
	case ANumber:
		return json.Marshal(v.Number)
	case AText:
		return json.Marshal(v.Text)
	}
	return []byte("null"), nil
}

// UnmarshalJSON reads what MarshalJSON wrote.
func (v *Value) UnmarshalJSON(b []byte) error {
	var any any
	if err := json.Unmarshal(b, &any); err != nil {
		return err
	}
	switch x := any.(type) {
	case float64:
		*v = Num(x)
	case string:
		*v = Txt(x)
	default:
		*v = Value{}
	}
	return nil
}

// String is the value as a person would type it.
func (v Value) String() string {
	if v.Kind == ANumber {
		return strconv.FormatFloat(v.Number, 'g', 6, 64)
	}
	return v.Text
}

// Points is what one criterion gives a student.
type Points struct {
	Criterion string   `json:"criterion"`
	OutOf     float64  `json:"out_of"`
	Proposed  *float64 `json:"proposed"` // null = the teacher decides
	Off       float64  `json:"off"`
	Yours     *float64 `json:"yours"` // what the teacher typed, with --again
	Why       []string `json:"why"`
}

// SameData is rows alike between students: shown to the teacher only.
type SameData struct {
	Students []string `json:"students"`
	Rows     []Row    `json:"rows"`
	Words    string   `json:"words"` // digits that match, days compared
	Digits   int      `json:"digits"`
}

// Row is one of the rows alike.
type Row struct {
	File  string   `json:"file"`
	Sheet *string  `json:"sheet"`
	Cells []string `json:"cells"`
	Day   string   `json:"day"`
}

// NotRead is a hand-in that has no mark, and why: not the mark 0.
type NotRead struct {
	File    string `json:"file"`
	Student string `json:"student"` // "" = nobody can tell
	Reason  string `json:"reason"`
}

// Task is what the class tried of one dish, each measured row counted once.
type Task struct {
	Task     string   `json:"task"`
	Students int      `json:"students"`
	Trials   int      `json:"trials"`
	Copies   int      `json:"copies_left_out"`
	Worked   int      `json:"worked"`
	Fat      *Span    `json:"fat_percent"`
	Working  *Span    `json:"working_fat_percent"`
	Emuls    *Span    `json:"emulsifier_percent"`
	WorkEm   *Span    `json:"working_emulsifier_percent"`
	HLB      *Span    `json:"blend_hlb"`
	WorkHLB  *Span    `json:"working_blend_hlb"`
	Untried  []string `json:"untried"`
	Region   *Region  `json:"region"` // of all trials of the task together; null = too few
}

// Region is where the foams of a task work, by the trials of the whole class.
type Region struct {
	Trials        int      `json:"trials"`
	Status        string   `json:"status"`
	Fat           *float64 `json:"fat_percent"` // of the surest mix; null = none
	Emulsifier    *float64 `json:"emulsifier_percent"`
	HLB           *float64 `json:"blend_hlb"`
	Chance        *float64 `json:"chance"` // that the next mix of it works
	ChanceLow     *float64 `json:"chance_low"`
	HoldAtLeast   float64  `json:"hold_at_least_minutes"` // what counts as working
	DrainedAtMost float64  `json:"drained_at_most_percent"`
}

// Span is the lowest and the highest.
type Span struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Common is a kind of mistake and how many students made it.
type Common struct {
	Kind     string `json:"kind"`
	Students int    `json:"students"`
	Cells    int    `json:"cells"`
}

// Change is what is new since the last run.
type Change struct {
	Student string `json:"student"`
	What    string `json:"what"`
}
