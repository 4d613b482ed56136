package result

// Observations counts how an outcome was seen.
type Observations struct {
	Exact   int `json:"exact"`    // trials known as one number, or as yes or no
	AtLeast int `json:"at_least"` // trials known only as at least so much
	AtMost  int `json:"at_most"`  // trials known only as at most so much
	Between int `json:"between"`  // trials known between two bounds
}

// Term is one coefficient: the product of its variables' coordinates (none =
// the constant, one twice = a square).
type Term struct {
	Variables []string `json:"variables"` // names of the variables multiplied
	Estimate  float64  `json:"estimate"`  // the coefficient, for coordinates (x - centre)/scale [unit of the line]
	// StdError is its standard error by the likelihood; null = not finite [unit of the line].
	StdError *float64 `json:"std_error"`
}

// LackOfFit is the F test of lack of fit against the spread of repeats.
type LackOfFit struct {
	F   *float64 `json:"f"`   // ratio of the mean squares; null = not finite [1]
	DF1 int      `json:"df1"` // degrees of freedom of the lack of fit
	DF2 int      `json:"df2"` // degrees of freedom of the repeats
	// P is the chance of so large a ratio without lack of fit; null = not finite [0 to 1].
	P *float64 `json:"p"`
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
	Result string `json:"result"` // the outcome, or the name of another result of the log
	// Distribution is "lognormal", "weibull", "loglogistic", "normal" or "logistic".
	Distribution string    `json:"distribution"`
	Transform    string    `json:"transform"` // from the result to the line: "ln", "none" or "logit"
	Estimator    Estimator `json:"estimator"`
	Order        int       `json:"order"` // 1 = straight terms, 2 = with squares and products
	N            int       `json:"n"`     // trials it rests on
	// VariedBeside are the settings and the offsets of choices, as terms of model name them, that
	// differ among its trials and are no terms of it: a fit is of the mix alone, what these do is in
	// model and group_effects.
	VariedBeside []string     `json:"varied_beside"`
	Observations Observations `json:"observations"`   // how the result was seen
	Score        *Score       `json:"score"`          // the scale of a result that is a score; null = it is none
	JudgedBy     bool         `json:"judged_by"`      // whether it is the one the report shows for its result
	JudgedReason string       `json:"judged_because"` // why it is, "" if it is not

	// LogLikelihood is the log likelihood of the results in their own unit, bounds counting by their
	// probability; null = not fitted [1].
	LogLikelihood *float64 `json:"log_likelihood"`
	// Scale is the scatter about the line by maximum likelihood: sigma, of a Weibull 1/shape; null =
	// not fitted, or yes and no [unit of the line].
	Scale *float64 `json:"scale"`
	Terms []Term   `json:"terms"` // the coefficients; empty if not fitted
	// TMultiplier is Student's t at 0.95 with n less terms degrees of freedom, of yes and no the normal
	// quantile: 90 % limits are estimate plus and minus t_multiplier times std_error_factor times
	// std_error; null = not fitted, or no trial to spare [1].
	TMultiplier *float64 `json:"t_multiplier"`
	// StdErrorFactor is the small-sample factor sqrt(n/(n - terms)), of yes and no 1; null = not
	// fitted, or no trial to spare [1].
	StdErrorFactor *float64 `json:"std_error_factor"`
	// Covariance is the covariance of the terms, then ln scale where there is one; null = not fitted
	// [unit of the line, squared].
	Covariance [][]float64 `json:"covariance"`
	// ResidualSD is the residual standard deviation by least squares; null = see null_reason [unit of
	// the line].
	ResidualSD *float64 `json:"residual_sd"`
	ResidualDF *int     `json:"residual_df"` // trials less terms; null = see null_reason

	RSquared         *float64 `json:"r_squared"`          // R squared of least squares on the line; null = see null_reason [1]
	AdjustedRSquared *float64 `json:"adjusted_r_squared"` // the same, adjusted for the terms; null = see null_reason [1]
	// LeaveOneOutRSquared is the same, each trial predicted from the others; null = see null_reason
	// [1].
	LeaveOneOutRSquared *float64 `json:"leave_one_out_r_squared"`
	// LeaveOneOutScore is the mean log density of left-out observed values, of yes and no the mean log
	// chance of left-out answers; null = see no_score_reason, or never worked out (normal, long logs)
	// [1].
	LeaveOneOutScore *float64 `json:"leave_one_out_score"`
	NoScoreReason    string   `json:"no_score_reason"` // why a fit that could have a score has none, else ""
	// LackOfFit is the F test of lack of fit against the spread of repeats; null = see null_reason.
	LackOfFit  *LackOfFit `json:"lack_of_fit"`
	NullReason string     `json:"null_reason"` // why numbers of least squares are null, else ""
	// LikelihoodRSquared is 1 - exp(-2(ll - ll0)/n), ll0 of the constant alone; null = not fitted, or
	// yes and no [1].
	LikelihoodRSquared *float64 `json:"likelihood_r_squared"`
	Failure            string   `json:"failure"` // why there is no fit, else ""; then the numbers are null
}

