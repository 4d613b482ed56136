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

	Inputs    []Input    `json:"inputs"`
	Rows      Rows       `json:"rows"`
	Counts    Counts     `json:"counts"`
	Problems  []Problem  `json:"problems"`
	Questions []Question `json:"questions"` // what only the kitchen can answer, and what to type
	Columns   []Column   `json:"columns"`
	Trials    []Trial    `json:"trials"`
	Targets   Targets    `json:"targets"`
	Batch     Batch      `json:"batch"`

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
	ToBeSettled   Status = "to_be_settled"  // the recipes rest on a question that is open
	TooFewTrials  Status = "too_few_trials"
	NothingWorked Status = "nothing_worked"
	NoSafeStart   Status = "no_safe_start" // every mix is too likely to clog to be named
)
