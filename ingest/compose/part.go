package compose

import (
	"fmt"

	"foamfield/ingest/column"
	"foamfield/ingest/mix"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// partOnly keeps what is known of a mix whose total cannot be worked out, and says
// what would complete it.
func (w *work) partOnly(p sums) {
	r := w.r
	list := make([]mix.Part, 0, len(r.Doses))
	inGramsOnly := true // what there is of emulsifiers
	for i := range r.Doses {
		d := &r.Doses[i]
		g := d.Amount
		switch {
		case d.InGrams:
		case d.Basis == column.OfMix && r.Batch.OK():
			g = d.Amount / 100 * r.Batch.Value
		default:
			g = 0
			w.noFat = w.noFat || d.isFat() && d.Basis != column.OfMix
			inGramsOnly = inGramsOnly && !d.isEmulsifier()
		}
		list = append(list, mix.Part{Grams: g, What: *d.What})
	}
	w.list(list)
	t := mix.Total(list)
	switch {
	case w.noEmulsifier:
	case inGramsOnly:
		w.EmulsifierGrams = pointer(t.EmulsifierGrams)
		w.blend(t)
		if r.Batch.OK() {
			w.EmulsifierPercent = w.percentOfBatch(t.EmulsifierGrams)
		}
	default:
		w.emulsifierShares()
	}
	if !w.noFat && p.fat.doses > 0 && len(t.WithoutFatPercent) == 0 {
		w.FatPercent = fatOf(r, list)
	}
	w.sayIncomplete(p)
}

// sayIncomplete says what a mix lacks to be worked out.
func (w *work) sayIncomplete(p sums) {
	r, s := w.r, w.s
	fatless := p.fat.doses == 0
	switch {
	case r.isOpen(p) || r.FatOpen || w.refuted: // said where it stands
	case fatless && !r.Fat.OK() && !w.noFat && s.FatColumn > 0:
		w.say(trial.Check("no fat logged", w.at(s.FatColumn), "the fat is left empty", "type the fat, 0 if there was none; until then "+NoFormula))
	case r.Batch.OK():
	case r.fatInPercent(p):
		w.say(trial.Note("batch not known", w.at(r.Fat.Col), "no batch mass is logged, so the emulsifier stays in grams",
			"add a column \"Batch g\" to have it in percent of the mix").Once())
	case fatless || p.weighed == 0:
	case s.WaterColumn > 0 && p.water.doses == 0:
		w.say(trial.Check("no water logged", w.at(s.WaterColumn), "nothing is typed here, so the fat percent cannot be worked out",
			"type the grams, 0 if the mix had no water; until then "+NoFormula))
	case s.Find(column.BatchMass) != nil:
		w.say(trial.Check("batch not known", w.at(s.Find(column.BatchMass).Col), "neither the batch nor the water part is logged, so the fat percent cannot be worked out",
			"type here what the whole mix weighed"))
	default:
		w.say(trial.Check("batch not known", w.at(s.FatColumn), "neither the batch nor the water part is logged, so the fat percent cannot be worked out",
			"add a column \"Batch g\", or \"Water g\" with 0 if the mix had no water"))
	}
}

// emulsifierShares takes emulsifiers that are all in percent of the mix, which say
// their part of it whatever the rest is.
func (w *work) emulsifierShares() {
	list := make([]mix.Part, 0, len(w.r.Doses))
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		share := mix.Part{What: *d.What}
		if d.isEmulsifier() {
			if d.InGrams || d.Basis != column.OfMix {
				return
			}
			share.Grams = d.Amount // of 100 g
		}
		list = append(list, share)
	}
	t := mix.Total(list)
	if w.possibleEmulsifier(t.EmulsifierGrams) {
		w.EmulsifierPercent = pointer(t.EmulsifierGrams)
		w.blend(t)
	}
}

// percentOfBatch is emulsifier in percent of a logged batch, nil when there is
// more of it than that.
func (w *work) percentOfBatch(g float64) *float64 {
	if g > w.r.Batch.Value {
		w.say(trial.Fix("more than the batch", w.at(w.r.Batch.Col),
			fmt.Sprintf("%s of emulsifier is more than the batch of %s", say.Grams(g), say.Grams(w.r.Batch.Value)), "correct the batch or the emulsifier"))
		return nil
	}
	percent := 100 * g / w.r.Batch.Value
	if !w.possibleEmulsifier(percent) {
		return nil
	}
	return pointer(percent)
}

