package ingest

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// survey looks down the columns once before any row is read: what a bare 0.45
// or a blank means depends on what else stands in its column.
func (r *reader) survey(t *table) {
	t.firstLook = 1
	t.comma = t.typesCommas()
	t.findPointed()
	var values []float64
	for i := range t.fields {
		f := &t.fields[i]
		switch f.Role {
		case column.Clogged, column.Broke, column.OilLeak, column.Spits, column.FatPercent, column.DrainedAmount, column.Hold:
		default:
			if f.dosesEmulsifier() {
				r.surveyDoses(t, f)
			}
			continue
		}
		yes, no := 0, 0
		below, above := 0, 0
		values = values[:0]
		for n := range t.found.Rows {
			c := t.cell(n, f.col)
			if c.Kind == sheet.Blank {
				continue
			}
			switch f.Role {
			case column.Clogged, column.Broke, column.OilLeak, column.Spits:
				switch a, w, err := r.answer(t.sheet.Display(c)); {
				case err != nil || w != quantity.NoWord:
				case a == quantity.No:
					no++
				case a != quantity.NoAnswer:
					yes++
				}
			case column.FatPercent:
				if c.Kind == sheet.Number && c.Number > 0 && plainFormat(t.sheet.Format(c)) || c.Kind == sheet.Text {
					v, ok := bareNumber(t.sheet, c)
					if ok && v > 0 && v <= 1 {
						below++
					} else if ok && v > 1 {
						above++
					}
				}
			default:
				if v, ok := t.exactly(c, f); ok {
					values = append(values, v)
				} else if f.Role == column.Hold && c.Kind == sheet.Text && !t.typesBreaks {
					t.typesBreaks = slices.ContainsFunc(r.events(c.Text), func(e quantity.Event) bool { return brokeBy(e) == trial.Yes })
				}
			}
		}
		switch f.Role {
		case column.FatPercent:
			f.fractions = below > 0 && f.want == quantity.Percent && f.Unit != quantity.Fraction
			f.mixed = f.fractions && above > 0
		case column.DrainedAmount:
			f.limit = limitOf(values)
		case column.Hold:
			for _, v := range values {
				if v > 0 {
					t.firstLook = math.Min(t.firstLook, v)
				}
			}
		default:
			f.blankIsNo = yes > 0 && no == 0
			if f.blankIsNo {
				r.problem("blank read as no", trial.ForInformation, t.heading(f.col),
					fmt.Sprintf("%s is only ever marked, never denied: an empty cell is read as no", quoted(f.header)),
					"type no where it did not happen, and leave empty what nobody looked at")
			}
		}
	}
}

// commaRows is how many rows are looked at for decimal commas.
const commaRows = 500

// typesCommas reports whether any number in the table is surely typed with a
// decimal comma; then 1.250 is a thousand.
func (t *table) typesCommas() bool {
	for i := range t.fields {
		f := &t.fields[i]
		if f.want == quantity.Any {
			continue
		}
		for n := range min(len(t.found.Rows), commaRows) {
			c := t.cell(n, f.col)
			if c.Kind != sheet.Text || !strings.Contains(c.Text, ",") {
				continue
			}
			if r, err := quantity.Parse(c.Text, f.want, f.unit); err == nil && r.Comma && r.Doubt == "" {
				return true
			}
		}
	}
	return false
}

// findPointed notes the columns in which a decimal comma would be the odd one.
func (t *table) findPointed() {
	for i := range t.fields {
		f := &t.fields[i]
		for n := 0; n < min(len(t.found.Rows), commaRows) && !f.pointed; n++ {
			c := t.cell(n, f.col)
			f.pointed = c.Kind == sheet.Number && c.Number != math.Trunc(c.Number)
		}
	}
}

// parse reads a cell's text as its column's kind of number.
func (t *table) parse(c sheet.Cell, f *field) (quantity.Reading, error) {
	text := cellText(t.sheet, c)
	if c.Kind != sheet.Text {
		return quantity.Parse(text, f.want, f.unit)
	}
	if p, ok := f.parsed[text]; ok {
		return p.Reading, p.err
	}
	var p parsed
	if t.comma {
		p.Reading, p.err = quantity.ParseDecimalComma(text, f.want, f.unit)
	} else {
		p.Reading, p.err = quantity.Parse(text, f.want, f.unit)
	}
	if f.parsed == nil {
		f.parsed = map[string]parsed{}
	}
	if len(f.parsed) < keptSets {
		f.parsed[text] = p
	}
	return p.Reading, p.err
}

// parsed is what a text gave: a column says the same few things again and again.
type parsed struct {
	quantity.Reading
	err error
}

// exactly is a cell's number in the base unit of its column, when it is just
// one.
func (t *table) exactly(c sheet.Cell, f *field) (float64, bool) {
	if c.Kind == sheet.Blank || c.Kind == sheet.Fault {
		return 0, false
	}
	r, err := t.parse(c, f)
	if err != nil || r.Word != quantity.NoWord {
		return 0, false
	}
	return r.Exact()
}
