package ingest

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/layout"
	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// field is a column of a table and how its cells are to be read.
type field struct {
	column.Meaning
	col        int    // 1 + its place among the table's heads
	header     string // as typed
	want       quantity.Dimension
	unit       quantity.Unit // of a bare number
	raw        string        // key of Trial.Raw
	extra      string        // key of Trial.Extras, "" = none
	gramsPerML float64       // declared density, 0 = none

	basis basis                 // of an ingredient's dose
	what  ingredient.Ingredient // the ingredient

	limit     limit   // of a drainage column
	small     float64 // a bare percent of emulsifier below this may be a fraction; 0 = none
	fractions bool    // its bare numbers are fractions: 0.45 is 45 %
	mixed     bool    // it has both 0.45 and 45
	pointed   bool    // it has numbers of the spreadsheet's own with decimals
	blankIsNo bool    // nothing but yes is ever typed in it
	told      bool    // the kitchen itself says what it is
	result    bool    // and that it is measured on the foam
	parsed    map[string]parsed
}

// table is a log table with its columns understood. Its columns are numbered
// from 1 in the order of its heads; a column of 0 is none.
type table struct {
	file   string
	name   string // of the sheet, as places give it
	sheet  *sheet.Sheet
	found  *layout.Table
	fields []field

	namesEmulsifiers bool // emulsifiers have columns of their own
	emulsifierColumn int  // of one of them, or of all together
	fatColumn        int
	sampleColumn     int
	waterColumn      int
	firstLook        float64 // minutes; a hold of 0 ended before it
	outColumn        int     // says whether it came out
	typesBreaks      bool    // "split" is typed in place of a hold
	outcomes         bool    // some column says what happened
	comma            bool    // numbers are typed with a decimal comma
	usuals           map[int]usual
}

// at is where the cell of a row and column stands; a column of 0 is the row.
func (t *table) at(row, col int) trial.Place {
	r, c := t.found.PlaceOf(row, max(col-1, 0))
	switch {
	case col > 0:
	case t.found.Transposed:
		r = 0
	default:
		c = 0
	}
	return trial.Place{File: t.file, Sheet: t.name, Row: r, Col: c}
}

// heading is where a column's header stands.
func (t *table) heading(col int) trial.Place {
	h := &t.found.Heads[col-1]
	return trial.Place{File: t.file, Sheet: t.name, Row: h.Row, Col: h.Col}
}

// cell is the cell of a row and column, taken from above where the log says so.
func (t *table) cell(row, col int) sheet.Cell {
	c, _ := t.found.Cell(row, col-1)
	return c
}

// extras gives the roles that become variables their name and unit.
var extras = map[column.Role]trial.Variable{
	column.Chargers:    {Name: "chargers", Label: "chargers"},
	column.Shakes:      {Name: "shakes", Label: "shakes"},
	column.Rest:        {Name: "rest_minutes", Label: "rest", Unit: "min"},
	column.HotHold:     {Name: "warm_minutes", Label: "time kept warm", Unit: "min"},
	column.Temperature: {Name: "temperature_c", Label: "temperature", Unit: "°C"},
	column.Fill:        {Name: "fill_grams", Label: "fill", Unit: "g"},
	column.Overrun:     {Name: "overrun_percent", Label: "overrun", Unit: "%", Result: true},
	column.Score:       {Name: "score", Label: "score", Result: true},
	column.Mouthfeel:   {Name: "mouthfeel", Label: "mouthfeel", Result: true},
	column.Spread:      {Name: "spread_mm", Label: "spread", Unit: "mm", Result: true},
	column.Shear:       {Name: "shear_minutes", Label: "whisking or blending", Unit: "min"},
}

// wants is the dimension a role's cells are read as, and the unit of a bare
// number when the header gives none.
func wants(m column.Meaning) (quantity.Dimension, quantity.Unit) {
	if m.Unit != quantity.NoUnit {
		d := m.Unit.Dimension()
		if m.Role == column.Chargers {
			return quantity.Chargers, m.Unit
		}
		return d, m.Unit
	}
	switch m.Role {
	case column.Hold, column.HoldOver, column.GoneBy, column.Rest, column.HotHold, column.DrainedAt, column.ReadingMinute, column.Shear:
		return quantity.Minutes, quantity.Minute
	case column.BatchMass, column.SampleMass, column.CupLiquid, column.CupFoam, column.DispensedMass, column.LeftInside:
		return quantity.Mass, quantity.Gram
	case column.FatPercent, column.IngredientFat, column.Overrun:
		return quantity.Percent, quantity.PercentUnit
	case column.BlendHLB, column.IngredientHLB:
		return quantity.Plain, quantity.NoUnit
	case column.Temperature:
		return quantity.Temperature, quantity.Celsius
	case column.Chargers:
		return quantity.Chargers, quantity.Charger
	case column.Score, column.Mouthfeel:
		return quantity.Score, quantity.NoUnit
	case column.Spread:
		return quantity.Length, quantity.Millimetre
	case column.Shakes:
		return quantity.Count, quantity.NoUnit
	}
	return quantity.Any, quantity.NoUnit
}

