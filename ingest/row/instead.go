package row

import (
	"math"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/outcome"
	"foamfield/ingest/remark"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// instead is a cell of the row for which a note gives the number that counts.
type instead struct {
	col  int // 0 = none
	text string
	note outcome.Cell
}

// findInstead looks for a note of a row that replaces one of its numbers: with the very
// number that stands there, or where that is struck out.
func (r *reader) findInstead(n int) {
	r.instead = instead{}
	for i := range r.s.Fields {
		note := &r.s.Fields[i]
		if note.Role != column.Note {
			continue
		}
		said, ok := remark.ReplacedBy(r.s.Text(n, note.Col))
		if !ok {
			continue
		}
		if f := r.named(said.Name); f != nil && r.stands(n, f, said) {
			r.instead = instead{f.Col, said.Counts, outcome.Cell{Row: n, Col: note.Col}}
			return
		}
	}
}

// named is the one column of numbers that a name is of.
func (r *reader) named(name string) (found *scheme.Field) {
	what, known := ingredient.Lookup(name)
	role := column.Read(name)
	for i := range r.s.Fields {
		f := &r.s.Fields[i]
		ingredients := f.Role == column.IngredientAmount && (say.Fold(f.Called()) == name || known && f.What.Name == what.Name)
		if f.Want == units.Any || !ingredients && say.Fold(f.Words) != name && (!role.Sure() || role.Role != f.Role || f.Role == column.IngredientAmount) {
			continue
		}
		if found != nil {
			return nil
		}
		found = f
	}
	return found
}

// stands reports whether a cell has the number that is replaced.
func (r *reader) stands(n int, f *scheme.Field, said remark.Replaced) bool {
	c := r.s.Cell(n, f.Col)
	if !said.Both {
		return c.Flags&sheet.Struck != 0 && !r.crossed
	}
	v, ok := scheme.BareNumber(r.s.Found.Sheet, c)
	return ok && math.Abs(v-said.Instead) < 1e-9*math.Max(1, v)
}

// tell says which number is read in place of the one in the cell.
func (r *reader) tell(f *scheme.Field) {
	r.say(trial.Check("corrected by its note", r.at(f), r.quoted(f)+" is read as "+r.instead.text+", as the note says",
		"type "+r.instead.text+" in the cell and take the words away"))
}
