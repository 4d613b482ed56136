package result

// TrendSchema names the layout of trend.json.
const TrendSchema = "foamfield/trend/1"

// Trend is what many weeks of one kitchen show.
type Trend struct {
	Schema  string  `json:"schema"`  // name of this layout
	Version string  `json:"version"` // version of the program
	Inputs  []Input `json:"inputs"`  // files read

	OrderBy TrendOrder `json:"order_by"` // what puts the trials in their order
	Trials  int        `json:"trials"`   // trials that have a place in time
	Fitted  []Fitted   `json:"fitted"`   // what the numbers below rest on, by outcome
	// Summary is what the weeks show, in plain sentences, the most wanted first.
	Summary   []string   `json:"summary"`
	Notes     []string   `json:"notes"`     // what was done where the log left a doubt
	Questions []Question `json:"questions"` // what only the kitchen can answer, and what to type

	// Reference is the mix at which weeks are compared; null = no trial can be compared.
	Reference     *Mix   `json:"reference"`
	ReferenceFrom string `json:"reference_from"` // which mix that is, ""

	Periods        []Period        `json:"periods"`         // the weeks
	Optimum        []Optimum       `json:"optimum"`         // by week, where hold peaks over each variable of the mix
	Groups         []GroupStep     `json:"groups"`          // lots, cooks, canisters and suppliers against each other
	Tests          []TrendTest     `json:"tests"`           // what was looked for, and whether it shows
	CannotSeparate []NotApart      `json:"cannot_separate"` // what these trials cannot tell apart
	Components     []Component     `json:"components"`      // how much of the scatter comes from what
	Control        []Control       `json:"control"`         // one formula, or the rest about the line, in the order of time
	Changes        []Change        `json:"changes"`         // when a step came, if one did
	Now            *Now            `json:"now"`             // the standing start as of the latest week and lots; null = there is no start, or one week and one lot
	Foreseen       []WeekSaid      `json:"foreseen"`        // by week: what the weeks before it promised, and what came
	Disagree       []OldTrial      `json:"disagree"`        // earlier trials that no longer agree with the latest week
	Drainage       []DrainageCurve `json:"drainage"`        // drainage over the minutes, where it was read more than once
}

// TrendOrder is what puts trials in the order of time.
type TrendOrder string

// The orders.
const (
	TrendByDate TrendOrder = "date"
	TrendByName TrendOrder = "name" // names of weeks, files and sheets, then rows
)

// Fitted is the line of one outcome, over all weeks.
type Fitted struct {
	Outcome      Outcome      `json:"outcome"`
	N            int          `json:"n"`            // trials it rests on
	Observations Observations `json:"observations"` // how they were seen
	// Terms are the columns of the line, of ln minutes or ln percent: products of variables, settings,
	// and steps such as "butter lot: B".
	Terms []Term `json:"terms"`
	// Order is that of the terms of the mix: 1 = straight, 2 = with squares and products.
	Order int `json:"order"`
	// LogLikelihood is the restricted log likelihood at the likeliest spreads [1].
	LogLikelihood float64 `json:"log_likelihood"`
	Draws         float64 `json:"draws"` // sets of spreads that stand for all, as many as equal weights would be [1]
}

// Period is a week.
type Period struct {
	Label     string `json:"label"`      // what it is called
	FirstDate string `json:"first_date"` // 2026-10-05, or "" where the log has no dates
	LastDate  string `json:"last_date"`  // likewise, or ""
	Trials    int    `json:"trials"`     // trials made
	// Level is hold at the reference mix over its mean over all weeks, 90 % limits; null = hold cannot
	// be compared.
	Level *Ratio `json:"level"`
	// HoldMinutes is the median hold of the reference mix; null = hold cannot be compared.
	HoldMinutes *Band `json:"hold_minutes"`
	// DrainedLevel is what drains, likewise; null = drainage cannot be compared.
	DrainedLevel *Ratio `json:"drained_level"`
	// Chance is that of the surest start to work, made in that week; null = there is no start, too few
	// trials for a curved line, or it cannot be told.
	Chance  *TrendChance `json:"chance"`
	Clogged TrendCount   `json:"clogged"` // of the trials that say whether they came out
	Split   TrendCount   `json:"split"`   // of the trials that came out and say whether they split
}

// Ratio is one thing over another, with limits.
type Ratio struct {
	Ratio float64 `json:"ratio"` // the one over the other [1]
	Low   float64 `json:"low"`   // lower 90 % limit [1]
	High  float64 `json:"high"`  // upper 90 % limit [1]
}

// TrendChance is a chance of working with 90 % limits.
type TrendChance struct {
	Mean float64 `json:"mean"` // that of the next one [0 to 1]
	Low  float64 `json:"low"`  // lower limit of the share in the long run [0 to 1]
	High float64 `json:"high"` // upper limit of the share in the long run [0 to 1]
}

