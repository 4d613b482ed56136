package tongue

import "testing"

func TestEnglish(t *testing.T) {
	for _, c := range []struct{ said, is string }{
		{"Plus il y a de beurre, plus la mousse tient longtemps.", "the more butter, the longer it holds."},
		{"Plus la teneur en matière grasse augmente, plus la mousse tient.", "the higher the fat, the longer it holds."},
		{"Plus le HLB est élevé, plus la mousse tient.", "the higher the HLB, the longer it holds."},
		{"L'essai 4 tient le plus longtemps.", "the trial 4 holds longest."},
		{"Je mehr Butter, desto länger hält der Schaum.", "the more butter, the longer it holds."},
		{"Versuch 3 hielt am längsten.", "trial 3 held longest."},
		{"Cuanta más mantequilla, más tiempo aguanta la espuma.", "the more butter, the longer it holds the foam."},
		{"Hoe hoger het vetgehalte, hoe korter het schuim staat.", "the higher the fat, the shorter it holds."},
		{"La prova 4 ha tenuto più a lungo della prova 2.", "the trial 4 held longer than trial 2."},
		{"Hasta 40 % de grasa aguanta.", "to 40 % of fat holds."},
		{"La prueba 4 fue la que más aguantó.", "the trial 4 was the held longest."},
		{"7 essais sur 10 réussissent.", "7 of 10 trials pass."},
		{"Più burro c'è, più a lungo tiene la schiuma.", "the more butter c'is, the longer it holds the foam."},
		{"The trial with GMS held longest.", "The trial with GMS held longest."},
		{"E ha tenuto 20 minuti", "E held 20 min"},
		{"T5 = best", "T5 = best"},
	} {
		if got := English(c.said); got != c.is {
			t.Errorf("%q: %q, not %q", c.said, got, c.is)
		}
	}
}
