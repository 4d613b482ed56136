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
		amount := func(what string, xs []float64) *handin.Column {
			i, _ := ingredient.Lookup(what)
			col := &handin.Column{Role: column.IngredientAmount, Field: &scheme.Field{InGrams: true, What: i}}
			for k, x := range xs {
				col.Cells = append(col.Cells, handin.Cell{At: trial.Place{Row: k + 1}, Kind: sheet.Number, Value: x, Known: true})
			}
			return col
		}
		rest := make([]float64, len(c.fat))
		for k, x := range c.fat {
			rest[k] = 300 - x
		}
		tab := &handin.Table{Columns: []*handin.Column{amount("oil", c.fat), amount("water", rest)}}
		for k, note := range c.notes {
			tab.Trials = append(tab.Trials, &handin.Trial{Trial: &trial.Trial{Note: note}, Index: k, Table: tab})
		}
		w := &handin.Work{Tables: []*handin.Table{tab}, Words: []handin.Phrase{{Text: c.said}}}
		if got := squirts(&evidence.Trials{Work: w, Designs: method.Of(w, record.Slips{})}); (len(got) > 0) != c.asked {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
