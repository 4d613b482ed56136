package compose

import (
	"math"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
)

// sums are the sums of a recipe's doses.
type sums struct {
	all, fat, water portion
	ofFat, ofWater  float64 // fraction of the fat, of the water
	kindless        int     // how many doses
	weighed         int     // in grams
	groundless      int     // in percent of what nobody can tell
	fatWithWater    bool    // cream brings its own water
}

// portion is a part of a mix, known before the mix is: fixed grams, and a fraction
// that scales with the batch.
type portion struct {
	grams, share float64
	doses        int
}

func (p *portion) add(d *Dose) {
	switch {
	case d.InGrams:
		p.grams += d.Amount
	case d.Basis == column.OfMix:
		p.share += d.Amount / 100
	}
	p.doses++
}

// of is what a portion weighs in a batch.
func (p portion) of(batch float64) float64 { return p.grams + p.share*batch }

func sum(doses []Dose) sums {
	var p sums
	for i := range doses {
		d := &doses[i]
		if d.groundless() {
			p.groundless++
			continue
		}
		p.all.add(d)
		switch {
		case d.InGrams:
			p.weighed++
		case d.Basis == column.OfFat:
			p.ofFat += d.Amount / 100
		case d.Basis == column.OfWater:
			p.ofWater += d.Amount / 100
		}
		if d.Kindless && d.Amount > 0 {
			p.kindless++
		}
		switch d.What.Kind {
		case ingredient.Fat:
			p.fat.add(d)
			p.fatWithWater = p.fatWithWater || d.What.FatPercent != nil && d.What.FatPercent.Value < 70
		case ingredient.Water:
			p.water.add(d)
		}
	}
	return p
}

// standIn has the fat percent of the mix stand in for the fat ingredients.
func (p *sums) standIn(percent float64) {
	p.fat.share = percent / 100
	p.all.share += percent / 100
	p.fat.doses++
}

// allLogged reports that no water is left to be found by difference.
func (p *sums) allLogged(waterBlank bool) bool {
	return p.water.doses > 0 || p.kindless > 0 && p.fat.doses > 0 || p.fatWithWater && !waterBlank
}

// batch is the total of which the weighed doses are what the shares leave; 0 where
// they leave nothing.
func (p *sums) batch() float64 {
	left := 1 - p.all.share - p.ofFat*p.fat.share - p.ofWater*p.water.share
	if left <= 0 {
		return 0
	}
	return (p.all.grams + p.ofFat*p.fat.grams + p.ofWater*p.water.grams) / left
}

// isOpen reports a dose that nobody can know in grams.
func (r *Recipe) isOpen(p sums) bool { return len(r.Open) > 0 || p.groundless > 0 }

// lacksFat reports that nothing says how much fat there is; of a mix with water, an
// ingredient that nobody can name may be it.
func (r *Recipe) lacksFat(p sums) bool {
	return p.fat.doses == 0 && (r.FatOpen || p.kindless == 0 || p.water.doses == 0)
}

// fatInPercent reports that the fat needs no batch to be known: the log gives its
// percent, or that of every fat ingredient.
func (r *Recipe) fatInPercent(p sums) bool {
	if p.fat.doses == 0 {
		return r.Fat.OK()
	}
	return p.fat.grams == 0
}

// batchSaid takes the batch that a line beside the table says, where something was weighed and
// the masses do not make a whole by themselves.
func (w *work) batchSaid(p sums) {
	r := w.r
	percents := p.all.share > 0 || p.ofFat > 0 || p.ofWater > 0 || p.fat.doses == 0 && r.Fat.OK()
	col := r.EmulsifierGrams.Col
	for i := range r.Doses {
		if d := &r.Doses[i]; d.InGrams && d.Col > 0 {
			col = d.Col
		}
	}
	if w.s.BatchGrams == 0 || r.Batch.OK() || col == 0 || !percents && p.allLogged(w.waterBlank) {
		return
	}
	r.Batch, w.beside = Known{w.s.BatchGrams, col}, true
	w.say(trial.Note("said beside the table", w.s.BatchSaid, "every mix is taken as "+say.Grams(r.Batch.Value)+", as this line says",
		"nothing to do; a column \"Batch g\" wins over it").OnceOf("batch"))
}

// whole is a mix worked out to its total.
type whole struct {
	batch, fat, water float64 // fat and water: ingredients as weighed
	byDifference      float64 // water that no column gives
	nominal           bool    // nothing is in grams: batch is 100 and only shares mean something
	ok                bool
}

// total works the parts out to a whole. With B the batch, F the fat and W the
// water ingredients, everything adds up to
//
//	B = grams + share·B + ofFat·F + ofWater·W (+ W when no column gives it)
//
// which has one unknown: B when all parts are logged, else W.
func total(r *Recipe, p sums, waterBlank bool) whole {
	if p.fat.doses == 0 && r.Fat.OK() {
		p.standIn(r.Fat.Value)
	}
	if r.isOpen(p) || r.lacksFat(p) {
		return whole{}
	}
	w := whole{batch: r.Batch.Value}
	complete := p.allLogged(waterBlank)
	switch {
	case r.Batch.OK():
	case p.weighed == 0:
		w.batch, w.nominal = 100, true
	case complete:
		w.batch = p.batch()
	default:
		return whole{}
	}
	w.fat = p.fat.of(w.batch)
	logged := p.water.of(w.batch)
	if complete && !waterBlank {
		w.water = logged
	} else {
		rest := w.batch - p.all.grams - p.all.share*w.batch - p.ofFat*w.fat
		w.water = (rest + logged) / (1 + p.ofWater)
		w.byDifference = w.water - logged
	}
	w.ok = w.batch > 0
	return w
}

// gramsOf is a dose in grams of a whole.
func (w whole) gramsOf(d *Dose) float64 {
	switch {
	case d.InGrams:
		return d.Amount
	case d.Basis == column.OfMix:
		return d.Amount / 100 * w.batch
	case d.Basis == column.OfFat:
		return d.Amount / 100 * w.fat
	case d.Basis == column.OfWater:
		return d.Amount / 100 * w.water
	}
	return math.NaN()
}
