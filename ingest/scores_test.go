package ingest

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestScoresThatAnswer: a score of which a line explains each step as an answer is that answer; of one
// that it does not explain, or that is of something else, nothing is known.
func TestScoresThatAnswer(t *testing.T) {
	for legend, want := range map[string]string{
		"Siphon score: 3 = came out smooth, 2 = in spurts, 1 = clogged":    "yes partly no",
		"siphon: 3 = came out, 2 = came out but spits, 1 = nothing came":   "yes partly no",
		"siphon score: 3 = came out, 1 = clogged":                          "yes yes unknown",
		"Siphon score: 3 = came out, 2 = see the photographs, 1 = clogged": "yes yes unknown",
		"taste score: 3 = came out, 2 = in spurts, 1 = clogged":            "yes yes unknown",
		"3 = very good, 2 = good, 1 = bad":                                 "yes yes unknown",
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log",
			legend + "\n\nno | fat % of mix | emulsifier % of mix | HLB | siphon score | hold min\n1 | 30 | 1 | 8 | 3 | 14\n2 | 35 | 1 | 8 | 2 | 15\n3 | 40 | 1 | 9 | 1 |\n"}))
		var got []string
		for _, x := range log.Trials {
			answer := x.CameOut.String()
			if answer == "" {
				answer = "unknown"
			}
			got = append(got, answer)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: %v, want %s; %v", legend, got, want, log.Problems)
		}
	}
}

// TestNoQuestionOfWords: a header that says nothing of the mix nor of what happened is no question,
// whatever stands beside its name; one that may be a result is.
func TestNoQuestionOfWords(t *testing.T) {
	for head, asked := range map[string]bool{"tutor initials": false, "Kürzel der Aufsicht": false, "fridge remarks": false, "hold quux min": true} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log",
			"no | fat % of mix | emulsifier % of mix | HLB | came out | drained % | " + head + "\n1 | 30 | 1 | 8 | yes | 14 | 5\n2 | 35 | 1 | 8 | yes | 15 | 6\n3 | 40 | 1 | 9 | no | | 7\n"}))
		if got := len(log.Questions) > 0; got != asked {
			t.Errorf("%s: asked %v, want %v; %v", head, got, asked, log.Problems)
		}
	}
}
