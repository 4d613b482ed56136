package result

// Input is one file read.
type Input struct {
	File   string `json:"file"`   // its base name
	SHA256 string `json:"sha256"` // SHA-256 of its bytes, hexadecimal
}

// Rows accounts for every row of the log tables.
type Rows struct {
	Read      int        `json:"read"`      // rows of the log tables
	Furniture int        `json:"furniture"` // rows that are titles, units, repeated headers, averages or blank
	Trials    int        `json:"trials"`    // trials in the log: used and set aside
	Used      int        `json:"used"`      // trials in the analysis
	SetAside  []SetAside `json:"set_aside"` // the trials that are not
}

// SetAside is a trial left out, with the reason.
type SetAside struct {
	At     string `json:"at"`     // place of the trial, as in trials
	Reason string `json:"reason"` // why it was left out
}

// Counts says what became of the trials used. Those that split, held too short or
// drained too much are counted among the ones that came out.
type Counts struct {
	Used          int `json:"used"`           // trials in the analysis
	CameOut       int `json:"came_out"`       // trials that came out fully
	Partly        int `json:"partly"`         // trials that came out in part
	Clogged       int `json:"clogged"`        // trials that did not come out
	Broke         int `json:"broke"`          // trials that split
	Worked        int `json:"worked"`         // trials that surely meet every target
	Failed        int `json:"failed"`         // trials that surely miss one
	Unknown       int `json:"unknown"`        // trials that neither surely work nor surely fail
	StillStanding int `json:"still_standing"` // trials that still held when they were last looked at
	ShortHold     int `json:"short_hold"`     // trials that surely miss the hold asked for
	TooWet        int `json:"too_wet"`        // trials that surely drain more than asked for
	// FellOrDrained counts those that miss one of the two, or both, once.
	FellOrDrained int `json:"fell_or_drained"`
	// Missed counts, by result, the trials that miss a target beside hold and drainage.
	Missed       map[Outcome]int `json:"missed"`
	NoEmulsifier int             `json:"no_emulsifier"` // trials without emulsifier: counted, but on no surface
}

// Severity of a problem.
type Severity string

// The three grades of a problem.
const (
	MustFix        Severity = "must_fix"
	PleaseLook     Severity = "please_look"
	ForInformation Severity = "for_information"
)

// ScoreNotAsked is the kind of problem that a score is which nobody asks for.
const ScoreNotAsked = "score not asked for"

// Problem is something in the log a person should know of.
type Problem struct {
	Kind     string   `json:"kind"`     // what it is, the same words for all of a kind
	Severity Severity `json:"severity"` // how grave it is
	At       string   `json:"at"`       // place of the first of the kind
	Count    int      `json:"count"`    // how many of the kind there are
	Read     string   `json:"read"`     // what stands there, and how it is taken
	Do       string   `json:"do"`       // what to type
}

// Question is one thing that cannot be read without the kitchen's word.
type Question struct {
	At      string   `json:"at"`      // place of what it is about
	Asked   string   `json:"asked"`   // the question
	Choices []string `json:"choices"` // what the answer may be; none for a number
	Do      string   `json:"do"`      // what to type
	Cure    Cure     `json:"cure"`
	Blocks  bool     `json:"blocks"` // whether a recipe, or the only result, rests on it
}

// Cure is what to type: a row of one of the kitchen's own sheets under its header.
type Cure struct {
	Sheet  string   `json:"sheet"`  // name of the sheet, "" if it is typed in the log itself
	Header []string `json:"header"` // the sheet's header, a cell each
	Row    []string `json:"row"`    // the cells to type; the three dots (U+2026) stand for the answer
}

// Column is what one column of the log was read as.
type Column struct {
	At     string `json:"at"`      // place of its header
	Header string `json:"header"`  // its header as typed
	ReadAs string `json:"read_as"` // the role or ingredient it was read as, "" if not used
	Unit   string `json:"unit"`    // unit of its numbers, or ""
}