// fatOf is the fat percent of a mix whose total is not known, if each fat is given
// in percent of the mix or the batch is known.
func fatOf(r *Recipe, list []mix.Part) *float64 {
	percent := 0.0
	for i := range r.Doses {
		d := &r.Doses[i]
		own := d.What.FatPercent
		switch {
		case own == nil || own.Value == 0:
		case !d.InGrams && d.Basis == column.OfMix:
			percent += d.Amount * own.Value / 100
		case r.Batch.OK() && d.InGrams:
			percent += list[i].Grams / r.Batch.Value * own.Value
		default:
			return nil
		}
	}
	if percent > 100 {
		return nil
	}
	return &percent
}

// emulsifierColumn is the column of the largest emulsifier of a recipe.
func (w *work) emulsifierColumn() int {
	if w.r.EmulsifierGrams.OK() {
		return w.r.EmulsifierGrams.Col
	}
	col, most := 0, -1.0
	for i := range w.r.Doses {
		if d := &w.r.Doses[i]; d.isEmulsifier() && d.Amount > most {
			col, most = d.Col, d.Amount
		}
	}
	return col
}

// needsFat says that an ingredient's own fat percent is missing.
func (w *work) needsFat(d *Dose) {
	w.say(trial.Fix("no fat percent", w.s.Heading(d.Col),
		fmt.Sprintf("how much fat is in %s is not known, so the fat percent of the mix cannot be worked out", say.Quoted(d.Name)),
		fmt.Sprintf("write it in the header (\"%s 35 %% fat\"), or add a sheet Ingredients with the header \"Name in the log | What it is | Fat %%\" and its row", d.Name)).
		OnceOf(d.Name).Asking(trial.Question{Asked: "How much fat is in " + say.Quoted(d.Name) + ", in percent?", Blocks: true, Only: trial.OnFat,
		Type: fmt.Sprintf("write it in the header of the column, for example \"%s 35 %% fat\"", d.Name),
		Cure: trial.Cure{Sheet: "Ingredients", Row: []string{d.Name, d.What.Name, "", trial.Open}}}))
}

// saidOnly is the one percent of emulsifiers together of which nobody can tell of what it is.
func saidOnly(doses []Dose) (percent *float64) {
	for i := range doses {
		d := &doses[i]
		if d.InGrams || d.Basis != column.NoBasis || !d.isEmulsifier() {
			continue
		}
		if percent != nil {
			return nil
		}
		percent = pointer(d.Amount)
	}
	return percent
}

// explainGroundless says of a percent without a basis what each basis would give.
func (w *work) explainGroundless(p sums) {
	for i := range w.r.Doses {
		d := &w.r.Doses[i]
		if d.InGrams || d.Basis != column.NoBasis {
			continue
		}
		read := fmt.Sprintf("%s %% of what is not said", say.Number(d.Amount))
		if b := w.r.Batch; b.OK() {
			read += fmt.Sprintf(": of the mix it is %s", say.Grams(d.Amount/100*b.Value))
			if fat := p.fat.of(b.Value); fat > 0 {
				read += fmt.Sprintf(", of the fat %s", say.Grams(d.Amount/100*fat))
			}
			if water := p.water.of(b.Value); water > 0 {
				read += fmt.Sprintf(", of the water part %s", say.Grams(d.Amount/100*water))
			}
		}
		w.say(trial.Fix("percent of what", w.at(d.Col), read,
			fmt.Sprintf("write \"%s, %% of fat\", \"%% of water\" or \"%% of mix\" in the header, or give the Basis in a sheet Columns", d.What.Name)).
			Asking(trial.Question{Asked: "Of what is " + say.Quoted(w.s.Field(d.Col).Header) + " a percent?", Choices: []string{"of mix", "of fat", "of water"}, Blocks: true,
				Cure: trial.Cure{Sheet: "Columns", Row: []string{w.s.Field(d.Col).Header, "", "", trial.Open}}}))
	}
}
