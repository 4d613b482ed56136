package result

// Aim is what a start is after.
type Aim string

// The two starts.
const (
	Surest  Aim = "surest"
	Richest Aim = "richest"
)

// Start is a formula to start from.
type Start struct {
	Aim    Aim                 `json:"aim"`
	Status Status              `json:"status"` // "recommended" or "best_available"
	Mix    Mix                 `json:"mix"`    // its formula, at the rounded grams where there are grams
	Chance Chance              `json:"chance"` // its chance of working
	Fails  map[Outcome]float64 `json:"fails"`  // share of mixes that fail first by each outcome [0 to 1]
	// Clogging is the chance that it clogs; null = the log does not say what came out [0 to 1].
	Clogging     *Chance               `json:"clogging"`
	Predicted    map[Outcome]Predicted `json:"predicted"`     // what the next mix should do, by outcome
	Ingredients  []FormulaLine         `json:"ingredients"`   // its formula in grams; empty if there are none
	Parts        []Part                `json:"parts"`         // what goes together, in the order of addition
	GramsNote    string                `json:"grams_note"`    // why there are no grams, or what was assumed, else ""
	MadeTimes    int                   `json:"made_times"`    // trials of this formula
	MadeWorked   int                   `json:"made_worked"`   // of those, the trials that worked
	MadeUnclear  int                   `json:"made_unclear"`  // of those, the trials of which it is unclear
	ClosestTrial *Closest              `json:"closest_trial"` // the kitchen's own trial nearest to it; null = none
	Slack        map[string]Slack      `json:"slack"`         // how far each number may move, by variable
	Notes        []string              `json:"notes"`         // what else to know
	// Confirm is what 0 to 3 mixes more that all work would say, and the number that settles it.
	Confirm []Confirm `json:"confirm"`
	Cost    *Cost     `json:"cost"`         // what it costs; null = no grams, or the kitchen says no prices
	Widths  []Width   `json:"prior_widths"` // its chance had the priors been half or twice as wide
}

// Cost is what a formula costs by the kitchen's own prices.
type Cost struct {
	Currency    string   `json:"currency"`      // as typed, "" = not said
	Batch       float64  `json:"batch"`         // of the whole formula [currency]
	Per100Grams float64  `json:"per_100_grams"` // of 100 g of it [currency]
	Service     *float64 `json:"service"`       // of what is made for service; null = nothing is [currency]
	Portions    *int     `json:"portions"`      // how many the batch gives, or what is made for service; null = not said [count]
	Portion     *float64 `json:"portion"`       // of one of these; null = not said [currency]
	Unpriced    []string `json:"unpriced"`      // ingredients without a price, which count as nothing
}

// Cheapest is the mix of least cost that has the wanted chance.
type Cheapest struct {
	Mix         Mix           `json:"mix"`         // its formula, at the rounded grams
	Ingredients []FormulaLine `json:"ingredients"` // its formula in grams
	Chance      Chance        `json:"chance"`      // its chance of working
	Cost        Cost          `json:"cost"`        // what it costs
}

// Rest is what one headline of the answer rests on: how it moves when one trial is left out.
type Rest struct {
	// Headline is "surest_chance", "surest_fat_percent" or "richest_fat_percent".
	Headline string  `json:"headline"`
	Value    float64 `json:"value"` // as named [0 to 1, or percent of the mix]
	Low      float64 `json:"low"`   // the least it comes to without some one trial [as value]
	High     float64 `json:"high"`  // the most [as value]
	// Flips is where the trials stand without which the wanted chance is lost, or gained.
	Flips  []string    `json:"flips"`
	Trials []Influence `json:"trials"` // those that move it most, at most three
}

// Influence is one trial and what a headline would be without it.
type Influence struct {
	At      string   `json:"at"`      // where the trial stands
	ID      string   `json:"id"`      // what the log calls it, "" if nothing
	Without *float64 `json:"without"` // the headline without it; null = nothing could be named [as value]
}

