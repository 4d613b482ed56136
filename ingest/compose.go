package ingest

import (
	"math"
	"slices"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// dose is what one cell says of one ingredient: grams, or a percent of part of
// the mix.
type dose struct {
	name   string // as the header calls it
	what   ingredient.Ingredient
	amount float64 // grams, or percent when basis is not inGrams
	basis  basis
	col    int
}

// basis is what a dose's amount is of.
type basis uint8

const (
	inGrams  basis = iota
	ofMix          // percent of everything in the canister
	ofFat          // percent of the fat ingredients as weighed
	ofWater        // percent of the water-part ingredients, emulsifiers not counted
	ofNobody       // percent, and nothing says of what
)

func (b basis) String() string {
	return [...]string{"g", "% of mix", "% of fat", "% of water", "%"}[b]
}

// known is a number from a cell; a column of 0 = not logged.
type known struct {
	value float64
	col   int
}

func (k known) ok() bool { return k.col > 0 }

// recipe is what a row's cells say of its mix.
type recipe struct {
	doses                []dose
	checks               []dose // percents of ingredients that are weighed as well
	own                  []own  // the row's own values of ingredients
	batch                known  // g
	fat, emulsifier      known  // percent of mix
	emulsifierGrams, hlb known
	waterBlank           bool   // the log has a water column and this row leaves it empty
	blankEmulsifiers     []int  // columns of emulsifiers this row leaves empty
	unreadable           bool   // how much of something could not be read
	noFat, noEmulsifier  bool   // the amount of a fat, of an emulsifier, is not known
	badCell              int    // column of a cell, of fat if there is one, that leaves the fat percent open
	summed               bool   // the masses were held against the batch, or add up to 100 %
	explained            bool   // one cell explains why the masses do not add up: what follows from it is no news
	contradicts          string // why nothing can be built on the masses
}

func (r *recipe) reset() {
	*r = recipe{doses: r.doses[:0], checks: r.checks[:0], own: r.own[:0], blankEmulsifiers: r.blankEmulsifiers[:0]}
}

// sums are the sums of a recipe's doses: grams are fixed, the rest scale with
// the batch, the fat or the water.
type sums struct {
	grams, share           float64 // of everything: fixed grams, and fraction of the mix
	fatGrams, fatShare     float64
	waterGrams, waterShare float64
	ofFat, ofWater         float64 // fraction of the fat, of the water
	fats, waters           int     // how many doses
	weighed, groundless    int     // in grams, in percent without a basis
	fatWithWater           bool    // cream brings its own water
}

func (r *recipe) sums() sums {
	var p sums
	for _, d := range r.doses {
		switch d.basis {
		case inGrams:
			p.grams += d.amount
			p.weighed++
		case ofMix:
			p.share += d.amount / 100
		case ofFat:
			p.ofFat += d.amount / 100
		case ofWater:
			p.ofWater += d.amount / 100
		case ofNobody:
			p.groundless++
			continue
		}
		switch {
		case d.what.Kind == ingredient.Fat:
			p.fats++
			p.fatWithWater = p.fatWithWater || d.what.FatPercent != nil && d.what.FatPercent.Value < 70
			if d.basis == inGrams {
				p.fatGrams += d.amount
			} else if d.basis == ofMix {
				p.fatShare += d.amount / 100
			}
		case d.what.Kind == ingredient.Water:
			p.waters++
			if d.basis == inGrams {
				p.waterGrams += d.amount
			} else if d.basis == ofMix {
				p.waterShare += d.amount / 100
			}
		}
	}
	return p
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
func (r *recipe) total(p sums) whole {
	w := whole{batch: r.batch.value}
	known := r.batch.ok()
	if p.fats == 0 && r.fat.ok() {
		// The fat percent of the mix stands in for the fat ingredients.
		p.fatShare, p.share = r.fat.value/100, p.share+r.fat.value/100
		p.fats++
	}
	complete := p.waters > 0 || p.fatWithWater && !r.waterBlank
	switch {
	case p.fats == 0 || p.groundless > 0 || r.unreadable:
		return w
	case !known && p.weighed == 0:
		w.batch, w.nominal, known = 100, true, true
	case !known && !complete:
		return w
	case !known:
		rest := 1 - p.share - p.ofFat*p.fatShare - p.ofWater*p.waterShare
		if rest <= 0 {
			return w
		}
		w.batch = (p.grams + p.ofFat*p.fatGrams + p.ofWater*p.waterGrams) / rest
	}
	w.fat = p.fatGrams + p.fatShare*w.batch
	if complete && !r.waterBlank {
		w.water = p.waterGrams + p.waterShare*w.batch
	} else {
		rest := w.batch - p.grams - p.share*w.batch - p.ofFat*w.fat
		logged := p.waterGrams + p.waterShare*w.batch
		w.water = (rest + logged) / (1 + p.ofWater)
		w.byDifference = w.water - logged
	}
	w.ok = w.batch > 0
	return w
}

// gramsOf is a dose in grams of a whole.
func (w whole) gramsOf(d dose) float64 {
	switch d.basis {
	case inGrams:
		return d.amount
	case ofMix:
		return d.amount / 100 * w.batch
	case ofFat:
		return d.amount / 100 * w.fat
	case ofWater:
		return d.amount / 100 * w.water
	}
	return math.NaN()
}

// compose works a row's recipe out and says where its cells disagree.
func (b *row) compose(r *recipe) trial.Composition {
	var c trial.Composition
	b.dropDoubles(r)
	b.applyOwn(r)
	for _, d := range r.doses {
		if d.basis == ofNobody {
			r.noFat = r.noFat || isFat(d)
			r.noEmulsifier = r.noEmulsifier || d.what.WeighedAsEmulsifier()
		}
	}
	r.noEmulsifier = r.noEmulsifier || b.table.emulsifierColumn == 0
	if b.table.namesEmulsifiers && !r.noEmulsifier && len(r.doses) > 0 && !slices.ContainsFunc(r.doses, func(d dose) bool { return d.what.WeighedAsEmulsifier() }) {
		b.book.told("emulsifier left empty", b.at(b.table.emulsifierColumn), "no emulsifier is typed, which is read as none", "type 0 to be sure")
		r.blankEmulsifiers = r.blankEmulsifiers[:0]
	}
	if !r.noFat && !slices.ContainsFunc(r.doses, isFat) {
		r.badCell = 0 // no mass of a fat waits for the others
	}
	p := r.sums()
	w := r.total(p)
	b.forgotten(r, p)
	b.explainGroundless(r, p)

	if w.ok && w.byDifference < -b.slack(w.batch) {
		apart, _ := b.notAddedUp(r, w.batch-w.byDifference, w.batch, w.nominal)
		r.batch, r.unreadable, w.ok = known{}, true, false
		if apart {
			return c
		}
	}
	switch {
	case w.ok:
		b.fromWhole(&c, r, w)
		if r.contradicts != "" {
			return trial.Composition{}
		}
		if !r.explained {
			b.checkDoubles(r, w)
		}
	case len(r.doses) > 0:
		b.partOnly(&c, r, p)
	}
	if !r.summed {
		b.askTenfold(r)
	}
	b.fromLogged(&c, r)
	return c
}
