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

// NoFormula is what every message says of a trial that no start is built on.
const NoFormula = "no formula is built on this trial"

// Result is a mix worked out.
type Result struct {
	trial.Composition
	Contradicts string // why nothing can be built on the masses
	BadCell     int    // column of a cell that leaves the fat percent open
	Findings    []trial.Finding
}

// work is one recipe being worked out.
type work struct {
	s    *scheme.Scheme
	r    *Recipe
	step float64 // of the scale, g
	Result

	checks              []Dose // percents of ingredients that are weighed as well
	noFat, noEmulsifier bool   // the amount of a fat, of an emulsifier, is not known
	waterBlank          bool   // a water part belongs to this mix and is not typed
	refuted             bool   // the batch is less than its parts, which is said
	beside              bool   // the batch is what a line beside the table says
	summed              bool   // the masses were held against the batch, or add up to 100 %
	explained           bool   // one cell explains why the masses do not add up: what follows from it is no news
}

// Of works a recipe out and says where its cells disagree. step is the step of the
// kitchen's scale in grams.
func Of(s *scheme.Scheme, r *Recipe, step float64) Result {
	w := &work{s: s, r: r, step: step, Result: Result{BadCell: r.BadCell}}
	w.noFat = r.FatOpen && !r.hasFat()
	w.dropDoubles()
	applyOwn(r)
	w.sharesOfEmulsifier()
	w.withinWater()
	w.waterBlank = (s.RestUnlogged || slices.ContainsFunc(r.Blank, func(col int) bool { return s.Field(col).What.Kind == ingredient.Water })) &&
		!slices.ContainsFunc(r.Doses, func(d Dose) bool { return d.What.Kind == ingredient.Water })
	w.blanks()
	w.whatIsOpen()
	w.sayNoEmulsifier()

	p := sum(r.Doses)
	w.batchSaid(p)
	all := total(r, p, w.waterBlank)
	w.explainGroundless(p)
	if all.ok && all.byDifference < -w.slack(all.batch) {
		// More was logged than the batch weighs.
		apart := w.notAddedUp(all.batch-all.byDifference, all.batch, all.nominal)
		r.Batch, all.ok, w.refuted = Known{}, false, true
		if apart {
			return w.Result
		}
	}
	switch {
	case all.ok:
		w.fromWhole(all)
		if w.Contradicts != "" {
			w.Composition = trial.Composition{}
			return w.Result
		}
		if !w.explained {
			w.checkDoubles(all)
		}
	case len(r.Doses) > 0:
		w.partOnly(p)
	}
	if !w.summed {
		w.askTenfold()
	}
	w.fromLogged()
	if w.EmulsifierPercent == nil {
		w.EmulsifierSaid = saidOnly(r.Doses)
	}
	return w.Result
}

func (w *work) at(col int) trial.Place { return w.s.At(w.r.Row, col) }
func (w *work) text(col int) string    { return w.s.Text(w.r.Row, col) }
func (w *work) say(f trial.Finding)    { w.Findings = append(w.Findings, f) }

// slack is how far a sum may be from the batch before it is worth a look: one
// percent of it, or two steps of the scale.
func (w *work) slack(batch float64) float64 { return max(0.01*batch, 2*w.step) }

// whatIsOpen says which parts of the mix cannot be known.
func (w *work) whatIsOpen() {
	for i := range w.r.Open {
		o := &w.r.Open[i]
		w.noFat = w.noFat || o.mayBeFat()
		w.noEmulsifier = w.noEmulsifier || o.mayBeEmulsifier()
	}
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		w.noFat = w.noFat || d.groundless() && d.isFat() || d.Kindless && d.Amount > 0
		w.noEmulsifier = w.noEmulsifier || d.groundless() && d.isEmulsifier()
	}
	w.noEmulsifier = w.noEmulsifier || w.s.EmulsifierColumn == 0
	if !w.noFat && !w.r.hasFat() {
		w.BadCell = 0 // no mass of a fat waits for the others
	}
}

// sayNoEmulsifier says that a mix is read as one without emulsifier.
func (w *work) sayNoEmulsifier() {
	if w.s.NamesEmulsifiers && !w.noEmulsifier && len(w.r.Doses) > 0 && !w.r.hasEmulsifier() {
		w.say(trial.Note("emulsifier left empty", w.at(w.s.EmulsifierColumn), "no emulsifier is typed, which is read as none", "type 0 to be sure").Once())
	}
}

