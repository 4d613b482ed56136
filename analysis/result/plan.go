package result

// PlanSchema names the layout of a plan's file.
const PlanSchema = "foamfield/plan/1"

// Plan is trials laid out to be made: what is weighed, on which day, in which order, and
// what such trials will be able to tell.
type Plan struct {
	Schema  string `json:"schema"`
	Version string `json:"version"` // which build made it
	Seed    uint64 `json:"seed"`    // what the order was drawn with
	Number  int    `json:"number"`  // 1 = before any log; one more for each plan that the logs followed
	// Follows is the surest start of the logs that the plan follows; null = it follows none.
	Follows *PlanFollows `json:"follows"`
	Layout  string       `json:"layout"` // how the mixes were placed, "next" = as the report of the logs has them
	Ranges  PlanRanges   `json:"ranges"`
	// BatchGrams is what the grams of a trial add up to; null = nobody said, so grams are for 100 g of
	// mix, and batch, fill and chargers go by the canister's marking.
	BatchGrams     *float64       `json:"batch_grams"`
	ScaleStepGrams float64        `json:"scale_step_grams"`
	Canister       string         `json:"canister"` // size as typed, "" = not said
	Chargers       string         `json:"chargers"` // as typed, "" = not said
	Trials         []PlannedTrial `json:"trials"`
	Needs          []PlanNeed     `json:"needs"` // of each ingredient, for all trials
	Tells          *PlanTells     `json:"tells"` // null = the trials follow a log, whose report says it
	Cannot         []string       `json:"cannot"`
	Notes          []string       `json:"notes"`
	Cautions       []string       `json:"cautions"`
}

// PlanFollows is the start that a plan goes on from.
type PlanFollows struct {
	Logs        []string      `json:"logs"` // names of the files
	Mix         Mix           `json:"mix"`
	Ingredients []FormulaLine `json:"ingredients"`
	Chance      *float64      `json:"chance"` // its chance of working; null = no start was named [0 to 1]
}

// PlanRanges is the box that the trials lie in.
type PlanRanges struct {
	FatPercent        [2]float64  `json:"fat_percent"`
	EmulsifierPercent [2]float64  `json:"emulsifier_percent"`
	BlendHLB          *[2]float64 `json:"blend_hlb"` // null = the trials follow a log
}

// PlannedTrial is one trial to be made.
type PlannedTrial struct {
	ID          string        `json:"id"`
	Day         int           `json:"day"`   // from 1
	Order       int           `json:"order"` // within the day, from 1
	DayName     string        `json:"day_name"`
	Cook        string        `json:"cook"`
	Purpose     string        `json:"purpose"` // "control", "repeat", "new", or as a report's next trials have it
	Mix         Mix           `json:"mix"`     // at the grams that are weighed
	Ingredients []FormulaLine `json:"ingredients"`
	Reason      string        `json:"reason"`
	Thick       bool          `json:"thick"` // among the thickest third of the plan
	Skip        []string      `json:"skip"`  // trials to leave out if this one clogs, strained
	// ClogChance is from the report of the logs; null = there is no log.
	ClogChance *float64 `json:"clog_chance"`
}

// PlanNeed is what the plan takes of one ingredient.
type PlanNeed struct {
	Name  string   `json:"name"`
	Grams float64  `json:"grams"`
	Stock *float64 `json:"stock_grams"` // what is at hand; null = not said
	Short bool     `json:"short"`       // whether that is less
}

// PlanTells is what the trials will be able to tell if holds scatter as assumed.
type PlanTells struct {
	Scatter [2]float64 `json:"scatter"` // two mixes of one formula differ by so much, as a share, least and most
	// Formulas is the factor between the holds of two formulas, each made once, that would show 8 times
	// in 10; Moves the same between the two ends of a range, by variable.
	Formulas PlanShows            `json:"formulas"`
	Moves    map[string]PlanShows `json:"moves"`
	Repeats  int                  `json:"repeats"` // trials that repeat one of the plan
	Terms    int                  `json:"terms"`   // of a surface with squares and products
	// DEfficiency is |X'X/n|^(1/terms), by half ranges; 0 = so few trials tell the surface only with what is
	// believed before [percent].
	DEfficiency        float64 `json:"d_efficiency"`
	StraightEfficiency float64 `json:"straight_d_efficiency"` // the same of a straight surface [percent]
	// MeanVariance and MostVariance are of a straight surface over the region, in variances of one trial.
	MeanVariance float64 `json:"mean_variance"`
	MostVariance float64 `json:"most_variance"`
}

// PlanShows is a factor of hold at the least and the most scatter.
type PlanShows struct {
	Least float64 `json:"least"`
	Most  float64 `json:"most"`
}

// PlanFile is a log that was laid out by a plan.
type PlanFile struct {
	File    string `json:"file"`    // name of the file
	Number  int    `json:"number"`  // of the plan: 1 = before any log [count]
	Follows string `json:"follows"` // the start it went on from, in words; "" = none
	Made    int    `json:"made"`    // trials of that start, of all logs [count]
	Worked  int    `json:"worked"`  // of those, the trials that worked [count]
	Unclear int    `json:"unclear"` // of those, the trials of which it cannot be told [count]
	Start   bool   `json:"start"`   // whether that is the surest start again
}
