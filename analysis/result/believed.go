package result

// PriorTerm is the prior of one coefficient.
type PriorTerm struct {
	Mean float64 `json:"mean"`
	SD   float64 `json:"sd"`
}

// SigmaNode is one point of the rule that integrates the scatter out.
type SigmaNode struct {
	LnSigma float64   `json:"ln_sigma"`
	Weight  float64   `json:"weight"`
	Mean    []float64 `json:"mean"` // of the terms, given this scatter
}

// Model is what is believed of one outcome after the log: the mean and
// covariance of its terms, enough to work out the chance of any mix.
type Model struct {
	Outcome Outcome `json:"outcome"`
	Kind    string  `json:"kind"` // "ln_minutes", "ln_percent", "yes_no" or "measured"
	// Centre and Scale are of a measured result: its line is (value - centre)/scale.
	Centre *float64 `json:"centre"`
	Scale  *float64 `json:"scale"`
	// Asked is between what a measured result passes, on its line.
	Asked        *Interval    `json:"asked"`
	N            int          `json:"n"`
	Observations Observations `json:"observations"`
	Events       *int         `json:"events"` // clogged, or broken
	Terms        [][]string   `json:"terms"`
	Prior        []PriorTerm  `json:"prior"`
	Mean         []float64    `json:"mean"`
	Covariance   [][]float64  `json:"covariance"` // of the terms (given the scatter)
	Sigma        []SigmaNode  `json:"sigma"`      // none for yes/no
	DaySD        float64      `json:"day_sd"`     // added to the scatter for another day and any of the cooks
	Draws        int          `json:"draws"`
	ESS          float64      `json:"ess"`
}

// Band is a middle and its limits.
type Band struct {
	Mid  float64 `json:"mid"`
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Effect is how hold follows one variable, the others at Fixed.
type Effect struct {
	Variable string    `json:"variable"`
	Fixed    Mix       `json:"fixed"`
	X        []float64 `json:"x"`
	Hold     []Band    `json:"hold_minutes"` // median hold and its 90 % limits
	Tested   []bool    `json:"tested"`
	// Change is the factor by which hold changes from the low to the high end of
	// the tested part, with 90 % limits.
	Change  Band    `json:"change_factor"`
	Shape   Shape   `json:"shape"`
	Peak    *int    `json:"peak"` // index in x of the longest hold, if Shape is Peaks
	Verdict Verdict `json:"verdict"`
	ShareUp float64 `json:"chance_it_rises"`
}

// Verdict says how firmly a trend may be stated: clear when at least 97.5 % of
// belief is on one side of no change, likely from 90 %.
type Verdict string

// The three verdicts.
const (
	Clear      Verdict = "clear"
	Likely     Verdict = "likely"
	CannotTell Verdict = "cannot_tell"
)

// Shape is how a trend runs over the tested part.
type Shape string

// The shapes; a trend that the trials cannot tell has none.
const (
	Rises Shape = "rises"
	Falls Shape = "falls"
	Peaks Shape = "peaks" // up to a point, and down beyond it
)

// Peak says where more of a variable stops helping the chance, the others as in the start.
type Peak struct {
	Variable    string   `json:"variable"`
	Best        float64  `json:"best"`
	AtEdge      string   `json:"at_edge"` // "low", "high" or ""
	NoLongerPay *float64 `json:"chance_more_no_longer_helps"`
}

// Limit counts, over the tested mixes that are not workable, what limits them first.
type Limit struct {
	Outcome Outcome `json:"outcome"`
	Share   float64 `json:"share"`
}

// Axis is one side of a grid.
type Axis struct {
	Variable string    `json:"variable"`
	Values   []float64 `json:"values"`
}

// Grid is the chance of working over two variables, the others fixed. Cells
// are [y][x].
type Grid struct {
	Name      string      `json:"name"`
	X         Axis        `json:"x"`
	Y         Axis        `json:"y"`
	Fixed     Mix         `json:"fixed"`
	Chance    [][]float64 `json:"chance"`
	Tested    [][]bool    `json:"tested"`
	LimitedBy [][]Outcome `json:"limited_by"`
}

// Chance is a probability with its limits at Level.
type Chance struct {
	Mean  float64 `json:"mean"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	Level float64 `json:"level"`
}

// Width is a start's chance had the priors of all terms been Factor times as wide,
// from half the draws; null where the arithmetic fails.
type Width struct {
	Factor float64  `json:"factor"`
	Chance *float64 `json:"chance"`
}

// PriorBelief is what is believed before any trial.
type PriorBelief struct {
	AtCentre float64 `json:"at_centre"`      // chance of working in the middle of what was tried
	Reaches  float64 `json:"reaches_wanted"` // that some mix within half the range tried, either way, reaches the wanted chance
}

// Predicted is what the next mix should do: median and 90 % limits.
type Predicted struct {
	Median float64 `json:"median"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
}
