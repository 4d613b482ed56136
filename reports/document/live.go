package document

import "foamfield/analysis/result"

// Live is what a page needs to work out, where there is nobody to ask, the grams
// of the surest start and its chance for other targets: numbers of the results as
// they are, by the place of each variable.
type Live struct {
	Title     string         `json:"title"`    // of the mix: "Surest start"
	LeftOut   string         `json:"left_out"` // what was asked for and is not known: "drainage"
	Chance    float64        `json:"chance"`   // of the mix for the targets below: a page that gets another stays still
	FewAs     string         `json:"few_as"`   // of the report's own chance: "perhaps only 62"
	Batch     float64        `json:"batch"`
	Ounces    *float64       `json:"batch_ounces"` // nil: nobody asked for them
	Step      float64        `json:"step"`
	Largest   *float64       `json:"largest_fill"`
	Watched   *float64       `json:"watched"`
	Hold      *float64       `json:"hold"` // nil: not judged
	Drained   *float64       `json:"drained"`
	DrainedAt float64        `json:"drained_at"`
	Wanted    float64        `json:"wanted"`
	Variables []LiveVariable `json:"variables"`
	Links     []LiveLink     `json:"links"`
	Mix       []float64      `json:"mix"`
	Lines     []LiveLine     `json:"lines"` // none where the log has no grams
	Maps      []LiveMap      `json:"maps"`
	Own       *LiveOwn       `json:"own"` // nil: no other mix can be asked about
}

// LiveOwn is what it takes to answer for another mix in the start's ingredients: where
// mixes were tried, and the best of each fat percent. All are by the place of a variable.
type LiveOwn struct {
	Low     []float64   `json:"low"`
	High    []float64   `json:"high"`
	Terms   [][]int     `json:"terms"`
	Inverse [][]float64 `json:"inverse"`
	Most    float64     `json:"most"`
	Best    [][]float64 `json:"best"` // mixes, by fat
}

// LiveVariable is how a value becomes a coordinate.
type LiveVariable struct {
	Name   string  `json:"name"`
	Log    bool    `json:"log"`
	Centre float64 `json:"centre"`
	Scale  float64 `json:"scale"`
	Held   bool    `json:"-"` // never moves; those that are held come last
}

// LiveLink is what is believed of one outcome.
type LiveLink struct {
	Outcome    result.Outcome     `json:"outcome"`
	Terms      [][]int            `json:"terms"`
	Mean       []float64          `json:"mean"`
	Covariance [][]float64        `json:"covariance"`
	Leanings   [][]float64        `json:"leanings"`
	Sigma      []result.SigmaNode `json:"sigma"`
	Edges      []result.Edge      `json:"edges"` // of a yes or no, in place of Mean and Covariance
	DaySD      float64            `json:"day_sd"`
	Asked      *result.Interval   `json:"asked"`   // of a measured result, on its line: no box of the page moves it
	Failing    string             `json:"failing"` // of one foam
	Fail       string             `json:"fail"`    // of several
}

// LiveLine is an ingredient of the start and what it brings to the mix. Without
// FatPercent the ingredient counts as free of fat.
type LiveLine struct {
	Name       string   `json:"name"`
	Grams      float64  `json:"grams"`
	Part       string   `json:"part"`       // "water", "fat" or "": who takes up the rounding
	Emulsifier bool     `json:"emulsifier"` // counts as emulsifier
	FatPercent float64  `json:"fat_percent"`
	HLB        *float64 `json:"hlb"`     // of a non-ionic emulsifier
	Blended    bool     `json:"blended"` // emulsifiers together, blended to the HLB of any mix
}

// LiveMap is one map of the chance: axes, what is held, and where trials are near.
type LiveMap struct {
	Title  string    `json:"title"`
	Held   string    `json:"held"`  // "HLB 8.7"
	Right  string    `json:"right"` // "amount of emulsifier"
	X      int       `json:"x"`     // places in the variables
	Y      int       `json:"y"`
	XLabel string    `json:"x_label"`
	YLabel string    `json:"y_label"`
	Xs     []float64 `json:"xs"`
	Ys     []float64 `json:"ys"`
	Fixed  []float64 `json:"fixed"`
	Tested []string  `json:"tested"` // rows of 0 and 1
}
