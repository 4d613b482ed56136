package ingest

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
	"foamfield/ingest/trial"
)

// fromWhole fills in what follows from a mix known to its total.
func (b *row) fromWhole(c *trial.Composition, r *recipe, w whole) {
	parts := b.book.scratch[:0]
	cols := b.book.scratchCols[:0]
	for _, d := range r.doses {
		parts = append(parts, mix.Part{Grams: w.gramsOf(d), What: d.what})
		cols = append(cols, d.col)
	}
	hasFat := slices.ContainsFunc(r.doses, isFat)
	if !hasFat {
		// Only the fat percent of the mix is logged: it holds a place in the sum.
		parts = append(parts, mix.Part{Grams: w.fat, What: fatAsLogged})
		cols = append(cols, r.fat.col)
	}
	byDifference := math.Abs(w.byDifference) > b.slack(w.batch)/4
	if w.byDifference > 0 {
		parts = append(parts, mix.Part{Grams: w.byDifference, What: waterByDifference})
		cols = append(cols, r.batch.col)
	}
	b.book.scratch, b.book.scratchCols = parts, cols
	t := mix.Total(parts)
	if t.Grams == 0 {
		return
	}
	r.summed = w.byDifference == 0 && (r.batch.ok() || w.nominal)
	switch off := math.Abs(t.Grams - w.batch); {
	case r.batch.ok() && off > b.slack(w.batch), w.nominal && off > 1:
		apart, settled := b.notAddedUp(r, t.Grams, w.batch, w.nominal)
		if r.explained = settled; apart {
			return
		}
	}
	switch {
	case len(r.doses) == 0:
	case !w.nominal && !b.possibleSum(t.Grams, r):
		r.badCell = r.doses[0].col
		return
	case !b.possibleEmulsifier(100*t.EmulsifierGrams/t.Grams, r):
		r.badCell = r.emulsifierColumn()
		return
	}

	for _, i := range t.WithoutFatPercent {
		b.needsFat(r.doses[i])
	}
	if t.FatPercent != nil && hasFat {
		c.FatPercent = b.book.float(*t.FatPercent)
	}
	if !r.noEmulsifier {
		c.EmulsifierPercent = b.book.float(*t.EmulsifierPercent)
		b.blend(c, r, t)
	}
	if w.nominal {
		return
	}
	if !r.noEmulsifier {
		c.EmulsifierGrams = b.book.float(t.EmulsifierGrams)
	}
	c.BatchGrams = b.book.float(t.Grams)
	amounts := b.book.amounts[:0]
	for i := range r.doses {
		if d := &r.doses[i]; parts[i].Grams > 0 {
			amounts = append(amounts, trial.Amount{Name: d.name, Grams: parts[i].Grams, What: &d.what})
		}
	}
	if byDifference && w.byDifference > 0 {
		amounts = append(amounts, trial.Amount{Name: waterByDifference.Name, Grams: w.byDifference, What: &waterByDifference})
		if r.waterBlank {
			b.problem("water left empty", trial.PleaseLook, b.table.waterColumn, "nothing is typed here",
				fmt.Sprintf("type the grams; until then the batch less the other ingredients is used, %s", grams(w.byDifference)))
		} else {
			b.book.told("water by difference", b.at(r.batch.col), "no column gives the water part",
				"the water part is taken as the batch less the other ingredients; add a column \"Water g\" to log it")
		}
	}
	c.Parts = b.book.sharedParts(amounts)
}

func isFat(d dose) bool { return d.what.Kind == ingredient.Fat }

