package verdict

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

// Formulas of one column are alike whatever their row; fixed references stay.
func TestPattern(t *testing.T) {
	at := func(row int) handin.Cell { return handin.Cell{At: trial.Place{Row: row, Col: 8}} }
	for _, c := range []struct {
		a    string
		rowA int
		b    string
		rowB int
		same bool
	}{
		{"SUM(C2:F2)", 2, "SUM(C3:F3)", 3, true},
		{"(E2*$Q$1+F2)/G2", 2, "(e9 * $Q$1 + f9) / g9", 9, true},
		{"SUM(C2:F2)", 2, "SUM(C2:F2)", 3, false},
		{"SUM(C2:F2)", 2, "SUM(C3:E3)", 3, false},
		{"H3-H$2", 3, "H4-H$2", 4, true},
		{"H3-H2", 3, "H4-H$2", 4, false},
	} {
		if got := Relative(c.a, at(c.rowA)) == Relative(c.b, at(c.rowB)); got != c.same {
			t.Errorf("%s in row %d and %s in row %d: %v", c.a, c.rowA, c.b, c.rowB, got)
		}
	}
}
