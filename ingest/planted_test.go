package ingest

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// plantedHead is the header of a tidy log, in row 1.
var plantedHead = []any{"Trial", "Day", "Butter g", "Cider g", "GMS g", "Sucrose ester 15 g", "Batch g", "HLB", "Came out", "Hold min",
	"Sample g", "Drained at 20 min g", "Broke"}

// tidy writes a log of 30 trials without a fault, changed at some cells.
func tidy(t *testing.T, changes map[string]any) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	set := func(cell string, v any) {
		if err := f.SetCellValue("Sheet1", cell, v); err != nil {
			t.Fatal(err)
		}
	}
	round := func(v float64) float64 { return math.Round(v*10) / 10 }
	for i, v := range plantedHead {
		set(fmt.Sprintf("%c1", 'A'+i), v)
	}
	for n := range 30 {
		fat, low, high := 110+float64(5*(n%7)), 2+0.5*float64(n%4), 1.5+0.5*float64(n%3)
		cider := 300 - fat - low - high
		row := []any{n + 1, fmt.Sprintf("day %d", 1+n/6), fat, round(cider), low, high, 300, round((3.8*low + 15*high) / (low + high)),
			"yes", 12 + n%9, 30, round(1.5 + 0.3*float64(n%8)), "no"}
		if n%10 == 7 {
			row[8], row[9], row[10], row[11], row[12] = "no", nil, nil, nil, nil
		}
		for i, v := range row {
			set(fmt.Sprintf("%c%d", 'A'+i, n+2), v)
		}
	}
	for cell, v := range changes {
		set(cell, v)
	}
	path := filepath.Join(t.TempDir(), "week.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// planted are faults of different kinds: what is typed where, and what has to be
// said of it and of nothing else.
var planted = []struct {
	name     string
	changes  map[string]any
	at       string
	read, do string
	aside    int // trials
}{
	{"a trial number twice", map[string]any{"A9": 5}, "A9", "stands in A6 too", "type 8 here", 0},
	{"a decimal comma", map[string]any{"F4": "2,5"}, "F4", "read as 2.5", "nothing to do", 0},
	{"a blend HLB off the scale", map[string]any{"H6": 75}, "H6", "“75” cannot be an HLB", "type th", 0},
	{"figures of an HLB swapped in a header", map[string]any{"F1": "Sucrose ester 51 g"}, "F1", "the 51 in “Sucrose ester 51 g” cannot be an HLB", "“sucrose ester 15 g”", 0},
	{"a figure missing from a mass", map[string]any{"C8": 14}, "C8", "with 140 g here it would add up", "type 140 here", 1},
	{"a figure too many in a batch", map[string]any{"G12": 3000}, "G12", "the batch is the odd one", "type 300 here", 0},
	{"more drained than there was", map[string]any{"L17": 36}, "L17", "120 %, more than the whole foam", "type 3.6 here", 0},
	{"a clock for a time", map[string]any{"J20": "1:30"}, "J20", "1 min 30 s or 1 h 30 min", "type 1.5 min for the first, 90 min for the second", 0},
	{"neither yes nor no", map[string]any{"I22": "maybe"}, "I22", "“maybe” is neither yes nor no", "type yes, partly or no", 0},
	{"a letter for a figure", map[string]any{"J5": "2O"}, "J5", "has a letter where a figure is meant", "type 20", 0},
	{"no sample", map[string]any{"K25": nil}, "K25", "a drainage of 3.6 g needs it", "type the grams of foam", 0},
	{"a hold of what clogged", map[string]any{"J9": 22}, "J9", "for a foam that did not come out", "correct the hold or the came out column", 0},
	{"the water left empty", map[string]any{"D8": nil}, "D8", "nothing is typed here", "155.5 g", 0},
	{"a mass of the row above", map[string]any{"D8": 130}, "D8", "with 155.5 g here it would add up", "type 155.5 here", 0},
	{"an emulsifier ten times too large", map[string]any{"E5": 35}, "E5", "with 3.5 g here it would add up", "type 3.5 here", 1},
	{"figures swapped", map[string]any{"D9": 148.5}, "D9", "with 184.5 g here it would add up", "type 184.5 here", 0},
	{"a minus", map[string]any{"E9": -3.5}, "E9", "“-3.5” cannot be an amount", "type 3.5 if the minus is a slip", 0},
	{"words for a mass", map[string]any{"C5": "a lump"}, "C5", "“a lump”", "type grams", 1},
	{"a wrong blend HLB", map[string]any{"H5": 12.9}, "H5", "HLB 12.9 logged, 7.16 by the masses", "correct the HLB or the masses", 0},
	{"an emulsifier forgotten", map[string]any{"E4": nil}, "E4", "nothing is typed here, where most trials have 2 to 3.5 g, and the ingredients are 3 g short", "type the grams, or 0", 0},
	{"the other emulsifier forgotten", map[string]any{"F4": nil, "H4": nil}, "F4", "nothing is typed here, where most trials have 1.5 to 2.5 g", "type the grams, or 0", 0},
	{"a hold below nought of what clogged", map[string]any{"J9": -12}, "J9", "“-12” is less than no time", "type minutes, 0 or more", 0},
	{"a batch in kilograms", map[string]any{"G14": 0.3}, "G14", "“0.3” cannot be a batch", "type 300 if it was meant in kg", 0},
	{"chargers and rest swapped", map[string]any{"N1": "Chargers", "O1": "Rest min", "N2": 1, "O2": 30, "N6": 90, "O6": 1}, "N6", "90 chargers are more than any canister takes", "look whether the cells beside it are swapped", 0},
	{"still standing, since when", map[string]any{"J5": "still standing"}, "J5", "does not say how long", "for example 20+", 0},
}

// saidOf is every problem of a log by its cell, with what a person is told.
func saidOf(log *trial.Log) map[string][]string {
	out := map[string][]string{}
	for _, p := range log.Problems {
		_, cell, _ := strings.Cut(p.At.String(), ", cell ")
		out[cell] = append(out[cell], p.Read+"; "+p.Do)
	}
	return out
}

// TestPlantedFaults: each fault is said once, at its cell, with what to type;
// and nothing else is said.
func TestPlantedFaults(t *testing.T) {
	clean, err := Read([]string{tidy(t, nil)}, Options{})
	if err != nil || len(clean.Problems) > 0 {
		t.Fatalf("a log without a fault: %v %v", err, clean.Problems)
	}
	for _, c := range thorough.Glance(t, 4, planted) {
		t.Run(c.name, func(t *testing.T) {
			log, err := Read([]string{tidy(t, c.changes)}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if said := saidOf(log); len(log.Problems) != 1 || len(said[c.at]) != 1 {
				t.Fatalf("said %q, want one line at %s", said, c.at)
			}
			p := log.Problems[0]
			if !strings.Contains(p.Read, c.read) || !strings.Contains(p.Do, c.do) {
				t.Errorf("said %q; %q, want %q; %q", p.Read, p.Do, c.read, c.do)
			}
			aside := 0
			for i := range log.Trials {
				if !log.Trials[i].Used() {
					aside++
				}
			}
			if aside != c.aside {
				t.Errorf("%d trials set aside, want %d", aside, c.aside)
			}
		})
	}
}

// TestTenPlantedFaultsTogether: none hides another.
func TestTenPlantedFaultsTogether(t *testing.T) {
	changes := map[string]any{}
	for _, c := range planted[:10] {
		for cell, v := range c.changes {
			changes[cell] = v
		}
	}
	log, err := Read([]string{tidy(t, changes)}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	said := saidOf(log)
	if len(log.Problems) != 10 {
		t.Errorf("%d lines: %q", len(log.Problems), said)
	}
	for _, c := range planted[:10] {
		if got := said[c.at]; len(got) != 1 || !strings.Contains(got[0], c.read) || !strings.Contains(got[0], c.do) {
			t.Errorf("%s: %q, want %q and %q", c.name, got, c.read, c.do)
		}
	}
}
