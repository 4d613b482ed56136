package method

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/record"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
)

// TestSame: two mixes that differ by how a scale is read are one formula, and by a dose that was set are not.
func TestSame(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b [4]float64 // butter, water, two emulsifiers
		same bool
	}{
		{"as weighed before", [4]float64{100, 196.8, 1.6, 1.6}, [4]float64{100, 196.8, 1.6, 1.6}, true},
		{"a tenth of a gram off", [4]float64{100, 196.8, 1.6, 1.6}, [4]float64{100.3, 196.5, 1.6, 1.7}, true},
		{"butter to two grams", [4]float64{100, 196.8, 1.6, 1.6}, [4]float64{102, 195, 1.6, 1.6}, true},
		{"a small step of the dose, in both", [4]float64{100, 197.6, 1.2, 1.2}, [4]float64{100, 197, 1.5, 1.5}, false},
		{"a third of a gram for the other", [4]float64{100, 197.6, 1.2, 1.2}, [4]float64{100, 197.6, 0.9, 1.5}, false},
		{"of a large dose as much again", [4]float64{100, 188, 6, 6}, [4]float64{100, 187.7, 6.1, 6.2}, true},
		{"more butter", [4]float64{100, 196.8, 1.6, 1.6}, [4]float64{110, 186.8, 1.6, 1.6}, false},
	} {
		tab := &handin.Table{Trials: []*handin.Trial{{Trial: &trial.Trial{ID: "1"}}, {Trial: &trial.Trial{ID: "2"}, Index: 1}}}
		for k, name := range []string{"butter", "water", "GMS", "polysorbate 60"} {
			what, _ := ingredient.Lookup(name)
			col := &handin.Column{Header: name, Role: column.IngredientAmount, Field: &scheme.Field{What: what, InGrams: true}}
			for _, v := range []float64{c.a[k], c.b[k]} {
				col.Cells = append(col.Cells, handin.Cell{Kind: sheet.Number, Known: true, Value: v, Low: v, High: v})
			}
			tab.Columns = append(tab.Columns, col)
		}
		for _, x := range tab.Trials {
			x.Table = tab
		}
		d := Of(&handin.Work{Tables: []*handin.Table{tab}}, record.Slips{})
		if got := d[0].Same(0, 1); got != c.same {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestSaysRepeat: columns of one making each, and columns that are not.
func TestSaysRepeat(t *testing.T) {
	for _, c := range []struct {
		heads []string
		want  bool
	}{
		{[]string{"batch 1", "batch 2"}, true},
		{[]string{"Ansatz 1", "Ansatz 2", "Ansatz 3"}, true},
		{[]string{"hold, replicate 1 (min)", "hold, replicate 2 (min)"}, true},
		{[]string{"batch 1", "mean"}, false},
		{[]string{"reading 1", "reading 2"}, false},
		{[]string{"mixing 1", "mixing 2"}, false},
		{[]string{"taster 1", "taster 2"}, false},
	} {
		tab := &handin.Table{}
		for _, h := range c.heads {
			n := handin.Cell{Known: true, Value: 12}
			tab.Columns = append(tab.Columns, &handin.Column{Header: h, Cells: []handin.Cell{n, n}})
		}
		if got := saysRepeat(tab); got != c.want {
			t.Errorf("%v: %v", c.heads, got)
		}
	}
}
