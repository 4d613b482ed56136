package formal

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

func TestHasAim(t *testing.T) {
	for text, want := range map[string]bool{
		"Aim: the right blend": true, "We look at the effect of the fat on the stand time": true, "How rich can it get": true, "Does more ester help?": true, "butter vs oil": true,
		"Ziel: standfester Schaum": true, "But : trouver la bonne dose": true, "Quanto burro ci vuole": true, "Doel: een luchtig schuim": true,
		"Foam log of Ada Moss": false, "Success: holds 20 min, does not split": false, "Safety: vent first but slowly": false, "All at 60 °C, one charger": false,
	} {
		w := &handin.Work{Words: []handin.Phrase{{Text: text}}}
		if got := hasAim(w, nil); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

// A conclusion answers a question, and does not ask it.
func TestHasAimInConclusion(t *testing.T) {
	for text, want := range map[string]bool{
		"Now I know that 9 is the best HLB":                     false,
		"Trial 4, which had 3 g of each, held longest":          false,
		"Compared with trial 2 the effect of the oil was small": false,
		"I wanted to see how rich it can get: up to 45 %":       true,
		"The question was the blend, and trial 4 answers it":    true,
		"Ich wollte wissen, ob mehr Butter hilft: ja":           true,
		"De beste is proef 4":                                   false,
		"Het doel is gehaald met 30 % vet":                      true,
	} {
		at := trial.Place{Row: 30, Col: 1}
		w := &handin.Work{Words: []handin.Phrase{{At: at, Text: text}}}
		if got := hasAim(w, []trial.Place{at}); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
