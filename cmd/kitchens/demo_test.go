package main

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis/kitchen"
)

const committed = "../../testdata/demo"

func TestDemoFilesAreTheGenerators(t *testing.T) {
	folder := t.TempDir()
	if code := run([]string{"demo", folder}, io.Discard, os.Stderr); code != 0 {
		t.Fatalf("exit %d", code)
	}
	for _, name := range []string{"week.xlsx", "five-columns.csv"} {
		want, err := os.ReadFile(filepath.Join(committed, name))
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s differs from the committed one: run `go run ./cmd/kitchens demo`", name)
		}
	}
}

func TestDemoTruth(t *testing.T) {
	k := kitchen.Demo()
	best, chance := k.Best(k.Tries, kitchen.Usual)
	t.Logf("best %+v, chance %.2f", best, chance)
	inner := kitchen.Box{Fat: kitchen.Span{Low: 36, High: 52}, Emulsifier: kitchen.Span{Low: 1.2, High: 2.9}, HLB: kitchen.Span{Low: 6.5, High: 10.5}}
	if _, within := k.Best(inner, kitchen.Usual); chance < 0.9 || within != chance && within < chance-1e-4 {
		t.Errorf("best %+v with chance %.3f is not well inside the ranges (inside: %.3f)", best, chance, within)
	}
	// The best at each fat percent, as the comment of kitchen.Demo has it.
	for fat, want := range map[float64]float64{38: 0.98, 46: 0.98, 49: 0.98, 52: 0.95, 54: 0.83, 56: 0.49} {
		at := k.Tries
		at.Fat = kitchen.Span{Low: fat, High: fat}
		if _, got := k.Best(at, kitchen.Usual); math.Abs(got-want) > 0.006 {
			t.Errorf("at %v %% fat the best chance is %.3f, documented %.2f", fat, got, want)
		}
	}
	works, stands := 0, 0
	for _, m := range makeWeek() {
		if kitchen.Usual.Met(m.outcome) {
			works++
		}
		if m.outcome.CameOut && !m.outcome.Broke && m.outcome.HoldMinutes >= m.stop {
			stands++
		}
	}
	n := float64(len(week))
	t.Logf("%d trials, %d work, %d still standing", len(week), works, stands)
	if share := float64(works) / n; share < 0.35 || share > 0.5 {
		t.Errorf("%.0f %% of the week works, want 35-50", 100*share)
	}
	if share := float64(stands) / n; share < 0.2 || share > 0.6 {
		t.Errorf("%.0f %% of the week still stands, want 20-60", 100*share)
	}
}

// The committed week, read by the workbook library, holds what its notes and
// the README count on.
func TestWeekIsWrittenAsAKitchenWrites(t *testing.T) {
	book, err := excelize.OpenFile(filepath.Join(committed, "week.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	rows, err := book.GetRows("foam week", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 4+len(week)+1 || len(rows[1]) != 0 || rows[2][0] != "No." || rows[3][3] != "g" || rows[len(rows)-1][0] != "AVG" {
		t.Fatalf("%d rows: %q", len(rows), rows)
	}
	seen := map[string]int{}
	for _, row := range rows[4 : len(rows)-1] {
		for c, column := range weekColumns {
			if c < len(row) {
				seen[column.header+"="+row[c]]++
			}
		}
	}
	for what, least := range map[string]int{
		"came out?=n": 2, "came out?=partly": 1, "split?=y": 2, "hold=20+": 2, "hold=30+": 2, "hold=10-15": 1, "hold=n/a": 2,
		"hold=~15": 1, "hold=7 min": 1, "drained at 20 min=0": 1, "drained at 20 min=trace": 1, "chargers=2": 2,
		"notes=same as 7": 1, "notes=strained twice": 1, "batch=310": 1, "day=Mon": 5, "day=Fri": 5,
	} {
		if seen[what] < least {
			t.Errorf("%q stands in %d trials, want at least %d", what, seen[what], least)
		}
	}
	if got, err := book.GetCellType("foam week", "E5"); err != nil || got != excelize.CellTypeUnset {
		t.Errorf("butter grams have type %v, %v; want a plain number", got, err)
	}
}

func TestFiveColumns(t *testing.T) {
	b, err := os.ReadFile(filepath.Join(committed, "five-columns.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(b)).ReadAll()
	if err != nil || len(rows) != 1+len(columns) || len(rows[0]) != 5 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	if text := string(b); !strings.Contains(text, "20+") || !strings.Contains(text, "clogged") {
		t.Error("no bound or no clogged trial in it")
	}
}

func TestCalls(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
	}{
		{nil, 2},
		{[]string{"cook"}, 2},
		{[]string{"truths", "more"}, 2},
		{[]string{"demo", filepath.Join(committed, "week.xlsx", "under-a-file")}, 1},
	} {
		var errOut bytes.Buffer
		if code := run(c.args, io.Discard, &errOut); code != c.code || errOut.Len() == 0 {
			t.Errorf("%q: exit %d, want %d; said %q", c.args, code, c.code, errOut.String())
		}
	}
}