// Try is a formula somebody asked about.
type Try struct {
	Name string `json:"name"` // as it was asked for
	From string `json:"from"` // "--try", or the place of the row that asked
	// Mix is what was asked, open places filled as the notes say, at the rounded grams where there are
	// grams.
	Mix Mix `json:"mix"`
	// Tested says whether it lies in the tested range.
	Tested bool `json:"tested"`
	// Chance is its chance of working; null = outside what was tried, or nothing is known of it: see notes.
	Chance *Chance `json:"chance"`
	// ClogChance is the chance that it does not come out; null = as chance, or coming out is not
	// logged.
	ClogChance *float64 `json:"clog_chance"`
	// Clogging is the same with its limits; null = the log does not say what came out, or no chance is given [0 to 1].
	Clogging     *Chance               `json:"clogging"`
	Fails        map[Outcome]float64   `json:"fails"`         // share of mixes that fail first by each outcome [0 to 1]
	Predicted    map[Outcome]Predicted `json:"predicted"`     // what the next mix should do, by outcome
	Ingredients  []FormulaLine         `json:"ingredients"`   // its formula in grams; empty if there are none
	GramsNote    string                `json:"grams_note"`    // why there are no grams, or what was assumed, else ""
	MadeTimes    int                   `json:"made_times"`    // trials of this formula
	MadeWorked   int                   `json:"made_worked"`   // of those, the trials that worked
	MadeUnclear  int                   `json:"made_unclear"`  // of those, the trials of which it is unclear
	ClosestTrial *Closest              `json:"closest_trial"` // the kitchen's own trial nearest to it; null = not placed
	Notes        []string              `json:"notes"`         // what was taken, and what is not known
}

// FormulaLine is one ingredient of a formula.
type FormulaLine struct {
	Name                 string   `json:"name"`                   // as the log calls it
	Kind                 string   `json:"kind"`                   // kind of ingredient, as in ingredients
	Grams                float64  `json:"grams"`                  // grams to weigh
	Ounces               *float64 `json:"ounces"`                 // the same, avoirdupois; null = not asked for
	PercentOfMix         float64  `json:"percent_of_mix"`         // share of all grams
	PercentOfPart        *float64 `json:"percent_of_part"`        // share of the fat, or of the water part; null = in no part
	Part                 string   `json:"part"`                   // what percent_of_part is of: "fat", "water" or ""
	WeighingErrorPercent float64  `json:"weighing_error_percent"` // error of weighing at most, on the scale's step
	// WithinGrams is how far the grams may be off, those of every ingredient at once, before the
	// chance drops by 0.05; 0 = not by a step of the scale; null = not worked out.
	WithinGrams *float64 `json:"within_grams"`
	// BlendedToHLB is the HLB to which emulsifiers that are weighed together are blended; null = not
	// such a line, or no HLB is known.
	BlendedToHLB *float64 `json:"blended_to_hlb"`
	Together     bool     `json:"together"` // stands for all ingredients of its kind: the log has no grams of each
	// TooLittle is how to weigh what the scale cannot weigh within 5 %; null = it can.
	TooLittle *TooLittle `json:"too_little"`
}

// TooLittle is what to do about an amount that is too little for the scale.
type TooLittle struct {
	Premix     *Premix `json:"premix"`      // more of it in a carrier, of which a part is taken; null = none is small enough for the mix
	BatchGrams float64 `json:"batch_grams"` // mass of the mix from which on the scale is fine enough
}

// Premix is an ingredient in more of its fat or water than is needed, and the part to take.
type Premix struct {
	WeighGrams   float64 `json:"weigh_grams"`   // of the ingredient
	IntoGrams    float64 `json:"into_grams"`    // of the carrier that it goes into
	Carrier      string  `json:"carrier"`       // the carrier, as the log calls it; "" = none is named
	Melted       bool    `json:"melted"`        // whether the carrier is a fat
	TakeGrams    float64 `json:"take_grams"`    // of the pre-mix for this mix
	LessGrams    float64 `json:"less_grams"`    // of the carrier, to leave out of the mix for it
	ErrorPercent float64 `json:"error_percent"` // error of the ingredient that comes into the mix, at most
}

