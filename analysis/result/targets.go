package result

import "slices"

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

// Target is one value a mix has to meet, in the unit of the key that holds it.
type Target struct {
	Value float64 `json:"value"` // the value to meet
	From  string  `json:"from"`  // where it comes from: "assumed", "--hold", "week.xlsx, sheet Targets"
}

// Targets decide what "works" means.
type Targets struct {
	HoldMinutes      Target `json:"hold_minutes"`       // the least hold
	DrainedPercent   Target `json:"drained_percent"`    // the most that drains, of the foam
	DrainedAtMinutes Target `json:"drained_at_minutes"` // the minute at which drainage counts
	WantedChance     Target `json:"wanted_chance"`      // the chance of working from which a mix is recommended
	// Results are the ranges asked of what a kitchen measures beside hold and drainage: best may lie
	// in the middle of a scale.
	Results []ResultTarget `json:"results"`
}

// ResultTarget is the range asked of one such result.
type ResultTarget struct {
	Result Outcome  `json:"result"` // name of the result
	Label  string   `json:"label"`  // its name in words
	Unit   string   `json:"unit"`   // its unit, or ""
	Low    *float64 `json:"low"`    // least it may be; null = no bound on that side [unit of the result]
	High   *float64 `json:"high"`   // most it may be; null = no bound on that side [unit of the result]
	From   string   `json:"from"`   // place where it is asked
}

// Outcomes is the whole chain.
func (t Targets) Outcomes() []Outcome {
	out := slices.Clone(Chain)
	for _, r := range t.Results {
		out = append(out, r.Result)
	}
	return out
}

// Needs says whether no mix is recommended while an outcome is not judged: coming out and
// hold are what a foam is for, and what the kitchen asked for itself it meant. Splitting
// and an assumed limit on drainage are left out where nobody looked, and that is said.
func (t Targets) Needs(o Outcome) bool {
	switch o {
	case Broke:
		return false
	case DrainedPercent:
		return t.DrainedPercent.From != "assumed"
	}
	return true
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
