package compose

import (
	"fmt"
	"math"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// waterByDifference stands for the water part that no column gives.
var waterByDifference = ingredient.Ingredient{Name: "water part", Kind: ingredient.Water, From: "the batch less the other ingredients"}

// fromWhole fills in what follows from a mix known to its total.
func (w *work) fromWhole(all whole) {
	parts := w.partsOf(all)
	t := mix.Total(parts)
	if t.Grams == 0 {
		return
	}
	w.summed = all.byDifference == 0 && (w.r.Batch.OK() || all.nominal)
	if !w.addsUp(t.Grams, all) || len(w.r.Doses) > 0 && !w.possible(t, all) {
		return
	}
	w.percents(t)
	if !all.nominal {
		w.masses(t, parts, all)
	}
}

// partsOf is the recipe in grams of a whole: its doses, then what holds a place in
// the sum that no dose does.
func (w *work) partsOf(all whole) []mix.Part {
	parts := make([]mix.Part, 0, len(w.r.Doses)+2)
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		parts = append(parts, mix.Part{Grams: all.gramsOf(d), What: *d.What})
	}
	if !w.r.hasFat() { // only the fat percent of the mix is logged
		parts = append(parts, mix.Part{Grams: all.fat, What: scheme.FatAsLogged})
	}
	if all.byDifference > 0 {
		parts = append(parts, mix.Part{Grams: all.byDifference, What: waterByDifference})
	}
	return parts
}

// addsUp holds the sum of the parts against the batch, or against 100 %. It is false
// where nothing can be built on them.
func (w *work) addsUp(sum float64, all whole) bool {
	off := math.Abs(sum - all.batch)
	if w.r.Batch.OK() && off > w.slack(all.batch) || all.nominal && off > 1 {
		return !w.notAddedUp(sum, all.batch, all.nominal)
	}
	return true
}

// percents fills in what needs no masses.
func (w *work) percents(t mix.Totals) {
	for _, i := range t.WithoutFatPercent {
		w.needsFat(&w.r.Doses[i])
	}
	if t.FatPercent != nil && w.r.hasFat() && !w.noFat {
		w.FatPercent = t.FatPercent
	}
	if !w.noEmulsifier {
		w.EmulsifierPercent = t.EmulsifierPercent
		w.blend(t)
	}
}

// masses fills in what is in grams.
func (w *work) masses(t mix.Totals, parts []mix.Part, all whole) {
	if !w.noEmulsifier {
		w.EmulsifierGrams = pointer(t.EmulsifierGrams)
	}
	w.BatchGrams = pointer(t.Grams)
	w.list(parts)
	if all.byDifference > w.slack(all.batch)/4 {
		w.Parts = append(w.Parts, trial.Amount{Name: waterByDifference.Name, Grams: all.byDifference, What: &waterByDifference})
		w.sayByDifference(all.byDifference)
	}
}

// list keeps the ingredients with their grams.
func (w *work) list(parts []mix.Part) {
	w.Parts = make([]trial.Amount, 0, len(w.r.Doses))
	for i := range w.r.Doses {
		if d := &w.r.Doses[i]; parts[i].Grams > 0 {
			w.Parts = append(w.Parts, trial.Amount{Name: d.Name, Grams: parts[i].Grams, What: d.What})
		}
	}
}

func (w *work) sayByDifference(g float64) {
	if w.waterBlank && w.s.WaterColumn > 0 {
		w.say(trial.Check("water left empty", w.at(w.s.WaterColumn), "nothing is typed here",
			fmt.Sprintf("type the grams; until then the batch less the other ingredients is used, %s", say.Grams(g))))
		return
	}
	if w.s.RestUnlogged {
		w.say(trial.Check("water by difference", w.at(w.r.Batch.Col), "the batches weigh more than the ingredients that have columns",
			"the rest is taken as a water part without fat; add a column \"Water g\" to log it, or correct the batches").Once())
		return
	}
	w.say(trial.Note("water by difference", w.at(w.r.Batch.Col), "no column gives the water part",
		"the water part is taken as the batch less the other ingredients; add a column \"Water g\" to log it").Once())
}

// possible reports whether ingredients can weigh so much together, and so much of
// it be emulsifier.
func (w *work) possible(t mix.Totals, all whole) bool {
	if !all.nominal && (t.Grams < LeastBatch || t.Grams > MostGrams) {
		w.BadCell = w.r.Doses[0].Col
		w.say(trial.Fix("impossible value", w.at(w.BadCell), fmt.Sprintf("the ingredients add up to %s g", say.Number(t.Grams)),
			"type grams: a mix weighs 1 g to 100 kg"))
		return false
	}
	if !w.possibleEmulsifier(100 * t.EmulsifierGrams / t.Grams) {
		w.BadCell = w.emulsifierColumn()
		return false
	}
	return true
}
