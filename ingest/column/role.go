// Package column reads the header words of a log: what each column holds, in
// which unit, on which basis. It is the only place where header words live, in
// the embedded words.txt, one idea a line in five languages and Dutch by itself; names of
// ingredients come from the table of ingredients.
package column

import "foamfield/ingest/units"

// Role is what a column holds.
type Role uint8

// The roles. None is an unknown column or one that was set aside.
const (
	None Role = iota
	TrialID
	Repeat // label of a repeat: 1 2 3, A B C
	Order  // order of the runs
	Day
	Time      // time of day
	StartedAt // clock at which the foam was dispensed
	FellAt    // clock at which it fell
	Cook
	Student
	Dish
	Canister
	CanisterID
	Fill
	Chargers   // a count, or grams of gas by its unit
	ChargerLot // lot or brand of the chargers
	IngredientLot
	Supplier
	Week    // number or name of a week, in a column of its own
	Shakes  // a count, or seconds by its unit
	Rest    // time in the fridge
	HotHold // time kept warm before it is dispensed
	Temperature
	Strained
	Shear
	Nozzle
	Squirt // first, last
	BatchMass
	FatPercent       // of the mix
	IngredientFat    // fat percent of one ingredient, such as the cream
	IngredientAmount // mass or percent of the ingredient named
	EmulsifierAmount // all emulsifiers together
	EmulsifierRatio  // how two emulsifiers share it: 70:30
	PhaseRatio       // of the fat and the water part of the mix: 40:60
	BlendHLB
	IngredientHLB  // HLB of the ingredient named
	IngredientType // names the ingredient of a bare amount: "oil type" beside "oil g"
	Hold
	HoldOver // last look at which it stood
	GoneBy   // first look at which it no longer stood
	DrainedAmount
	OilAmount
	SampleMass    // foam put to drain
	DrainedAt     // minute at which the drainage was read
	ReadingMinute // minute of this row's look, one row a reading
	CameOut
	Clogged
	Spits
	Broke
	OilLeak
	Overrun
	CupLiquid     // the cup filled level with liquid, for overrun by mass
	CupFoam       // the same cup of foam
	DispensedMass // g that came out
	LeftInside
	Spread
	Grainy
	Score
	Mouthfeel
	Result // a free word for what happened
	Note
	Measure  // a number of something else: pH, Brix, density; never an amount
	Valid    // whether the trial counts
	RepeatOf // the trial this one repeats
	Unused   // a known kind of column that no analysis uses: brand, photo
	Declared // given a role by the kitchen's own Columns sheet
	lastRole
)

