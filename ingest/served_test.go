package ingest

import (
	"path/filepath"
	"testing"

	"foamfield/ingest/trial"
)

// TestServed: a question whether there was foam where it is served is whether it came out, where
// every yes has a hold and no no has one; otherwise, and above other words, it is asked about.
func TestServed(t *testing.T) {
	const rows = `
1 | 44 | 2 | 8 | yes | 14
2 | 50 | 2.4 | 9 | yes | 18
3 | 50 | 3 | 9 | yes | 20
4 | 60 | 3 | 9 | no |`
	for _, c := range []struct {
		head, rows string
		came       bool
	}{
		{"in the glass?", rows, true},
		{"on the plate?", rows, true},
		{"Foam in the bowl?", rows, true},
		{"auf dem Teller?", rows, true},
		{"dans le verre?", rows, true},
		{"sul piatto?", rows, true},
		{"tasted?", rows, false},
		{"in the glass?", rows + " 12", false},
		{"in the glass?", rows + "\n5 | 60 | 3 | 9 | yes |", false},
	} {
		table := "no | walnut oil % | emulsifier % of mix | HLB | " + c.head + " | hold min" + c.rows
		log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"log", table})}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := log.Trials[3].CameOut == trial.No; got != c.came {
			t.Errorf("%q: the no is read as not having come out: %v, want %v", c.head, got, c.came)
		}
	}
}

// TestNotesThatAnswer: notes that say of every trial how it went are what happened, so that fine
// is not split beside others that are; notes of a few trials are notes.
func TestNotesThatAnswer(t *testing.T) {
	for _, c := range []struct {
		notes [5]string
		broke trial.Answer // of the first trial
	}{
		{[5]string{"fine", "very good", "split", "clogged", "fine"}, trial.No},
		{[5]string{"good, a bit wet", "good", "split on the plate", "nothing came, clogged", "fine"}, trial.No},
		{[5]string{"fine", "", "split", "clogged", ""}, trial.Unknown},
		{[5]string{"fine", "new siphon", "split", "juice from Monday", "with Ada"}, trial.Unknown},
		{[5]string{"fine", "very good", "good", "clogged", "fine"}, trial.Unknown},
	} {
		table := "no | walnut oil % | emulsifier % of mix | HLB | hold min | how it went"
		for i, hold := range []string{"14", "18", "3", "", "25"} {
			table += "\n" + string(rune('1'+i)) + " | 50 | 2 | 9 | " + hold + " | " + c.notes[i]
		}
		log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"log", table})}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := log.Trials[0].Broke; got != c.broke {
			t.Errorf("%q: the first trial split: %v, want %v", c.notes, got, c.broke)
		}
	}
}
