package settle

import (
	"fmt"
	"math"
	"slices"

	"foamfield/ingest/cellname"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// A column of numbers among amounts that nobody can name may be one of them: a
// cook's "White flakes A". Then the mix is not known until it is named, unless the
// masses show that they are complete without it.

const (
	sumsTo      = 0.01 // share of a batch within which masses add up to it
	roundTo     = 1    // grams off a round total, at the most
	mostWeighed = 1e5  // what no number of grams exceeds
)

// unnamed settles the columns of bare numbers that stand among amounts in grams.
func (m *maker) unnamed() {
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Role != column.None || f.Almost != column.None || len(f.Rivals) > 0 || f.Told || f.Apart != "" || !m.mayBeAmount(f) {
			continue
		}
		name := say.Quoted(f.Header)
		if f.Header == "" {
			name = "this column without a header"
		}
		// Fat and water are often made up to a round total before the emulsifier goes in; and where
		// the same is in every mix, both sums are round.
		dosed := m.EmulsifierColumn > 0 || m.Find(column.BatchMass) != nil
		if dosed && m.completeWith(0) && !m.completeWith(f.Col) {
			f.Doubt = ""
			m.say(trial.Note("unknown column", m.Heading(f.Col), name+" is not understood; the masses add up without it, so it is not counted in the mix",
				"nothing to do, or give it a header that says what it is"))
			f.Role = column.Unused
			continue
		}
		m.openColumn(f, name)
	}
}

// openColumn makes an amount of a column that nobody can name: the mix is not known
// until it is.
func (m *maker) openColumn(f *scheme.Field, name string) {
	f.Role, f.Ingredient = column.IngredientAmount, f.Words
	if f.Ingredient == "" {
		f.Ingredient = f.Header
	}
	if f.Ingredient == "" {
		at := m.Heading(f.Col)
		f.Ingredient = "column " + cellname.Of(0, at.Col)
	}
	f.Want, f.Bare, f.InGrams, f.Kindless, f.Doubt = units.Mass, units.Gram, true, true, ""
	f.What = m.met(f.Ingredient, ingredient.Ingredient{Name: f.Ingredient, Kind: ingredient.Other, From: "not known"})
	read := name + " stands among the amounts, and nobody can tell what it is"
	f.Open = read
	m.say(trial.Fix("unknown column", m.Heading(f.Col), read+": the mix is not known until it is named",
		fmt.Sprintf("add a sheet Ingredients with the header \"Name in the log | What it is\" and the row \"%s | emulsifier\" (or fat, water, thickener, other, its common name); or a sheet Columns with the header \"Header in the log | Meaning | Unit | Basis\" and the row \"%s | ignore\"", f.Ingredient, f.Header)).
		Asking(whatIs("the column "+name, f.Ingredient)))
}

// mayBeAmount reports whether a column of unknown name can be an amount by its unit,
// by where it stands and by what it holds. What is scored, or is one of a few numbers, is weighed by nobody.
func (m *maker) mayBeAmount(f *scheme.Field) bool {
	if f.OutOf > 0 || oneOfNumbers.MatchString(f.Header) {
		return false
	}
	if _, bare := units.Parse(f.Header); bare && f.Unit.Dimension() == units.Mass {
		return m.holdsMasses(f.Col) // grams of nobody says what
	}
	inMass := f.Unit == units.NoUnit || f.Unit.Dimension() == units.Mass
	return inMass && m.amongMasses(f.Col) && m.holdsMasses(f.Col)
}

// oneOfNumbers is a header that says which numbers stand below it: "evening (1 or 2)", "mould (1/2/3)".
var oneOfNumbers = pattern.Of(`(?i)[(\[]\s*\d{1,2}(?:\s*[,/]\s*\d{1,2})*\s*(?:or|oder|ou|o|/)\s*\d{1,2}\s*[)\]]\s*$`)

// amongMasses reports whether a column stands between the columns of grams or right
// beside them.
func (m *maker) amongMasses(col int) bool {
	var masses []int
	for i := range m.Fields {
		if f := &m.Fields[i]; f.IsAmount() && f.InGrams {
			masses = append(masses, f.Col)
		}
	}
	return len(masses) >= 2 && masses[0]-1 <= col && col <= masses[len(masses)-1]+1
}

