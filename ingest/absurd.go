package ingest

import (
	"fmt"
	"math"

	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// Bounds beyond which a number is a slip of the unit or the finger, whoever the
// kitchen is.
const (
	leastFat      = 0.5          // percent of the mix, above 0: a foam rich in fat
	mostEmulsify  = 40.0         // percent of the mix
	mostHLB       = 20.0         // of what is not ionic: the scale goes no further
	mostHold      = 30 * 24 * 60 // minutes
	leastBatch    = 1.0          // g
	mostGrams     = 1e5          // g
	leastGrams    = 1e-4         // g, above 0: no scale shows less
	leastAnything = 1e-9         // above 0, whatever it is
	mostAnything  = 1e12
)

// absurd reports a reading no instrument of a kitchen gives: the rest of a
// formula, most likely.
func absurd(r quantity.Reading) bool {
	for _, v := range [...]float64{r.Low, r.High} {
		if a := math.Abs(v); a > 0 && a < leastAnything || a > mostAnything && !math.IsInf(v, 0) {
			return true
		}
	}
	return false
}

// impossible reports a number no kitchen can mean.
func (b *row) impossible(col int, what, do string) {
	b.problem("impossible value", trial.MustFix, col, quoted(b.text(col))+" cannot be "+what, do)
}

// possibleFat reports whether a fat percent can be meant.
func (b *row) possibleFat(k known) bool {
	if !k.ok() || k.value == 0 || k.value >= leastFat {
		return true
	}
	b.impossible(k.col, "a fat percent", "type the percent, for example 45 for 45 %, or 0 for a mix without fat")
	return false
}

// possibleEmulsifier reports whether an emulsifier percent of the mix, worked
// out from a recipe, can be meant.
func (b *row) possibleEmulsifier(percent float64, r *recipe) bool {
	if percent <= mostEmulsify {
		return true
	}
	col := r.emulsifierGrams.col
	if col == 0 {
		col = r.emulsifierColumn()
	}
	b.problem("impossible value", trial.MustFix, col, fmt.Sprintf("the emulsifiers are %s %% of the mix", number(percent)),
		"type their grams again, or in the header what their percent is of (% of fat, % of water, % of mix); 0.1 to 5 % of the mix is common")
	return false
}

// possibleSum reports whether ingredients can weigh so much or so little
// together.
func (b *row) possibleSum(all float64, r *recipe) bool {
	if all >= leastBatch && all <= mostGrams {
		return true
	}
	b.problem("impossible value", trial.MustFix, r.doses[0].col, fmt.Sprintf("the ingredients add up to %s g", number(all)),
		"type grams: a mix weighs 1 g to 100 kg")
	return false
}

// emulsifierColumn is the column of the largest emulsifier of a recipe.
func (r *recipe) emulsifierColumn() int {
	col, most := 0, math.Inf(-1)
	for _, d := range r.doses {
		if d.what.WeighedAsEmulsifier() && d.amount > most {
			col, most = d.col, d.amount
		}
	}
	return col
}