// sharesOfEmulsifier turns percents of all emulsifiers into grams or percents of
// the mix, where the emulsifiers together are logged.
func (w *work) sharesOfEmulsifier() {
	if w.r.EmulsifierPart.OK() && w.r.EmulsifierBasis == column.NoBasis && !w.r.EmulsifierGrams.OK() && !w.r.Emulsifier.OK() {
		w.sharesOfNobodySaysWhat()
		return
	}
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		switch {
		case d.InGrams || d.Basis != column.OfEmulsifier:
		case w.r.EmulsifierGrams.OK():
			d.Amount, d.InGrams = d.Amount/100*w.r.EmulsifierGrams.Value, true
		case w.r.Emulsifier.OK():
			d.Amount, d.Basis = d.Amount/100*w.r.Emulsifier.Value, column.OfMix
		case w.r.EmulsifierPart.OK():
			d.Amount, d.Basis = d.Amount/100*w.r.EmulsifierPart.Value, w.r.EmulsifierBasis
		}
	}
}

// sharesOfNobodySaysWhat takes the blend HLB from the shares, which tell it whatever the emulsifiers
// together are a percent of: that alone is asked.
func (w *work) sharesOfNobodySaysWhat() {
	list := make([]mix.Part, len(w.r.Doses))
	shares, col := 0.0, 0
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		list[i].What = *d.What
		if !d.InGrams && d.Basis == column.OfEmulsifier {
			list[i].Grams, col = d.Amount, d.Col // of 100 g
			shares += d.Amount
		} else if d.isEmulsifier() {
			return
		}
	}
	switch part := w.r.EmulsifierPart; {
	case col == 0:
		return
	case part.Value == 0:
	case math.Abs(shares-100) > 1:
		w.say(trial.Check("emulsifier percent differs", w.at(col), "the shares make up "+say.Number(shares)+" % of the emulsifiers together, so the blend HLB cannot be worked out",
			"type the share of each"))
	default:
		w.blend(mix.Total(list))
	}
	w.r.Doses = slices.DeleteFunc(w.r.Doses, func(d Dose) bool { return !d.InGrams && d.Basis == column.OfEmulsifier })
	w.r.Doses = append(w.r.Doses, Dose{Name: scheme.TotalEmulsifier.Name, What: &scheme.TotalEmulsifier, Amount: w.r.EmulsifierPart.Value, Col: w.r.EmulsifierPart.Col})
}

// nearlyAlways is how often an amount is typed where a blank looks forgotten; two
// pairs of emulsifiers that take turns are each blank in half the trials.
const nearlyAlways = 0.8

// blanks reads what is left empty as none, unless the batch is short of it: then
// nobody can know it. An emulsifier that nearly every other trial has is asked for.
func (w *work) blanks() {
	missing, short := w.shortOf()
	for _, col := range w.r.Blank {
		f := w.s.Field(col)
		u := w.s.Usual[col]
		fits := short && f.InGrams && u.Known && u.Holds(missing, 2*w.step)
		switch {
		case f.What.Kind == ingredient.Water:
		case fits:
			w.r.Open = append(w.r.Open, Open{&f.What, f.Kindless})
			w.explained = true
			w.say(trial.Check("emulsifier left empty", w.at(col), fmt.Sprintf("nothing is typed here, where most trials have %s to %s, and the ingredients are %s short of the batch",
				say.Exact(u.Low), say.Grams(u.High), say.Grams(missing)), "type the grams, or 0 if there was none; until then "+NoFormula))
		case f.What.WeighedAsEmulsifier() && f.InGrams && u.Known && u.Filled >= nearlyAlways && w.r.hasEmulsifier():
			w.explained = true
			w.say(trial.Check("emulsifier left empty", w.at(col), fmt.Sprintf("nothing is typed here, where most trials have %s to %s", say.Exact(u.Low), say.Grams(u.High)),
				"type the grams, or 0 if there was none; until then it is read as none"))
		}
	}
}

// shortOf is what a recipe in grams lacks of its batch.
func (w *work) shortOf() (missing float64, short bool) {
	p := sum(w.r.Doses)
	if !w.r.Batch.OK() || w.r.isOpen(p) || p.all.share > 0 || p.ofFat > 0 || p.ofWater > 0 || p.water.doses == 0 {
		return 0, false
	}
	missing = w.r.Batch.Value - p.all.grams
	return missing, missing > max(2*w.step, 0.002*w.r.Batch.Value)
}

// applyOwn gives the doses the row's own values.
func applyOwn(r *Recipe) {
	for _, o := range r.Own {
		for i := range r.Doses {
			d := &r.Doses[i]
			if d.What.Name != o.Name {
				continue
			}
			own, exact := *d.What, &ingredient.Range{Low: o.Value, Value: o.Value, High: o.Value}
			if o.IsHLB {
				own.HLB = exact
			} else {
				own.FatPercent = exact
			}
			own.From = "the log's own column"
			d.What = &own
		}
	}
}

func pointer(v float64) *float64 { return &v }