// Repeatability is the scatter of repeats of one formula: by maximum likelihood on the
// logarithms, each formula with a mean of its own and bounds as bounds, the variance then
// widened by trials/(trials - groups). Without bounds it is the usual pooled one. Foams that
// clogged or split are left out, as the fits leave them out.
type Repeatability struct {
	Result string `json:"result"` // "hold_minutes" or "drained_percent"
	// Groups is formulas made more than once whose results are not all bounds on one side; of those
	// with any bound the first 100 of the log.
	Groups int `json:"groups"`
	Trials int `json:"trials"` // trials of those formulas
	// Bounded is how many of these are known only up to bounds.
	Bounded int `json:"bounded"`
	// DF is their degrees of freedom: trials less groups; one known only up to a bound on one side
	// counts half [trials].
	DF float64 `json:"df"`
	// SDLn is the pooled standard deviation of the logarithm; null = fewer than one degree of freedom,
	// or too loosely known [1].
	SDLn *float64 `json:"sd_ln"`
	// CVPercent is the coefficient of variation that goes with it; null = there is no sd_ln.
	CVPercent *float64 `json:"cv_percent"`
	// CVLow is its lower 90 % limit, by chi-squared with df degrees of freedom; null = there is no
	// sd_ln.
	CVLow *float64 `json:"cv_percent_low"`
	// CVHigh is its upper 90 % limit; null = fewer than 2 degrees of freedom, or above 1000 %: see note.
	CVHigh *float64 `json:"cv_percent_high"`
	Note   string   `json:"note"` // what to think of it, or ""
}

// OrderBy is what puts trials in their order.
type OrderBy string

// The two orders.
const (
	ByDate OrderBy = "date" // by date, and by the log on one date
	ByLog  OrderBy = "log"  // as they stand in the log
)

// GroupEffect is whether one result differs between the days, cooks, canisters
// or lots of a log, changes with a setting, or drifts along its order: a
// likelihood-ratio test of the group beside the terms of the fit the result is
// judged by, the settings and the choices. The verdict is clear where p_adjusted is
// below 0.01, likely below 0.05.
type GroupEffect struct {
	// By is "day", "cook", "canister size", "order", the name of a setting, or a column of labels:
	// "canister no", "butter lot".
	By string `json:"by"`
	// OrderBy is what "order" goes by; "" for anything else.
	OrderBy OrderBy `json:"order_by"`
	Result  string  `json:"result"` // "hold_minutes" or "drained_percent"
	// Distribution is the distribution of the fits compared: "lognormal", "weibull" or "loglogistic".
	Distribution string `json:"distribution"`
	N            int    `json:"n"` // trials compared
	// Order is that of the terms it is tested beside: 1 = straight, 2 = with squares and products, 0 =
	// not tested.
	Order int `json:"order"`
	// Beside are the terms it is tested beside, as terms of fits and model name them; of choices those
	// that the terms before them do not make up.
	Beside       [][]string `json:"beside"`
	BesideReason string     `json:"beside_because"` // why these are not all that they might be, else ""
	Levels       []Level    `json:"levels"`         // in order of appearance; none for "order" and settings
	// Drift is the factor from the first trial to the last, with 90 % limits; null = not by order, or
	// not tested.
	Drift *Band `json:"drift_factor"`
	// Change is the factor from the low end of a setting's tested range to the high, with 90 % limits;
	// null = no setting, or not tested.
	Change *Band `json:"range_factor"`
	// TMultiplier is Student's t at 0.95 with trials less coefficients degrees of freedom: limits of
	// factors are, in logarithms, estimate plus and minus t_multiplier times std_error_factor times the
	// standard error by the likelihood; null = not tested [1].
	TMultiplier *float64 `json:"t_multiplier"`
	// StdErrorFactor is the small-sample factor sqrt(n/(n - coefficients)), of n trials that are not of
	// a level known only up to bounds on one side; null = not tested [1].
	StdErrorFactor *float64 `json:"std_error_factor"`
	// LikelihoodRatio is twice the fall of the log likelihood without the group; null = not tested
	// [1].
	LikelihoodRatio *float64 `json:"likelihood_ratio"`
	DF              int      `json:"df"` // degrees of freedom of the group
	// ResidualDF is the trials less the coefficients; one known only up to a bound on one side counts
	// half; null = too many levels to compare [trials].
	ResidualDF *float64 `json:"residual_df"`
	// F is the F test that p is from; null = not tested.
	F *FTest `json:"f_test"`
	// P is its p value from F(df, residual df), exact where nothing is bounded; null = not tested [0
	// to 1].
	P *float64 `json:"p"`
	// PAdjusted is p adjusted for all tests of the same result (Holm 1979); null = not tested [0 to 1].
	PAdjusted *float64 `json:"p_adjusted"`
	// Inflation is the largest factor by which the group swells the variance of a term it is tested
	// beside; above 10 they cannot be told apart; null = without a limit, or not worked out [1].
	Inflation   *float64 `json:"variance_inflation"`
	NotToldFrom []string `json:"not_told_from"` // labels of the terms it cannot be told from
	Verdict     Verdict  `json:"verdict"`       // whether there is a difference
	Sentence    string   `json:"sentence"`      // the same in words
	Failure     string   `json:"failure"`       // why there is no test, else ""; then the numbers are null
}

