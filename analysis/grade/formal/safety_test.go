package formal

import (
	"strings"
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

// TestSaysSafety: whatever stands beside or right under a heading of safety is about it; words
// elsewhere have to say so themselves.
func TestSaysSafety(t *testing.T) {
	for _, c := range []struct {
		words []string // one a row; "label|beside"
		want  bool
	}{
		{[]string{"Safety", "Nozzle towards the sink, pans handled with a cloth."}, true},
		{[]string{"Sécurité", "Attendre le silence du siphon ; manches longues."}, true},
		{[]string{"Safety|Nozzle towards the sink"}, true},
		{[]string{"Method", "Goggles throughout."}, true},
		{[]string{"Safety", "", "Conclusion", "T2 held longest of all."}, false},
		{[]string{"Safety", "Conclusion"}, false},
		{[]string{"Method", "Nozzle towards the sink, pans handled with a cloth."}, false},
	} {
		w := &handin.Work{}
		for i, text := range c.words {
			if text == "" {
				continue
			}
			label, right, _ := strings.Cut(text, "|")
			w.Words = append(w.Words, handin.Phrase{At: trial.Place{Row: i + 1, Col: 1}, Text: label, Right: right})
		}
		if got := saysSafety(w); got != c.want {
			t.Errorf("%q: %v", c.words, got)
		}
	}
}
