// Package compose works out what is in a mix: from what a row's cells say of it,
// to fat percent, emulsifier percent, blend HLB and batch, with what the cells
// disagree on.
package compose

import (
	"slices"

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

// groundless is a percent of what nobody can tell or of what no recipe adds up to.
func (d *Dose) groundless() bool {
	return !d.InGrams && d.Basis != column.OfMix && d.Basis != column.OfFat && d.Basis != column.OfWater
}

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
}

func (o *Open) mayBeFat() bool {
	return o.Kindless || o.What.Kind == ingredient.Fat || o.What.NeedsFatPercent()
}

func (o *Open) mayBeEmulsifier() bool { return o.Kindless || o.What.WeighedAsEmulsifier() }

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
	EmulsifierPart  Known // percent of EmulsifierBasis
	EmulsifierBasis column.Basis
	HLB             Known
	Blank           []int // columns of amounts this row leaves empty
	BadCell         int   // column of a cell, of fat if there is one, that leaves the fat percent open
	FatOpen         bool  // the fat percent of the mix is logged and cannot be used
}

func (r *Recipe) hasFat() bool {
	return slices.ContainsFunc(r.Doses, func(d Dose) bool { return d.isFat() })
}

func (r *Recipe) hasEmulsifier() bool {
	return slices.ContainsFunc(r.Doses, func(d Dose) bool { return d.isEmulsifier() })
}
