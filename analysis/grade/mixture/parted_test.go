package mixture

import (
	"math"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/analysis/grade/verdict"
	"foamfield/ingest/ingredient"
)

// TestPartedOut: a column that holds a part of the one before it, and columns of their own.
func TestPartedOut(t *testing.T) {
	for _, c := range []struct {
		first, second string
		grams         [2]float64
		sum, blend    float64
	}{
		{"Polysorbate solution (g)", "of which polysorbate 60 (g)", [2]float64{20, 2}, 20, 14.9},
		{"Tensidlösung (g)", "davon Polysorbat 60 (g)", [2]float64{20, 3}, 20, 14.9},
		{"Solución (g)", "(de la cual polisorbato) g", [2]float64{10, 1}, 10, 14.9},
		{"Polysorbate 60 (g)", "Polysorbate 60 of Monday (g)", [2]float64{2, 2}, 4, 14.9},
		{"Polysorbate 60 (g)", "of which polysorbate 60, lot B (g)", [2]float64{2, 3}, 5, 14.9}, // more than the whole is no part of it
	} {
		weighed := []*handin.Column{{Header: c.first}, {Header: c.second}}
		m := Mixture{Sum: c.grams[0] + c.grams[1]}
		for _, g := range c.grams {
			hlb := verdict.Exactly(14.9)
			m.Parts = append(m.Parts, Part{Name: "polysorbate 60", What: &ingredient.Ingredient{Kind: ingredient.Emulsifier}, Grams: g, HLB: &hlb, Fat: verdict.Exactly(0)})
		}
		m.partedOut(weighed)
		em := m.Of(IsEmulsifier)
		h, ok := BlendOf(&m, nil)
		if m.Sum != c.sum || !ok || math.Abs(h-c.blend) > 1e-9 || m.Sum < c.grams[0]+c.grams[1] && em != c.grams[1] {
			t.Errorf("%s, %s: sum %v, emulsifier %v, blend %v", c.first, c.second, m.Sum, em, h)
		}
	}
}
