package compose

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// fromLogged takes what the log says directly where nothing better is known, and
// compares where both are.
func (w *work) fromLogged() {
	r := w.r
	if r.Batch.OK() && w.BatchGrams == nil {
		w.BatchGrams = pointer(r.Batch.Value)
	}
	if r.Fat.OK() && !w.takes(&w.FatPercent, r.Fat.Value, max(0.5, 0.01*r.Fat.Value)) {
		w.say(trial.Check("fat percent differs", w.at(r.Fat.Col),
			fmt.Sprintf("%s %% logged, %s %% by the masses", say.Number(r.Fat.Value), say.Number(*w.FatPercent)),
			"correct the fat percent or the masses; the masses are used"))
	}
	if g := r.EmulsifierGrams; g.OK() {
		fresh := w.EmulsifierGrams == nil
		if !w.takes(&w.EmulsifierGrams, g.Value, max(2*w.step, 0.02*g.Value)) {
			w.say(trial.Check("emulsifier differs", w.at(g.Col),
				fmt.Sprintf("%s logged, %s by the emulsifiers' own masses", say.Grams(g.Value), say.Grams(*w.EmulsifierGrams)),
				"correct the sum or the masses; the masses are used"))
		}
		if fresh && r.Batch.OK() && w.EmulsifierPercent == nil {
			w.EmulsifierPercent = w.percentOfBatch(g.Value)
		}
	}
	if e := r.Emulsifier; e.OK() {
		if !w.takes(&w.EmulsifierPercent, e.Value, max(0.1, 0.03*e.Value)) {
			w.say(trial.Check("emulsifier percent differs", w.at(e.Col),
				fmt.Sprintf("%s %% logged, %s %% by the masses", say.Number(e.Value), say.Number(*w.EmulsifierPercent)),
				"correct the percent or the masses; the masses are used"))
		}
		if w.EmulsifierGrams == nil && w.BatchGrams != nil {
			w.EmulsifierGrams = pointer(e.Value / 100 * *w.BatchGrams)
		}
	}
	w.loggedHLB()
}

// takes gives a number the logged value where none was worked out, and is false
// where both are known and further apart than within.
func (w *work) takes(into **float64, logged, within float64) bool {
	if *into == nil {
		*into = &logged
		return true
	}
	return w.explained || math.Abs(**into-logged) <= within
}

// blend fills in the blend HLB, or says which value is missing for it.
func (w *work) blend(t mix.Totals) {
	for _, i := range t.WithoutHLB {
		d := w.r.Doses[i]
		if d.What.Name == scheme.TotalEmulsifier.Name {
			return // the log gives the blend, or nobody can know it
		}
		w.say(scheme.NoHLB(d.Name, w.s.Heading(d.Col), !w.r.HLB.OK()))
	}
	for _, i := range t.Ionic {
		d := w.r.Doses[i]
		w.say(trial.Note("outside the blend", w.s.Heading(d.Col), fmt.Sprintf("%s emulsifies but has no true HLB", say.Quoted(d.Name)),
			"nothing to do: it is counted in the mix and left out of the blend HLB").OnceOf(d.Name))
	}
	if t.BlendHLB == nil {
		return
	}
	w.BlendHLB = pointer(t.BlendHLB.Value)
	if t.BlendHLB.Low != t.BlendHLB.High {
		w.HLBLow, w.HLBHigh = pointer(t.BlendHLB.Low), pointer(t.BlendHLB.High)
	}
}

// loggedHLB takes the blend HLB the log gives where none can be worked out, and
// compares where both are known.
func (w *work) loggedHLB() {
	k := w.r.HLB
	if !k.OK() {
		return
	}
	if k.Value < 0 || k.Value > mostHLB {
		w.impossibleHLB(k)
		return
	}
	none := w.EmulsifierGrams != nil && *w.EmulsifierGrams == 0 || w.EmulsifierPercent != nil && *w.EmulsifierPercent == 0
	switch {
	case none && k.Value != 0:
		w.say(trial.Check("HLB without emulsifier", w.at(k.Col), fmt.Sprintf("an HLB of %s is logged for a mix without emulsifier", say.Number(k.Value)),
			"leave the HLB empty, or log the emulsifier; the HLB is not used"))
	case none:
	case w.BlendHLB == nil && k.Value == 0:
		w.say(trial.Check("HLB of 0", w.at(k.Col), "an HLB of 0 is read as not logged", "leave it empty, or type the blend HLB"))
	case w.BlendHLB == nil:
		w.BlendHLB = pointer(k.Value)
	case w.explained: // a wrong mass makes a wrong blend
	case math.Abs(k.Value-*w.BlendHLB) > 0.25:
		w.differentHLB(k)
	}
}

