package ingest

import (
	"fmt"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/trial"
)

// A percent of emulsifier may well be below 1, so a 0.02 among percents is no
// sure fraction, as it would be of fat: it is read as typed, and asked about.

const (
	farBelow     = 20  // times below the middle of its column, a percent is asked about
	allFractions = 0.1 // percent; a column whose middle is below it may be fractions
)

// dosesEmulsifier reports a column of emulsifier in percent.
func (f *field) dosesEmulsifier() bool {
	amount := f.Role == column.EmulsifierAmount || f.Role == column.IngredientAmount && f.what.WeighedAsEmulsifier()
	return amount && f.want == quantity.Percent && f.Unit != quantity.Fraction
}

// surveyDoses finds below what a bare percent of emulsifier may be a fraction:
// far below the others, and like them when it is taken a hundredfold.
func (r *reader) surveyDoses(t *table, f *field) {
	var values []float64
	bare := false
	for n := range t.found.Rows {
		c := t.cell(n, f.col)
		if v, ok := t.exactly(c, f); ok && v > 0 {
			values = append(values, v)
			_, is := bareNumber(t.sheet, c)
			bare = bare || is
		}
	}
	if len(values) == 0 {
		return
	}
	slices.Sort(values)
	middle := values[len(values)/2]
	if middle < allFractions && bare {
		r.problem("percent or fraction", trial.PleaseLook, t.heading(f.col), fmt.Sprintf("%s is read as typed, about %s %%", quoted(f.header), number(middle)),
			fmt.Sprintf("if these are fractions, type %s for %s, or write \"fraction\" in the header", number(100*middle), number(middle)))
		return
	}
	f.small = min(middle/farBelow, 1.5*values[len(values)-1]/100)
}

// askFraction asks about a bare percent of emulsifier that may be a fraction.
func (b *row) askFraction(f *field, k known) {
	if !k.ok() || k.value <= 0 || k.value > f.small {
		return
	}
	if _, bare := bareNumber(b.sheet, b.cellAt(f.col)); !bare {
		return
	}
	b.problem("percent or fraction", trial.PleaseLook, f.col,
		fmt.Sprintf("%s is read as %s %%, far below the others of its column", quoted(b.text(f.col)), number(k.value)),
		fmt.Sprintf("type %s if that is meant, %s%% if not", number(100*k.value), number(k.value)))
}

// fatPercent reads a fat percent of the mix, where 0.45 may be 45 %.
func (b *row) fatPercent(t *trial.Trial, f *field) known {
	if f.want != quantity.Percent {
		b.amount(t, &b.book.recipe, f)
		return known{}
	}
	k, ok := b.single(t, f, 0, 100, "a fat percent")
	r := &b.book.recipe
	if !ok {
		r.noFat, r.badCell = true, f.col
	}
	if k = b.asPercent(f, k); !b.possibleFat(k) {
		r.noFat, r.badCell = true, f.col
		return known{}
	}
	return k
}

// asPercent is a fat percent where the column's bare 0.45 are fractions.
func (b *row) asPercent(f *field, k known) known {
	if !k.ok() || !f.fractions || k.value <= 0 || k.value > 1 {
		return k
	}
	if _, bare := bareNumber(b.sheet, b.cellAt(f.col)); !bare {
		return k
	}
	if f.mixed {
		b.problem("percent or fraction", trial.PleaseLook, f.col,
			fmt.Sprintf("%s is read as %s %%, while other cells of the column say percent", quoted(b.text(f.col)), number(100*k.value)),
			fmt.Sprintf("type %s if that is right, %s%% if not", number(100*k.value), number(k.value)))
	} else {
		b.book.told("fractions", b.at(f.col), fmt.Sprintf("fat is given as fractions: %s is read as %s %%", number(k.value), number(100*k.value)),
			"nothing to do, unless it is less than one percent of fat")
	}
	k.value *= 100
	return k
}
