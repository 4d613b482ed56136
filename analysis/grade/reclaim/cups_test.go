package reclaim

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// TestReclaimCups: heads of the two weights that an overrun comes from, and of what is none.
func TestReclaimCups(t *testing.T) {
	cells := func(xs ...float64) (out []handin.Cell) {
		for _, x := range xs {
			out = append(out, handin.Cell{Kind: sheet.Number, Value: x, Known: true, Scale: 1})
		}
		return out
	}
	for _, c := range []struct {
		mix, foam string
		of        []float64 // the foam's grams, beside 120 and 118 of the mix
		want      bool
	}{
		{"cup of mix g", "cup of foam g", []float64{50, 61}, true},
		{"glass of mix (g)", "glass of foam (g)", []float64{50, 61}, true},
		{"200 ml mix (g)", "200 ml foam (g)", []float64{50, 61}, true},
		{"beaker, liquid [g]", "beaker, foam [g]", []float64{50, 61}, true},
		{"vaso de mezcla (g)", "vaso de espuma (g)", []float64{50, 61}, true},
		{"gobelet de mélange (g)", "gobelet de mousse (g)", []float64{50, 61}, true},
		{"beker mengsel g", "beker schuim g", []float64{50, 61}, true},
		{"cup of mix g", "cup of foam g", []float64{50, 161}, false}, // no foam weighs more than its mix
		{"total mix g", "cup of foam g", []float64{50, 61}, false},
		{"cup of mix", "cup of foam", []float64{50, 61}, true}, // the overrun is that of the two
		{"cup of mix", "cup of foam", []float64{40, 47}, false},
		{"cup of mix g", "cup of foam g", []float64{40, 47}, true}, // an overrun may be wrong
		{"tazza di miscela", "tazza di schiuma", []float64{50, 61}, true},
		{"cup of mix g", "drained from the cup of foam g", []float64{50, 61}, false},
		{"cup of mix g", "cup of foam and plate g", nil, false},
	} {
		overrun := &handin.Column{Header: "overrun %", Role: column.Overrun, Cells: cells(140, 93)}
		a, b := &handin.Column{Header: c.mix, Whole: c.mix, Cells: cells(120, 118)}, &handin.Column{Header: c.foam, Whole: c.foam, Cells: cells(c.of...)}
		if c.of == nil {
			b.Cells = make([]handin.Cell, 2)
		}
		reclaimCups(&handin.Table{Columns: []*handin.Column{overrun, a, b}})
		if got := a.Role == column.CupLiquid && b.Role == column.CupFoam; got != c.want {
			t.Errorf("%q, %q: %v", c.mix, c.foam, got)
		}
	}
}

// TestReclaimSample: the foam that was put to drain, beside the cup of foam that was its rival.
func TestReclaimSample(t *testing.T) {
	cells := func(xs ...float64) (out []handin.Cell) {
		for _, x := range xs {
			out = append(out, handin.Cell{Kind: sheet.Number, Value: x, Known: true, Scale: 1})
		}
		return out
	}
	for head, want := range map[string]bool{
		"Foam put to drain (g)": true, "foam on the sieve (g)": true, "foam weighed (g)": true, "foam": false, "price of foam (g)": false,
	} {
		overrun := &handin.Column{Header: "overrun %", Role: column.Overrun, Cells: cells(140, 93)}
		a, b := &handin.Column{Header: "cup of mix g", Whole: "cup of mix g", Cells: cells(120, 118)}, &handin.Column{Header: "cup of foam g", Whole: "cup of foam g", Cells: cells(50, 61)}
		c := &handin.Column{Header: head, Whole: head, Role: column.Unused, Cells: cells(40, 41)}
		reclaimCups(&handin.Table{Columns: []*handin.Column{overrun, a, b, c}})
		if got := c.Role == column.SampleMass; got != want {
			t.Errorf("%q: %v", head, got)
		}
	}
}
