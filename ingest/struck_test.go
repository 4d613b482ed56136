package ingest

import (
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/trial"
)

// TestStruckOut: a row of which all numbers and answers are struck out is set aside, whatever
// its note; a cell struck out by itself is not used, and is named.
func TestStruckOut(t *testing.T) {
	f := excelize.NewFile()
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	for r, row := range [][]any{
		{"trial", "oil % of mix", "emulsifier % of mix", "HLB", "came out", "hold min", "notes"},
		{1, 45, 2.5, 8, "yes", 20, ""}, {2, 45, 2, 8, "yes", 17, "siphon leaked"}, {3, 50, 2.5, 8, "yes", 19, ""}, {4, 50, 3, 8, "yes", 22, ""}, {5, 50, 3, 8, "no", nil, ""},
		{6, 45, 2, 8, "yes", 70, "hold: 17"},
	} {
		must(f.SetSheetRow("Sheet1", "A"+string(rune('1'+r)), &row))
	}
	struck, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Strike: true}})
	must(err)
	for _, cells := range [][2]string{{"A3", "F3"}, {"F4", "F4"}, {"C5", "C5"}, {"E6", "E6"}, {"F7", "F7"}} {
		must(f.SetCellStyle("Sheet1", cells[0], cells[1], struck))
	}
	path := filepath.Join(t.TempDir(), "log.xlsx")
	must(f.SaveAs(path))
	log, err := Read([]string{path}, Options{})
	must(err)
	accounts(t, log)
	if x := &log.Trials[1]; x.Used() || x.Aside != "the row is struck out" {
		t.Errorf("trial 2 used %v: %q", x.Used(), x.Aside)
	}
	if x := &log.Trials[2]; !x.Used() || x.Hold != nil || x.EmulsifierPercent == nil {
		t.Errorf("trial 3: used %v, hold %v", x.Used(), x.Hold)
	}
	if x := &log.Trials[3]; x.EmulsifierPercent != nil {
		t.Errorf("trial 4: emulsifier %v of a cell struck out", *x.EmulsifierPercent)
	}
	if x := &log.Trials[4]; x.CameOut == trial.No {
		t.Errorf("trial 5: a struck no was used")
	}
	if x := &log.Trials[5]; !x.Used() || x.Hold == nil || x.Hold.Low != 17 {
		t.Errorf("trial 6: used %v, hold %v, not what its note says", x.Used(), x.Hold)
	}
	var said []string
	for _, p := range log.Problems {
		if p.Kind == "struck out" {
			said = append(said, p.At.String())
		}
	}
	if len(said) != 3 {
		t.Errorf("said of %q", said)
	}
}
