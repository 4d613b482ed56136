package result

// Mix is a formula as the model sees it.
type Mix struct {
	FatPercent        *float64           `json:"fat_percent"`
	EmulsifierPercent *float64           `json:"emulsifier_percent"`
	EmulsifierGrams   *float64           `json:"emulsifier_grams"`
	BlendHLB          *float64           `json:"blend_hlb"`
	Extras            map[string]float64 `json:"extras"`
}

// Variable is one the model uses. Its coordinate is (x - Centre)/Scale, where x
// is the value, or its natural logarithm if Log is set.
type Variable struct {
	Name   string  `json:"name"`
	Label  string  `json:"label"` // "fat", "emulsifier", "blend HLB"
	Unit   string  `json:"unit"`  // "%", "g", ""
	Log    bool    `json:"log"`
	Low    float64 `json:"low"` // tested, in the unit
	High   float64 `json:"high"`
	Centre float64 `json:"centre"` // of x as used (of the logarithm if Log)
	Scale  float64 `json:"scale"`
	Role   Role    `json:"role"`
	// Ingredient is whose percent of the mix it is, "" if it is none: a formula in grams
	// says it already.
	Ingredient string `json:"ingredient"`
	// FixedAt is the value every chance and every mix goes with, if Role is Held.
	FixedAt *float64 `json:"fixed_at"`
	// Assumed is the number of trials that do not say it and were taken to have had
	// the usual value.
	Assumed int `json:"assumed_in"`
}

// Role is what a variable does when mixes are searched.
type Role string

// The two roles: a variable of the mix is moved, one beside it held.
const (
	Moved Role = "moved"
	Held  Role = "held"
)

// SetVariable is a variable the log carries but the model cannot use.
type SetVariable struct {
	Name   string   `json:"name"`
	Label  string   `json:"label"`
	Unit   string   `json:"unit"`
	Reason string   `json:"reason"`
	Value  *float64 `json:"value"` // the constant, if it never changed
}

// Choice is what a trial had one of, such as which emulsifiers. Each level shifts every
// line by an offset; the starts are made of the level that is held.
type Choice struct {
	By     string        `json:"by"`   // "emulsifiers" or "fat"
	Held   string        `json:"held"` // "" before there is a start, and where it is averaged over
	Levels []ChoiceLevel `json:"levels"`
}

// HeldTerm is a term of the models that is no product of variables.
type HeldTerm struct {
	Term  string  `json:"term"`
	Value float64 `json:"value"`
}

// ChoiceLevel is one of them.
type ChoiceLevel struct {
	Name   string `json:"name"`
	Trials int    `json:"trials"`
	// HoldFactor is how many times as long as with the level that is held, or on average,
	// a foam of the same numbers holds, with 90 % limits.
	HoldFactor *Band   `json:"hold_factor"`
	Verdict    Verdict `json:"verdict"` // "" where there is no factor
}
