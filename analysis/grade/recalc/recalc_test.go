package recalc

import (
	"math"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"

	"pgregory.net/rapid"
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
		if got := relative(c.a, at(c.rowA)) == relative(c.b, at(c.rowB)); got != c.same {
			t.Errorf("%s in row %d and %s in row %d: %v", c.a, c.rowA, c.b, c.rowB, got)
		}
	}
}

func emulsifierPart(name string, grams, hlb float64) part {
	a := exactly(hlb)
	return part{name: name, what: &ingredient.Ingredient{Name: name, Kind: ingredient.Emulsifier}, grams: grams, hlb: &a, fat: exactly(0)}
}

// Whatever two emulsifiers weigh: the blend lies between their HLBs, typed rightly it is
// right, and typed as the plain mean it is found to be that, unless they weigh alike.
func TestBlendAndItsPlainMean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0.5, 20).Draw(t, "a"), rapid.Float64Range(0.5, 20).Draw(t, "b")
		low, high := rapid.Float64Range(1, 8).Draw(t, "low"), rapid.Float64Range(9, 18).Draw(t, "high")
		m := mixture{parts: []part{emulsifierPart("one", a, low), emulsifierPart("other", b, high)}, sum: 300, total: 300}
		h, ok := blendOf(&m, nil)
		if !ok || h < low || h > high {
			t.Fatalf("%v", h)
		}
		e := expected{rights: []accepted{exactly(h)}, ways: blendWays(&m, nil), within: 0.1}
		cell := func(x float64) handin.Cell {
			return handin.Cell{Value: x, Known: true, Half: 0.005, Scale: 1}
		}
		if _, wrong := judge(cell(math.Round(100*h)/100), e); wrong {
			t.Fatalf("%v is called wrong", h)
		}
		mean := (low + high) / 2
		if v, wrong := judge(cell(mean), e); math.Abs(mean-h) > 0.1001 && (!wrong || v.way == nil || v.way.class != "plain mean") {
			t.Fatalf("the plain mean %v of %v: %+v", mean, h, v.way)
		}
	})
}
