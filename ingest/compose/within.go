package compose

import (
	"math"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// A water phase that makes 100 % with the fat has the emulsifier in it: 30 % of fat, 70 % of
// water phase and 1 % of emulsifier are no 101 %.

// withinWater takes emulsifiers in percent out of the water phase that holds them.
func (w *work) withinWater() {
	water, fat := -1, 0.0
	emulsifiers := false
	for i := range w.r.Doses {
		switch d := &w.r.Doses[i]; {
		case d.InGrams || d.groundless():
			return
		case d.isEmulsifier() && d.Basis != column.OfEmulsifier:
			emulsifiers = emulsifiers || d.Amount > 0
		case d.Basis != column.OfMix:
			return
		case d.isFat():
			fat += d.Amount
		case d.What.Name == waterByDifference.Name && d.What.Kind == ingredient.Water && water < 0:
			water = i
		default:
			return
		}
	}
	if !w.r.hasFat() && w.r.Fat.OK() {
		fat = w.r.Fat.Value
	}
	if water < 0 || !emulsifiers || fat <= 0 || math.Abs(fat+w.r.Doses[water].Amount-100) > hundred {
		return
	}
	rest := w.r.Doses[water].Amount
	of := map[column.Basis]float64{column.OfMix: 1, column.OfWater: rest / 100, column.OfFat: fat / 100}
	inMix := func(d *Dose) float64 { return d.Amount * of[d.Basis] }
	for i := range w.r.Doses {
		if d := &w.r.Doses[i]; d.isEmulsifier() {
			rest -= inMix(d)
		}
	}
	if rest < 0 {
		return
	}
	for i := range w.r.Doses {
		if d := &w.r.Doses[i]; d.isEmulsifier() {
			d.Amount, d.Basis = inMix(d), column.OfMix
		}
	}
	w.r.Doses[water].Amount = rest
	w.say(trial.Note("emulsifier in the water phase", w.s.Heading(w.r.Doses[water].Col), "the fat and the water phase make 100 % by themselves, so the emulsifier is taken as part of the water phase",
		"nothing to do; if it came on top, type the percents of the whole mix").Once())
}

// hundred is how far percents that were worked out to add up to 100 may be from it.
const hundred = 0.05