// roles gives each role its name for people, its key in words.txt and the
// dimensions its numbers may have; no dimensions = words or plain numbers.
var roles = [lastRole]struct {
	name, key string
	takes     []units.Dimension
}{
	None:             {"not used", "", nil},
	TrialID:          {"trial", "trial", nil},
	Repeat:           {"repeat", "repeat", nil},
	Order:            {"order of the run", "order", nil},
	Day:              {"day", "day", nil},
	Time:             {"time of day", "time", nil},
	StartedAt:        {"clock time it was dispensed", "started at", nil},
	FellAt:           {"clock time it fell", "fell at", nil},
	Cook:             {"cook", "cook", nil},
	Student:          {"student or group", "student", nil},
	Dish:             {"dish", "dish", nil},
	Canister:         {"canister size", "canister", []units.Dimension{units.Volume}},
	CanisterID:       {"which canister", "canister id", nil},
	Fill:             {"fill", "fill", []units.Dimension{units.Mass, units.Volume, units.Percent}},
	Chargers:         {"chargers", "chargers", []units.Dimension{units.Chargers, units.Count}},
	ChargerLot:       {"charger lot", "charger lot", nil},
	IngredientLot:    {"lot of an ingredient", "ingredient lot", nil},
	Supplier:         {"supplier", "supplier", nil},
	Week:             {"week", "week", nil},
	Shakes:           {"shakes", "shakes", []units.Dimension{units.Count, units.Minutes}},
	Rest:             {"rest in the fridge", "rest", []units.Dimension{units.Minutes}},
	HotHold:          {"time kept warm", "hot hold", []units.Dimension{units.Minutes}},
	Temperature:      {"temperature", "temperature", []units.Dimension{units.Temperature}},
	Strained:         {"strained", "strained", []units.Dimension{units.Length}},
	Shear:            {"whisking or blending", "shear", []units.Dimension{units.Minutes}},
	Nozzle:           {"nozzle", "nozzle", []units.Dimension{units.Length}},
	Squirt:           {"which squirt", "squirt", nil},
	BatchMass:        {"batch mass", "batch", []units.Dimension{units.Mass, units.Volume}},
	FatPercent:       {"fat percent", "fat", []units.Dimension{units.Percent, units.Mass, units.Volume}},
	IngredientFat:    {"fat percent of an ingredient", "fat of ingredient", []units.Dimension{units.Percent}},
	IngredientAmount: {"amount of an ingredient", "ingredient", amounts},
	EmulsifierAmount: {"emulsifier, all together", "emulsifier", amounts},
	EmulsifierRatio:  {"ratio of two emulsifiers", "", nil},
	PhaseRatio:       {"ratio of fat and water part", "", nil},
	BlendHLB:         {"blend HLB", "hlb", nil},
	IngredientHLB:    {"HLB of an ingredient", "", nil},
	IngredientType:   {"which ingredient", "ingredient type", nil},
	Hold:             {"hold", "hold", []units.Dimension{units.Minutes}},
	HoldOver:         {"last look at which it stood", "hold over", []units.Dimension{units.Minutes}},
	GoneBy:           {"first look at which it no longer stood", "gone by", []units.Dimension{units.Minutes}},
	DrainedAmount:    {"drained", "drained", []units.Dimension{units.Mass, units.Volume, units.Percent}},
	OilAmount:        {"oil drained", "oil", []units.Dimension{units.Mass, units.Volume, units.Percent}},
	SampleMass:       {"foam put to drain", "sample mass", []units.Dimension{units.Mass, units.Volume}},
	DrainedAt:        {"minute the drainage was read", "drained at", []units.Dimension{units.Minutes}},
	ReadingMinute:    {"minute of the reading", "reading minute", []units.Dimension{units.Minutes}},
	CameOut:          {"came out", "came out", []units.Dimension{units.Percent}},
	Clogged:          {"clogged", "clogged", nil},
	Spits:            {"spits", "spits", nil},
	Broke:            {"broke", "broke", nil},
	OilLeak:          {"oil leak", "oil leak", nil},
	Overrun:          {"overrun", "overrun", []units.Dimension{units.Percent, units.Volume}},
	CupLiquid:        {"cup of liquid", "cup liquid", []units.Dimension{units.Mass, units.Volume}},
	CupFoam:          {"cup of foam", "cup foam", []units.Dimension{units.Mass, units.Volume}},
	DispensedMass:    {"mass that came out", "dispensed mass", []units.Dimension{units.Mass}},
	LeftInside:       {"mass left inside", "left inside", []units.Dimension{units.Mass}},
	Spread:           {"spread", "spread", []units.Dimension{units.Length}},
	Grainy:           {"grainy", "grainy", nil},
	Score:            {"score", "score", []units.Dimension{units.Score}},
	Mouthfeel:        {"mouthfeel", "mouthfeel", []units.Dimension{units.Score}},
	Result:           {"what happened", "result", nil},
	Note:             {"note", "note", nil},
	Measure:          {"a number of something else", "measure", nil},
	Valid:            {"whether the trial counts", "valid", nil},
	RepeatOf:         {"the trial it repeats", "repeat of", nil},
	Unused:           {"known, not used", "unused", nil},
	Declared:         {"declared by the kitchen", "", nil},
}

var amounts = []units.Dimension{units.Mass, units.Percent, units.Volume, units.Count}

// String is the role in the words of `check`.
func (r Role) String() string { return roles[r].name }

// Takes reports whether the role's numbers can have the dimension.
func (r Role) Takes(d units.Dimension) bool {
	for _, t := range roles[r].takes {
		if t == d {
			return true
		}
	}
	return d == units.Any
}