// Part is what is put together before it meets the rest, in the order of addition.
type Part struct {
	Part         string   `json:"part"`           // "fat", "water", or "" = where the method says
	Lines        []int    `json:"lines"`          // places in the mix's ingredients, from 0
	Grams        float64  `json:"grams"`          // grams in all
	Ounces       *float64 `json:"ounces"`         // the same, avoirdupois; null = not asked for
	PercentOfMix float64  `json:"percent_of_mix"` // share of all grams
}

// Closest is the kitchen's own trial nearest to a mix.
type Closest struct {
	At     string `json:"at"`     // place of the trial, as in trials
	ID     string `json:"id"`     // the trial's own number, as typed
	Worked *bool  `json:"worked"` // whether it met every target; null = neither surely
	Note   string `json:"note"`   // what the kitchen noted of it, as typed, or ""
	// Differences are this mix minus that trial, by variable [unit of the variable].
	Differences map[string]float64 `json:"differences"`
}

// Slack is how far one number may move before the chance drops by 0.05 or the tested
// range ends, the others held.
type Slack struct {
	Low  float64 `json:"low"`  // lowest it may be [unit of the variable]
	High float64 `json:"high"` // highest it may be [unit of the variable]
}

// FatLimit is the best that can be had at one fat percent.
type FatLimit struct {
	FatPercent float64 `json:"fat_percent"` // fat of the mix
	Chance     Chance  `json:"chance"`      // its chance of working
	Mix        Mix     `json:"mix"`         // the best mix at this fat
	LimitedBy  Outcome `json:"limited_by"`  // what most likely fails first
	// Workable says whether it may be a start: it reaches the wanted chance, clogs seldom enough and
	// lies well inside what was tried, and hold is no guess.
	Workable bool `json:"workable"`
}

// FatEnd is how far the fat can go, and what ends it.
type FatEnd struct {
	FatPercent float64 `json:"fat_percent"` // that of the richest start
	// FailsFirstBy is how the best mixes of more fat, which miss the wanted chance, most often fail
	// first; "" = up to the most that was tried none misses it.
	FailsFirstBy Outcome `json:"fails_first_by"`
}

// NextTrial is a mix worth making next.
type NextTrial struct {
	Purpose     string        `json:"purpose"`     // "confirm", "repeat", "step" or "map"
	Mix         Mix           `json:"mix"`         // its formula
	Ingredients []FormulaLine `json:"ingredients"` // its formula in grams; empty if there are none
	Parts       []Part        `json:"parts"`       // what goes together, in the order of addition
	Reason      string        `json:"reason"`      // why it is worth making
	ClogChance  *float64      `json:"clog_chance"` // chance that it does not come out; null = no model, or not logged
	// Clogging is the same with its limits; null = the log does not say what came out, or no chance is given [0 to 1].
	Clogging *Chance  `json:"clogging"`
	Chance   *float64 `json:"chance"` // chance of working; null = no model
	// Tells is the share of the doubt (variance of the chances in question) that this one trial is
	// expected to remove; null = made for another reason [0 to 1].
	Tells *float64 `json:"tells"`
	// Gain is by how much one trial is expected to better the answer: the chance of the surest start, or
	// the richest's fat in points; null = a trial for another purpose [chance, or points of fat].
	Gain    *float64 `json:"gain"`
	TellsOf string   `json:"tells_of"` // what the doubt is of: which mix is "surest", the "richest" ones, or ""
}

// Confirm is what may be said of a start once it was made so many times more and
// worked every time.
type Confirm struct {
	Made          int     `json:"made"`           // mixes more, all of which work
	AllWork       float64 `json:"all_work"`       // chance that so many all work [0 to 1]
	Chance        Chance  `json:"chance"`         // chance of working, then
	ReachesWanted float64 `json:"reaches_wanted"` // how sure that the long-run share is at least the wanted chance [0 to 1]
	Settles       bool    `json:"settles"`        // whether that is at least 9 in 10
}

// Caution is one safety sentence that applies.
type Caution struct {
	Kind string `json:"kind"` // what it is about, in one word
	Text string `json:"text"` // the sentence
	// Bench is the same in the few words a bench card has room for, "" if it is not for the bench.
	Bench string `json:"bench"`
}
