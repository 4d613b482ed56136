// Package row reads the cells of a trial under the scheme of its table: what they
// say was in the mix and what happened to the foam. It decides nothing: what the
// cells together mean is for compose and outcome.
package row

import (
	"foamfield/ingest/pattern"
	"math"
	"slices"
	"strings"
	"time"

	"foamfield/ingest/column"
	"foamfield/ingest/compose"
	"foamfield/ingest/grid"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/outcome"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Line is what a trial's cells say.
type Line struct {
	At       trial.Place
	Rows     []int // of the sheet; of cards side by side, their columns
	ID       string
	OwnID    bool // the number is typed in this very row, and names a trial
	Day      string
	Cook     string
	Student  string
	Dish     string // as the log names it
	Canister string
	Note     string
	Void     string // why it does not count, "" = it does
	NotMade  bool   // a note or an answer says that it was not made

	Recipe compose.Recipe
	Seen   outcome.Seen
	Extras []Value
	Raw    []Text // as typed where it says more than its number

	Findings []trial.Finding
}

// Value is a variable's value.
type Value struct {
	Name  string
	Value float64
}

// Text is what was typed, under the key of its column.
type Text struct{ Key, Text string }

// Typed is the text under a key, "" if there is none.
func (l *Line) Typed(key string) string {
	for _, t := range l.Raw {
		if t.Key == key {
			return t.Text
		}
	}
	return ""
}

// reader reads one trial.
type reader struct {
	*Line
	s   *scheme.Scheme
	row int // of the table, being read

	crossed bool // all of this row that tells of its trial is struck out
	instead instead

	madeTo float64                // grams a liquid of this row was added up to; 0 = none was
	rest   *ingredient.Ingredient // that liquid
}

// clear makes a line ready for another trial, in the room of the last.
func (l *Line) clear(at trial.Place, row int) {
	r, s := &l.Recipe, &l.Seen
	*l = Line{At: at, Rows: l.Rows[:0], Extras: l.Extras[:0], Raw: l.Raw[:0], Findings: l.Findings[:0],
		Recipe: compose.Recipe{Row: row, Doses: r.Doses[:0], Open: r.Open[:0], Own: r.Own[:0], Blank: r.Blank[:0]},
		Seen:   outcome.Seen{Row: row, Drains: s.Drains[:0], Events: s.Events[:0]}}
}

// Read reads into l the rows of a table that are one trial: one, or all its readings
// or squirts. The first gives everything; later readings give more results, later
// squirts go into the note.
func (l *Line) Read(s *scheme.Scheme, rows []int) {
	l.clear(s.At(rows[0], 0), rows[0])
	for _, n := range rows {
		if s.Found.From == 0 {
			l.Rows = append(l.Rows, s.Found.Rows[n].Number)
		}
	}
	for n := s.Found.From; n > 0 && n <= s.Found.To; n++ {
		l.Rows = append(l.Rows, n)
	}
	r := &reader{Line: l, s: s}
	r.colours(rows[0])
	for i, n := range rows {
		r.row, r.crossed = n, r.crossedOut(n)
		if i > 0 && !s.Found.PerReading {
			r.laterSquirt()
			continue
		}
		r.findInstead(n)
		minute := r.minute()
		for k := range s.Fields {
			if f := &s.Fields[k]; i == 0 || perReading(f.Role) {
				r.take(f, minute)
			}
		}
	}
	r.row = rows[0]
	r.madeUp()
	r.changedPlaces()
	r.clockHold()
	r.ownID(rows)
	r.struck(rows)
	r.footnotes(rows)
	r.stoodByColour(rows[0])
	r.stoodByNote()
	r.noBlend()
}

// noBlend takes back what was said of words where the HLB of the blend would stand, in a mix that has no
// emulsifier: "none", "n/a", "entfällt" and whatever else say the same.
func (r *reader) noBlend() {
	f := r.s.Find(column.BlendHLB)
	emulsifier := func(d compose.Dose) bool { return d.What.WeighedAsEmulsifier() }
	if f == nil || strings.ContainsAny(r.text(f), "0123456789") || slices.ContainsFunc(r.Recipe.Doses, dosed) || !slices.ContainsFunc(r.Recipe.Doses, emulsifier) {
		return
	}
	at := r.at(f)
	r.Findings = slices.DeleteFunc(r.Findings, func(g trial.Finding) bool { return g.At == at })
}

// perReading reports the roles that may say something new on every line of a
// trial.
func perReading(r column.Role) bool {
	switch r {
	case column.DrainedAmount, column.OilAmount, column.Result, column.Note, column.Broke, column.OilLeak, column.Clogged, column.CameOut,
		column.Hold, column.HoldOver, column.GoneBy:
		return true
	}
	return false
}

// minute is when this row's results were read, NaN where no column says it.
func (r *reader) minute() float64 {
	minute := math.NaN()
	for i := range r.s.Fields {
		if f := &r.s.Fields[i]; f.Role == column.ReadingMinute || f.Role == column.DrainedAt {
			if m, ok := r.read(f); ok {
				if v, exact := m.Exact(); exact {
					minute = v
				}
			}
		}
	}
	return minute
}

// take reads one cell into the line: whichever knows the role of its column.
func (r *reader) take(f *scheme.Field, minute float64) {
	if r.label(f) || r.answer(f) || r.mixed(f) || r.measured(f, minute) {
		return
	}
	r.extra(f)
}

// mixed takes what was in the mix.
func (r *reader) mixed(f *scheme.Field) bool {
	switch f.Role {
	case column.BatchMass:
		r.Recipe.Batch = r.mass(f, compose.LeastBatch, "a batch")
	case column.FatPercent:
		r.fatPercent(f)
	case column.IngredientAmount:
		r.amount(f)
	case column.EmulsifierAmount:
		r.emulsifier(f)
	case column.EmulsifierRatio:
		r.ratio(f)
	case column.PhaseRatio:
		r.phases(f)
	case column.IngredientFat, column.IngredientHLB:
		r.ownValue(f)
	case column.BlendHLB:
		r.Recipe.HLB, _ = r.single(f, math.Inf(-1), math.Inf(1), "an HLB")
	default:
		return false
	}
	return true
}

// measured takes what was weighed and timed of the foam.
func (r *reader) measured(f *scheme.Field, minute float64) bool {
	switch f.Role {
	case column.SampleMass:
		r.sampleMass(f)
	case column.CupLiquid:
		r.Seen.LiquidCup = r.cup(f)
	case column.CupFoam:
		r.Seen.FoamCup = r.cup(f)
	case column.Hold:
		r.looked(f, &r.Seen.Hold)
	case column.HoldOver:
		r.looked(f, &r.Seen.LastOK)
	case column.GoneBy:
		r.looked(f, &r.Seen.GoneBy)
	case column.DrainedAmount:
		r.drained(f, minute)
	case column.OilAmount:
		r.oil(f)
	default:
		return false
	}
	return true
}

// sampleMass reads how much foam was put to drain, and remembers whether something
// was said of it, so that nothing is said of it twice.
func (r *reader) sampleMass(f *scheme.Field) {
	before := len(r.Findings)
	if k := r.mass(f, compose.LeastGrams, "a sample mass"); k.OK() {
		r.Seen.Sample = outcome.Measured{Reading: quantity.Reading{Low: k.Value, High: k.Value}, Cell: r.cell(f)}
	}
	r.Seen.SampleSaid = len(r.Findings) > before
}

// label takes the texts that name a trial.
func (r *reader) label(f *scheme.Field) bool {
	text := ""
	switch f.Role {
	case column.TrialID, column.Day, column.Cook, column.Student, column.Dish, column.Canister, column.Repeat, column.RepeatOf, column.CanisterID,
		column.ChargerLot, column.IngredientLot, column.Supplier, column.Week, column.Note, column.Result, column.Valid:
		text = r.text(f)
	}
	switch f.Role {
	case column.TrialID:
		r.ID = text
	case column.Day:
		r.Day = date(f, text)
	case column.Cook:
		r.Cook = text
	case column.Student:
		r.Student = text
	case column.Dish:
		if r.Dish = text; text != "" {
			r.setRaw(f.Raw, text)
		}
	case column.Canister:
		r.Canister = r.canister(f, text)
	case column.Repeat, column.RepeatOf, column.CanisterID, column.ChargerLot, column.IngredientLot, column.Supplier, column.Week:
		if text != "" {
			r.setRaw(f.Raw, text)
		}
	case column.Note, column.Result:
		r.words(f, text)
	case column.Valid:
		r.valid(f, text)
	default:
		return false
	}
	return true
}

var stroked = pattern.Of(`^(\d{1,2})[/-](\d{1,2})[/-](\d{2}|\d{4})\b`)

// date is a day as typed; where the kitchen says which of day and month stands first, it
// is one that can be read in one way only.
func date(f *scheme.Field, text string) string {
	m := stroked.FindStringSubmatch(text)
	if m == nil || !f.DayFirst && !f.MonthFirst {
		return text
	}
	day, month, year := m[1], m[2], m[3]
	if f.MonthFirst {
		day, month = month, day
	}
	if len(year) == 2 {
		year = "20" + year
	}
	d, err := time.Parse("2006-1-2", year+"-"+month+"-"+day)
	if err != nil {
		return text
	}
	return d.Format(time.DateOnly) + text[len(m[0]):]
}

// canister is the size as typed, with the header's unit when the cell has none.
func (r *reader) canister(f *scheme.Field, text string) string {
	if f.Unit != units.NoUnit {
		if _, bare := scheme.BareNumber(r.s.Found.Sheet, r.sheetCell(f)); bare {
			return text + " " + f.Unit.String()
		}
	}
	return text
}

func (r *reader) cell(f *scheme.Field) outcome.Cell    { return outcome.Cell{Row: r.row, Col: f.Col} }
func (r *reader) sheetCell(f *scheme.Field) sheet.Cell { return r.s.Cell(r.row, f.Col) }
func (r *reader) text(f *scheme.Field) string          { return r.s.Text(r.row, f.Col) }
func (r *reader) at(f *scheme.Field) trial.Place       { return r.s.At(r.row, f.Col) }
func (r *reader) say(f trial.Finding)                  { r.Findings = append(r.Findings, f) }
func (r *reader) quoted(f *scheme.Field) string        { return say.Quoted(r.text(f)) }
func (r *reader) impossible(f *scheme.Field, what, do string) {
	r.say(trial.Fix("impossible value", r.at(f), r.quoted(f)+" cannot be "+what, do))
}

// setRaw remembers a text under a key; the first one stands.
func (r *reader) setRaw(key, text string) {
	if key != "" && r.Typed(key) == "" {
		r.Raw = append(r.Raw, Text{key, text})
	}
}

// keep remembers a cell's text where it says more than its number.
func (r *reader) keep(f *scheme.Field, text string) {
	digits, point := strings.TrimPrefix(text, "-"), strings.IndexAny(text, ".,")
	if point >= 0 {
		digits = strings.TrimPrefix(text[:point]+text[point+1:], "-")
	}
	if digits == "" || strings.Trim(digits, "0123456789") != "" {
		r.setRaw(f.Raw, text)
	}
}

// ownID finds out whether the trial bears a number of its own: not when it is taken
// from above, when rows are readings or squirts of one trial, or when a column or
// the note says that it is a repeat.
func (r *reader) ownID(rows []int) {
	f := r.s.Find(column.TrialID)
	r.OwnID = f != nil && len(rows) == 1 && r.Typed("repeat") == "" && strings.ContainsAny(r.ID, "0123456789") &&
		r.s.Found.Fill(rows[0], f.Col-1) == grid.Own
}

// struck sets a trial aside whose rows are struck out.
func (r *reader) struck(rows []int) {
	for _, n := range rows {
		if !r.crossedOut(n) {
			return
		}
	}
	r.void(trial.Place{File: r.At.File, Sheet: r.At.Sheet, Row: r.At.Row, Col: r.At.Col}, "the row is struck out")
}

// crossedOut reports a row of which all numbers and answers are struck out: the note that
// says why often is not.
func (r *reader) crossedOut(n int) bool {
	if r.s.Found.Rows[n].Struck {
		return true
	}
	struck := 0
	for i := range r.s.Fields {
		f := &r.s.Fields[i]
		c := r.s.Found.Typed(n, f.Col-1)
		switch {
		case c.Kind == sheet.Blank || f.Want == units.Any && !f.Answers():
		case c.Flags&sheet.Struck == 0:
			return false
		default:
			struck++
		}
	}
	return struck > 1
}

// void says why a trial does not count.
func (r *reader) void(at trial.Place, why string) {
	if r.Void == "" {
		r.Void = why
		r.say(trial.Note("trial set aside", at, why, "nothing to do, unless it counts: then take the mark away"))
	}
}