// plan understands the columns of a table.
func (r *reader) plan(t *table) {
	rivals := r.settleRivals(t)
	for i := range t.found.Heads {
		h := &t.found.Heads[i]
		f := field{Meaning: h.Meaning, col: i + 1, header: h.Text}
		switch rivals[i] {
		case speaksForAll:
			f.Meaning = h.Meaning.WithoutRivals()
		case sameAgain:
			f.Meaning = column.Meaning{Role: column.Unused, Words: h.Meaning.Words}
		}
		r.kitchen.declare(&f)
		if f.Unit == quantity.NoUnit {
			f.Unit, _ = quantity.ParseUnit(h.Unit)
		}
		if f.Role == column.None && f.header == "" && f.Doubt == "" {
			continue
		}
		f.want, f.unit = wants(f.Meaning)
		t.fields = append(t.fields, f)
	}
	grams := false
	for i := range t.fields {
		f := &t.fields[i]
		if f.Role == column.IngredientAmount || f.Role == column.BatchMass {
			grams = grams || f.Unit.Dimension() == quantity.Mass
		}
		if f.Role == column.SampleMass {
			t.sampleColumn = f.col
		}
	}
	for i := range t.fields {
		f := &t.fields[i]
		r.settle(t, f, grams)
	}
	for i := range t.fields {
		r.record(t, &t.fields[i])
	}
}

// settle decides what a column's role leaves open: the ingredient, the basis of
// a percent, the unit where the header gives none.
func (r *reader) settle(t *table, f *field, grams bool) {
	at := t.heading(f.col)
	switch f.Role {
	case column.IngredientAmount, column.FatPercent, column.EmulsifierAmount:
		if f.Unit == quantity.NoUnit && f.Role != column.FatPercent {
			f.want, f.unit = quantity.Mass, quantity.Gram
			r.problem("no unit", trial.PleaseLook, at, quoted(f.header)+" has no unit and is read as grams",
				fmt.Sprintf("write \"%s g\", or \"%s %% of mix\" if it is a percent", f.header, f.header))
		}
		if f.Role == column.FatPercent && f.Unit == quantity.NoUnit && grams {
			r.problem("no unit", trial.PleaseLook, at, quoted(f.header)+" has no unit and is read as percent of the mix",
				fmt.Sprintf("write \"%s %%\", or \"%s g\" if it is a mass", f.header, f.header))
		}
		r.dose(t, f)
	case column.DrainedAmount, column.OilAmount:
		r.drainUnit(t, f)
	case column.Hold, column.HoldOver, column.GoneBy:
		if f.Unit == quantity.NoUnit {
			r.problem("no unit", trial.ForInformation, at, quoted(f.header)+" has no unit and is read as minutes",
				fmt.Sprintf("write \"%s min\" to be sure", f.header))
		}
		f.raw = "hold_minutes"
	case column.CanisterID:
		r.label(f, "canister no")
	case column.ChargerLot:
		r.label(f, "charger lot")
	case column.IngredientLot:
		r.label(f, strings.ToLower(f.Words))
	}
	if f.Role == column.CameOut || f.Role == column.Clogged && t.outColumn == 0 {
		t.outColumn = f.col
	}
	switch f.Role {
	case column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.OilAmount, column.CameOut, column.Clogged, column.Broke,
		column.OilLeak, column.Result:
		t.outcomes = true
	}
	if f.Role == column.Declared {
		r.extra(trial.Variable{Name: f.extra, Label: f.Words, Unit: f.Unit.String(), Result: f.result})
		return
	}
	if f.Role == column.Overrun && !r.overrunAsLogged(t, f) {
		return
	}
	if v, ok := extras[f.Role]; ok && f.want != quantity.Any {
		if f.Role == column.Fill && f.want != quantity.Mass {
			v.Name, v.Unit = "fill_percent", "%"
			if f.want != quantity.Percent {
				return
			}
		}
		if slices.ContainsFunc(t.fields, func(o field) bool { return o.extra == v.Name && o.col != f.col }) {
			// "mix temp" beside "serving temp": the second goes by its own words.
			v.Name, v.Label = VariableName(f.Words), f.Words
		}
		if v.Result && f.Words != "" && f.want == quantity.Score {
			v.Label, v.OutOf = strings.ToLower(f.Words), int(f.OutOf) // the kitchen's own word: taste, firmness
		}
		f.extra = v.Name
		r.extra(v)
	}
}

