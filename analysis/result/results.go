// Package result holds the types of results.json and nothing else: these
// structs are the contract between the analysis, which fills them once, and the
// plots and reports, which only show them. Masses are grams, times minutes,
// shares percent of the stated whole, chances fractions between 0 and 1. A
// pointer that is nil is a number that does not exist; it is written as null.
package result

// Schema names the layout of results.json; a renamed key, unit or meaning makes
// the next number.
const Schema = "foamfield/results/1"

// Results is everything one run found.
type Results struct {
	Schema  string `json:"schema"`  // name of this layout
	Version string `json:"version"` // version of the program
	Seed    uint64 `json:"seed"`    // seed of all random numbers, up to 2^64 - 1

	Status       Status `json:"status"`        // what the run came to
	StatusReason string `json:"status_reason"` // one plain sentence
	// NotJudged are outcomes that no trial of those compared tells of, logged elsewhere or not: the
	// chain has no link for them, and no chance here says anything of them.
	NotJudged []Outcome `json:"not_judged"`
	// WatchedMinutes is the longest that any foam was watched that hold is judged by; null = hold is
	// not judged.
	WatchedMinutes *float64 `json:"watched_minutes"`
	// AsOf is the week and lots that the starts are for, where these matter; null = weeks and lots are
	// not shown to matter, or there is one of each.
	AsOf *AsOf `json:"as_of"`
	// MayMatter is what of lots and suppliers is suggested and not shown, in words: the starts take
	// them for one.
	MayMatter []string `json:"may_matter"`
	// HoldIsAGuess says whether the hold asked for is longer than any foam was watched.
	HoldIsAGuess bool `json:"hold_is_a_guess"`

	Dish      string     `json:"dish"`      // of which all trials are, where the files tell of several; "" if not
	Inputs    []Input    `json:"inputs"`    // files read
	Plans     []PlanFile `json:"plans"`     // those of the files that a plan of ours wrote
	NextPlan  int        `json:"next_plan"` // number of the plan that the next trials are [count]
	Rows      Rows       `json:"rows"`      // what became of every row of the log tables
	Counts    Counts     `json:"counts"`    // what became of the trials used
	Problems  []Problem  `json:"problems"`  // problems of the log, grouped by kind
	Questions []Question `json:"questions"` // what only the kitchen can answer, and what to type
	Columns   []Column   `json:"columns"`   // what each column of the log was read as
	Trials    []Trial    `json:"trials"`    // all of the log, in its order
	Targets   Targets    `json:"targets"`   // what decides whether a mix works
	Batch     Batch      `json:"batch"`

	Method []MethodStep `json:"method"` // the kitchen's own steps, as the log's Method sheet has them

	Variables []Variable    `json:"variables"`           // variables of the models
	SetAside  []SetVariable `json:"variables_set_aside"` // variables the log carries but the models cannot use
	Choices   []Choice      `json:"choices"`             // what trials had one of each, such as which emulsifiers
	// Averaged is what nobody chooses, such as who makes it: chances are those of any of them.
	Averaged  []Choice   `json:"averaged"`
	HeldTerms []HeldTerm `json:"held_terms"` // values of choices and averages that chances are worked out with
	// Fits are what effects of groups and residuals are judged by: every result in every distribution
	// and order.
	Fits []Fit `json:"fits"`
	// Model is what chances are worked out from: one an outcome, in chain order.
	Model         []Model         `json:"model"`
	Rules         Rules           `json:"rules"`
	Assumed       []string        `json:"assumed"`       // which way chances are taken to move, whatever few trials say
	PriorBelief   *PriorBelief    `json:"prior_belief"`  // before any trial; null = no model, or the arithmetic fails
	Effects       []Effect        `json:"effects"`       // how hold follows each variable
	Repeatability []Repeatability `json:"repeatability"` // scatter of repeats of one formula
	GroupEffects  []GroupEffect   `json:"group_effects"` // whether days, cooks, canisters, lots and the order of trials matter
	Residuals     []Residual      `json:"residuals"`     // observations against the fits judged by
	Detectable    []Detectable    `json:"detectable"`
	Confounded    []Confounded    `json:"confounded"`  // pairs of things these trials cannot tell apart
	CannotTell    []NotShown      `json:"cannot_tell"` // what these trials do not show
	Peaks         []Peak          `json:"peaks"`       // where more of a variable stops helping
	Limits        []Limit         `json:"limits"`      // what ends the workable region
	Grid          []Grid          `json:"grid"`        // chances over two variables
	Summaries     []Summary       `json:"summaries"`   // by day, cook, student and file

	Starts      []Start      `json:"starts"`       // formulas to start from, the surest first
	Service     *Service     `json:"service"`      // the surest start for service; null = not asked for, or nothing to split
	TestedRange *TestedRange `json:"tested_range"` // where mixes were tried; null = nothing is believed
	Cheapest    *Cheapest    `json:"cheapest"`     // the cheapest mix that is sure enough; null = no prices, no such mix, or nothing to save
	RestsOn     []Rest       `json:"rests_on"`     // how the headlines of the starts move when one trial is left out; empty = no start, or more than 300 trials
	BestSeen    *BestSeen    `json:"best_seen"`    // the best trial actually made; null = none came out
	Tries       []Try        `json:"tries"`        // formulas somebody asked about
	FatLimit    []FatLimit   `json:"fat_limit"`    // the best mix at each fat percent
	FatEnd      *FatEnd      `json:"fat_end"`      // how far the fat can go; null = no richest start
	NextTrials  []NextTrial  `json:"next_trials"`  // mixes worth making next
	Ingredients []Used       `json:"ingredients"`  // what each ingredient was taken to be
	Allergens   Allergens    `json:"allergens"`
	Cautions    []Caution    `json:"cautions"` // safety sentences that apply
}

// AsOf is the latest week and lots of a log in which weeks or lots matter: older trials count in
// all chances as these would have given them.
type AsOf struct {
	Period string   `json:"period"` // the latest week, "" where the log names none
	Lots   []string `json:"lots"`   // the lots and suppliers in use, as "butter lot B"
	Why    []string `json:"why"`    // what is shown to matter, in words
}

// Status is what a run, or one start, came to.
type Status string

// The outcomes a run can have.
const (
	Recommended   Status = "recommended"
	BestAvailable Status = "best_available" // no mix reaches the wanted chance
	ToBeSettled   Status = "to_be_settled"  // the recipes rest on a question that is open
	TooFewTrials  Status = "too_few_trials"
	NothingWorked Status = "nothing_worked"
	NoSafeStart   Status = "no_safe_start" // every mix is too likely to clog to be named
)
