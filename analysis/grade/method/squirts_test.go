package method

import (
	"testing"

	"foamfield/analysis/grade/handin"
)

// TestSquirtsAsRepeats: sentences that call squirts of one siphon repeats, and others with squirts or
// repeats in them.
func TestSquirtsAsRepeats(t *testing.T) {
	for text, want := range map[string]bool{
		"As repeats we took four portions out of the same siphon.":        true,
		"Each trial was repeated: two shots of one charge.":               true,
		"The repeats are three dollops pulled one after the other.":       true,
		"Als Wiederholung dienten drei Portionen aus derselben Füllung.":  true,
		"Pour les répétitions, trois portions du même siphon.":            true,
		"Repeats: each from a new mix, two squirts of one siphon judged.": false,
		"Two squirts of one siphon were judged, and their mean taken.":    false,
		"T4 is a repeat of T3.":                                                     false,
		"The portions from the same siphon are no repeats.":                         false,
		"We repeated T2. For the tasting, portions were set in a row on the bench.": false,
	} {
		w := &handin.Work{Words: []handin.Phrase{{Text: text}}}
		if got := len(squirtsAsRepeats(w)) > 0; got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
