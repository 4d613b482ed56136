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
