// Package result holds the types of results.json and nothing else: these
// structs are the contract between the analysis, which fills them once, and the
// plots and reports, which only show them. Masses are grams, times minutes,
// shares percent of the stated whole, chances fractions between 0 and 1. A
// pointer that is nil is a number that does not exist; it is written as null.
package result

import "slices"

// Schema names the layout of results.json; a renamed key, unit or meaning makes
// the next number.
const Schema = "foamfield/results/1"

// Results is everything one run found.
type Results struct {
	Schema  string `json:"schema"`
	Version string `json:"version"`
	Seed    uint64 `json:"seed"`

	Status       Status `json:"status"`
	StatusReason string `json:"status_reason"` // one plain sentence
	// NotJudged are targets nobody logged a result for: no chance here says anything of them.
	NotJudged []Outcome `json:"not_judged"`
	// WatchedMinutes is the longest any foam was watched; a hold beyond it is a guess,
	// and HoldIsAGuess says that the target lies there.
	WatchedMinutes *float64 `json:"watched_minutes"`
	HoldIsAGuess   bool     `json:"hold_is_a_guess"`

	Inputs   []Input   `json:"inputs"`
	Rows     Rows      `json:"rows"`
	Counts   Counts    `json:"counts"`
	Problems []Problem `json:"problems"`
	Columns  []Column  `json:"columns"`
	Trials   []Trial   `json:"trials"`
	Targets  Targets   `json:"targets"`
	Batch    Batch     `json:"batch"`

	Method []MethodStep `json:"method"` // as the log's Method sheet has it

	Variables     []Variable      `json:"variables"`
	SetAside      []SetVariable   `json:"variables_set_aside"`
	Choices       []Choice        `json:"choices"`
	Averaged      []Choice        `json:"averaged"`   // what nobody chooses, such as who makes it: chances are those of any of them
	HeldTerms     []HeldTerm      `json:"held_terms"` // of choices and averages: the values that chances are worked out with
	Fits          []Fit           `json:"fits"`
	Model         []Model         `json:"model"`
	Assumed       []string        `json:"assumed"` // which way chances are taken to move, whatever few trials say
	PriorBelief   *PriorBelief    `json:"prior_belief"`
	Effects       []Effect        `json:"effects"`
	Repeatability []Repeatability `json:"repeatability"`
	GroupEffects  []GroupEffect   `json:"group_effects"`
	Residuals     []Residual      `json:"residuals"`
	Detectable    []Detectable    `json:"detectable"`
	Confounded    []Confounded    `json:"confounded"`
	CannotTell    []NotShown      `json:"cannot_tell"`
	Peaks         []Peak          `json:"peaks"`
	Limits        []Limit         `json:"limits"`
	Grid          []Grid          `json:"grid"`
	Summaries     []Summary       `json:"summaries"`

	Starts      []Start     `json:"starts"`
	BestSeen    *BestSeen   `json:"best_seen"`
	Tries       []Try       `json:"tries"`
	FatLimit    []FatLimit  `json:"fat_limit"`
	NextTrials  []NextTrial `json:"next_trials"`
	Ingredients []Used      `json:"ingredients"`
	Allergens   Allergens   `json:"allergens"`
	Cautions    []Caution   `json:"cautions"`
}

// Status is what a run, or one start, came to.
type Status string

// The outcomes a run can have.
const (
	Recommended   Status = "recommended"
	BestAvailable Status = "best_available" // no mix reaches the wanted chance
	TooFewTrials  Status = "too_few_trials"
	NothingWorked Status = "nothing_worked"
	NoSafeStart   Status = "no_safe_start" // every mix is too likely to clog to be named
)

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

// Outcome is a link of the chain that decides whether a mix works.
type Outcome string

// The chain, in order.
const (
	CameOut        Outcome = "came_out"
	Broke          Outcome = "broke"
	HoldMinutes    Outcome = "hold_minutes"
	DrainedPercent Outcome = "drained_percent"
)

// Chain lists the outcomes in the order a mix meets them; results that a kitchen asks
// for beside them come last, each under its own name.
var Chain = []Outcome{CameOut, Broke, HoldMinutes, DrainedPercent}

// Target is one value a mix has to meet, and where it comes from.
type Target struct {
	Value float64 `json:"value"`
	From  string  `json:"from"` // "assumed", "--hold", "week.xlsx, sheet Targets"
}

