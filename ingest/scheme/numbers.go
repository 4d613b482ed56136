package scheme

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// plainFormat reports whether a number format adds nothing to a number that
// changes what it says.
func plainFormat(code string) bool {
	return code == "" || strings.Trim(code, "0#.,? ") == "" || code == "General"
}

// CellText is a cell as a person would type it, free of the doubt a stored number
// cannot have.
func CellText(s *sheet.Sheet, c sheet.Cell) string {
	if c.Kind == sheet.Number && plainFormat(s.Format(c)) {
		return say.Exact(c.Number)
	}
	return strings.TrimSpace(s.Display(c))
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

// Parse reads a cell as its column's kind of number; a unit in a column of units
// beside it belongs to it.
func (s *Scheme) Parse(row int, c sheet.Cell, f *Field) (quantity.Reading, error) {
	text := CellText(s.Found.Sheet, c)
	if unit, ok := quantity.ParseUnit(s.Found.UnitOf(row, f.Col-1)); ok {
		return quantity.Parse(text, f.Want, unit)
	}
	return s.parse(text, c.Kind, f)
}

func (s *Scheme) parse(text string, kind sheet.Kind, f *Field) (quantity.Reading, error) {
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

// exactly is a cell's number in the base unit of its column, when it is just one.
func (s *Scheme) exactly(c sheet.Cell, f *Field) (float64, bool) {
	if c.Kind == sheet.Blank || c.Kind == sheet.Fault {
		return 0, false
	}
	r, err := s.parse(CellText(s.Found.Sheet, c), c.Kind, f)
	if err != nil || r.Word != quantity.NoWord {
		return 0, false
	}
	return r.Exact()
}

// Usual is where the trials of a column lie; enough of them are needed to say so.
type Usual struct {
	Low, High float64
	Known     bool
	Filled    float64 // share of the trials that have a value above nought
}

const usualOf = 5 // values

// Usual looks down a column, the ends left out: they may be slips themselves.
func (s *Scheme) Usual(col int) Usual { return s.usuals[col] }

// learn works out where the values of every column of numbers lie.
func (m *maker) learn() {
	m.usuals = map[int]Usual{}
	var values []float64
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Want == quantity.Any {
			continue
		}
		values = values[:0]
		for n := range m.Rows() {
			if v, ok := m.exactly(m.Cell(n, f.Col), f); ok && v > 0 {
				values = append(values, v)
			}
		}
		if n := len(values); n >= usualOf {
			slices.Sort(values)
			m.usuals[f.Col] = Usual{values[n/12], values[n-1-n/12], true, float64(n) / float64(m.Rows())}
		}
	}
}

// Holds reports a value like the others, within a margin.
func (u Usual) Holds(v, margin float64) bool {
	margin += (u.High - u.Low) / 10
	return u.Known && u.Low-margin <= v && v <= u.High+margin
}

// survey looks down the columns once before any row is read: what a bare 0.45, a
// 1,200 or a blank means depends on what else stands in its column.
func (m *maker) survey() {
	m.FirstLook = 1
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
		case column.Hold:
			m.surveyHolds(f)
		default:
			if f.dosesEmulsifier() {
				m.surveyDoses(f)
			}
		}
	}
}

// commaRows is how many rows are looked at for decimal commas.
const commaRows = 500

