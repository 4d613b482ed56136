package cells

import (
	"testing"

	"foamfield/ingest/sheet"
)

// The number that counts for one that is struck out stands at the front of the words beside it.
func TestBesideStruckOut(t *testing.T) {
	for _, c := range []struct {
		beside sheet.Cell
		want   float64
		ok     bool
	}{
		{sheet.Cell{Kind: sheet.Text, Text: "2.5 g, misread the scale"}, 2.5, true},
		{sheet.Cell{Kind: sheet.Text, Text: "corrected: 2,5"}, 2.5, true},
		{sheet.Cell{Kind: sheet.Text, Text: "14 min"}, 14, true},
		{sheet.Cell{Kind: sheet.Text, Text: "smooth, held 14 min"}, 0, false},
		{sheet.Cell{Kind: sheet.Number, Number: 3}, 0, false},
		{sheet.Cell{}, 0, false},
	} {
		c.beside.Col = 3
		s := &sheet.Sheet{Rows: []sheet.Row{{Number: 4, Cells: []sheet.Cell{{Col: 2, Kind: sheet.Number, Number: 9, Flags: sheet.Struck}, c.beside}}}}
		if v, ok := besideIt(s, 4, 2); v != c.want || ok != c.ok {
			t.Errorf("%q: %v, %v", c.beside.Text, v, ok)
		}
	}
	for head, want := range map[string]bool{"Hold, corrected": true, "korrigiert (min)": true, "tenue corrigée": true, "Split": false, "incorrect": false, "hold 2": false} {
		s := &sheet.Sheet{Rows: []sheet.Row{{Number: 2, Cells: []sheet.Cell{{Col: 2, Kind: sheet.Text, Text: "Hold"}, {Col: 3, Kind: sheet.Text, Text: head}}},
			{Number: 3, Cells: []sheet.Cell{{Col: 3, Kind: sheet.Text, Text: "min"}}}, {Number: 4, Cells: []sheet.Cell{{Col: 2, Kind: sheet.Number, Number: 81, Flags: sheet.Struck}, {Col: 3, Kind: sheet.Number, Number: 18}}}}}
		if v, ok := besideIt(s, 4, 2); ok != want || ok && v != 18 {
			t.Errorf("%q: %v, %v", head, v, ok)
		}
	}
}
