package survey

import (
	"fmt"
	"slices"

	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// A percent of emulsifier may well be below 1, so a 0.02 among percents is no sure
// fraction, as it would be of fat: it is read as typed, and asked about.

const (
	farBelow     = 20  // times below the middle of its column, a percent is asked about
	allFractions = 0.1 // percent; a column whose middle is below it may be fractions
)

// fractions finds whether a column of fat percents has bare 0.45 for 45 %.
func (m *surveyor) fractions(f *scheme.Field) {
	below, above := 0, 0
	for n := range m.Rows() {
		c := m.Cell(n, f.Col)
		if !(c.Kind == sheet.Number && c.Number > 0 && scheme.PlainFormat(m.Found.Sheet.Format(c)) || c.Kind == sheet.Text) {
			continue
		}
		if v, ok := scheme.BareNumber(m.Found.Sheet, c); ok && v > 0 && v <= 1 {
			below++
		} else if ok && v > 1 {
			above++
		}
	}
	f.Fractions = below > 0 && f.Want == units.Percent && f.Unit != units.Fraction
	f.Mixed = f.Fractions && above > 0
}

// surveyDoses finds below what a bare percent of emulsifier may be a fraction: far
// below the others, and like them when it is taken a hundredfold.
func (m *surveyor) surveyDoses(f *scheme.Field) {
	var values []float64
	bare := false
	for n := range m.Rows() {
		c := m.Cell(n, f.Col)
		if v, ok := m.Exactly(c, f); ok && v > 0 {
			values = append(values, v)
			_, is := scheme.BareNumber(m.Found.Sheet, c)
			bare = bare || is
		}
	}
	if len(values) == 0 {
		return
	}
	slices.Sort(values)
	middle := values[len(values)/2]
	if middle < allFractions && bare {
		m.say(trial.Check("percent or fraction", m.Heading(f.Col), fmt.Sprintf("%s is read as typed, about %s %%", say.Quoted(f.Header), say.Number(middle)),
			fmt.Sprintf("if these are fractions, type %s for %s, or write \"fraction\" in the header", say.Number(100*middle), say.Number(middle))))
		return
	}
	f.Small = min(middle/farBelow, 1.5*values[len(values)-1]/100)
}
