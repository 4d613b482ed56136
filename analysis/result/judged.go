package result

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