// differentHLB says how a logged blend HLB came about, where that can be seen.
func (w *work) differentHLB(k Known) {
	read := fmt.Sprintf("HLB %s logged, %s by the masses of the emulsifiers", say.Number(k.Value), say.Number(*w.BlendHLB))
	if mean, ok := w.plainMean(); ok && math.Abs(mean-k.Value) <= 0.06 {
		read += fmt.Sprintf("; %s is the plain mean of their HLBs", say.Number(k.Value))
	}
	if w.HLBLow != nil && *w.HLBLow <= k.Value && k.Value <= *w.HLBHigh {
		w.say(trial.Check("HLB differs", w.at(k.Col), read+" (a blend of these may be anything from "+say.Number(*w.HLBLow)+" to "+say.Number(*w.HLBHigh)+")",
			"give your supplier's HLB of each emulsifier in the sheet Ingredients; the masses are used"))
		return
	}
	w.say(trial.Check("HLB differs", w.at(k.Col), read, "correct the HLB or the masses; the masses are used"))
}

// plainMean is the mean of the emulsifiers' HLBs, whatever they weigh.
func (w *work) plainMean() (mean float64, ok bool) {
	n := 0.0
	for i := range w.r.Doses {
		if d := &w.r.Doses[i]; d.What.HLB != nil && d.Amount > 0 {
			mean, n = mean+d.What.HLB.Value, n+1
		}
	}
	return mean / n, n > 1
}

// impossibleHLB says that no blend has the HLB that is logged.
func (w *work) impossibleHLB(k Known) {
	do := "type the blend HLB, between 0 and 20"
	switch tenth := k.Value / 10; {
	case w.BlendHLB != nil:
		do = fmt.Sprintf("by the masses of the emulsifiers it is %s: type that or leave it empty; the masses are used", say.Number(math.Round(*w.BlendHLB*10)/10))
	case tenth >= 1 && tenth <= mostHLB:
		do += fmt.Sprintf(", %s if that was meant, or leave it empty", say.Number(tenth))
	default:
		do += ", or leave it empty"
	}
	w.say(trial.Fix("impossible value", w.at(k.Col), say.Quoted(w.text(k.Col))+" cannot be an HLB: it goes from 0 to 20", do))
}

// dropDoubles settles ingredients logged both in grams and in percent: the grams
// are used and the percent is checked against them.
func (w *work) dropDoubles() {
	if !slices.ContainsFunc(w.r.Doses, w.isDouble) {
		return
	}
	kept := w.r.Doses[:0:0]
	for _, d := range w.r.Doses {
		if w.isDouble(d) {
			w.checks = append(w.checks, d)
			continue
		}
		kept = append(kept, d)
	}
	w.r.Doses = kept
}

func (w *work) isDouble(d Dose) bool {
	_, double := weighedAs(w.r, d)
	return double
}

// forAll are names that a percent of the mix has for whatever fat was weighed.
var forAll = map[string]bool{"oil": true, "fat": true, "vegetable fat": true}

// weighedAs is the grams of which a percent says the share once more: of the same
// ingredient, or of all fats or all water ingredients where it names no more than these
// or is just their share of what was weighed.
func weighedAs(r *Recipe, d Dose) (grams float64, double bool) {
	if d.InGrams {
		return 0, false
	}
	all, alike, one := 0.0, 0.0, false
	for i := range r.Doses {
		o := &r.Doses[i]
		if !o.InGrams {
			continue
		}
		all += o.Amount
		if o.What.Name == d.What.Name {
			grams, double = grams+o.Amount, true
		}
		if o.What.Kind == d.What.Kind {
			alike, one = alike+o.Amount, true
		}
	}
	if double || !one || d.Basis != column.OfMix || d.What.Kind != ingredient.Fat && d.What.Kind != ingredient.Water {
		return grams, double
	}
	if r.Batch.OK() {
		all = r.Batch.Value
	}
	agrees := all > 0 && alike > 0 && math.Abs(100*alike/all-d.Amount) <= max(0.5, 0.01*d.Amount)
	return alike, agrees || forAll[d.What.Name]
}

// checkDoubles compares the percent of an ingredient with its grams, and finds out
// what a percent without a basis is of.
func (w *work) checkDoubles(all whole) {
	for _, d := range w.checks {
		logged, _ := weighedAs(w.r, d)
		agrees := func(basis column.Basis) bool {
			d.Basis = basis
			return math.Abs(all.gramsOf(&d)-logged) <= max(2*w.step, 0.03*logged)
		}
		switch said := d.Basis; {
		case said != column.NoBasis && agrees(said):
		case said != column.NoBasis:
			w.say(trial.Check("percent differs", w.at(d.Col),
				fmt.Sprintf("%s %s would be %s of %s, %s are logged", say.Number(d.Amount), d.basis(), say.Grams(all.gramsOf(&d)), d.What.Name, say.Grams(logged)),
				"correct the percent or the grams; the grams are used"))
		case agrees(column.OfFat), agrees(column.OfMix), agrees(column.OfWater):
			w.say(trial.Note("percent beside grams", w.at(d.Col), fmt.Sprintf("the percent agrees with the grams as %s", d.basis()),
				"write that in the header to be sure").Once())
		default:
			w.say(trial.Check("percent differs", w.at(d.Col),
				fmt.Sprintf("%s %% of %s agrees with the %s logged neither as percent of fat, of water nor of mix", say.Number(d.Amount), d.What.Name, say.Grams(logged)),
				"correct the percent or the grams; the grams are used"))
		}
	}
}
