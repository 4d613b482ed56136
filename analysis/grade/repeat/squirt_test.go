package repeat

import (
	"testing"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/method"
	"foamfield/analysis/grade/record"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestSquirts: rows that are squirts of one siphon, and rows beside which a formula was made again.
func TestSquirts(t *testing.T) {
	const again = "second squirt of the same siphon"
	for _, c := range []struct {
		name  string
		fat   []float64
		notes []string
		said  string
		asked bool
	}{
		{"a squirt for a repeat", []float64{100, 120, 120}, []string{"", "", again}, "", true},
		{"made again all the same", []float64{100, 120, 120, 120}, []string{"", "", again, ""}, "", false},
		{"a note that says it is none", []float64{100, 120, 120}, []string{"", "", again + ", no repeat"}, "", false},
		{"a line that says so", []float64{100, 120, 120}, []string{"", "", again}, "Second squirts are not repeats.", false},
		{"asked of the sentence", []float64{100, 120, 120}, []string{"", "", again}, "The repeats are squirts of one siphon.", false},
		{"another mix", []float64{100, 120, 140}, []string{"", "", again}, "", false},
	} {
		tab := pairOf(c.fat, c.notes)
		w := &handin.Work{Tables: []*handin.Table{tab}, Words: []handin.Phrase{{Text: c.said}}}
		if got := squirts(&evidence.Trials{Work: w, Designs: method.Of(w, record.Slips{})}); (len(got) > 0) != c.asked {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestCalledRepeats: sentences that call squirts of one siphon repeated are asked themselves.
func TestCalledRepeats(t *testing.T) {
	pulled := []string{"", "", "2nd squirt, same siphon", "3rd squirt, same siphon"}
	for _, c := range []struct {
		said  string
		notes []string
		row   int // of what is asked
	}{
		{"Mix B was made in repeats: B1, B2 and B3, which agree well.", pulled, 30},
		{"B1 is repeated twice, by B2 and B3.", pulled, 30},
		{"B1 held as long as B2 and B3.", pulled, 3}, // it calls nothing a repeat
		{"B2 and B3 are not repeats of B1.", pulled, 3},
		{"Next B1 should be repeated, and B2 tested.", pulled, 3},
		{"B1 was repeated: B2 is a fresh mix.", pulled, 3},
		{"A1 was repeated as B1.", pulled, 3}, // another formula
		{"B1 was repeated: B2 and B3.", []string{"", "", "new charge", "other day"}, 0},
		{"B1 was repeated: B2, B3.", []string{"", "", "2nd squirt, same siphon", "new charge"}, 0},
	} {
		tab := pairOf([]float64{100, 120, 120, 120}, c.notes)
		for k, id := range []string{"A1", "B1", "B2", "B3"} {
			tab.Trials[k].ID = id
		}
		w := &handin.Work{Tables: []*handin.Table{tab}, Words: []handin.Phrase{{Text: c.said, At: trial.Place{Row: 30, Col: 1}}}}
		row := 0
		if got := squirts(&evidence.Trials{Work: w, Designs: method.Of(w, record.Slips{})}); len(got) > 0 {
			row = got[0].At.Row
		}
		if row != c.row {
			t.Errorf("%q, %q: asked in row %d, want %d", c.said, c.notes, row, c.row)
		}
	}
}

// pairOf is a table of mixes of fat and water, 300 g each, with their notes.
func pairOf(fat []float64, notes []string) *handin.Table {
	amount := func(what string, xs []float64) *handin.Column {
		i, _ := ingredient.Lookup(what)
		col := &handin.Column{Role: column.IngredientAmount, Field: &scheme.Field{InGrams: true, What: i}}
		for k, x := range xs {
			col.Cells = append(col.Cells, handin.Cell{At: trial.Place{Row: k + 1}, Kind: sheet.Number, Value: x, Known: true})
		}
		return col
	}
	rest := make([]float64, len(fat))
	for k, x := range fat {
		rest[k] = 300 - x
	}
	tab := &handin.Table{Columns: []*handin.Column{amount("oil", fat), amount("water", rest)}}
	for k, note := range notes {
		tab.Trials = append(tab.Trials, &handin.Trial{Trial: &trial.Trial{Note: note}, Index: k, Table: tab})
	}
	return tab
}