// typesCommas reports whether the numbers of the table are typed with a decimal
// comma; then 1.250 is a thousand. One stray comma among points is no habit.
func (m *maker) typesCommas() bool {
	commas, points := 0, 0
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Want == quantity.Any {
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

// fromNear is how far a number is from one, by factors.
func fromNear(v, near float64) float64 { return math.Abs(math.Log(max(v, 1e-6) / near)) }

// thousands finds what settles 1,200 and 1.200: the rest of the column, or for a
// batch what its ingredients weigh.
func (m *maker) thousands(f *Field) {
	if f.Want != quantity.Mass && f.Want != quantity.Volume {
		return
	}
	var sure, sums []float64
	first := -1
	for n := range min(m.Rows(), lookedAt) {
		c := m.Cell(n, f.Col)
		if c.Kind == sheet.Blank || c.Kind == sheet.Fault {
			continue
		}
		r, err := m.parse(CellText(m.Found.Sheet, c), c.Kind, f)
		v, exact := r.Exact()
		switch {
		case err != nil || !exact || r.Word != quantity.NoWord:
		case r.Other == 0 && v > 0:
			sure = append(sure, v)
		case r.Other != 0 && first < 0:
			first = n
			fallthrough
		case r.Other != 0:
			if sum, ok := m.sumOf(n, 0); ok {
				sums = append(sums, sum)
			}
		}
	}
	if f.Role == column.BatchMass {
		sure = sums
	}
	if first < 0 || len(sure) == 0 {
		return
	}
	slices.Sort(sure)
	f.Near, f.parsed = sure[len(sure)/2], nil
	if r, err := m.parse(CellText(m.Found.Sheet, m.Cell(first, f.Col)), sheet.Text, f); err == nil {
		m.say(trial.Note("marks of thousands", m.At(first, f.Col), say.Quoted(m.Text(first, f.Col))+" is read as "+say.Exact(r.Low)+", as the rest of the log shows",
			"nothing to do; type plain figures to be sure").Once())
	}
}

// pointed reports a column in which a decimal comma would be the odd one.
func (m *maker) pointed(f *Field) bool {
	for n := range min(m.Rows(), commaRows) {
		if c := m.Cell(n, f.Col); c.Kind == sheet.Number && c.Number != math.Trunc(c.Number) {
			return true
		}
	}
	return false
}

func (m *maker) valuesOf(f *Field) (values []float64) {
	for n := range m.Rows() {
		if v, ok := m.exactly(m.Cell(n, f.Col), f); ok {
			values = append(values, v)
		}
	}
	return values
}

// surveyHolds finds the first look, and whether "split" is typed in place of a hold.
func (m *maker) surveyHolds(f *Field) {
	for n := range m.Rows() {
		c := m.Cell(n, f.Col)
		if v, ok := m.exactly(c, f); ok {
			if v > 0 {
				m.FirstLook = math.Min(m.FirstLook, v)
			}
		} else if c.Kind == sheet.Text && !m.TypesBreaks {
			m.TypesBreaks = slices.Contains(quantity.Events(c.Text), quantity.Broke)
		}
	}
}

// holdsClocks reports whether the cells of a column are times of the day.
func (m *maker) holdsClocks(col int) bool {
	clocks, filled := 0, 0
	for n := range min(m.Rows(), lookedAt) {
		c := m.Cell(n, col)
		if c.Kind == sheet.Blank {
			continue
		}
		filled++
		if _, ok := ClockMinutes(m.Found.Sheet, c); ok {
			clocks++
		}
	}
	return filled > 0 && 2*clocks > filled
}

// Limit is the smallest amount a column of readings can tell from nothing, and the
// smallest it gave a number to.
type Limit struct {
	Step, Least float64
	From        string // where the step comes from, in words
}

// defaultLimit is used where a column's readings do not show their step: half a
// gram on the scale, or half a percent.
const defaultLimit = 0.5

// stepReadings is how many different readings it takes to show a step.
const stepReadings = 4

// limitOf finds the step of a column from its readings: the smallest difference
// between them, or between them and 0.
func limitOf(values []float64) Limit {
	slices.Sort(values)
	values = slices.Compact(values)
	l := Limit{Step: math.Inf(1)}
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

// PointMissed is a number taken down to the others of its column by moving its
// point, if that is what it takes.
func (u Usual) PointMissed(v float64) (meant float64, ok bool) {
	for _, factor := range [...]float64{10, 100, 1000} {
		if m := v / factor; u.Holds(m, m/4) {
			return m, true
		}
	}
	return 0, false
}
