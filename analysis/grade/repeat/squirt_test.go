package repeat

import (
	"testing"

	"foamfield/analysis/grade/evidence"
	"foamfield/analysis/grade/handin"
)

// TestSquirts: words by which readings of one siphon are taken for repeats, and words of right work.
func TestSquirts(t *testing.T) {
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
		"Repeats on another day.": false,
	} {
		w := &handin.Work{Words: []handin.Phrase{{Text: text}}}
		if got := len(squirts(&evidence.Trials{Work: w})) > 0; got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