// holdsMasses reports whether most of what a column holds could have been weighed.
func (m *maker) holdsMasses(col int) bool {
	var masses []float64
	others := 0
	for n := range min(m.Rows(), scheme.LookedAt) {
		c := m.Cell(n, col)
		if c.Kind == sheet.Blank {
			continue
		}
		if v, ok := m.weighable(c); ok {
			masses = append(masses, v)
		} else {
			others++
		}
	}
	return len(masses) >= 2 && len(masses) >= 2*others && !numbersRuns(masses)
}

// weighable is the number of a cell that could be a mass, with its unit or bare.
func (m *maker) weighable(c sheet.Cell) (float64, bool) {
	switch c.Kind {
	case sheet.Date, sheet.Clock, sheet.Bool: // numbers to a spreadsheet only
		return 0, false
	}
	v, ok := massIn(c)
	if !ok {
		v, ok = scheme.BareNumber(m.Found.Sheet, c)
	}
	return v, ok && 0 <= v && v <= mostWeighed
}

// numbersRuns reports 1, 2, 3, 7 …: whole numbers that only rise are those of the runs. Three masses
// may rise by chance, and 20, 25, 30, 35 are a ladder of amounts.
func numbersRuns(values []float64) bool {
	if len(values) <= 3 {
		return false
	}
	step, even := values[1]-values[0], true
	for i, v := range values {
		if v != math.Trunc(v) || i > 0 && v <= values[i-1] {
			return false
		}
		even = even && (i == 0 || v-values[i-1] == step)
	}
	return !even || step == 1
}

// massIn is the mass that a cell gives with its unit: 300 g.
func massIn(c sheet.Cell) (float64, bool) {
	if c.Kind != sheet.Text {
		return 0, false
	}
	r, err := quantity.Parse(c.Text, units.Mass, units.NoUnit)
	v, exact := r.Exact()
	return v, err == nil && exact && r.Unit.Dimension() == units.Mass
}

// completeWith reports whether the masses of nearly all rows, those of one more column counted, are
// all of the mix: they make up the batch that is logged, or else one round total.
func (m *maker) completeWith(col int) bool {
	batch := m.Find(column.BatchMass)
	var sums []float64
	fits := 0
	for n := range min(m.Rows(), scheme.LookedAt) {
		sum, ok := m.SumOf(n, col)
		if !ok {
			continue
		}
		sums = append(sums, sum)
		if batch == nil {
			continue
		}
		if b, ok := m.Exactly(m.Cell(n, batch.Col), batch); ok && math.Abs(sum-b) <= max(sumsTo*b, 0.2) {
			fits++
		}
	}
	if batch == nil {
		fits = atOneRound(sums)
	}
	return len(sums) >= 4 && nearlyAll(fits, len(sums))
}

// atOneRound counts the sums that are one round number of grams, but for what a scale is off.
func atOneRound(sums []float64) (of int) {
	if len(sums) == 0 {
		return 0
	}
	slices.Sort(sums)
	middle := sums[len(sums)/2]
	if math.Abs(middle-10*math.Round(middle/10)) > min(0.002*middle, roundTo) {
		return 0
	}
	for _, s := range sums {
		if math.Abs(s-middle) <= 0.005*middle {
			of++
		}
	}
	return of
}

// massesOfFat decides whether "fat" or "oil" without a unit beside columns of grams
// is grams or percent of the mix, by its numbers.
func (m *maker) massesOfFat() {
	grams := slices.ContainsFunc(m.Fields, func(f scheme.Field) bool {
		return f.Role == column.IngredientAmount && f.InGrams || f.Role == column.BatchMass && f.Unit.Dimension() == units.Mass
	})
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Role != column.FatPercent || f.Unit != units.NoUnit || !grams || f.Told {
			continue
		}
		if !m.largerThan(f.Col, 100) && !m.completeWith(f.Col) {
			m.say(trial.Check("no unit", m.Heading(f.Col), say.Quoted(f.Header)+" has no unit and is read as percent of the mix",
				fmt.Sprintf("write \"%s %%\", or \"%s g\" if it is a mass", f.Header, f.Header)))
			continue
		}
		f.Role, f.Ingredient = column.IngredientAmount, f.Words
		f.Want, f.Bare, f.Basis, f.InGrams = units.Mass, units.Gram, column.NoBasis, true
		m.FatColumn = 0
		m.ingredient(f)
		m.note(f)
		m.say(trial.Check("no unit", m.Heading(f.Col), say.Quoted(f.Header)+" has no unit and is read as grams, as its numbers are",
			fmt.Sprintf("write \"%s g\", or \"%s %%\" if it is a percent", f.Header, f.Header)))
	}
}
