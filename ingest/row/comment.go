package row

import (
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/event"
	"foamfield/ingest/outcome"
	"foamfield/ingest/remark"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Commented takes what a comment says of the cell it stands at: that its number is not true, is
// a bound, or is in doubt. Whoever says that something else went in speaks of the trial.
func (l *Line) Commented(s *scheme.Scheme, col int, text string) {
	at := s.At(l.Recipe.Row, col)
	i := slices.IndexFunc(s.Fields, func(f scheme.Field) bool { return f.Col == col })
	if i < 0 {
		if remark.Otherwise(text) {
			l.Told(text, at)
		}
		return
	}
	f := &s.Fields[i]
	number := f.Want != units.Any && s.Text(l.Recipe.Row, col) != ""
	switch {
	case l.Void != "":
	case untrue(s, f, text):
		l.forget(outcome.Cell{Row: l.Recipe.Row, Col: col})
		l.Findings = append(l.Findings, trial.Fix("corrected by its note", at, "a comment says "+say.Quoted(text)+", so "+say.Quoted(s.Text(l.Recipe.Row, col))+" is not used",
			"type the value that counts, or leave the cell empty, and take the comment away"))
	case number && remark.Asks(s, text):
		l.doubt(s, at, col, text)
	case remark.Otherwise(text):
		l.Told(text, at)
	case f.Role == column.Hold && l.boundedBy(s, text, "a comment"):
	case number && remark.Doubts(text):
		l.doubt(s, at, col, text)
	}
}

func (l *Line) doubt(s *scheme.Scheme, at trial.Place, col int, text string) {
	l.Findings = append(l.Findings, trial.Check("value in doubt", at, "a comment says "+say.Quoted(text)+"; "+say.Quoted(s.Text(l.Recipe.Row, col))+" is read",
		"type the value that counts, and take the comment away"))
}

// forget drops what was measured in a cell.
func (l *Line) forget(cell outcome.Cell) {
	seen := &l.Seen
	for _, m := range [...]*outcome.Measured{&seen.Hold, &seen.LastOK, &seen.GoneBy, &seen.Sample} {
		if m.Cell == cell {
			*m = outcome.Measured{}
		}
	}
	seen.Drains = slices.DeleteFunc(seen.Drains, func(d outcome.Drain) bool { return d.Cell == cell })
}

// untrue reports a footnote or a comment on something measured that says that it is not true. What
// was in the mix is another matter: then nobody knows the trial.
func untrue(s *scheme.Scheme, f *scheme.Field, note string) bool {
	switch f.Role {
	case column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.OilAmount, column.SampleMass:
		return remark.Otherwise(note) && !remark.OfMix(s, note) && !slices.Contains(event.Of(note), event.Void)
	}
	return false
}