// FTest is a likelihood-ratio statistic as F.
type FTest struct {
	F   float64 `json:"f"`   // (exp(likelihood_ratio/counted) - 1) df2/df1 [1]
	DF1 int     `json:"df1"` // degrees of freedom of the group
	DF2 float64 `json:"df2"` // residual degrees of freedom: counted less the coefficients [trials]
	// Counted is the trials, one known only up to a bound on one side counting half [trials].
	Counted float64 `json:"counted"`
}

// Level is one day, cook, canister or lot.
type Level struct {
	Name   string `json:"name"`   // its name as the log has it
	Trials int    `json:"trials"` // trials with it
	// Factor is the result over the geometric mean of the levels, with 90 % limits; null = no finite
	// size.
	Factor *Band `json:"factor"`
}

// Residual is one observation against the fit its result is judged by, and
// against the same fit of all other trials.
type Residual struct {
	Result string  `json:"result"`        // the outcome, or the name of another result of the log
	At     string  `json:"at"`            // place of the trial, as in trials
	ID     string  `json:"id"`            // the trial's own number, as typed
	Order  int     `json:"order"`         // place of the trial in the log, from 1
	Day    string  `json:"day"`           // day as typed, or ""
	Cook   string  `json:"cook"`          // cook as typed, or ""
	Fitted float64 `json:"fitted_median"` // the median the fit gives this mix [unit of the result]
	// Ratio is observed over fitted, an interval where the result is one; null = the result may be 0
	// or less [1].
	Ratio *Interval `json:"observed_over_fitted"`
	// Standardised is (observed - fitted)/scale on the fit's own line, an interval where the result is
	// one [1].
	Standardised Interval `json:"standardised"`
	Score        *float64 `json:"score"` // normal score of its middle probability; null = not finite [1]
	// LeftOut is the median predicted from the other trials; null = these cannot be fitted, or too
	// many trials [unit of the result].
	LeftOut *float64 `json:"left_out_median"`
	// LeftOutLogLike is the log likelihood of the trial from the others; null = these cannot be
	// fitted, or too many trials [1].
	LeftOutLogLike *float64 `json:"left_out_log_likelihood"`
}

// Detectable is the smallest difference this layout shows 8 times in 10 where it
// is there, by Student's two-sided test at 0.05, as the factor between the two.
type Detectable struct {
	Result string `json:"result"` // "hold_minutes" or "drained_percent"
	// Between is "two_formulas", or the name of a variable, between the ends of what was tested.
	Between string `json:"between"`
	Made    int    `json:"made"` // how often each formula is made more; 0 for a variable
	// SDLn is the standard deviation of the logarithm of one trial about the fit judged by, corrected
	// for its terms [1].
	SDLn   float64 `json:"sd_ln"`
	DF     int     `json:"df"`     // its degrees of freedom
	Factor float64 `json:"factor"` // the smallest factor that shows
}

// NotShown is something these trials do not show.
type NotShown struct {
	// Kind is "extrapolation", "not_logged", "not_judged" (logged, of trials that are not compared),
	// "all_bounded", "no_repeats", "constant", "few_levels", "one_at_a_time", "confounded", "days", "day_and_cook", "mixed_hold" or "many_looks".
	Kind     string `json:"kind"`
	Sentence string `json:"sentence"` // the same in words
}

// Confounded names two things these trials cannot tell apart.
type Confounded struct {
	A        string  `json:"a"`        // label of a variable
	B        string  `json:"b"`        // label of another, or "the day", "the cook", "which emulsifiers"
	Share    float64 `json:"share"`    // share of a's variation that goes with b
	Sentence string  `json:"sentence"` // the same in words
}