// Answer is yes, partly or no.
type Answer string

// The answers a trial can carry.
const (
	Yes    Answer = "yes"
	Partly Answer = "partly"
	No     Answer = "no"
)

// Interval is an observed number that may be known only up to bounds; equal
// ends = exact. It is in the unit of the key that holds it.
type Interval struct {
	Low  *float64 `json:"low"`  // lower end; null = no bound on that side
	High *float64 `json:"high"` // upper end; null = no bound on that side
}

// Trial is one mix in one canister, dispensed once.
type Trial struct {
	At         string   `json:"at"`          // file, sheet and first row; other keys name this trial so
	Rows       []int    `json:"rows"`        // its rows of the sheet, from 1
	ID         string   `json:"id"`          // the log's own number, as typed, or ""
	Order      int      `json:"order"`       // place in the log, from 1
	Day        string   `json:"day"`         // day as typed, or ""
	Cook       string   `json:"cook"`        // cook as typed, or ""
	Student    string   `json:"student"`     // student as typed, or ""
	Canister   string   `json:"canister"`    // size of its canister as typed, or ""
	Note       string   `json:"note"`        // remarks as typed, or ""
	Used       bool     `json:"used"`        // whether the analysis counts it
	Reason     string   `json:"reason"`      // why it is not used, or ""
	Flagged    bool     `json:"flagged"`     // whether no start may be built on it
	RepeatOf   string   `json:"repeat_of"`   // at of the first trial of the same formula, or ""
	Ingredient []Amount `json:"ingredients"` // what was weighed; null = not logged in grams

	BatchGrams *float64 `json:"batch_grams"` // all that went into the canister; null = not known
	// FatPercent is fat of the mix, cream and butter counted by their own fat; null = not known.
	FatPercent        *float64 `json:"fat_percent"`
	EmulsifierPercent *float64 `json:"emulsifier_percent"` // all emulsifiers, of the mix; null = not known
	EmulsifierGrams   *float64 `json:"emulsifier_grams"`   // all emulsifiers; null = not known
	// BlendHLB is the mean by mass of the non-ionic emulsifiers; null = not known, or no emulsifier.
	BlendHLB *float64 `json:"blend_hlb"`
	// Extras are other numbers of the trial by variable name, such as chargers and rest_minutes; null
	// = none [unit of the variable].
	Extras map[string]float64 `json:"extras"`
	// Labels are what columns of labels say of it, such as "butter lot", by the name that group_effects
	// has; null = none.
	Labels map[string]string `json:"labels"`

	HoldMinutes *Interval `json:"hold_minutes"` // how long it kept its shape; null = see missing
	// DrainedPercent is the liquid that left the foam, of its mass, at the targets' minute; null = see
	// missing.
	DrainedPercent *Interval `json:"drained_percent"`
	CameOut        *Answer   `json:"came_out"`  // whether it came out; null = not known
	Broke          *bool     `json:"broke"`     // whether it split; null = not known
	Works          *bool     `json:"works"`     // whether it meets every target; null = neither surely
	FailedBy       []Outcome `json:"failed_by"` // outcomes that surely miss their target, in chain order
	// Tells are the outcomes whose line in model rests on this trial; null = none. A foam that was
	// watched or drained came out.
	Tells []Outcome `json:"tells"`
	// Beside is what the terms of model are in this trial that no variables multiply to, in their
	// order; null = placed on no line, for want of emulsifier or of a variable [1].
	Beside []float64 `json:"beside"`
	// Missing is why a result is missing, by its key: "not_measured" or "did_not_come_out".
	Missing map[string]string `json:"missing"`
	// ForeseenChance is the chance of working that the other trials give it; null = no model, not on
	// its surface, or too many trials.
	ForeseenChance *float64 `json:"foreseen_chance"`
	// NowFactors is what hold_minutes and drained_percent are multiplied with to count as of the
	// latest week and lots, by outcome; null = they count as they are [1].
	NowFactors map[Outcome]float64 `json:"now_factors"`
}