// dose finds the ingredient of an amount column and the basis of its numbers.
func (r *reader) dose(t *table, f *field) {
	switch f.want {
	case quantity.Mass:
		f.basis = inGrams
	case quantity.Percent:
		switch f.Basis {
		case column.OfMix:
			f.basis = ofMix
		case column.OfFat:
			f.basis = ofFat
		case column.OfWater:
			f.basis = ofWater
		default:
			f.basis = ofNobody
		}
	}
	switch f.Role {
	case column.FatPercent:
		t.fatColumn = f.col
		f.what = fatAsLogged
		if f.want == quantity.Percent {
			f.basis = ofMix
		}
	case column.EmulsifierAmount:
		f.what = totalEmulsifier
		t.emulsifierColumn = f.col
	case column.IngredientAmount:
		f.what = r.ingredient(t, f)
		switch {
		case f.what.WeighedAsEmulsifier():
			t.namesEmulsifiers = true
			t.emulsifierColumn = f.col
		case f.what.Kind == ingredient.Fat:
			t.fatColumn = f.col
		case f.what.Kind == ingredient.Water:
			t.waterColumn = f.col
		}
		if f.basis == ofNobody && (f.what.Kind == ingredient.Fat || f.what.Kind == ingredient.Water) {
			f.basis = ofMix // a fat or water part is a percent of nothing else
		}
	}
}

// label keeps a column of labels under a name.
func (r *reader) label(f *field, name string) {
	f.raw = name
	if !slices.Contains(r.log.Labels, name) {
		r.log.Labels = append(r.log.Labels, name)
	}
}

// drainUnit decides what a bare number of a drainage column is.
func (r *reader) drainUnit(t *table, f *field) {
	f.raw = "drained_percent"
	if f.Role == column.OilAmount {
		f.raw = "oil"
	}
	if f.Unit != quantity.NoUnit {
		return
	}
	at := t.heading(f.col)
	if t.sampleColumn > 0 {
		f.want, f.unit = quantity.Mass, quantity.Gram
		r.problem("no unit", trial.PleaseLook, at, quoted(f.header)+" has no unit and is read as grams of the sample",
			fmt.Sprintf("write \"%s g\" or \"%s %%\"", f.header, f.header))
		return
	}
	f.want, f.unit = quantity.Percent, quantity.PercentUnit
	r.problem("no unit", trial.PleaseLook, at, quoted(f.header)+" has no unit and is read as percent of the foam",
		fmt.Sprintf("write \"%s %%\", or \"%s g\" and a column \"Sample g\" with the grams of foam set to drain", f.header, f.header))
}

// record lists what a column was read as.
func (r *reader) record(t *table, f *field) {
	c := trial.Column{At: t.heading(f.col), Header: f.header, ReadAs: f.Role.String(), Unit: f.unit.String()}
	at := c.At
	switch {
	case f.Role == column.None:
		c.ReadAs = ""
		if f.Doubt == "" {
			r.problem("unknown column", trial.PleaseLook, at, quoted(f.header)+" is not understood and not used",
				"change the header, or say what it is in a sheet Columns with the header \"Header in the log | Meaning | Unit | Basis\"")
		}
	case f.Role == column.IngredientAmount:
		c.ReadAs = f.what.Name
		if f.basis != inGrams {
			c.Unit = f.basis.String()
		}
	case f.AtMinute > 0:
		c.ReadAs = fmt.Sprintf("%s at %s min", c.ReadAs, number(f.AtMinute))
	}
	r.log.Columns = append(r.log.Columns, c)
	switch {
	case len(f.Rivals) > 0: // said once for all of them
	case f.Doubt != "":
		severity := trial.PleaseLook
		if f.Role == column.None {
			severity = trial.MustFix
		}
		r.problem("header in doubt", severity, at, quoted(f.header), f.Doubt)
	case f.Fuzzy:
		r.problem("header read as", trial.ForInformation, at, fmt.Sprintf("%s is read as %s", quoted(f.header), c.ReadAs),
			"change the header if that is wrong")
	}
}
