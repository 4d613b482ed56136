package result

// Rules are the numbers that the program sets and no log does: chances, limits and
// verdicts rest on them. Priors stand with each model, targets in targets.
type Rules struct {
	Trials  TrialRules  `json:"trials"`
	Belief  BeliefRules `json:"belief"`
	Starts  StartRules  `json:"starts"`
	Effects EffectRules `json:"effects"`
	Groups  GroupRules  `json:"groups"`
}

// TrialRules say what becomes a variable or a term of the models.
type TrialRules struct {
	KnownIn float64 `json:"variable_known_in_share"` // least share of the trials that say a variable
	// ScaleSDs is the scale of a variable, in standard deviations of the trials: half the range of
	// evenly spread ones [standard deviations].
	ScaleSDs float64 `json:"scale_standard_deviations"`
	// LeastScale is the least that the scale of a variable is, by its name [unit of x in variables].
	LeastScale   map[string]float64 `json:"least_scale"`
	VariedIn     float64            `json:"setting_varied_in_share"`  // least share of the trials in either half of a setting's range
	VariedTrials int                `json:"setting_varied_in_trials"` // the same as a number of trials
	FirstTrials  int                `json:"trials_before_settings"`   // trials that the variables of the mix have to themselves
	TrialsEach   int                `json:"trials_each_setting"`      // trials more that every setting asks for
	Copied       float64            `json:"copied_share"`             // share of variation in common from which two are not told apart
	LevelTrials  int                `json:"level_trials"`             // least trials of an emulsifier set, fat or cook with an offset of its own
	MostLevels   int                `json:"most_levels"`              // most offsets of a choice, beside that of all others
}

// BeliefRules say how the lines of model are believed.
type BeliefRules struct {
	Fewest int `json:"fewest_trials"` // trials placed, below which nothing is believed and no start is named
	// SignSoft is how far a slope may go against its sign before it is hard to believe: the soft of
	// signs [log odds].
	SignSoft float64 `json:"sign_soft"`
	// SignReach is the share of the way from the centre to the ends of what was tried, at whose
	// corners signs hold.
	SignReach float64 `json:"sign_reach_share"`
	OneDaySD  float64 `json:"one_day_sd"` // added to the scatter where all trials placed share a day [unit of the line]
	// OwnShare is the share of the scatter's variance that stays with a mix, however often it is made:
	// it moves limits, no chance.
	OwnShare        float64 `json:"own_share"`
	SigmaPoints     int     `json:"sigma_points"`     // points of the Gauss-Hermite rule over the logarithm of the scatter
	SteepnessPoints int     `json:"steepness_points"` // the same over the logarithm of an edge's steepness: three, no others
	LogisticPoints  int     `json:"logistic_points"`  // the same over a yes/no line, for each steepness
	EnoughESS       int     `json:"effective_draws"`  // effective draws of a line below which more are drawn
}

// StartRules say which mixes may be named, and how a start's limits are drawn.
type StartRules struct {
	ClogLimit     float64 `json:"clog_chance_most"`          // most that a start may clog
	ClogSearched  float64 `json:"clog_chance_searched"`      // the same where mixes are searched: room for rounding to the scale
	ClogTrial     float64 `json:"clog_chance_trial_most"`    // most that a next trial may clog
	PriorTrials   float64 `json:"leverage_prior_trials"`     // weight of every term beside the trials, in leverages [trials]
	CoreShare     float64 `json:"core_leverage_share"`       // of the furthest trial's leverage: further out no start is named, but up to the middle trial's
	Stray         float64 `json:"stray_weight"`              // a chance c counts as c exp(-stray_weight d), d the mean squared distance below [1]
	StrayTrials   int     `json:"stray_trials"`              // that distance is to so many of the nearest trials that worked, in coordinates
	RoundingMost  float64 `json:"rounding_lowers_chance"`    // most chance that rounding to the scale may cost
	FlatTop       float64 `json:"flat_top"`                  // the surest is the middle of the mixes whose counted chance is within so much of the highest [0 to 1]
	ProvenTimes   int     `json:"proven_times"`              // a mix made so often, and always with success, is the start again
	ProvenShort   float64 `json:"proven_short_of_chance"`    // while its chance falls no more short of the highest
	SlackDrop     float64 `json:"slack_lowers_chance"`       // fall of the chance that ends slack and within_grams
	SettledAt     float64 `json:"settled_at_chance"`         // how sure that the wanted chance is reached, from which confirm settles it
	Draws         int     `json:"draws_for_limits"`          // draws of every line that limits of starts and tries are quantiles of; those along fat_limit are of 1200
	WeightedDraws int     `json:"weighted_draws_for_limits"` // weighted draws of every line that these are taken from; of a long log its own
}

// EffectRules say how firmly a trend, or the difference of two levels, may be stated.
type EffectRules struct {
	Clear  float64 `json:"clear_from_chance"`  // belief on one side of no change from which it is clear
	Likely float64 `json:"likely_from_chance"` // the same from which it is likely
}

// GroupRules say how firmly days, cooks, canisters, lots and drift may be told to differ.
type GroupRules struct {
	Clear       float64 `json:"clear_below_p"`      // p below which a difference is clear [0 to 1]
	Likely      float64 `json:"likely_below_p"`     // p below which it is likely [0 to 1]
	Inseparable float64 `json:"variance_inflation"` // inflation above which a variable is not told from a group [1]
}
