package settle

import (
	"fmt"
	"math"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Of what a percent is may stand in the name of an ingredient, "% of the cocoa butter", or in
// all numbers together: what adds up to 100 in every row is all of the mix.

// basis settles of what the percents of amounts are, where their own headers leave it open.
func (m *maker) basis() {
	var open []*scheme.Field
	for i := range m.Fields {
		f := &m.Fields[i]
		if !f.IsAmount() || f.Open != "" || f.Want != units.Percent {
			continue
		}
		if f.BasisName != "" {
			m.ofNamed(f)
		} else if f.Basis == column.NoBasis && f.What.WeighedAsEmulsifier() {
			open = append(open, f)
		}
	}
	if len(open) == 0 {
		return
	}
	b, said := column.OfMix, "all amounts of a row add up to 100 % with it"
	if !m.sumsToHundred() {
		if b, said = m.basisByWhole(open); b == column.NoBasis {
			return
		}
	}
	for _, f := range open {
		f.Basis = b
		m.say(trial.Note("percent of what", m.Heading(f.Col), say.Quoted(f.Header)+" is read as percent "+b.String()+", as "+said,
			"nothing to do; a header that says it is surer"))
	}
}

// ofNamed holds the ingredient that a percent is of against the others: where it is the only
// fat, or the only water part, the percent is of that part.
func (m *maker) ofNamed(f *scheme.Field) {
	of, known := ingredient.Lookup(f.BasisName)
	for i := range m.Fields {
		o := &m.Fields[i]
		if o.Role != column.IngredientAmount || o.What.Kind != of.Kind || say.Fold(o.Called()) == say.Fold(f.BasisName) || known && o.What.Name == of.Name {
			continue
		}
		m.asks[f.Col] = &trial.Question{Asked: "Of what is " + say.Quoted(f.Header) + " a percent?", Choices: []string{"of mix", "of fat", "of water"}, Blocks: true,
			Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, "", "", trial.Open}}}
		f.Open = say.Quoted(f.Header) + " is a percent of " + f.BasisName + ", beside which there is " + o.Called()
		f.Doubt = f.Open
		return
	}
}

// percents are the amounts of a row that are in percent of the mix, or of nobody says what;
// ok is false where an amount is of something else or cannot be read.
func (m *maker) percents(row int) (sum float64, of int, ok bool) {
	for i := range m.Fields {
		f := &m.Fields[i]
		if !f.IsAmount() || f.Role == column.EmulsifierAmount && m.NamesEmulsifiers {
			continue
		}
		c := m.Cell(row, f.Col)
		if c.Kind == sheet.Blank {
			continue
		}
		v, exact := m.Exactly(c, f)
		if !exact || f.Want != units.Percent || f.Open != "" || f.Basis != column.OfMix && f.Basis != column.NoBasis {
			return 0, 0, false
		}
		sum += v
		of++
	}
	return sum, of, of > 2
}

// sumsToHundred reports whether all amounts of nearly every row are percents that add up to
// 100, as only percents of one whole do.
func (m *maker) sumsToHundred() bool {
	fits, rows := 0, 0
	for n := range min(m.Rows(), scheme.LookedAt) {
		if sum, _, ok := m.percents(n); ok {
			if rows++; math.Abs(sum-100) <= 0.11 {
				fits++
			}
		}
	}
	return rows >= 4 && nearlyAll(fits, rows)
}

// bases are what a percent of emulsifier can be of.
var bases = [...]column.Basis{column.OfMix, column.OfFat, column.OfWater}

// basisByWhole finds the one part of which the percents must be so that all that was weighed
// makes up the batch that is logged.
func (m *maker) basisByWhole(open []*scheme.Field) (found column.Basis, said string) {
	batch := m.Find(column.BatchMass)
	if batch == nil || batch.Want != units.Mass {
		return column.NoBasis, ""
	}
	var fits [len(bases)]int
	rows := 0
	for n := range min(m.Rows(), scheme.LookedAt) {
		whole, ok := m.Exactly(m.Cell(n, batch.Col), batch)
		fat, water, other, weighed := m.weighed(n)
		percent, some := 0.0, false
		for _, f := range open {
			v, exact := m.Exactly(m.Cell(n, f.Col), f)
			percent, some = percent+v, some || exact && v > 0
		}
		if !ok || !weighed || !some {
			continue
		}
		rows++
		for i, of := range [...]float64{whole, fat, water} {
			if math.Abs(fat+water+other+percent/100*of-whole) <= max(0.15, 0.0005*whole) {
				fits[i]++
			}
		}
	}
	if rows < 4 {
		return column.NoBasis, ""
	}
	for i, n := range fits {
		switch {
		case !nearlyAll(n, rows) && 2*n > rows: // nearly as good
			return column.NoBasis, ""
		case !nearlyAll(n, rows):
		case found != column.NoBasis:
			return column.NoBasis, ""
		default:
			found, said = bases[i], fmt.Sprintf("the grams make up %s with it", say.Quoted(strings.TrimSpace(batch.Header)))
		}
	}
	return found, said
}

// weighed is what a row has in grams: of fats, of water parts, of the rest.
func (m *maker) weighed(row int) (fat, water, other float64, ok bool) {
	for i := range m.Fields {
		f := &m.Fields[i]
		if !f.IsAmount() || !f.InGrams {
			continue
		}
		c := m.Cell(row, f.Col)
		if c.Kind == sheet.Blank {
			continue
		}
		v, exact := m.Exactly(c, f)
		if !exact || f.Kindless || f.Open != "" {
			return 0, 0, 0, false
		}
		switch f.What.Kind {
		case ingredient.Fat:
			fat += v
		case ingredient.Water:
			water += v
		default:
			other += v
		}
	}
	return fat, water, other, fat > 0 && water > 0
}
