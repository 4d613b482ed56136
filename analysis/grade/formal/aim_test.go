package formal

import (
	"testing"

	"foamfield/analysis/grade/handin"
)

func TestHasAim(t *testing.T) {
	for text, want := range map[string]bool{
		"Aim: the right blend": true, "We look at the effect of the fat on the stand time": true, "How rich can it get": true, "Does more ester help?": true, "butter vs oil": true,
		"Ziel: standfester Schaum": true, "But : trouver la bonne dose": true, "Quanto burro ci vuole": true, "Doel: een luchtig schuim": true,
		"Foam log of Ada Moss": false, "Success: holds 20 min, does not split": false, "Safety: vent first but slowly": false, "All at 60 °C, one charger": false,
	} {
		w := &handin.Work{Words: []handin.Phrase{{Text: text}}}
		if got := hasAim(w); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