// Amount is grams of one ingredient.
type Amount struct {
	Name  string  `json:"name"`  // as the log calls it
	Grams float64 `json:"grams"` // grams weighed
}

// Batch is what the formula's grams are scaled and rounded to.
type Batch struct {
	Grams            float64  `json:"grams"`              // mass of a whole formula
	GramsFrom        string   `json:"grams_from"`         // where that comes from: "assumed", "--batch", a cell
	ScaleStepGrams   float64  `json:"scale_step_grams"`   // what the scale reads to
	LargestFillGrams *float64 `json:"largest_fill_grams"` // largest logged batch; null = none logged
	Canister         string   `json:"canister"`           // size as typed, "" = not logged or mixed
	Canisters        int      `json:"canisters"`          // how many the batch needs at the largest logged fill
	// Ounces is the same as grams, avoirdupois; null = not asked for, here and beside all grams.
	Ounces *float64 `json:"ounces"`
}

// MethodStep is one step of how the kitchen makes and tests a foam.
type MethodStep struct {
	Step     string `json:"step"`     // what to do, as typed
	Critical bool   `json:"critical"` // whether the kitchen marked it so
	Limit    string `json:"limit"`    // what to keep to at a critical step, as typed: "4 h at least"; or ""
}

// Summary is one day's, cook's or student's trials.
type Summary struct {
	By      string `json:"by"`       // "day", "cook", "student" or "file"
	Name    string `json:"name"`     // which, as the log has it
	Trials  int    `json:"trials"`   // trials used
	CameOut int    `json:"came_out"` // trials that came out fully
	Worked  int    `json:"worked"`   // trials that surely meet every target
	Repeats int    `json:"repeats"`  // trials that repeat a formula made before, here or elsewhere
	// CV is the coefficient of variation of hold over repeats that came out and did not split; null = no
	// repeats with an exact hold.
	CV       *float64 `json:"repeat_cv_percent"`
	Problems int      `json:"problems"` // problems to mend or look at in its rows, those of trials set aside too
}

// BestSeen is the best trial actually made.
type BestSeen struct {
	At          string        `json:"at"`              // place of the trial, as in trials
	ID          string        `json:"id"`              // the trial's own number, as typed
	Works       *bool         `json:"works"`           // whether it meets every target; null = neither surely
	Mix         Mix           `json:"mix"`             // its formula
	Ingredients []FormulaLine `json:"ingredients"`     // its formula scaled to the batch; empty without all grams
	HoldMinutes *Interval     `json:"hold_minutes"`    // how long it kept its shape; null = not measured
	Drained     *Interval     `json:"drained_percent"` // liquid that left the foam, of its mass; null = not measured
	MadeTimes   int           `json:"made_times"`      // trials of this formula
}

// Used is what the run took an ingredient to be, and from where.
type Used struct {
	Name  string `json:"name"`  // as the log calls it
	Known string `json:"known"` // as the shipped table calls it, "" if the same
	// Kind is "fat", "water part", "emulsifier", "emulsifier without HLB", "thickener" or "other".
	Kind       string   `json:"kind"`
	HLB        *float64 `json:"hlb"`         // its HLB; null = has none
	HLBLow     *float64 `json:"hlb_low"`     // low end of its range; null = has none
	HLBHigh    *float64 `json:"hlb_high"`    // high end of its range; null = has none
	FatPercent *float64 `json:"fat_percent"` // fat of the ingredient itself; null = not known
	From       string   `json:"from"`        // whose values these are
	Allergens  []string `json:"allergens"`   // its allergens by name, empty if none; null = not known
	Note       string   `json:"note"`        // what else to know, or ""
}

// Allergens found by name.
type Allergens struct {
	Found   []string `json:"found"`       // all allergens of the ingredients
	Unknown []string `json:"unknown_for"` // ingredients whose allergens are not known
}
