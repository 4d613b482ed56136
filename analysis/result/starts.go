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
	Aim          Aim                   `json:"aim"`
	Status       Status                `json:"status"`
	Mix          Mix                   `json:"mix"` // at the rounded grams where there are grams
	Chance       Chance                `json:"chance"`
	Fails        map[Outcome]float64   `json:"fails"` // share of mixes that fail first by this
	Predicted    map[Outcome]Predicted `json:"predicted"`
	Ingredients  []FormulaLine         `json:"ingredients"`
	Parts        []Part                `json:"parts"`
	GramsNote    string                `json:"grams_note"` // why there are no grams, or what was assumed
	MadeTimes    int                   `json:"made_times"`
	MadeWorked   int                   `json:"made_worked"`
	ClosestTrial *Closest              `json:"closest_trial"`
	Slack        map[string]Slack      `json:"slack"`
	Notes        []string              `json:"notes"`
	// Confirm is for 0 to 3 mixes more that all work, and the number that settles it.
	Confirm []Confirm `json:"confirm"`
	Widths  []Width   `json:"prior_widths"`
}

// Try is a formula somebody asked about.
type Try struct {
	Name string `json:"name"`
	From string `json:"from"`
	// Mix is what was asked, open places filled as Notes say, at the rounded grams
	// where there are grams.
	Mix Mix `json:"mix"`
	// Tested says whether it lies in the tested range. Outside the box of what was
	// tried nothing is claimed: Chance is null and Notes say by how much.
	Tested       bool                  `json:"tested"`
	Chance       *Chance               `json:"chance"`
	ClogChance   *float64              `json:"clog_chance"`
	Fails        map[Outcome]float64   `json:"fails"`
	Predicted    map[Outcome]Predicted `json:"predicted"`
	Ingredients  []FormulaLine         `json:"ingredients"`
	GramsNote    string                `json:"grams_note"`
	MadeTimes    int                   `json:"made_times"`
	MadeWorked   int                   `json:"made_worked"`
	ClosestTrial *Closest              `json:"closest_trial"`
	Notes        []string              `json:"notes"`
}

// FormulaLine is one ingredient of a formula.
type FormulaLine struct {
	Name                 string   `json:"name"`
	Kind                 string   `json:"kind"`
	Grams                float64  `json:"grams"`
	Ounces               *float64 `json:"ounces"` // avoirdupois
	PercentOfMix         float64  `json:"percent_of_mix"`
	PercentOfPart        *float64 `json:"percent_of_part"`
	Part                 string   `json:"part"`                   // "fat", "water" or ""
	WeighingErrorPercent float64  `json:"weighing_error_percent"` // at most, on the scale's step
	// WithinGrams is how far the grams may be off, those of every ingredient at once,
	// before the chance drops by 0.05; 0 = not by a step of the scale, null = not known.
	WithinGrams *float64 `json:"within_grams"`
}

// Part is what is put together before it meets the rest, in the order of addition.
type Part struct {
	Part         string   `json:"part"`  // "fat", "water", or "" = where the method says
	Lines        []int    `json:"lines"` // places in the mix's ingredients, from 0
	Grams        float64  `json:"grams"`
	Ounces       *float64 `json:"ounces"`
	PercentOfMix float64  `json:"percent_of_mix"`
}

// Closest is the kitchen's own trial nearest to a mix.
type Closest struct {
	At     string `json:"at"`
	ID     string `json:"id"`
	Worked *bool  `json:"worked"`
	// Differences is this mix minus that trial, by variable, in the variable's unit.
	Differences map[string]float64 `json:"differences"`
}

// Slack is how far one number may move before the chance drops by 0.05, the others held.
type Slack struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// FatLimit is the best that can be had at one fat percent.
type FatLimit struct {
	FatPercent float64 `json:"fat_percent"`
	Chance     Chance  `json:"chance"`
	Mix        Mix     `json:"mix"`
	LimitedBy  Outcome `json:"limited_by"`
	Workable   bool    `json:"workable"`
}

// NextTrial is a mix worth making next.
type NextTrial struct {
	Purpose     string        `json:"purpose"` // "confirm", "repeat", "step", "map"
	Mix         Mix           `json:"mix"`
	Ingredients []FormulaLine `json:"ingredients"`
	Parts       []Part        `json:"parts"`
	Reason      string        `json:"reason"`
	ClogChance  *float64      `json:"clog_chance"`
	Chance      *float64      `json:"chance"`
	// Tells is the share of the doubt (variance of the chances in question) that this
	// one trial is expected to remove: of which mix is "surest", or of the "richest".
	Tells   *float64 `json:"tells"`
	TellsOf string   `json:"tells_of"`
}

// Confirm is what may be said of a start once it was made so many times more and
// worked every time.
type Confirm struct {
	Made          int     `json:"made"`
	Chance        Chance  `json:"chance"`
	ReachesWanted float64 `json:"reaches_wanted"` // how sure that the long-run share is at least the wanted chance
	Settles       bool    `json:"settles"`        // at least 9 in 10
}

// Caution is one safety sentence that applies.
type Caution struct {
	Kind  string `json:"kind"`
	Text  string `json:"text"`
	Bench string `json:"bench"` // the same in the few words a bench card has room for, "" if it is not for the bench
}