// TrendCount is some of many, with exact 90 % limits of the share.
type TrendCount struct {
	Count int     `json:"count"` // how many
	Of    int     `json:"of"`    // of how many
	Low   float64 `json:"low"`   // lower limit [0 to 1]
	High  float64 `json:"high"`  // upper limit [0 to 1]
}

// Optimum is where hold peaks over one variable in one week, the others in the middle of
// what was tried.
type Optimum struct {
	Variable string  `json:"variable"` // its name
	Label    string  `json:"label"`    // what a kitchen calls it
	Unit     string  `json:"unit"`     // its unit, or ""
	Outcome  Outcome `json:"outcome"`
	Period   string  `json:"period"` // label of the week
	At       float64 `json:"at"`     // the middle of where it may be [unit of the variable]
	Low      float64 `json:"low"`    // lower 90 % limit, not beyond what was tried [unit of the variable]
	High     float64 `json:"high"`   // upper 90 % limit, not beyond what was tried [unit of the variable]
	// Inside is how likely the peak lies within what was tried [0 to 1].
	Inside float64 `json:"inside"`
}

// GroupStep is one lot, cook, canister or supplier against another.
type GroupStep struct {
	By      string  `json:"by"`      // "butter lot", "cook"; "butter lot or week" where the two cannot be told apart
	Of      string  `json:"of"`      // the one
	Against string  `json:"against"` // the other
	Outcome Outcome `json:"outcome"`
	Ratio   float64 `json:"ratio"`  // the one over the other [1]
	Low     float64 `json:"low"`    // lower 90 % limit [1]
	High    float64 `json:"high"`   // upper 90 % limit [1]
	Trials  int     `json:"trials"` // trials of the one
}

// Showing is what a test came to.
type Showing string

// The four words.
const (
	Shown     Showing = "shown"      // p_adjusted below 0.05
	Suggested Showing = "suggested"  // p below 0.05, p_adjusted not
	NotSeen   Showing = "not shown"  // p not below 0.05
	NotTested Showing = "not tested" // fewer than two groups of three trials, or not to be told from something else
)

// TrendTest is one thing that was looked for.
type TrendTest struct {
	// What is "drift", "day", "week", "lot", "cook", "canister", "supplier" or "optimum:VARIABLE".
	What    string  `json:"what"`
	By      string  `json:"by"` // which column, such as "butter lot"; of "week" one that changed only with it, "butter lot or week"; or ""
	Outcome Outcome `json:"outcome"`
	// P is how often so much would be seen were there nothing; null = not tested [0 to 1].
	P *float64 `json:"p"`
	// PAdjusted is the same for all tests together, by Holm's method; null = not tested [0 to 1].
	PAdjusted *float64 `json:"p_adjusted"`
	Verdict   Showing  `json:"verdict"`
	// Effect is a ratio: the last date over the first, or the highest over the lowest; of an optimum
	// how far it moved, in the unit of the variable; null = not tested [1].
	Effect *Ratio `json:"effect"`
	// SmallestSeen is the smallest such effect that would have been seen, shown or suggested, 8 times
	// in 10; of an optimum it may be more than all that was tried; null = not tested [1].
	SmallestSeen *float64 `json:"smallest_seen"`
	Sentence     string   `json:"sentence"` // the same in words
}

// NotApart is a pair of things that changed together.
type NotApart struct {
	A        string `json:"a"`        // the one
	B        string `json:"b"`        // the other
	Sentence string `json:"sentence"` // how they changed together
}

// Component is the standard deviation that one source adds to the logarithm of an outcome.
type Component struct {
	Of      string  `json:"of"` // "repeat", "day", "week", or a column: "butter lot", "cook"
	Outcome Outcome `json:"outcome"`
	SD      float64 `json:"sd"`   // the middle of what it may be [1]
	Low     float64 `json:"low"`  // lower 90 % limit [1]
	High    float64 `json:"high"` // upper 90 % limit [1]
}

// Control is a chart of single observations in the order of time.
type Control struct {
	Outcome Outcome `json:"outcome"`
	// Of is "control formula" where one formula was made again and again, else "residuals", of the
	// line of all weeks.
	Of  string `json:"of"`
	Mix *Mix   `json:"mix"` // the formula; null = residuals
	// Unit is that of the values: "min", "%", or "ratio" of residuals, 1 = as its mix makes one expect.
	Unit   string         `json:"unit"`
	Points []ControlPoint `json:"points"`
	// Centre is the middle, on the logarithm as the limits are; null = fewer than five exact values [unit of the values].
	Centre *float64 `json:"centre"`
	// Low is centre less 2.66 times the mean move from one to the next; null = likewise [unit of the values].
	Low *float64 `json:"low"`
	// High is centre and 2.66 times the mean move; null = likewise [unit of the values].
	High    *float64 `json:"high"`
	Outside []string `json:"outside"` // places of trials outside, and of runs on one side
	// Slope is the middle of all slopes between two trials; null = too few, or no dates [1 per week].
	Slope *Ratio `json:"slope_per_week"`
	// Rising is the Mann-Kendall chance of so steady a move were there none; null = too few [0 to 1].
	Rising *float64 `json:"slope_p"`
	// Catches is, for repeats made in one week, the step that would be seen 8 times in 10.
	Catches  []Catch `json:"catches"`
	Sentence string  `json:"sentence"` // what is to be seen, in words
}