// partOnly keeps what is known of a mix whose total cannot be worked out, and
// says what would complete it.
func (b *row) partOnly(c *trial.Composition, r *recipe, p sums) {
	list := b.book.scratch[:0]
	amounts := b.book.amounts[:0]
	inGramsOnly := true // what there is of emulsifiers
	for i := range r.doses {
		d := &r.doses[i]
		g := d.amount
		switch {
		case d.basis == ofMix && r.batch.ok():
			g = d.amount / 100 * r.batch.value
		case d.basis != inGrams:
			g = 0
			r.noFat = r.noFat || isFat(*d) && d.basis != ofMix
			inGramsOnly = inGramsOnly && !d.what.WeighedAsEmulsifier()
		}
		list = append(list, mix.Part{Grams: g, What: d.what})
		if g > 0 {
			amounts = append(amounts, trial.Amount{Name: d.name, Grams: g, What: &d.what})
		}
	}
	c.Parts = b.book.sharedParts(amounts)
	b.book.scratch = list
	t := mix.Total(list)
	if !r.noEmulsifier && inGramsOnly {
		c.EmulsifierGrams = b.book.float(t.EmulsifierGrams)
		b.blend(c, r, t)
		if r.batch.ok() {
			c.EmulsifierPercent = b.percentOfBatch(t.EmulsifierGrams, r)
		}
	}
	if !r.noEmulsifier && !inGramsOnly {
		b.emulsifierShares(c, r)
	}
	shares := p.fats > 0 && p.fatGrams == 0 // the fat is given in percent of the mix
	if !r.noFat && p.fats > 0 && len(t.WithoutFatPercent) == 0 {
		if fat, ok := r.fatOf(list); ok {
			c.FatPercent = b.book.float(fat)
		}
	}
	switch {
	case r.unreadable || p.groundless > 0: // said where it stands
	case p.fats == 0 && !r.fat.ok() && !r.noFat && b.table.fatColumn > 0:
		read := "the fat is left empty"
		if text := b.text(b.table.fatColumn); text != "" {
			read = quoted(text) + " is read as fat that was not measured"
		}
		b.problem("no fat logged", trial.PleaseLook, b.table.fatColumn, read, "type the fat, 0 if there was none; until then "+noFormula)
	case (p.fats == 0 && r.fat.ok() || shares) && !r.batch.ok():
		b.book.told("batch not known", b.at(r.fat.col), "no batch mass is logged, so the emulsifier stays in grams",
			"add a column \"Batch g\" to have it in percent of the mix")
	case p.weighed > 0 && !r.batch.ok() && p.fats > 0 && b.table.waterColumn > 0 && p.waters == 0:
		read := "nothing is typed here"
		if text := b.text(b.table.waterColumn); text != "" {
			read = quoted(text) + " is read as water that was not measured"
		}
		b.problem("no water logged", trial.PleaseLook, b.table.waterColumn, read+", so the fat percent cannot be worked out",
			"type the grams, 0 if the mix had no water; until then "+noFormula)
	case p.weighed > 0 && !r.batch.ok() && p.fats > 0:
		b.problem("batch not known", trial.PleaseLook, b.table.fatColumn,
			"neither the batch nor the water part is logged, so the fat percent cannot be worked out",
			"add a column \"Batch g\", or \"Water g\" with 0 if the mix had no water")
	}
}

// emulsifierShares takes emulsifiers that are all in percent of the mix, which
// say their part of it whatever the rest is.
func (b *row) emulsifierShares(c *trial.Composition, r *recipe) {
	list := make([]mix.Part, 0, len(r.doses))
	for _, d := range r.doses {
		share := mix.Part{What: d.what}
		if d.what.WeighedAsEmulsifier() {
			if d.basis != ofMix {
				return
			}
			share.Grams = d.amount // of 100 g
		}
		list = append(list, share)
	}
	t := mix.Total(list)
	if b.possibleEmulsifier(t.EmulsifierGrams, r) {
		c.EmulsifierPercent = b.book.float(t.EmulsifierGrams)
		b.blend(c, r, t)
	}
}

