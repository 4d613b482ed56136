package main

import (
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// The log of a class, filled in rightly, is graded without a question; handed in blank
// it has no mark.
func TestTheClassesOwnLog(t *testing.T) {
	criteria := criteriaFile(t, map[string]any{"Rules!B19": "2026-05-31", "Class!A5": "Ana Ruiz", "Class!A6": "Bo Tan"})
	dir := t.TempDir()
	blank := filepath.Join(dir, "ana_ruiz.xlsx")
	if code := run([]string{"sheet", "--for", criteria, blank}, io.Discard, os.Stderr); code != exitDone {
		t.Fatalf("exit %d", code)
	}
	c := &classroom{dir: dir}
	if got := gradeOf(t, c, "--criteria", criteria); len(got.Students) != 0 || len(got.NotRead) != 2 || !strings.Contains(got.NotRead[0].Reason, "blank") {
		t.Errorf("a blank log: %d students, not read %+v", len(got.Students), got.NotRead)
	}
	f, err := excelize.OpenFile(blank)
	if err != nil {
		t.Fatal(err)
	}
	heads := map[string]string{}
	rows, err := f.GetRows("Log")
	if err != nil {
		t.Fatal(err)
	}
	for i, h := range rows[3] {
		heads[h], _ = excelize.ColumnNumberToName(i + 1)
	}
	for i, r := range []map[string]any{
		{"trial": "control", "butter": 120, "water": 174, "total": 300, "fat": 32.8, "hold": 14, "drained at 20 min": 8},
		{"trial": 2, "butter": 140, "water": 154, "total": 300, "fat": 38.3, "hold": 17, "drained at 20 min": 7},
		{"trial": 3, "butter": 160, "water": 134, "total": 300, "fat": 43.7, "hold": 21, "drained at 20 min": 5},
		{"trial": 4, "butter": 160, "water": 134, "total": 300, "fat": 43.7, "hold": 20, "drained at 20 min": 5},
	} {
		for h, v := range map[string]any{"day": "2026-05-11", "GMS": 4, "sucrose ester 15": 2, "emulsifier": 2, "blend HLB": 7.5, "came out": "yes", "split": "no"} {
			r[h] = v
		}
		for h, v := range r {
			if heads[h] == "" {
				t.Fatalf("no column %s", h)
			}
			if err := f.SetCellValue("Log", heads[h]+string(rune('6'+i)), v); err != nil {
				t.Fatal(err)
			}
		}
	}
	for at, v := range map[string]string{"B4": "Trial 3 held longest, 21 min.", "B5": "Trials 3 and 4.", "B7": "Goggles, vented before opening."} {
		if err := f.SetCellValue("Conclusion", at, v); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	f.Close()
	got := gradeOf(t, c, "--criteria", criteria)
	if len(got.Students) != 1 || got.Students[0].Student != "Ana Ruiz" || got.Students[0].Trials != 4 {
		t.Fatalf("%+v", got.Students)
	}
	for _, f := range got.Students[0].Findings {
		t.Errorf("%s %v: %s", f.Kind, f.Cells, f.Words)
	}
	if total := got.Students[0].Total; total == nil || *total != 85 {
		t.Errorf("total %v, want 85 of the 85 that are not the teacher's", total)
	}
}

// Published figures: blend HLBs of polysorbate 80 (15.0) with sorbitan monooleate (4.3)
// at 9:1, 8:2, 7:3 (PMC4137601, table 2: 13.93, 12.86, 11.79), and the overrun of equal
// volumes of 1090 and 560 g (University of Guelph dairy text: 94.6 %). Typed as
// published they are right; typed as plain means and over the mix, they are put right to
// the published figures.
func TestPublishedFigures(t *testing.T) {
	c := &classroom{dir: t.TempDir()}
	lines := []string{"-- Log", "Trial | Date | Butter g | Water g | Polysorbate 80 g | Sorbitan monooleate g | HLB | Cup of liquid g | Cup of foam g | Overrun % | Hold min | Came out"}
	for i, hlb := range []string{"13.93", "12.86", "11.79"} {
		lines = append(lines, strings.Join([]string{[]string{"control", "2", "3"}[i], "2026-05-04", "120", "170", string(rune('9' - i)), string(rune('1' + i)), hlb, "1090", "560", "94.6", "14", "yes"}, " | "))
	}
	c.handIn(t, "right.xlsx", lines)
	wrong := append([]string{}, lines...)
	wrong[2] = strings.Replace(wrong[2], "13.93", "9.65", 1)
	wrong[3] = strings.Replace(wrong[3], "94.6", "48.6", 1)
	c.handIn(t, "wrong.xlsx", wrong)
	found := map[string]float64{}
	got := gradeOf(t, c)
	if len(got.Students[0].Points) > 0 || got.Students[0].Total != nil {
		t.Error("a mark without criteria")
	}
	for _, f := range findingsOf(got) {
		if f.About == "calculation" {
			if f.File == "right.xlsx" || !f.Certain {
				t.Errorf("%s %s: %s", f.File, f.Cell, f.Words)
			}
			found[f.Cell] = f.Right.Number
		}
	}
	if math.Abs(found["G2"]-13.93) > 0.005 || math.Abs(found["J3"]-94.64) > 0.05 || len(found) != 2 {
		t.Errorf("put right to %v, want 13.93 and 94.6", found)
	}
}
