package row

import (
	"fmt"
	"math"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/compose"
	"foamfield/ingest/event"
	"foamfield/ingest/grid"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/outcome"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Beyond these no instrument of a kitchen reads: it is the rest of a formula, most
// likely.
const (
	leastAnything = 1e-9 // above 0
	mostAnything  = 1e12
)

func absurd(m quantity.Reading) bool {
	for _, v := range [...]float64{m.Low, m.High} {
		if a := math.Abs(v); a > 0 && a < leastAnything || a > mostAnything && !math.IsInf(v, 0) {
			return true
		}
	}
	return false
}

// read reads a cell as its column's kind of number. It is false for a blank and
// for what cannot be read, which is said.
func (r *reader) read(f *scheme.Field) (outcome.Measured, bool) {
	m, err := r.parse(f)
	if err != nil {
		if !r.saysWhatHappened(f) {
			r.unreadable(f, err)
		}
		return outcome.Measured{}, false
	}
	if !m.OK() {
		return m, false
	}
	r.doubts(f, m)
	return m, true
}

// parse is a cell's reading; no cell for a blank. What is wrong with the cell
// itself, its formula or its place, is said.
func (r *reader) parse(f *scheme.Field) (outcome.Measured, error) {
	c := r.sheetCell(f)
	if !r.whole(f, c) {
		return outcome.Measured{}, nil
	}
	text, note, noted := kitchen.Footnote(r.s.Footnotes, scheme.CellText(r.s.Found.Sheet, c))
	if text == "" {
		return outcome.Measured{}, nil
	}
	if r.instead.col == f.Col && r.instead.note.Row == r.row {
		text = r.instead.text
		r.tell(f)
	} else if r.crossedCell(f, c) {
		return outcome.Measured{}, nil
	}
	if c.Flags&sheet.Computed != 0 {
		r.say(trial.Note("formula worked out", r.at(f), "the file holds formulas without results; they were worked out here",
			"save the log in a spreadsheet program to keep its own results").Once())
	}
	m, err := r.s.Parse(r.row, text, c.Kind, f)
	if c.Kind != sheet.Number {
		r.keep(f, text)
	}
	if err != nil {
		return outcome.Measured{}, err
	}
	if f.Want == units.Minutes && f.Bare != units.Hour && scheme.CountsHours(r.s.Found.Sheet, c) && m.Doubt == "" {
		m.Doubt = fmt.Sprintf("read as %s min, as its format shows hours and minutes, but it may be minutes and seconds; type %s min, or %s min", say.Number(m.Low), say.Number(m.Low), say.Number(m.Low/60))
	}
	if noted && untrue(r.s, f, note.Text) {
		return outcome.Measured{}, nil
	}
	if noted && f.Role == column.Hold && event.AtLeast(note.Text) && m.Low == m.High {
		m.High = math.Inf(1)
	}
	if absurd(m) {
		r.impossible(f, "what was measured", "type the number as it was read, or leave the cell empty")
		return outcome.Measured{}, nil
	}
	return outcome.Measured{Reading: m, Cell: r.cell(f)}, nil
}

// whole reports whether a cell holds something of its own, and says so where a
// fault of the sheet is all it holds.
func (r *reader) whole(f *scheme.Field, c sheet.Cell) bool {
	switch {
	case c.Kind == sheet.Fault:
		r.say(trial.Fix("error value", r.at(f), say.Quoted(c.Text), "mend the formula, or type the number"))
	case c.Kind == sheet.Blank && c.Flags&sheet.NoCachedValue != 0:
		r.say(trial.Fix("formula without a result", r.at(f), "the file holds a formula but not its result",
			"open the log in a spreadsheet program and save it again, or type the number"))
	case r.s.Found.Fill(r.row, f.Col-1) == grid.Unresolved:
		r.say(trial.Fix("nothing above to repeat", r.at(f), "the cell says the same as above, and nothing stands above it", "type what is meant"))
	case r.s.Found.MergedAcross(r.row, f.Col-1):
		r.say(trial.Fix("one cell for several columns", r.at(f), "one merged cell stands under several headers", "type each column's own value"))
	case c.Kind == sheet.Blank:
	default:
		return true
	}
	return false
}

// crossedCell reports, and says, a cell that is struck out as a whole in a row that is not:
// its number does not count, and no other is typed.
func (r *reader) crossedCell(f *scheme.Field, c sheet.Cell) bool {
	if c.Flags&sheet.Struck == 0 || r.crossed {
		return false
	}
	r.say(trial.Fix("struck out", r.at(f), r.quoted(f)+" is struck out and not used", "type the value that counts, or take the line off"))
	return true
}

// lost reports a cell that holds something which nobody can read as a number, so
// that it is not blank.
func (r *reader) lost(f *scheme.Field) bool {
	c := r.sheetCell(f)
	return c.Kind == sheet.Fault || c.Flags&sheet.NoCachedValue != 0 || r.s.Found.Fill(r.row, f.Col-1) == grid.Unresolved ||
		r.s.Found.MergedAcross(r.row, f.Col-1)
}

// doubts says what deserves a look of a cell that was read.
func (r *reader) doubts(f *scheme.Field, m outcome.Measured) {
	if m.Doubt != "" {
		read, do := r.quoted(f)+": "+m.Doubt, "type it again as one plain number if that is not what was meant"
		if v, exact := m.Exact(); exact {
			do = fmt.Sprintf("type %s if that is right, else the number that is meant", say.Number(v))
		}
		if doubt, cure, ok := strings.Cut(m.Doubt, "; type "); ok {
			read, do = r.quoted(f)+": "+doubt, "type "+cure
		}
		r.say(trial.Check("value in doubt", r.at(f), read, do))
	}
	c := r.sheetCell(f)
	if c.Flags&sheet.Revised != 0 {
		r.say(trial.Check("struck out in part", r.at(f), "part of the cell is struck out or raised and was left out: "+r.quoted(f)+" is read", "type the one value that counts"))
	}
	if v, exact := m.Exact(); m.Comma && c.Kind == sheet.Text && f.Pointed && exact {
		r.say(trial.Note("decimal comma", r.at(f), fmt.Sprintf("%s is text, and is read as %s", r.quoted(f), say.Number(v)),
			"nothing to do here; a spreadsheet does not reckon with it until it is typed as a number"))
	}
}

// unreadable reports a cell that could not be read, with the cure.
func (r *reader) unreadable(f *scheme.Field, err error) {
	if u, ok := err.(*quantity.Unreadable); ok {
		r.say(trial.Fix("value not read", r.at(f), say.Quoted(u.Text)+" "+u.Why, u.Type))
		return
	}
	r.say(trial.Fix("value not read", r.at(f), r.quoted(f), err.Error()))
}

// single reads a cell that has to be one number: a mass, an HLB. A range gives its
// middle, which is said; a bound gives nothing. ok is false for what is typed and
// cannot be used.
func (r *reader) single(f *scheme.Field, low, high float64, name string) (k compose.Known, ok bool) {
	before := len(r.Findings)
	m, read := r.read(f)
	if !read {
		return k, len(r.Findings) == before && !r.lost(f)
	}
	if m.Word == quantity.Zero {
		return compose.Known{Value: 0, Col: f.Col}, true
	}
	if m.Word != quantity.NoWord {
		return k, r.sayWord(f, m.Word)
	}
	v, exact := m.Exact()
	switch {
	case exact:
	case math.IsInf(m.Low, 0) || math.IsInf(m.High, 0):
		r.say(trial.Fix("bound where one number is needed", r.at(f), r.quoted(f)+" is only a bound", "type the number that was weighed or measured"))
		return k, false
	default:
		v = (m.Low + m.High) / 2
		r.say(trial.Check("range where one number is needed", r.at(f), fmt.Sprintf("%s is read as its middle, %s", r.quoted(f), say.Number(v)),
			"type the one number that was weighed or measured"))
	}
	if v > 0 && v < compose.LeastGrams {
		r.impossible(f, name, fmt.Sprintf("type %s, or 0 for none", name))
		return k, false
	}
	if v < low || v > high {
		r.outside(f, v, low, high, name)
		return k, false
	}
	return compose.Known{Value: v, Col: f.Col}, true
}

// dashes are typed where a cell is meant to stay empty.
var dashes = map[string]bool{"-": true, "–": true, "—": true, "--": true}

// sayWord says that a word stands where a number is due, and reports whether it is
// as good as a blank.
func (r *reader) sayWord(f *scheme.Field, w quantity.Word) bool {
	if dashes[r.text(f)] {
		return true
	}
	do := "type what was weighed, or 0 if there was none; until then " + compose.NoFormula
	if f.Role == column.BlendHLB { // 0 is no HLB, and the masses may give it
		do = "type the blend HLB, such as 7.5"
	}
	if f.IsAmount() || f.Role == column.BlendHLB {
		r.say(trial.Fix("amount not known", r.at(f), r.quoted(f)+" says that it was not measured", do))
	}
	return false
}

// outside says that a number is none that can be meant.
func (r *reader) outside(f *scheme.Field, v, low, high float64, name string) {
	do := fmt.Sprintf("type %s between %s and %s", name, say.Number(low), say.Number(high))
	if high >= compose.MostGrams {
		do = fmt.Sprintf("type %s between %s g and 100 kg", name, say.Number(low))
	}
	if meant, ok := r.s.Usual[f.Col].PointMissed(v); ok && meant >= low && meant <= high {
		do = fmt.Sprintf("type %s if the point was missed, else %s", say.Number(meant), strings.TrimPrefix(do, "type "))
	}
	if v < 0 && low <= -v && -v <= high {
		do = fmt.Sprintf("type %s if the minus is a slip, or what was weighed or measured", say.Exact(-v))
	}
	r.impossible(f, name, do)
}

// mass reads a mass that cannot be less than some grams.
func (r *reader) mass(f *scheme.Field, least float64, name string) compose.Known {
	if f.Want == units.Volume && f.GramsPerML == 0 {
		if r.sheetCell(f).Kind != sheet.Blank {
			r.sayVolume(f, "weigh it and write g in the header, or give \"1.00 g/mL\" as the Basis in a sheet Columns")
		}
		return compose.Known{}
	}
	k, _ := r.single(f, 0, compose.MostGrams, name)
	if f.Want == units.Volume {
		k.Value *= f.GramsPerML
	}
	if k.OK() && k.Value < least {
		do := fmt.Sprintf("type the grams, %s or more, or leave it empty", say.Number(least))
		if inGrams := 1000 * k.Value; r.s.Usual[f.Col].Holds(inGrams, 0) {
			do = fmt.Sprintf("type %s if it was meant in kg, or leave it empty", say.Number(inGrams))
		}
		r.impossible(f, name, do)
		return compose.Known{}
	}
	return k
}

func (r *reader) sayVolume(f *scheme.Field, do string) {
	r.say(trial.Fix("volume", r.s.Heading(f.Col), say.Quoted(f.Header)+" is a volume, and its density is not known", do).Once())
}

func (r *reader) cup(f *scheme.Field) outcome.Cup {
	k, _ := r.single(f, 0, compose.MostGrams, "a cup")
	if !k.OK() {
		return outcome.Cup{}
	}
	return outcome.Cup{Grams: k.Value, Cell: r.cell(f), Volume: f.Want == units.Volume}
}

// extra reads a cell of a variable: process, score, declared.
func (r *reader) extra(f *scheme.Field) {
	if f.Extra == "" {
		return
	}
	m, ok := r.read(f)
	if !ok {
		return
	}
	v, exact := m.Exact()
	switch {
	case exact:
	case m.Word != quantity.NoWord:
		return
	case math.IsInf(m.Low, 0) || math.IsInf(m.High, 0):
		r.say(trial.Check("bound where one number is needed", r.at(f), r.quoted(f)+" is only a bound and is not used", "type the number that was measured"))
		return
	default:
		v = (m.Low + m.High) / 2
	}
	r.Extras = append(r.Extras, Value{f.Extra, v})
	if f.Role == column.Overrun {
		r.Seen.Overrun = &v
	}
}
