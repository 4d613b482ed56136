package ingest

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/trial"
)

// TestCommentsAtCells: a comment that says which number was meant puts it right, and is said; one
// that says only that the number is not true leaves what was measured unknown, and sets the trial aside
// if it is of the mix; one that asks, or says that a number is not well known, is said; one that says how the watch ran
// makes the hold a bound; others change nothing. So on cards and in the second table of a sheet.
func TestCommentsAtCells(t *testing.T) {
	const heads, card = "no | walnut oil g | broth g | GMS HLB 3.8 g | came out | hold min\n", "walnut oil g | 120\nbroth g | 176\nGMS HLB 3.8 g | 4\ncame out | yes\nhold min | 14\n"
	const rows = "1 | 120 | 176 | 4 | yes | 14\n2 | 120 | 175 | 5 | yes | 91\n"
	for _, c := range []struct {
		name, log, cell, comment string
		trial                    int
		hold                     trial.Interval // none = nothing
		aside, said              bool
	}{
		{"what was meant", heads + rows, "F3", "typed wrong, it was 19", 1, trial.Interval{Low: 19, High: 19}, false, true},
		{"not true", heads + rows, "F3", "typed wrong", 1, trial.Interval{}, false, true},
		{"not to be trusted", heads + rows, "F3", "tippte auf 19, unzuverlässig", 1, trial.Interval{}, false, true},
		{"not true of the mix", heads + rows, "B3", "typed wrong, 19?!", 1, trial.Interval{Low: 91, High: 91}, false, true},
		{"not true of the mix", heads + rows, "B3", "typed wrong", 1, trial.Interval{Low: 91, High: 91}, true, true},
		{"another mix", heads + rows, "F3", "typed wrong: forgot the GMS", 1, trial.Interval{Low: 91, High: 91}, true, true},
		{"only asked", heads + rows, "B3", "was this 190?", 1, trial.Interval{Low: 91, High: 91}, false, true},
		{"in doubt", heads + rows, "F3", "au juger, environ 19", 1, trial.Interval{Low: 91, High: 91}, false, true},
		{"of the watch", heads + rows, "F3", "pressed the stopwatch rather late", 1, trial.Interval{Low: 91, High: math.Inf(1)}, false, true},
		{"of the watch", heads + rows, "F3", "chrono arrêté trop tard", 1, trial.Interval{High: 91}, false, true},
		{"of no cell's number", heads + rows, "F3", "nice peaks", 1, trial.Interval{Low: 91, High: 91}, false, false},
		{"on a card", "Go 1\n" + card + "\nGo 2\n" + strings.Replace(card, "| 14", "| 91", 1), "B13", "typed wrong, it was 19", 1, trial.Interval{Low: 19, High: 19}, false, true},
		{"in a second table", heads + rows + "\n" + strings.Replace(heads, "broth", "tea", 1) + strings.Replace(rows, "1 |", "3 |", 1), "F7", "typed wrong, it was 19", 3, trial.Interval{Low: 19, High: 19}, false, true},
	} {
		path := writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.log})
		book, err := excelize.OpenFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := book.AddComment("Log", excelize.Comment{Cell: c.cell, Author: "x", Paragraph: []excelize.RichTextRun{{Text: c.comment}}}); err != nil {
			t.Fatal(err)
		}
		if err := book.Save(); err != nil {
			t.Fatal(err)
		}
		book.Close()
		log := mustReadPath(t, path)
		if c.trial >= len(log.Trials) {
			t.Errorf("%s: %d trials", c.name, len(log.Trials))
			continue
		}
		x := &log.Trials[c.trial]
		var hold trial.Interval
		if x.Hold != nil {
			hold = *x.Hold
		}
		if x.Used() == c.aside || hold != c.hold {
			t.Errorf("%s: hold %v, aside %q", c.name, x.Hold, x.Aside)
		}
		said := false
		for _, p := range log.Problems {
			said = said || strings.Contains(p.Read, "19") || strings.Contains(p.Read, c.comment)
		}
		if said != c.said {
			t.Errorf("%s: said %v, want %v; %v", c.name, said, c.said, log.Problems)
		}
	}
}
