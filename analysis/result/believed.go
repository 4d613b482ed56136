package result

// PriorTerm is the prior of one coefficient.
type PriorTerm struct {
	Mean float64 `json:"mean"` // mean of the normal prior [unit of the line]
	SD   float64 `json:"sd"`   // its standard deviation [unit of the line]
}

// SigmaNode is one point of the rule that integrates the scatter out.
type SigmaNode struct {
	LnSigma float64   `json:"ln_sigma"` // natural logarithm of the scatter [1]
	Weight  float64   `json:"weight"`   // weight of this point; all add up to 1 [1]
	Mean    []float64 `json:"mean"`     // means of the terms, given this scatter [unit of the line]
	Spread  float64   `json:"spread"`   // what the covariance is multiplied by, given this scatter [1]
}

// Sign is a combination of a line's terms that is believed not to be negative, or hardly:
// the prior is multiplied by the normal distribution function of combination/soft.
type Sign struct {
	Row  []float64 `json:"row"`  // what each term is multiplied by [1]
	Soft float64   `json:"soft"` // how far it may be negative before that is hard to believe [unit of the line]
}

// Score is a scale of whole numbers: each stands for half a step either side of it, at the
// ends for all beyond too.
type Score struct {
	Lowest  float64 `json:"lowest"`  // lower end of the scale [unit of the result]
	Highest float64 `json:"highest"` // upper end of the scale [unit of the result]
}

// Edge is what is believed of a yes/no line if it is so many times as steep as its prior.
type Edge struct {
	Steepness  float64     `json:"steepness"`  // factor on the prior's means and standard deviations [1]
	Weight     float64     `json:"weight"`     // how much that is believed after the log; all add up to 1 [1]
	Mean       []float64   `json:"mean"`       // means of the terms, given this steepness [log odds]
	Covariance [][]float64 `json:"covariance"` // their covariance [log odds, squared]
	Leanings   [][]float64 `json:"leanings"`   // rows as in model[] [log odds]
}

// Model is what is believed of one outcome after the log: the mean and
// covariance of its terms, enough to work out the chance of any mix.
type Model struct {
	Outcome Outcome `json:"outcome"` // the outcome that is modelled
	// Kind is the kind of line: "ln_minutes", "ln_percent", "yes_no" (log odds) or "measured".
	Kind string `json:"kind"`
	// Centre is the centre of a measured result, whose line is (value - centre)/scale; null = another
	// kind [unit of the result].
	Centre *float64 `json:"centre"`
	Scale  *float64 `json:"scale"` // its scale; null = another kind [unit of the result]
	// Asked is between what a measured result passes, on its line; null = another kind [1].
	Asked        *Interval    `json:"asked"`
	Score        *Score       `json:"score"`        // the scale of a measured result; null = a plain number, or another kind
	N            int          `json:"n"`            // trials it rests on: those that reached the outcome and say it
	Observations Observations `json:"observations"` // how the outcome was seen; yes and no count as exact
	Events       *int         `json:"events"`       // trials that clogged, or split; null = not yes and no
	// Terms are the variables whose coordinates each term multiplies: none = the constant, one twice =
	// a square; or the name of one of held_terms.
	Terms [][]string  `json:"terms"`
	Prior []PriorTerm `json:"prior"` // prior of each term
	Signs []Sign      `json:"signs"` // what the prior is multiplied by; null = no way is taken for given
	Mean  []float64   `json:"mean"`  // mean of each term after the log [unit of the line]
	// Covariance is the covariance of the terms, of a number given the scatter [unit of the line, squared].
	Covariance [][]float64 `json:"covariance"`
	// Leanings are rows whose products with a mix's terms, cubed and added up, are the third central
	// moment of a number's line there, given the scatter; null = yes and no has them in edges [unit of
	// the line].
	Leanings [][]float64 `json:"leanings"`
	Sigma    []SigmaNode `json:"sigma"` // the points that integrate the scatter out; null = yes and no has none
	// LnSigmaPrior is the prior of the natural logarithm of the scatter; null = yes and no has none.
	LnSigmaPrior *PriorTerm `json:"ln_sigma_prior"`
	// NearlyBand is how far from coming out a mix may be and still come out partly, at an edge of
	// steepness 1 (at another, times that): the trials that came out partly are noes that were a yes,
	// had the line been higher by it, and the clogged ones none even then; null = partly is not told
	// from clogged, or another outcome [log odds].
	NearlyBand *float64 `json:"nearly_band"`
	// Edges are the beliefs that a chance of a yes is averaged over, by weight; null = a number has none.
	Edges []Edge `json:"edges"`
	// LnSteepnessPrior is the prior of the natural logarithm of an edge's steepness; null = a number has none.
	LnSteepnessPrior *PriorTerm `json:"ln_steepness_prior"`
	// DaySD is the standard deviation added to the scatter for another day and any of the cooks: the
	// root of one_day_sd squared, if one day is all the trials had, and of the mean square that the
	// levels of averaged lie off their average [unit of the line].
	DaySD float64 `json:"day_sd"`
	Draws int     `json:"draws"` // weighted draws that mean and covariance rest on
	ESS   float64 `json:"ess"`   // effective number of those draws [draws]
}

