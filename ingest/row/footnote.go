package row

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/remark"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// footnotes adds to a trial's note what footnotes say of its cells, and sets it aside
// where one says that a cell is not true.
func (r *reader) footnotes(rows []int) {
	if len(r.s.Footnotes) == 0 {
		return
	}
	for _, n := range rows {
		for i := range r.s.Fields {
			f := &r.s.Fields[i]
			c := r.s.Found.Typed(n, f.Col-1)
			if c.Kind != sheet.Text {
				continue
			}
			plain, note, ok := kitchen.Footnote(r.s.Footnotes, c.Text)
			if !ok {
				continue
			}
			if !strings.Contains(r.Note, note.Text) {
				r.Note = strings.TrimPrefix(r.Note+"; "+note.Text, "; ")
			}
			at := r.s.At(n, f.Col)
			switch {
			case untrue(r.s, f, note.Text):
				r.say(trial.Fix("footnote", at, say.Quoted(c.Text)+" has a footnote, "+say.Quoted(note.Text)+", so it is not used",
					"type the value that counts without the mark, or leave the cell empty"))
				continue
			case remark.Otherwise(note.Text):
				r.Told(note.Text, note.At)
				continue
			}
			r.say(trial.Check("footnote", at, say.Quoted(c.Text)+" has a footnote, "+say.Quoted(note.Text)+": "+say.Quoted(plain)+" is read"+readBy(f, note.Text),
				"type it without the mark if that is right, else what is meant"))
		}
	}
}

func readBy(f *scheme.Field, note string) string {
	if f.Role == column.Hold && event.AtLeast(note) {
		return " as the least it held"
	}
	return ""
}
