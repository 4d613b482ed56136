package method

import (
	"testing"

	"foamfield/analysis/grade/handin"
)

// TestSquirtsAsRepeats: sentences that call squirts of one siphon repeats, and others with squirts or
// repeats in them.
func TestSquirtsAsRepeats(t *testing.T) {
	for text, want := range map[string]bool{
		"As repeats I used three squirts of one siphon.":                                        true,
		"The repeats are the second and third portion from the same charge.":                    true,
		"Each mix was measured twice: two shots out of the siphon in a row.":                    true,
		"Als Wiederholung nahm ich drei Portionen aus demselben Siphon.":                        true,
		"Las repeticiones son tres chorros del mismo sifón.":                                    true,
		"Two squirts of each siphon were timed; they are not repeats.":                          false,
		"Repeats are new mixes in new charges; two squirts of each siphon were timed.":          false,
		"Each trial has three squirts from one siphon, and I give their mean.":                  false,
		"For the repeats I made a fresh mix each time and took the first squirt of the siphon.": false,
		"The first squirt of every siphon was thrown away.":                                     false,
		"Repeats on another day.":                                                   false,
		"As repeats we took four portions out of the same siphon.":                  true,
		"Each trial was repeated: two shots of one charge.":                         true,
		"The repeats are three dollops pulled one after the other.":                 true,
		"Als Wiederholung dienten drei Portionen aus derselben Füllung.":            true,
		"Pour les répétitions, trois portions du même siphon.":                      true,
		"Repeats: each from a new mix, two squirts of one siphon judged.":           false,
		"Two squirts of one siphon were judged, and their mean taken.":              false,
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
