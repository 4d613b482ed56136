// Package compose works out what is in a mix: from what a row's cells say of it,
// to fat percent, emulsifier percent, blend HLB and batch, with what the cells
// disagree on.
package compose

import (
	"math"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
)

// Dose is what one cell says of one ingredient: grams, or a percent of part of the
// mix.
type Dose struct {
	Name     string                 // as the header calls it
	What     *ingredient.Ingredient // shared: nobody writes to it
	Amount   float64                // grams, or percent of Basis
	InGrams  bool
	Basis    column.Basis
	Kindless bool // nobody can tell what it is
	Col      int
}

func (d *Dose) isFat() bool        { return d.What.Kind == ingredient.Fat }
func (d *Dose) isEmulsifier() bool { return d.What.WeighedAsEmulsifier() }

// basis is how a message names what a dose is of.
func (d *Dose) basis() string {
	if d.InGrams {
		return "g"
	}
	if b := d.Basis.String(); b != "" {
		return "% " + b
	}
	return "%"
}

// Open is an amount that nobody can know: of something, or of what nobody can name.
type Open struct {
	What     *ingredient.Ingredient
	Kindless bool
	Col      int
}

// Known is a number from a cell; a column of 0 = not logged.
type Known struct {
	Value float64
	Col   int
}

// OK reports a number that was logged.
func (k Known) OK() bool { return k.Col > 0 }

// Own is a value a row gives for an ingredient of its own: the fat percent of
// today's cream, the HLB of this bag.
type Own struct {
	Name  string // of the ingredient in the table
	IsHLB bool
	Value float64
}

// Recipe is what a row's cells say of its mix.
type Recipe struct {
	Row             int // of the table
	Doses           []Dose
	Open            []Open
	Own             []Own
	Batch           Known // g
	Fat, Emulsifier Known // percent of mix
	EmulsifierGrams Known
	HLB             Known
	Blank           []int // columns of amounts this row leaves empty
	BadCell         int   // column of a cell, of fat if there is one, that leaves the fat percent open
	FatOpen         bool  // the fat percent of the mix is logged and cannot be used
}

// sums are the sums of a recipe's doses: grams are fixed, the rest scale with the
// batch, the fat or the water.
type sums struct {
	grams, share           float64 // of everything: fixed grams, and fraction of the mix
	fatGrams, fatShare     float64
	waterGrams, waterShare float64
	ofFat, ofWater         float64 // fraction of the fat, of the water
	fats, waters, kindless int     // how many doses
	weighed, groundless    int     // in grams, in percent without a basis
	fatWithWater           bool    // cream brings its own water
}

func sum(doses []Dose) sums {
	var p sums
	for i := range doses {
		d := &doses[i]
		part := d.Amount / 100
		switch {
		case d.InGrams:
			p.grams += d.Amount
			p.weighed++
		case d.Basis == column.OfMix:
			p.share += part
		case d.Basis == column.OfFat:
			p.ofFat += part
		case d.Basis == column.OfWater:
			p.ofWater += part
		default:
			p.groundless++
			continue
		}
		if d.Kindless && d.Amount > 0 {
			p.kindless++
		}
		switch d.What.Kind {
		case ingredient.Fat:
			p.fats++
			p.fatWithWater = p.fatWithWater || d.What.FatPercent != nil && d.What.FatPercent.Value < 70
			if d.InGrams {
				p.fatGrams += d.Amount
			} else if d.Basis == column.OfMix {
				p.fatShare += part
			}
		case ingredient.Water:
			p.waters++
			if d.InGrams {
				p.waterGrams += d.Amount
			} else if d.Basis == column.OfMix {
				p.waterShare += part
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
func total(r *Recipe, p sums, waterBlank bool) whole {
	w := whole{batch: r.Batch.Value}
	known := r.Batch.OK()
	if p.fats == 0 && r.Fat.OK() {
		// The fat percent of the mix stands in for the fat ingredients.
		p.fatShare, p.share = r.Fat.Value/100, p.share+r.Fat.Value/100
		p.fats++
	}
	complete := p.waters > 0 || p.kindless > 0 && p.fats > 0 || p.fatWithWater && !waterBlank
	switch {
	case p.fats == 0 && (p.kindless == 0 || p.waters == 0) || p.groundless > 0 || len(r.Open) > 0 || r.FatOpen && p.fats == 0:
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
	if complete && !waterBlank {
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
