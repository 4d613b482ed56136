package result

// Mix is a formula as the model sees it.
type Mix struct {
	FatPercent *float64 `json:"fat_percent"` // fat of the mix; null = not known, or no variable of the models
	// EmulsifierPercent is all emulsifiers, of the mix; null = not known, or no variable of the
	// models.
	EmulsifierPercent *float64 `json:"emulsifier_percent"`
	// EmulsifierGrams is all emulsifiers of one batch; null = not known, or no variable of the models.
	EmulsifierGrams *float64 `json:"emulsifier_grams"`
	// BlendHLB is the mean by mass of the non-ionic emulsifiers; null = not known, or no variable of
	// the models.
	BlendHLB *float64 `json:"blend_hlb"`
	// Extras are settings that go with it, by variable name; null = none [unit of the variable].
	Extras map[string]float64 `json:"extras"`
}

// Variable is one the model uses. Its coordinate is (x - centre)/scale, where x
// is the value, or its natural logarithm if log is true.
type Variable struct {
	Name   string  `json:"name"`   // its name in other keys
	Label  string  `json:"label"`  // its name in words: "fat", "emulsifier", "blend HLB"
	Unit   string  `json:"unit"`   // unit of its values: "%", "g", "min" or ""
	Log    bool    `json:"log"`    // whether x is the natural logarithm of the value
	Low    float64 `json:"low"`    // lowest value tested [unit of the variable]
	High   float64 `json:"high"`   // highest value tested [unit of the variable]
	Centre float64 `json:"centre"` // centre of x, as used [unit of x]
	Scale  float64 `json:"scale"`  // scale of x, as used [unit of x]
	Role   Role    `json:"role"`
	// Ingredient is whose percent of the mix it is, "" if it is none: a formula in grams says it
	// already.
	Ingredient string `json:"ingredient"`
	// FixedAt is the value every chance and every mix goes with; null = it is moved [unit of the
	// variable].
	FixedAt *float64 `json:"fixed_at"`
	Assumed int      `json:"assumed_in"` // trials that do not say it, taken to have had the usual value
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
	Name   string   `json:"name"`   // its name in other keys
	Label  string   `json:"label"`  // its name in words
	Unit   string   `json:"unit"`   // unit of its values, or ""
	Reason string   `json:"reason"` // why it cannot be used
	Value  *float64 `json:"value"`  // the constant; null = it changed, or is not known [unit of the variable]
}

// Choice is what a trial had one of, such as which emulsifiers. Each level shifts every
// line by an offset; the starts are made of the level that is held.
type Choice struct {
	By string `json:"by"` // "emulsifiers", "fat" or "cook"
	// Held is the level that starts are made of; "" before there is a start, and where it is averaged
	// over.
	Held   string        `json:"held"`
	Levels []ChoiceLevel `json:"levels"` // those used often enough; "others" are the rest together
}

// HeldTerm is a term of the models that is no product of variables.
type HeldTerm struct {
	Term  string  `json:"term"`  // its name in the terms of model
	Value float64 `json:"value"` // its coordinate: 1, 0 or a share [1]
}

// ChoiceLevel is one of them.
type ChoiceLevel struct {
	Name   string `json:"name"`   // its name as the log has it, or "others"
	Trials int    `json:"trials"` // trials with it
	// HoldFactor is how many times as long as with the level that is held, or on average, a foam of
	// the same numbers holds, with 90 % limits; null = it is the level held, or there is none.
	HoldFactor *Band   `json:"hold_factor"`
	Verdict    Verdict `json:"verdict"` // whether that differs from 1; "" where there is no factor
}

// TestedRange is where the trials support a statement: a mix lies in it whose variables are
// within low and high, and whose leverage f'(inverse)f, f its terms, is at most most.
type TestedRange struct {
	Low     map[string]float64 `json:"low"`     // lowest tried, by variable [unit of the variable]
	High    map[string]float64 `json:"high"`    // highest tried, by variable [unit of the variable]
	Terms   [][]string         `json:"terms"`   // variables that each term multiplies; none is the constant
	Inverse [][]float64        `json:"inverse"` // (F'F + w I)^-1 by the terms, w the weight of what is believed before [1]
	Most    float64            `json:"most"`    // the furthest trial's leverage [1]
}
