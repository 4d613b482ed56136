package ingest

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/quantity"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// row reads the cells of one trial.
type row struct {
	book  *reader
	table *table
	sheet *sheet.Sheet
	rows  []int // the table's rows the trial stands on
	now   int   // index of the one being read
}

func (b *row) at(col int) trial.Place    { return b.table.at(b.rows[b.now], col) }
func (b *row) cellAt(col int) sheet.Cell { return b.table.cell(b.rows[b.now], col) }
func (b *row) text(col int) string       { return strings.TrimSpace(b.sheet.Display(b.cellAt(col))) }

func (b *row) problem(kind string, s trial.Severity, col int, read, do string) {
	b.book.problem(kind, s, b.at(col), read, do)
}

// columnName is how a message names a column of the table.
func (b *row) columnName(col int) string {
	if col == 0 {
		return "this row"
	}
	h := &b.table.found.Heads[col-1]
	if b.table.found.Transposed {
		return sheet.CellName(h.Row, 0) + " (" + h.Text + ")"
	}
	return sheet.CellName(0, h.Col) + " (" + h.Text + ")"
}

// plainFormat reports whether a number format adds nothing to a number that
// changes what it says.
func plainFormat(code string) bool {
	return code == "" || strings.Trim(code, "0#.,? ") == "" || code == "General"
}

// numberText writes a number so that no reader takes its point for a thousands
// mark.
func numberText(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if i := strings.IndexByte(s, '.'); i >= 0 && len(s)-i == 4 {
		s += "0"
	}
	return s
}

// cellText is a cell as a person would type it, free of the doubt a stored
// number cannot have.
func cellText(s *sheet.Sheet, c sheet.Cell) string {
	if c.Kind == sheet.Number && plainFormat(s.Format(c)) {
		return numberText(c.Number)
	}
	return strings.TrimSpace(s.Display(c))
}

// bareNumber is a cell's number when it is written without any sign or unit.
func bareNumber(s *sheet.Sheet, c sheet.Cell) (float64, bool) {
	return parsedNumber(cellText(s, c))
}

// parsedNumber is the number a text is, with a decimal point or comma.
func parsedNumber(text string) (float64, bool) {
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return v, err == nil && !math.IsInf(v, 0) && !math.IsNaN(v)
}

// read reads a cell as its column's kind of number. It is false for a blank
// and for what cannot be read, which is a Problem.
func (b *row) read(t *trial.Trial, f *field) (measured, bool) {
	m, ok := b.readQuietly(t, f)
	if ok && m.Doubt != "" {
		read, do := quoted(b.text(f.col))+": "+m.Doubt, "type it again as one plain number if that is not what was meant"
		if v, exact := m.Exact(); exact {
			do = fmt.Sprintf("type %s if that is right, else the number that is meant", number(v))
		}
		if doubt, cure, ok := strings.Cut(m.Doubt, "; type "); ok {
			read, do = quoted(b.text(f.col))+": "+doubt, "type "+cure
		}
		b.problem("value in doubt", trial.PleaseLook, f.col, read, do)
	}
	if ok && m.Comma {
		b.sayComma(f, m)
	}
	return m, ok
}

// sayComma says that a text with a decimal comma was read as a number, where
// the rest of its column are numbers of the spreadsheet's own.
func (b *row) sayComma(f *field, m measured) {
	if b.cellAt(f.col).Kind != sheet.Text || !f.pointed {
		return
	}
	if v, exact := m.Exact(); exact {
		b.problem("decimal comma", trial.ForInformation, f.col, fmt.Sprintf("%s is text, and is read as %s", quoted(b.text(f.col)), number(v)),
			"nothing to do here; a spreadsheet does not reckon with it until it is typed as a number")
	}
}

func (b *row) readQuietly(t *trial.Trial, f *field) (measured, bool) {
	c := b.cellAt(f.col)
	switch c.Kind {
	case sheet.Blank:
		if c.Flags&sheet.NoCachedValue != 0 {
			b.problem("formula without a result", trial.MustFix, f.col, "the file holds a formula but not its result",
				"open the log in a spreadsheet program and save it again, or type the number")
		}
		return measured{}, false
	case sheet.Fault:
		b.problem("error value", trial.MustFix, f.col, quoted(c.Text), "mend the formula, or type the number")
		return measured{}, false
	}
	text := cellText(b.sheet, c)
	if text == "" {
		return measured{}, false
	}
	if c.Flags&sheet.Computed != 0 {
		b.book.told("formula worked out", b.at(f.col), "the file holds formulas without results; they were worked out here",
			"save the log in a spreadsheet program to keep its own results")
	}
	r, err := b.table.parse(c, f)
	if c.Kind != sheet.Number {
		b.keep(f, text)
	}
	if err != nil {
		if b.saysWhatHappened(f, text) {
			return measured{}, false
		}
		b.unreadable(f, err)
		return measured{}, false
	}
	if absurd(r) {
		b.impossible(f.col, "what was measured", "type the number as it was read, or leave the cell empty")
		return measured{}, false
	}
	return measured{r, f.col}, true
}

// unreadable reports a cell that could not be read, with the cure.
func (b *row) unreadable(f *field, err error) {
	if u, ok := err.(*quantity.Unreadable); ok {
		b.problem("value not read", trial.MustFix, f.col, quoted(u.Text)+" "+u.Why, u.Type)
		return
	}
	b.problem("value not read", trial.MustFix, f.col, quoted(b.text(f.col)), err.Error())
}

