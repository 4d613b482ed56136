package survey

import (
	"testing"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestLegend: what a line beside the table makes of the marks of a column, a line a
// legend; a mark that is not listed answers nothing.
func TestLegend(t *testing.T) {
	const yes, partly, no = trial.Yes, trial.Partly, trial.No
	for _, c := range []struct {
		line, header string
		role         column.Role
		typed        []string
		as           map[string]trial.Answer
	}{
		{"✔ = came out, ✘ = clogged, (✔) = only partly", "siphon", column.CameOut, []string{"✔", "✘", "(✔)"}, map[string]trial.Answer{"✔": yes, "✘": no, "(✔)": partly}},
		{"split: o = no, x = yes", "split", column.Broke, []string{"o", "x", "-"}, map[string]trial.Answer{"o": no, "x": yes}},
		{"split: o = no, x = yes", "came out", column.CameOut, []string{"o", "x"}, nil},
		{"S = split (oil to be seen)    · = not split", "Split", column.Broke, []string{"S", "·"}, map[string]trial.Answer{"s": yes, "·": no}},
		{"siphon: 👍 came out, 👌 partly, 👎 clogged", "siphon", column.CameOut, []string{"👍", "👌", "👎"}, map[string]trial.Answer{"👍": yes, "👌": partly, "👎": no}},
		{"x = yes, o = no; x = no, o = yes", "split", column.Broke, []string{"x", "o"}, nil},
		{"S = esce, T = si tappa, N = non esce", "Uscita", column.CameOut, []string{"S", "T", "N"}, map[string]trial.Answer{"s": yes, "t": no, "n": no}},
		{"G = came out, T = went to the dogs, N = clogged", "siphon", column.CameOut, []string{"G", "T", "N"}, map[string]trial.Answer{"g": yes, "t": trial.Unknown, "n": no}},
		{"G = came out, T = went to the dogs, N = clogged", "siphon", column.CameOut, []string{"G", "N"}, map[string]trial.Answer{"g": yes, "n": no}},
		{"siphon: 3 = came out smooth, 2 = hardly comes, 1 = clogged", "siphon score", column.CameOut, []string{"3", "2", "1"}, map[string]trial.Answer{"3": yes, "2": partly, "1": no}},
		{"siphon: 2 = came out but spits, 1 = clogged", "siphon", column.CameOut, []string{"2", "1"}, map[string]trial.Answer{"2": partly, "1": no}},
		{"Legend: 2 = all out, 1 = half out, 0 = blocked", "siphon", column.CameOut, []string{"2", "1", "0"}, map[string]trial.Answer{"2": yes, "1": partly, "0": no}},
		{"2 = all out, 1 = half out, 0 = blocked", "split", column.Broke, []string{"0", "1"}, nil},
		{"x = yes, o = no", "split", column.Broke, []string{"x", "o"}, map[string]trial.Answer{"x": yes, "o": no}},
		{"M = Max, K = Kim", "split", column.Broke, []string{"M", "K"}, nil},
	} {
		s := &sheet.Sheet{Name: "log"}
		found := &grid.Table{Sheet: s, HeaderRow: 1, Heads: []grid.Head{{Col: 1, Row: 1, Text: c.header}}, Places: [][]grid.Place{nil}}
		for i, text := range c.typed {
			s.Rows = append(s.Rows, sheet.Row{Number: i + 2, Cells: []sheet.Cell{{Col: 1, Kind: sheet.Text, Text: text}}})
			found.Rows = append(found.Rows, grid.Row{Number: i + 2})
			found.Places[0] = append(found.Places[0], grid.At(i, 1))
		}
		m := &surveyor{Scheme: &scheme.Scheme{Found: found}, kitchen: &kitchen.Sheets{Lines: []kitchen.Line{{Text: c.line}}}}
		f := &scheme.Field{Col: 1, Header: c.header}
		f.Role = c.role
		m.legend(f)
		if len(f.Legend) != len(c.as) {
			t.Errorf("%q of %q: %v, want %v", c.line, c.header, f.Legend, c.as)
			continue
		}
		for mark, a := range c.as {
			if got, listed := f.Legend[mark]; got != a || !listed {
				t.Errorf("%q of %q: %q is %v, want %v", c.line, c.header, mark, f.Legend[mark], a)
			}
		}
	}
}