// ControlPoint is one observation.
type ControlPoint struct {
	At     string   `json:"at"`     // place of the trial
	Date   string   `json:"date"`   // its date, or ""
	Period string   `json:"period"` // its week
	Value  Interval `json:"value"`  // a bound where only a bound is known [unit of the values]
	Out    string   `json:"out"`    // "above" or "below" the limits, or ""
}

// Catch is the smallest step that repeats would catch.
type Catch struct {
	Repeats int     `json:"repeats"` // mixes of one formula made in one week
	Ratio   float64 `json:"ratio"`   // smaller than 1: a fall to so much [1]
}

// Change is a step of the level at one time.
type Change struct {
	Outcome Outcome `json:"outcome"`
	At      string  `json:"at"`    // the first date or week after it
	Low     string  `json:"low"`   // the earliest that it may be, 90 % limits
	High    string  `json:"high"`  // the latest that it may be
	Ratio   Ratio   `json:"ratio"` // after over before
	// P is how often a change so clear would be found were there none [0 to 1].
	P float64 `json:"p"`
	// With are the lots, cooks, canisters and suppliers that first came in there: "cook AB".
	With     []string `json:"with"`
	Sentence string   `json:"sentence"` // what is to be seen, in words
}

// Now is what the standing start promises.
type Now struct {
	Period string `json:"period"` // the latest week, "" where the log names none
	// Lots are the latest of each column of lots, as "butter lot B".
	Lots []string `json:"lots"`
	// Latest is its chance made in the latest week with these lots; null = too few trials for a
	// curved line, or it cannot be told.
	Latest *TrendChance `json:"latest"`
	Pooled *TrendChance `json:"pooled"` // its chance if all weeks are taken for one; null = it cannot be told
	// Matters says whether a week, a lot or a moved optimum is shown, so that the pooled chance
	// should not be trusted.
	Matters  bool   `json:"matters"`
	Sentence string `json:"sentence"` // what is to be seen, in words
}

// WeekSaid is what earlier weeks said of the trials of a week.
type WeekSaid struct {
	Period string `json:"period"` // the week
	Trials int    `json:"trials"` // its trials whose outcome is known
	// Said is how many of them the weeks before made one expect to work [trials].
	Said   float64 `json:"said"`
	Worked int     `json:"worked"` // how many worked
}

// OldTrial is an earlier trial that the latest week would not give.
type OldTrial struct {
	At      string  `json:"at"`      // place of the trial
	Period  string  `json:"period"`  // its week
	Outcome Outcome `json:"outcome"` // what disagrees
	// Ratio is what was seen over what its mix would give now [1].
	Ratio float64 `json:"ratio"`
}

// DrainageCurve is the drainage of one formula over the minutes.
type DrainageCurve struct {
	At string `json:"at"` // place of its first trial
	// Model is the curve by name: "power law of half-times" is end times t^n / (t^n + half^n) at minute
	// t, by least squares: an end and a half-time for each trial, one power n for all of the log.
	Model    string  `json:"model"`
	Power    float64 `json:"power"`     // n, 1 unless the readings carry another [1]
	Trials   int     `json:"trials"`    // trials of the formula with a curve of their own
	Readings int     `json:"readings"`  // readings of all of them
	HalfTime float64 `json:"half_time"` // minute by which half of what will drain has drained: the geometric mean [min]
	// HalfTimeLimits are its 90 % limits; null = no reading is left over [min].
	HalfTimeLimits *Interval `json:"half_time_limits"`
	// LimitsFrom is what both limits rest on: "repeats", the scatter of all formulas' repeats
	// together; "readings", that of all readings about their curves, which tells nothing of the next
	// foam; or "".
	LimitsFrom string `json:"limits_from"`
	// AtTarget is what has drained at the target's minute, off the same curves: the geometric mean [%].
	AtTarget float64 `json:"at_target_percent"`
	// AtTargetLimits are its 90 % limits, likewise; null = no reading is left over [%].
	AtTargetLimits *Interval `json:"at_target_limits"`
}

// Tidy is tidy.csv: a row an observation, for other programs.
type Tidy struct {
	Labels, Extras []string // columns of lots and of settings, by name
	Rows           []TidyRow
}

// TidyRow is one observation of one trial; of a yes or no the value is 1 or 0.
type TidyRow struct {
	Trial, At, Date, Period, Day, Cook, Canister string
	Labels                                       []string
	Mix                                          Mix
	Outcome                                      Outcome
	Value                                        Interval
}