// Band is a middle and its limits, in the unit of the key that holds it.
type Band struct {
	Mid  float64 `json:"mid"`  // the middle: a median
	Low  float64 `json:"low"`  // lower limit
	High float64 `json:"high"` // upper limit
}

// Effect is how hold follows one variable, the others held.
type Effect struct {
	Variable string    `json:"variable"`     // the variable's name in variables
	Fixed    Mix       `json:"fixed"`        // the mix that the other variables are held at
	X        []float64 `json:"x"`            // values of the variable, rising [unit of the variable]
	Hold     []Band    `json:"hold_minutes"` // median hold at each x, and its 90 % limits
	Tested   []bool    `json:"tested"`       // for each x, whether that mix lies in the tested range
	// Change is the factor by which hold changes from the low to the high end of the tested part, with
	// 90 % limits.
	Change Band `json:"change_factor"`
	// Shape is how the trend runs over the tested part; "" where the verdict is cannot_tell.
	Shape   Shape   `json:"shape"`
	Peak    *int    `json:"peak"`    // index in x of the longest hold, from 0; null = the shape is not peaks
	Verdict Verdict `json:"verdict"` // how firmly the shape may be stated
	// ShareUp is the chance that hold is longer at the high end of the tested part than at the low
	// end.
	ShareUp float64 `json:"chance_it_rises"`
}

// Verdict says how firmly a trend may be stated: clear when at least 97.5 % of
// belief is on one side of no change, likely from 90 %. Pages say shown and suggested; of a
// group effect, whose p is adjusted, shown for both.
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
	Variable string  `json:"variable"` // the variable's name in variables
	Best     float64 `json:"best"`     // the value with the highest chance [unit of the variable]
	// Low is the lower 90 % limit of where the chance is highest, within what was tried [unit of the variable].
	Low  float64 `json:"low"`
	High float64 `json:"high"` // the upper limit [unit of the variable]
	// AtEdge is the end of the tested range that best lies at: "low", "high", or "" for neither.
	AtEdge string `json:"at_edge"`
	// NoLongerPay is how likely going on to the upper end does not lengthen hold; null = best lies at
	// the upper end, or hold is not judged.
	NoLongerPay *float64 `json:"chance_more_no_longer_helps"`
}

// Limit counts, over the tested mixes that are not workable, what most likely fails
// first.
type Limit struct {
	Outcome Outcome `json:"outcome"` // what fails first
	Share   float64 `json:"share"`   // share of the mixes
}

// Axis is one side of a grid.
type Axis struct {
	Variable string    `json:"variable"` // the variable's name in variables
	Values   []float64 `json:"values"`   // values along the side, rising [unit of the variable]
}

// Grid is the chance of working over two variables, the others held.
type Grid struct {
	Name  string `json:"name"`  // "fat_by_emulsifier" or "fat_by_hlb"
	X     Axis   `json:"x"`     // the side along a row
	Y     Axis   `json:"y"`     // the side along the rows
	Fixed Mix    `json:"fixed"` // the mix that the other variables are held at
	// Chance is chance of working in rows of y, each of every x, rounded to four decimals.
	Chance    [][]float64 `json:"chance"`
	Tested    [][]bool    `json:"tested"`     // in the same rows, whether the mix lies in the tested range
	LimitedBy [][]Outcome `json:"limited_by"` // in the same rows, what most likely fails first
}

// Chance is a probability with its limits.
type Chance struct {
	Mean float64 `json:"mean"` // expected share of such mixes that work: the chance of the next one
	// MeanOfDraws is the same over the draws that the limits are of: mean rests on the moments of what
	// is believed, so that many mixes take milliseconds, and is mostly within 0.01 of it.
	MeanOfDraws float64 `json:"mean_of_draws"`
	Low         float64 `json:"low"`   // lower limit of that share in the long run
	High        float64 `json:"high"`  // upper limit of that share in the long run
	Level       float64 `json:"level"` // how likely the share lies between the limits
}

// Width is a start's chance had the priors of all terms been so many times as wide,
// from half the draws.
type Width struct {
	Factor float64  `json:"factor"` // what the standard deviation of every prior is multiplied by
	Chance *float64 `json:"chance"` // chance of working, then; null = the arithmetic fails
}

// PriorBelief is what is believed before any trial.
type PriorBelief struct {
	AtCentre float64 `json:"at_centre"` // chance of working in the middle of what was tried [0 to 1]
	// Reaches is the chance that some mix between the ends of what was tried reaches the wanted chance
	// [0 to 1].
	Reaches float64 `json:"reaches_wanted"`
}

// Predicted is what the next mix should do: median and 90 % limits.
type Predicted struct {
	Median float64 `json:"median"` // median of the next mix [unit of the outcome]
	Low    float64 `json:"low"`    // lower 90 % limit [unit of the outcome]
	High   float64 `json:"high"`   // upper 90 % limit [unit of the outcome]
}