// Targets decide what "works" means.
type Targets struct {
	HoldMinutes      Target `json:"hold_minutes"`
	DrainedPercent   Target `json:"drained_percent"`
	DrainedAtMinutes Target `json:"drained_at_minutes"`
	WantedChance     Target `json:"wanted_chance"`
	// Results are asked of what a kitchen measures beside hold and drainage: best may
	// lie in the middle of a scale.
	Results []ResultTarget `json:"results"`
}

// ResultTarget is the range asked of one such result; nil = no bound on that side.
type ResultTarget struct {
	Result Outcome  `json:"result"`
	Label  string   `json:"label"`
	Unit   string   `json:"unit"`
	Low    *float64 `json:"low"`
	High   *float64 `json:"high"`
	From   string   `json:"from"`
}

// Outcomes is the whole chain.
func (t Targets) Outcomes() []Outcome {
	out := slices.Clone(Chain)
	for _, r := range t.Results {
		out = append(out, r.Result)
	}
	return out
}

// Asked is the target of a result beside hold and drainage, nil if it has none.
func (t Targets) Asked(o Outcome) *ResultTarget {
	for i := range t.Results {
		if t.Results[i].Result == o {
			return &t.Results[i]
		}
	}
	return nil
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

// Observations counts how an outcome was seen.
type Observations struct {
	Exact   int `json:"exact"`
	AtLeast int `json:"at_least"`
	AtMost  int `json:"at_most"`
	Between int `json:"between"`
}

// Term is one coefficient: the product of its variables' coordinates (none =
// the constant, one twice = a square).
type Term struct {
	Variables []string `json:"variables"`
	Estimate  float64  `json:"estimate"`
	StdError  *float64 `json:"std_error"`
}

// LackOfFit is the F test of lack of fit against the spread of repeats.
type LackOfFit struct {
	F   *float64 `json:"f"`
	DF1 int      `json:"df1"`
	DF2 int      `json:"df2"`
	P   *float64 `json:"p"`
}

// Estimator is how a fit was estimated.
type Estimator string

// The estimators; bias-reduced is Firth's (1993), for yes and no.
const (
	MaximumLikelihood Estimator = "maximum_likelihood"
	BiasReduced       Estimator = "bias_reduced"
)

// Fit is one fit of one result.
type Fit struct {
	Result       string       `json:"result"`
	Distribution string       `json:"distribution"`
	Transform    string       `json:"transform"` // "ln", "none" or "logit"
	Estimator    Estimator    `json:"estimator"`
	Order        int          `json:"order"`
	N            int          `json:"n"`
	Observations Observations `json:"observations"`
	JudgedBy     bool         `json:"judged_by"` // the one the report shows
	JudgedReason string       `json:"judged_because"`

	LogLikelihood *float64    `json:"log_likelihood"`
	Scale         *float64    `json:"scale"`
	Terms         []Term      `json:"terms"`
	Covariance    [][]float64 `json:"covariance"` // of the terms, then ln scale where there is one
	ResidualSD    *float64    `json:"residual_sd"`
	ResidualDF    *int        `json:"residual_df"`

	RSquared            *float64   `json:"r_squared"`
	AdjustedRSquared    *float64   `json:"adjusted_r_squared"`
	LeaveOneOutRSquared *float64   `json:"leave_one_out_r_squared"`
	LeaveOneOutScore    *float64   `json:"leave_one_out_score"` // mean log density of left-out observed values
	NoScoreReason       string     `json:"no_score_reason"`     // why a fit that could have a score has none
	LackOfFit           *LackOfFit `json:"lack_of_fit"`
	NullReason          string     `json:"null_reason"` // why numbers above are null
	LikelihoodRSquared  *float64   `json:"likelihood_r_squared"`
	Failure             string     `json:"failure"` // why there is no fit; then the numbers are null
}

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

// Repeatability is the scatter of repeats of one formula.
type Repeatability struct {
	Result    string   `json:"result"`
	Groups    int      `json:"groups"`
	Trials    int      `json:"trials"`
	DF        int      `json:"df"`
	SDLn      *float64 `json:"sd_ln"`
	CVPercent *float64 `json:"cv_percent"`
	CVLow     *float64 `json:"cv_percent_low"` // 90 % limits
	CVHigh    *float64 `json:"cv_percent_high"`
	Note      string   `json:"note"`
}

// GroupEffect is whether one result differs between the days, cooks, canisters
// or lots of a log, or drifts along its order: a likelihood-ratio test of the
// group beside straight terms in the variables. The verdict is clear where P is
// below 0.01, likely below 0.05.
//
// Straight terms only: curvature that goes with the days or the order, as when one
// thing is varied a day, can pass for an effect of theirs.
type GroupEffect struct {
	By           string  `json:"by"` // "day", "cook", "canister size", "order", or a column of labels: "canister no", "butter lot"
	Result       string  `json:"result"`
	Distribution string  `json:"distribution"`
	N            int     `json:"n"`
	Levels       []Level `json:"levels"` // in order of appearance; none for "order"
	// Drift is the factor from the first trial to the last, for "order".
	Drift           *Band    `json:"drift_factor"`
	LikelihoodRatio *float64 `json:"likelihood_ratio"` // twice the fall of the log likelihood without the group
	DF              int      `json:"df"`
	// ResidualDF is the trials less the coefficients; one known only up to a bound on
	// one side counts half.
	ResidualDF *float64 `json:"residual_df"`
	P          *float64 `json:"p"` // from F(df, residual df): exact where nothing is bounded
	// Inflation is the largest factor by which the group swells the variance of a
	// variable's own effect; above 10, or without a limit, they cannot be told apart.
	Inflation   *float64 `json:"variance_inflation"`
	NotToldFrom []string `json:"not_told_from"` // labels of those variables
	Verdict     Verdict  `json:"verdict"`
	Sentence    string   `json:"sentence"`
	Failure     string   `json:"failure"` // why there is no test; then the numbers are null
}

// Level is one day, cook, canister or lot.
type Level struct {
	Name   string `json:"name"`
	Trials int    `json:"trials"`
	Factor *Band  `json:"factor"` // of the result against the geometric mean of the levels, with 90 % limits
}

// Residual is one observation against the fit its result is judged by, and
// against the same fit of all other trials.
type Residual struct {
	Result string  `json:"result"`
	At     string  `json:"at"`
	ID     string  `json:"id"`
	Order  int     `json:"order"`
	Day    string  `json:"day"`
	Cook   string  `json:"cook"`
	Fitted float64 `json:"fitted_median"` // in the unit of the result
	// Ratio is observed over fitted, an interval where the result is one; null for
	// results that may be 0 or less.
	Ratio *Interval `json:"observed_over_fitted"`
	// Standardised is (observed - fitted)/scale on the fit's own line: an interval
	// where the result is one. Score is the normal score of its middle probability.
	Standardised   Interval `json:"standardised"`
	Score          *float64 `json:"score"`
	LeftOut        *float64 `json:"left_out_median"` // foreseen from the others, in the unit of the result
	LeftOutLogLike *float64 `json:"left_out_log_likelihood"`
}

// Detectable is the smallest difference this layout shows 8 times in 10 where it
// is there, by Student's two-sided test at 0.05, as the factor between the two.
type Detectable struct {
	Result string `json:"result"`
	// Between is "two_formulas", each made Made times more, or a variable of the
	// surface between the ends of what was tested, from the trials made (Made 0).
	Between string  `json:"between"`
	Made    int     `json:"made"`
	SDLn    float64 `json:"sd_ln"` // of one trial about the fit judged by, corrected for its terms
	DF      int     `json:"df"`
	Factor  float64 `json:"factor"`
}

// NotShown is something these trials do not show.
type NotShown struct {
	Kind     string `json:"kind"`
	Sentence string `json:"sentence"`
}

// Confounded names two things these trials cannot tell apart.
type Confounded struct {
	A        string  `json:"a"`
	B        string  `json:"b"`
	Share    float64 `json:"share"` // of A's variation that goes with B
	Sentence string  `json:"sentence"`
}

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

// Chance is a probability with its limits at Level.
type Chance struct {
	Mean  float64 `json:"mean"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	Level float64 `json:"level"`
}

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

// Predicted is what the next mix should do: median and 90 % limits.
type Predicted struct {
	Median float64 `json:"median"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
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

// Caution is one safety sentence that applies.
type Caution struct {
	Kind  string `json:"kind"`
	Text  string `json:"text"`
	Bench string `json:"bench"` // the same in the few words a bench card has room for, "" if it is not for the bench
}
