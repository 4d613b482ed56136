package sentence

import (
	"testing"

	"foamfield/analysis/grade/handin"
	"foamfield/ingest/trial"
)

// TestPlacesOnPlanSheet: on a sheet of a plan nothing is concluded but beside a label that says so.
func TestPlacesOnPlanSheet(t *testing.T) {
	for _, c := range []struct {
		sheet, label string
		want         int
	}{
		{"Plan", "Conclusion", 1},
		{"Plan", "Fazit", 1},
		{"Blad", "Conclusie", 1},
		{"Blad", "Doel", 0},
		{"Plan", "Aim", 0},
		{"Plan", "Method", 0},
		{"Method", "What I found", 1},
		{"Notes", "Conclusion", 1},
		{"Notes", "Aim", 0},
	} {
		at := func(col int) trial.Place { return trial.Place{File: "a.xlsx", Sheet: c.sheet, Row: 4, Col: col} }
		text := "The third mix held longest."
		w := &handin.Work{Words: []handin.Phrase{{At: at(1), Text: c.label, Right: text, RightAt: at(2)}, {At: at(2), Text: text}}}
		if _, places := SentencesOf(w); (len(places) > 0) != (c.want > 0) {
			t.Errorf("%s, %s: %v", c.sheet, c.label, places)
		}
	}
}
