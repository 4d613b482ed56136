package statistic

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

// TestAgree: how many cells of a column are half of another's, and how many different numbers
// that is known from: of one alone nothing follows, nor of weighings that differ by a drop.
func TestAgree(t *testing.T) {
	column := func(xs ...float64) *handin.Column {
		c := &handin.Column{}
		for _, x := range xs {
			c.Cells = append(c.Cells, handin.Cell{Value: x, Known: true, Half: 0.05})
		}
		return c
	}
	half := relation{of: func(a, _ float64) float64 { return a / 2 }}
	for _, c := range []struct {
		col, of   *handin.Column
		within    float64
		n, levels int
	}{
		{column(90, 90, 91, 90), column(180, 180, 180, 180), 0, 3, 1},
		{column(90, 80, 70, 61), column(180, 160, 140, 120), 0, 3, 3},
		{column(90, 90, 70, 70), column(180, 180, 140, 140), 0, 4, 2},
		{column(1, 2, 3), column(180, 160, 140), 0, 0, 0},
		{column(90.1, 89.8, 90.3, 90), column(180.4, 179.9, 180.1, 180), 0.01, 4, 1},
		{column(90.1, 80.1, 70.2, 61.9), column(180.4, 160.9, 140.1, 124), 0.01, 4, 4},
		{column(90.1, 91.2, 92.8, 93.8), column(180.4, 182.1, 185.9, 187.6), 0.01, 4, 2},
	} {
		if n, levels := agree(c.col, c.of, c.of, half, c.within); n != c.n || levels != c.levels {
			t.Errorf("%v: %d, %d", c.col.Cells, n, levels)
		}
	}
}

// TestFollows: formulas that reckon with a column, in its own rows, and those that do not.
func TestFollows(t *testing.T) {
	col := &handin.Column{}
	for row := 2; row < 5; row++ {
		col.Cells = append(col.Cells, handin.Cell{At: trial.Place{Row: row, Col: 3}})
	}
	for formula, want := range map[string]bool{
		"A2/C2*100": true, "ROUND(100*$C$4/B4,1)": true, "A2/AC2": false, "A2/D2*100": false, "C25+1": false, "": false,
	} {
		if got := follows(&handin.Column{Cells: []handin.Cell{{Formula: formula}}}, col); got != want {
			t.Errorf("%q: %v", formula, got)
		}
	}
}
