package survey

import (
	"math"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

const usualOf = 5 // values

// usualRows bounds the rows that tell where the values of a column lie: of more,
// every second or third does.
const usualRows = 5000

// learn works out where the values of every column of numbers lie.
func (m *surveyor) learn() {
	m.Usual = map[int]scheme.Usual{}
	var values []float64
	every := 1 + m.Rows()/usualRows
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Want == units.Any {
			continue
		}
		values = values[:0]
		looked := 0
		for n := 0; n < m.Rows(); n += every {
			looked++
			if v, ok := m.Exactly(m.Cell(n, f.Col), f); ok && v > 0 {
				values = append(values, v)
			}
		}
		if n := len(values); n >= usualOf {
			slices.Sort(values)
			m.Usual[f.Col] = scheme.Usual{Low: values[n/12], High: values[n-1-n/12], Known: true, Filled: float64(n) / float64(looked)}
		}
	}
}

// survey looks down the columns once before any row is read: what a bare 0.45, a
// 1,200 or a blank means depends on what else stands in its column.
func (m *surveyor) survey() {
	m.FirstLook = 1
	m.colours()
	m.Comma = m.typesCommas()
	for i := range m.Fields {
		m.thousands(&m.Fields[i])
	}
	m.learn()
	for i := range m.Fields {
		f := &m.Fields[i]
		f.Pointed = m.pointed(f)
		switch f.Role {
		case column.Clogged, column.Broke, column.OilLeak, column.Spits, column.CameOut:
			m.settleReplies(f)
		case column.FatPercent:
			m.fractions(f)
		case column.DrainedAmount:
			f.Limit = limitOf(m.valuesOf(f))
		case column.Result:
			m.letters(f)
			m.TypesBreaks = m.TypesBreaks || m.Find(column.Broke) == nil && m.tellsBreaks(f)
		case column.Hold:
			m.surveyHolds(f)
		default:
			if f.DosesEmulsifier() {
				m.surveyDoses(f)
			}
		}
	}
}

// commaRows is how many rows are looked at for decimal commas.
const commaRows = 500

// typesCommas reports whether the numbers of the table are typed with a decimal
// comma; then 1.250 is a thousand. One stray comma among points is no habit.
func (m *surveyor) typesCommas() bool {
	commas, points := 0, 0
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Want == units.Any {
			continue
		}
		for n := range min(m.Rows(), commaRows) {
			switch c := m.Cell(n, f.Col); {
			case c.Kind == sheet.Number && c.Number != math.Trunc(c.Number):
				points++
			case c.Kind != sheet.Text:
			case strings.Contains(c.Text, ","):
				if r, err := quantity.Parse(c.Text, f.Want, f.Bare); err == nil && r.Comma && r.Doubt == "" {
					commas++
				}
			case strings.Contains(c.Text, "."):
				if r, err := quantity.Parse(c.Text, f.Want, f.Bare); err == nil && r.Other == 0 {
					points++
				}
			}
		}
	}
	return commas > points
}

// thousands finds what settles 1,200 and 1.200: the rest of the column, or for a
// batch what its ingredients weigh.
func (m *surveyor) thousands(f *scheme.Field) {
	if f.Want != units.Mass && f.Want != units.Volume {
		return
	}
	near, twofold := m.byReadings(f)
	if len(twofold) == 0 {
		return
	}
	if f.Role == column.BatchMass {
		near = m.sumsOf(twofold)
	}
	if len(near) == 0 {
		return
	}
	slices.Sort(near)
	f.SetNear(near[len(near)/2])
	first := twofold[0]
	if r, err := m.ParseText(scheme.CellText(m.Found.Sheet, m.Cell(first, f.Col)), sheet.Text, f); err == nil {
		m.say(trial.Note("marks of thousands", m.At(first, f.Col), say.Quoted(m.Text(first, f.Col))+" is read as "+say.Exact(r.Low)+", as the rest of the log shows",
			"nothing to do; type plain figures to be sure").Once())
	}
}

// byReadings parts the numbers of a column: those that can be read in one way only,
// and the rows of those that can be read in two, as 1,200 can.
func (m *surveyor) byReadings(f *scheme.Field) (sure []float64, twofold []int) {
	for n := range min(m.Rows(), scheme.LookedAt) {
		c := m.Cell(n, f.Col)
		if c.Kind == sheet.Blank || c.Kind == sheet.Fault {
			continue
		}
		r, err := m.ParseText(scheme.CellText(m.Found.Sheet, c), c.Kind, f)
		v, exact := r.Exact()
		switch {
		case err != nil || !exact || r.Word != quantity.NoWord:
		case r.Other != 0:
			twofold = append(twofold, n)
		case v > 0:
			sure = append(sure, v)
		}
	}
	return sure, twofold
}

// sumsOf are the sums of the masses of rows, where they are known.
func (m *surveyor) sumsOf(rows []int) (sums []float64) {
	for _, n := range rows {
		if sum, ok := m.SumOf(n, 0); ok {
			sums = append(sums, sum)
		}
	}
	return sums
}

// pointed reports a column in which a decimal comma would be the odd one.
func (m *surveyor) pointed(f *scheme.Field) bool {
	for n := range min(m.Rows(), commaRows) {
		if c := m.Cell(n, f.Col); c.Kind == sheet.Number && c.Number != math.Trunc(c.Number) {
			return true
		}
	}
	return false
}

func (m *surveyor) valuesOf(f *scheme.Field) (values []float64) {
	for n := range m.Rows() {
		if v, ok := m.Exactly(m.Cell(n, f.Col), f); ok {
			values = append(values, v)
		}
	}
	return values
}

// surveyHolds finds the first look, and whether "split" is typed in place of a hold.
func (m *surveyor) surveyHolds(f *scheme.Field) {
	for n := range m.Rows() {
		c := m.Cell(n, f.Col)
		if v, ok := m.Exactly(c, f); ok {
			if v > 0 {
				m.FirstLook = math.Min(m.FirstLook, v)
			}
		} else if c.Kind == sheet.Text && !m.TypesBreaks {
			m.TypesBreaks = slices.Contains(event.Of(c.Text), event.Broke)
		}
	}
}

// tellsBreaks reports a column of results that says where a foam split.
func (m *surveyor) tellsBreaks(f *scheme.Field) bool {
	for n := range min(m.Rows(), scheme.LookedAt) {
		if slices.Contains(m.Events(strings.TrimSpace(m.Cell(n, f.Col).Text)), event.Broke) {
			return true
		}
	}
	return false
}

// defaultLimit is used where a column's readings do not show their step: half a
// gram on the scale, or half a percent.
const defaultLimit = 0.5

// stepReadings is how many different readings it takes to show a step.
const stepReadings = 4

// limitOf finds the step of a column from its readings: the smallest difference
// between them, or between them and 0.
func limitOf(values []float64) scheme.Limit {
	slices.Sort(values)
	values = slices.Compact(values)
	l := scheme.Limit{Step: math.Inf(1)}
	last, positive := 0.0, 0
	for _, v := range values {
		if v <= 0 {
			continue
		}
		positive++
		if l.Least == 0 {
			l.Least = v
		}
		if d := v - last; d > 1e-9 {
			l.Step = min(l.Step, d)
		}
		last = v
	}
	if positive < stepReadings || l.Step < 1e-6 {
		l.Step, l.From = defaultLimit, "the usual reading limit"
		return l
	}
	// A step worked out by a formula is no scale's step.
	l.Step, l.From = max(math.Round(l.Step*1e6)/1e6, 1e-6), "the smallest step seen in the column"
	return l
}
