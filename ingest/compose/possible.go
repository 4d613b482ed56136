package compose

import (
	"fmt"

	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// Bounds beyond which a number is a slip of the unit or the finger, whoever the
// kitchen is.
const (
	LeastFat      = 0.5  // percent of the mix, above 0: a foam rich in fat
	MostEmulsify  = 40.0 // percent of the mix
	LeastBatch    = 1.0  // g
	MostGrams     = 1e5  // g
	LeastGrams    = 1e-4 // g, above 0: no scale shows less
	mostHLB       = 20.0 // of what is not ionic: the scale goes no further
	contradictory = 0.2  // share of the batch that masses may be off before nothing is built on them
)

// possibleEmulsifier reports whether an emulsifier percent of the mix, worked out
// from a recipe, can be meant.
func (w *work) possibleEmulsifier(percent float64) bool {
	if percent <= MostEmulsify {
		return true
	}
	w.say(trial.Fix("impossible value", w.at(w.emulsifierColumn()), fmt.Sprintf("the emulsifiers are %s %% of the mix", say.Number(percent)),
		"type their grams again, or in the header what their percent is of (% of fat, % of water, % of mix); 0.1 to 5 % of the mix is common"))
	return false
}
