package result

// Input is one file read.
type Input struct {
	File   string `json:"file"` // base name
	SHA256 string `json:"sha256"`
}

// Rows accounts for every row of the log tables.
type Rows struct {
	Read      int        `json:"read"`
	Furniture int        `json:"furniture"`
	Trials    int        `json:"trials"`
	Used      int        `json:"used"`
	SetAside  []SetAside `json:"set_aside"`
}

// SetAside is a trial left out, with the reason.
type SetAside struct {
	At     string `json:"at"`
	Reason string `json:"reason"`
}

// Counts says what became of the trials used. Broke, Short and Wet count
// trials that came out.
type Counts struct {
	Used          int `json:"used"`
	CameOut       int `json:"came_out"`
	Partly        int `json:"partly"`
	Clogged       int `json:"clogged"`
	Broke         int `json:"broke"`
	Worked        int `json:"worked"`
	Failed        int `json:"failed"`
	Unknown       int `json:"unknown"` // neither surely works nor surely fails
	StillStanding int `json:"still_standing"`
	ShortHold     int `json:"short_hold"`
	TooWet        int `json:"too_wet"`
	// Missed counts the trials that miss a target of a result beside hold and drainage.
	Missed       map[Outcome]int `json:"missed"`
	NoEmulsifier int             `json:"no_emulsifier"`
}

// Severity of a problem.
type Severity string

// The three grades of a problem.
const (
	MustFix        Severity = "must_fix"
	PleaseLook     Severity = "please_look"
	ForInformation Severity = "for_information"
)

// Problem is something in the log a person should know of.
type Problem struct {
	Kind     string   `json:"kind"`
	Severity Severity `json:"severity"`
	At       string   `json:"at"` // first place; count more of the kind
	Count    int      `json:"count"`
	Read     string   `json:"read"`
	Do       string   `json:"do"`
}

// Question is one thing that cannot be read without the kitchen's word.
type Question struct {
	At      string   `json:"at"`
	Asked   string   `json:"asked"`
	Choices []string `json:"choices"` // what the answer may be; none for a number
	Do      string   `json:"do"`      // what to type
	Cure    Cure     `json:"cure"`
	Blocks  bool     `json:"blocks"` // a recipe, or the only result, rests on it
}

// Cure is what to type: a row of one of the kitchen's own sheets under its header,
// in which … stands for the answer.
type Cure struct {
	Sheet  string   `json:"sheet"`
	Header []string `json:"header"`
	Row    []string `json:"row"`
}

// Column is what one column of the log was read as.
type Column struct {
	At     string `json:"at"`
	Header string `json:"header"`
	ReadAs string `json:"read_as"` // "" = not used
	Unit   string `json:"unit"`
}

// Answer is yes, partly or no.
type Answer string

// The answers a trial can carry.
const (
	Yes    Answer = "yes"
	Partly Answer = "partly"
	No     Answer = "no"
)

// Interval is an observed number that may be known only up to bounds: nil = no
// bound on that side; equal = exact.
type Interval struct {
	Low  *float64 `json:"low"`
	High *float64 `json:"high"`
}

// Trial is one mix in one canister, dispensed once.
type Trial struct {
	At         string   `json:"at"`
	Rows       []int    `json:"rows"`
	ID         string   `json:"id"`
	Order      int      `json:"order"` // 1 = first in the log
	Day        string   `json:"day"`
	Cook       string   `json:"cook"`
	Student    string   `json:"student"`
	Note       string   `json:"note"`
	Used       bool     `json:"used"`
	Reason     string   `json:"reason"` // why not used
	Flagged    bool     `json:"flagged"`
	RepeatOf   string   `json:"repeat_of"` // at of the first trial of the same formula, or ""
	Ingredient []Amount `json:"ingredients"`

	BatchGrams        *float64           `json:"batch_grams"`
	FatPercent        *float64           `json:"fat_percent"`
	EmulsifierPercent *float64           `json:"emulsifier_percent"`
	EmulsifierGrams   *float64           `json:"emulsifier_grams"`
	BlendHLB          *float64           `json:"blend_hlb"`
	Extras            map[string]float64 `json:"extras"`

	HoldMinutes    *Interval         `json:"hold_minutes"`
	DrainedPercent *Interval         `json:"drained_percent"`
	CameOut        *Answer           `json:"came_out"`
	Broke          *bool             `json:"broke"`
	Works          *bool             `json:"works"`
	FailedBy       []Outcome         `json:"failed_by"` // outcomes that surely miss their target, in chain order
	Missing        map[string]string `json:"missing"`   // field -> not_measured | did_not_come_out
	ForeseenChance *float64          `json:"foreseen_chance"`
}

// Amount is grams of one ingredient.
type Amount struct {
	Name  string  `json:"name"`
	Grams float64 `json:"grams"`
}

// Batch is what the formula's grams are scaled and rounded to.
type Batch struct {
	Grams            float64  `json:"grams"`
	GramsFrom        string   `json:"grams_from"`
	ScaleStepGrams   float64  `json:"scale_step_grams"`
	LargestFillGrams *float64 `json:"largest_fill_grams"` // largest logged batch
	Canister         string   `json:"canister"`           // "" = not logged or mixed
	Canisters        int      `json:"canisters"`          // how many the batch needs at the largest logged fill
	Ounces           *float64 `json:"ounces"`             // the same as grams; null here and beside all grams unless asked for
}

// MethodStep is one step of how the kitchen makes and tests a foam.
type MethodStep struct {
	Step     string `json:"step"`
	Critical bool   `json:"critical"`
	Limit    string `json:"limit"` // what to keep to at a critical step, as typed: "4 h at least"
}

// Summary is one day's, cook's or student's trials.
type Summary struct {
	By       string   `json:"by"` // "day", "cook", "student", "file"
	Name     string   `json:"name"`
	Trials   int      `json:"trials"`
	CameOut  int      `json:"came_out"`
	Worked   int      `json:"worked"`
	Repeats  int      `json:"repeats"` // trials that repeat a formula made before, here or elsewhere
	CV       *float64 `json:"repeat_cv_percent"`
	Problems int      `json:"problems"`
}

// BestSeen is the best trial actually made.
type BestSeen struct {
	At          string        `json:"at"`
	ID          string        `json:"id"`
	Works       *bool         `json:"works"`
	Mix         Mix           `json:"mix"`
	Ingredients []FormulaLine `json:"ingredients"`
	HoldMinutes *Interval     `json:"hold_minutes"`
	Drained     *Interval     `json:"drained_percent"`
	MadeTimes   int           `json:"made_times"`
}

// Used is what the run took an ingredient to be, and from where.
type Used struct {
	Name       string   `json:"name"`  // as the log calls it
	Known      string   `json:"known"` // as the shipped table calls it, "" if the same
	Kind       string   `json:"kind"`
	HLB        *float64 `json:"hlb"`
	HLBLow     *float64 `json:"hlb_low"`
	HLBHigh    *float64 `json:"hlb_high"`
	FatPercent *float64 `json:"fat_percent"`
	From       string   `json:"from"`
	Allergens  []string `json:"allergens"`
	Note       string   `json:"note"`
}

// Allergens found by name.
type Allergens struct {
	Found   []string `json:"found"`
	Unknown []string `json:"unknown_for"`
}