// percentOfBatch is emulsifier in percent of a logged batch, nil when there is
// more of it than that.
func (b *row) percentOfBatch(g float64, r *recipe) *float64 {
	if g > r.batch.value {
		b.problem("more than the batch", trial.MustFix, r.batch.col,
			fmt.Sprintf("%s of emulsifier is more than the batch of %s", grams(g), grams(r.batch.value)), "correct the batch or the emulsifier")
		return nil
	}
	percent := 100 * g / r.batch.value
	if !b.possibleEmulsifier(percent, r) {
		return nil
	}
	return b.book.float(percent)
}

// fatOf is the fat percent of a mix whose total is not known, if each fat is
// given in percent of the mix or the batch is known.
func (r *recipe) fatOf(list []mix.Part) (percent float64, ok bool) {
	for i, d := range r.doses {
		own := d.what.FatPercent
		switch {
		case own == nil || own.Value == 0:
		case d.basis == ofMix:
			percent += d.amount * own.Value / 100
		case r.batch.ok() && d.basis == inGrams:
			percent += list[i].Grams / r.batch.value * own.Value
		default:
			return 0, false
		}
	}
	return percent, percent <= 100
}

// fromLogged takes what the log says directly where nothing better is known,
// and compares where both are.
func (b *row) fromLogged(c *trial.Composition, r *recipe) {
	if r.fat.ok() {
		switch {
		case r.explained && c.FatPercent != nil:
		case c.FatPercent == nil:
			c.FatPercent = b.book.float(r.fat.value)
		case math.Abs(*c.FatPercent-r.fat.value) > max(0.5, 0.01*r.fat.value):
			b.problem("fat percent differs", trial.PleaseLook, r.fat.col,
				fmt.Sprintf("%s %% logged, %s %% by the masses", number(r.fat.value), number(*c.FatPercent)),
				"correct the fat percent or the masses; the masses are used")
		}
	}
	if r.batch.ok() && c.BatchGrams == nil {
		c.BatchGrams = b.book.float(r.batch.value)
	}
	if r.emulsifierGrams.ok() {
		switch {
		case r.explained && c.EmulsifierGrams != nil:
		case c.EmulsifierGrams == nil:
			c.EmulsifierGrams = b.book.float(r.emulsifierGrams.value)
			if r.batch.ok() && c.EmulsifierPercent == nil {
				c.EmulsifierPercent = b.percentOfBatch(r.emulsifierGrams.value, r)
			}
		case math.Abs(*c.EmulsifierGrams-r.emulsifierGrams.value) > max(2*b.book.scaleStep(), 0.02*r.emulsifierGrams.value):
			b.problem("emulsifier differs", trial.PleaseLook, r.emulsifierGrams.col,
				fmt.Sprintf("%s logged, %s by the emulsifiers' own masses", grams(r.emulsifierGrams.value), grams(*c.EmulsifierGrams)),
				"correct the sum or the masses; the masses are used")
		}
	}
	if r.emulsifier.ok() {
		switch {
		case r.explained && c.EmulsifierPercent != nil:
		case c.EmulsifierPercent == nil:
			c.EmulsifierPercent = b.book.float(r.emulsifier.value)
			if c.EmulsifierGrams == nil && c.BatchGrams != nil {
				c.EmulsifierGrams = b.book.float(r.emulsifier.value / 100 * *c.BatchGrams)
			}
		case math.Abs(*c.EmulsifierPercent-r.emulsifier.value) > max(0.1, 0.03*r.emulsifier.value):
			b.problem("emulsifier percent differs", trial.PleaseLook, r.emulsifier.col,
				fmt.Sprintf("%s %% logged, %s %% by the masses", number(r.emulsifier.value), number(*c.EmulsifierPercent)),
				"correct the percent or the masses; the masses are used")
		}
	}
	b.loggedHLB(c, r)
}

// slack is how far a sum may be from the batch before it is worth a look: one
// percent of it, or two steps of the scale.
func (b *row) slack(batch float64) float64 { return max(0.01*batch, 2*b.book.scaleStep()) }
