package scheme

import (
	"math"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/pattern"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// PlainFormat reports whether a number format adds nothing to a number that
// changes what it says.
func PlainFormat(code string) bool {
	return code == "" || strings.Trim(code, "0#.,? ") == "" || code == "General"
}

// CellText is a cell as a person would type it, free of the doubt a stored number
// cannot have.
func CellText(s *sheet.Sheet, c sheet.Cell) string {
	if c.Kind == sheet.Number && PlainFormat(s.Format(c)) {
		return say.Exact(c.Number)
	}
	if CountsHours(s, c) {
		return s.Display(c) + " h"
	}
	return strings.TrimSpace(s.Display(c))
}

var hoursAndMinutes = pattern.Of(`(?i)^\[h+\]:m+(?:;|$)`)

// CountsHours reports a time whose format was chosen to count hours and minutes, "[h]:mm": no
// spreadsheet takes it by itself for what is typed. A day and more was typed in minutes.
func CountsHours(s *sheet.Sheet, c sheet.Cell) bool {
	return c.Kind == sheet.Clock && c.Number < 1 && hoursAndMinutes.MatchString(s.Format(c))
}

// BareNumber is a cell's number when it is written without any sign or unit.
func BareNumber(s *sheet.Sheet, c sheet.Cell) (float64, bool) {
	v, err := strconv.ParseFloat(strings.Replace(CellText(s, c), ",", ".", 1), 64)
	return v, err == nil && !math.IsInf(v, 0) && !math.IsNaN(v)
}

// keptTexts bounds how many different texts of a column are remembered.
const keptTexts = 4096

// parsed is what a text gave: a column says the same few things again and again.
type parsed struct {
	quantity.Reading
	err error
}

// Parse reads the text of a cell, as CellText gives it, as its column's kind of
// number; a unit in a column of units beside it belongs to it.
func (s *Scheme) Parse(row int, text string, kind sheet.Kind, f *Field) (quantity.Reading, error) {
	if beside := s.Found.UnitOf(row, f.Col-1); beside != "" {
		if unit, ok := units.Parse(beside); ok {
			return quantity.Parse(text, f.Want, unit)
		}
	}
	return s.ParseText(text, kind, f)
}

var minSec = pattern.Of(`^\s*[~<>≥≤]?\s*\d{1,3}:[0-5]\d\s*$`)

// ParseText reads a text without regard to a unit beside it.
func (s *Scheme) ParseText(text string, kind sheet.Kind, f *Field) (quantity.Reading, error) {
	if f.Seconds && minSec.MatchString(text) {
		return quantity.Parse(text, f.Want, units.Second) // which leaves no doubt that it is no h:mm
	}
	if kind != sheet.Text {
		return quantity.Parse(text, f.Want, f.Bare)
	}
	if p, ok := f.parsed[text]; ok {
		return p.Reading, p.err
	}
	var p parsed
	if s.Comma {
		p.Reading, p.err = quantity.ParseDecimalComma(text, f.Want, f.Bare)
	} else {
		p.Reading, p.err = quantity.Parse(text, f.Want, f.Bare)
	}
	if p.err == nil && p.Other != 0 && f.Near > 0 {
		if v, other := p.Low, p.Other; fromNear(other, f.Near) < fromNear(v, f.Near) {
			p.Low, p.High = other, other
		}
		p.Other, p.Doubt = 0, ""
	}
	if f.parsed == nil {
		f.parsed = map[string]parsed{}
	}
	if len(f.parsed) < keptTexts {
		f.parsed[text] = p
	}
	return p.Reading, p.err
}

// SetNear settles near what a 1,200 of the column is read; what was read before is
// forgotten.
func (f *Field) SetNear(near float64) { f.Near, f.parsed = near, nil }

// Exactly is a cell's number in the base unit of its column, when it is just one.
func (s *Scheme) Exactly(c sheet.Cell, f *Field) (float64, bool) {
	if c.Kind == sheet.Blank || c.Kind == sheet.Fault {
		return 0, false
	}
	r, err := s.ParseText(CellText(s.Found.Sheet, c), c.Kind, f)
	if err != nil || r.Word != quantity.NoWord {
		return 0, false
	}
	return r.Exact()
}

// fromNear is how far a number is from one, by factors.
func fromNear(v, near float64) float64 { return math.Abs(math.Log(max(v, 1e-6) / near)) }

// LookedAt bounds the rows that are looked at to tell what a column is.
const LookedAt = 500

// SumOf is the sum of a row's masses, those of the column with among them, false if one of them is not known.
func (s *Scheme) SumOf(row, with int) (sum float64, ok bool) {
	amounts := 0
	for i := range s.Fields {
		f := &s.Fields[i]
		if !(f.IsAmount() && f.InGrams && f.Open == "") && f.Col != with {
			continue
		}
		if f.Role == column.EmulsifierAmount && s.NamesEmulsifiers {
			continue
		}
		c := s.Cell(row, f.Col)
		if c.Kind == sheet.Blank {
			continue
		}
		v, exact := s.Exactly(c, f)
		if f.Role == column.None {
			v, exact = BareNumber(s.Found.Sheet, c)
		}
		if !exact {
			return 0, false
		}
		sum += v
		amounts++
	}
	return sum, amounts > 1
}
