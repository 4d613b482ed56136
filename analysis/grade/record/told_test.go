package record

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// TestOrderIn: notes that say of which emulsifier there is more, and notes that do not.
func TestOrderIn(t *testing.T) {
	for _, c := range []struct {
		note, more, less string
		ok               bool
	}{
		{"three times as much ester as GMS", "ester", "GMS", true},
		{"3 x as much polysorbate as mono", "polysorbate", "mono", true},
		{"twice the ester of the GMS, looked fine", "ester", "the GMS", true},
		{"more polysorbate than stearate this time", "polysorbate", "stearate this time", true},
		{"less GMS than ester", "ester", "GMS", true},
		{"mostly polysorbate", "polysorbate", "", true},
		{"mainly the sucrose ester; slow to fall", "sucrose ester", "", true},
		{"only a little of the GMS", "", "GMS", true},
		{"held a bit longer than 4", "", "", false},
		{"card 7 once more", "", "", false},
	} {
		o, ok := orderIn(c.note)
		if ok != c.ok || o.more != c.more || o.less != c.less {
			t.Errorf("%q: %+v, %v", c.note, o, ok)
		}
	}
}

// TestAgainstRatio: plans of two grams that the log has the other way round, and plans that it keeps to.
func TestAgainstRatio(t *testing.T) {
	for plan, want := range map[string]bool{
		"7 : 1": true, "7:1": true, "3.5 : 0.5": true, "7 g + 1 g": true,
		"1 : 7": false, "4 : 4": false, "6 : 2": false, "none": false, "7:10": false,
	} {
		at := func(col int) trial.Place { return trial.Place{File: "a.xlsx", Sheet: "Log", Row: 2, Col: col} }
		gram := func(col int, x float64) *handin.Column {
			f := &scheme.Field{InGrams: true, What: ingredient.Ingredient{Kind: ingredient.Emulsifier, Name: "e"}}
			return &handin.Column{Role: column.IngredientAmount, Field: f, Cells: []handin.Cell{{At: at(col), Value: x, Known: true}}}
		}
		r := &reader{meant: map[trial.Place]float64{}, said: map[trial.Place]bool{}}
		r.againstRatio(&handin.Table{Columns: []*handin.Column{gram(2, 1), gram(3, 7)}}, 0, handin.Row{Cells: []handin.Cell{{Text: "T3"}, {Text: plan}}})
		if got := len(r.out) > 0; got != want {
			t.Errorf("%q: %v", plan, got)
		}
	}
}