// keep remembers a cell's text where it says more than its number.
func (b *row) keep(f *field, text string) {
	if f.raw == "" {
		return
	}
	digits, point := strings.TrimPrefix(text, "-"), strings.IndexAny(text, ".,")
	if point >= 0 {
		digits = strings.TrimPrefix(text[:point]+text[point+1:], "-")
	}
	if digits != "" && strings.Trim(digits, "0123456789") == "" {
		return
	}
	b.setRaw(f.raw, text)
}

// saysWhatHappened takes "split" or "clogged" typed in place of a number.
func (b *row) saysWhatHappened(f *field, text string) bool {
	if f.Role != column.Hold && f.Role != column.DrainedAmount && f.Role != column.GoneBy && f.Role != column.HoldOver {
		return false
	}
	events := b.book.events(text)
	for _, e := range events {
		b.book.seen.events = append(b.book.seen.events, event{e, f.col, false})
	}
	return len(events) > 0
}

// answer reads a yes/no cell into s; a later reading of the trial replaces an
// earlier one, a blank does not.
func (b *row) answer(t *trial.Trial, f *field, s *said) {
	if a := b.answerOf(t, f); a.answer != trial.Unknown && !(a.blank && s.answer != trial.Unknown) {
		*s = a
	}
}

func (b *row) answerOf(t *trial.Trial, f *field) said {
	c := b.cellAt(f.col)
	if c.Kind == sheet.Blank {
		if f.blankIsNo {
			return said{trial.No, f.col, true}
		}
		return said{}
	}
	text := b.text(f.col)
	a, word, err := b.book.answer(text)
	switch {
	case err != nil:
		events := b.book.events(text)
		for _, e := range events {
			b.book.seen.events = append(b.book.seen.events, event{e, f.col, false})
		}
		if len(events) == 0 {
			b.unreadable(f, err)
		}
		b.keep(f, text)
		return said{}
	case word == quantity.DidNotComeOut:
		b.book.seen.events = append(b.book.seen.events, event{quantity.Clogged, f.col, false})
	case word == quantity.NoFoam:
		b.book.seen.events = append(b.book.seen.events, event{quantity.CameOutLiquid, f.col, false})
	}
	if a == quantity.NoAnswer {
		return said{}
	}
	if a == quantity.Partly {
		b.keep(f, text)
	}
	return said{[...]trial.Answer{trial.Unknown, trial.Yes, trial.Partly, trial.No}[a], f.col, false}
}

// single reads a cell that has to be one number: a mass, an HLB. A range gives
// its middle, which is said; a bound gives nothing.
func (b *row) single(t *trial.Trial, f *field, low, high float64, name string) (known, bool) {
	m, ok := b.read(t, f)
	if !ok || m.Word != quantity.NoWord && m.Word != quantity.Zero {
		return known{}, b.cellAt(f.col).Kind == sheet.Blank || ok
	}
	v, exact := m.Exact()
	if !exact {
		if math.IsInf(m.Low, 0) || math.IsInf(m.High, 0) {
			b.problem("bound where one number is needed", trial.MustFix, f.col, quoted(b.text(f.col))+" is only a bound", "type the number that was weighed or measured")
			return known{}, false
		}
		v = (m.Low + m.High) / 2
		b.problem("range where one number is needed", trial.PleaseLook, f.col,
			fmt.Sprintf("%s is read as its middle, %s", quoted(b.text(f.col)), number(v)), "type the one number that was weighed or measured")
	}
	if v > 0 && v < leastGrams {
		b.impossible(f.col, name, fmt.Sprintf("type %s, or 0 for none", name))
		return known{}, false
	}
	if v < low || v > high {
		do := fmt.Sprintf("type %s between %s and %s", name, number(low), number(high))
		if high >= mostGrams {
			do = fmt.Sprintf("type %s between %s g and 100 kg", name, number(low))
		}
		if meant, ok := b.pointMissed(f, v); ok && meant >= low && meant <= high {
			do = fmt.Sprintf("type %s if the point was missed, else %s", number(meant), strings.TrimPrefix(do, "type "))
		}
		if v < 0 && low <= -v && -v <= high {
			do = fmt.Sprintf("type %s if the minus is a slip, or what was weighed or measured", numberText(-v))
		}
		b.problem("impossible value", trial.MustFix, f.col, fmt.Sprintf("%s cannot be %s", quoted(b.text(f.col)), name), do)
		return known{}, false
	}
	return known{v, f.col}, true
}

// pointMissed is a number taken down to the others of its column by moving its
// point, if that is what it takes.
func (b *row) pointMissed(f *field, v float64) (meant float64, ok bool) {
	u := b.table.usual(f.col)
	for _, factor := range [...]float64{10, 100, 1000} {
		if m := v / factor; u.holds(m, m/4) {
			return m, true
		}
	}
	return 0, false
}

// number writes a number for a message: four figures are enough to find it.
func number(v float64) string {
	if a := math.Abs(v); a >= 1000 && a < 1e9 {
		return strconv.FormatFloat(math.Round(v), 'f', -1, 64)
	}
	return strconv.FormatFloat(v, 'g', 4, 64)
}

// grams writes a mass for a message.
func grams(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) + " g"
}

// quoted puts what stood in a cell into a message, shortened.
func quoted(text string) string {
	runes := []rune(strings.Join(strings.Fields(text), " "))
	if len(runes) > 60 {
		runes = append(runes[:59], '…')
	}
	return "“" + string(runes) + "”"
}