// shifts are the roles that header words have with a unit of another dimension:
// "hold °C" is the temperature of hot-holding, "slump mm" a spread.
var shifts = map[units.Dimension]map[Role]Role{
	units.Temperature: {Hold: Temperature, Rest: Temperature, HotHold: Temperature, Dish: Temperature,
		Shear: Temperature, BatchMass: Temperature, Canister: Temperature, StartedAt: Temperature, Unused: Temperature},
	units.Length:  {GoneBy: Spread, DrainedAmount: Spread, Hold: Spread},
	units.Minutes: {Result: Hold, DrainedAmount: DrainedAt, OilAmount: DrainedAt, FellAt: GoneBy},
	units.Mass:    {OilLeak: OilAmount, CameOut: DispensedMass},
	units.Volume:  {OilLeak: OilAmount},
	units.Percent: {OilLeak: OilAmount, GoneBy: None, BatchMass: None},
}

// shifted is the role a header word has with a unit of a dimension.
func (r Role) shifted(d units.Dimension) Role {
	if to, ok := shifts[d][r]; ok {
		return to
	}
	return r
}

// Basis says what a percent is a percent of.
type Basis uint8

// The bases. NoBasis: the header does not say.
const (
	NoBasis Basis = iota
	OfMix
	OfFat
	OfWater
	OfDry        // of the dry matter: the caller asks
	OfEmulsifier // a share of all emulsifiers
)

// String is the basis in plain words, "" when not said.
func (b Basis) String() string {
	return [...]string{"", "of mix", "of fat", "of water", "of dry matter", "of emulsifier"}[b]
}

// Aim says whether a column tells what was done or what was meant to be.
type Aim uint8

// The aims. Actual is the default.
const (
	Actual Aim = iota
	Planned
)

// MinSec reports a header that says that its clocks are minutes and seconds: "hold (mm:ss)".
func (m Meaning) MinSec() bool { return m.clock && m.Unit == units.Minute }

// Meaning is what a header says of its column.
type Meaning struct {
	Role       Role
	Unit       units.Unit
	Basis      Basis
	Within     string  // the kind of ingredient that its group says: "Water phase (g) / reduction"
	BasisName  string  // the ingredient that Basis is said by: "% of cocoa butter"
	IfPercent  Basis   // what its numbers are a percent of where they turn out percents: "emulsifier in mix"
	Ingredient string  // its name as the header has it, for IngredientAmount, IngredientHLB, IngredientFat
	Second     string  // the other emulsifier of an EmulsifierRatio, or of a single share; the other part of a PhaseRatio
	Sample     float64 // "drained off 50 g foam" → 50; 0 = not said
	AtMinute   float64 // "drain @20 min" → 20; 0 = not said
	OutOf      float64 // "/9" → 9; 0 = not said
	Words      string  // the header without unit, basis and minute
	Else       Role    // another role the words could have; None = no other
	Doubt      string  // one sentence for the person, "" = none
	Fuzzy      bool    // matched through a misspelling: show the reading

	Left     []string // words, as typed, that nothing accounts for; then Role is None
	Almost   Role     // what it would be without Left, or without Apart where that is asked
	Aim      Aim      // Planned: what was meant; a planned result is never a result (Unused)
	Apart    string   // words that say the column is no amount of this mix, or not this result
	Reversed bool     // "not broken", "no clog", "exclude": yes means no
	YesNo    bool     // the header offers yes or no
	Unknown  bool     // an amount of an ingredient nobody knows: ask what Ingredient is
	Bare     bool     // nothing in it is known and no unit says more: look at its numbers

	Rivals []int // the columns of the table, itself among them, that were set aside for having one role

	lang  languages // in which languages the matched words are header words
	sure  bool      // the words themselves are in the table
	could []entry   // every reading of words with several
	alone *Meaning  // what it would be without its rivals

	beside        []modifier // words that stand beside the name
	left          []string   // words that nothing accounts for, before the role is settled
	typed         string     // the header as it stands
	scale, minute string     // the words of OutOf and AtMinute
	subject       string     // the ingredient an attribute is of
	turned        bool       // the name itself is reversed: "unbroken"
	weighed       bool       // the header says that it is what was done
	clock         bool       // its unit is one of clocks: hh:mm
	empty         bool       // nothing names the column: only a unit, a basis, a minute, modifiers
}

// WithoutRivals is what the column is when its rivals say nothing else.
func (m Meaning) WithoutRivals() Meaning {
	if m.alone == nil {
		return m
	}
	return *m.alone
}

// Sure reports whether the header's words are known as they stand.
func (m Meaning) Sure() bool { return m.sure }
