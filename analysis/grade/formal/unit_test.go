package formal

import (
	"strconv"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// TestOwnUnit: a header in a unit that a line explains, or whose grams stand beside it, is not
// without one.
func TestOwnUnit(t *testing.T) {
	filled := func(header string, values ...float64) *handin.Column {
		c := &handin.Column{Whole: header, Role: column.IngredientAmount, Field: &scheme.Field{InGrams: true}}
		c.Header, c.Field.What.Name = header, "cream"
		for i, v := range values {
			c.Cells = append(c.Cells, handin.Cell{At: trial.Place{Row: i + 2}, Value: v, Known: true, Scale: 1, Half: 0.05})
		}
		return c
	}
	for _, c := range []struct {
		name, line string
		of, beside *handin.Column
		own        bool
	}{
		{"a ladle that is explained", "One ladle is 60 g on my scale", filled("cream ladles", 1, 2, 2), nil, true},
		{"a cup of the house", "1 tasse = 125 ml", filled("cream (tasse)", 1, 2, 3), nil, true},
		{"another word is explained", "1 pod = 8 g", filled("cream", 100, 120, 140), nil, false},
		{"nothing said", "", filled("cream", 100, 120, 140), nil, false},
		{"the grams beside it", "", filled("cream scoops", 1, 2, 3), filled("cream g", 60, 120, 180), true},
		{"other grams beside it", "", filled("cream scoops", 1, 2, 3), filled("cream g", 60, 100, 180), false},
		{"the very same beside it", "", filled("cream again", 60, 120, 180), filled("cream g", 60, 120, 180), false},
	} {
		tab := &handin.Table{Columns: []*handin.Column{c.of}}
		if c.beside != nil {
			tab.Columns = append(tab.Columns, c.beside)
		}
		w := &handin.Work{Words: []handin.Phrase{{Text: c.line}}, Tables: []*handin.Table{tab}}
		if got := inOwnUnit(w, tab, c.of); got != c.own {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestCoded: the steps of a plan have no unit, and a column of grams with a dash in it has one.
func TestCoded(t *testing.T) {
	for _, c := range []struct {
		texts []string
		coded bool
	}{
		{[]string{"-", "+", "0", "+", "-"}, true},
		{[]string{"low", "high", "low"}, true},
		{[]string{"−1", "+1", "0"}, true},
		{[]string{"-", "3", "-", "4"}, false},
		{[]string{"120", "0", "140"}, false},
	} {
		col := &handin.Column{}
		for _, text := range c.texts {
			v, err := strconv.ParseFloat(text, 64)
			col.Cells = append(col.Cells, handin.Cell{Text: text, Value: v, Known: err == nil})
		}
		if got := coded(col); got != c.coded {
			t.Errorf("%v: %v", c.texts, got)
		}
	}
}
