package ingest

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

// TestCells reads cells as kitchens word them, each in a log of its own beside plain ones.
func TestCells(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "cells.txt"))
	if err != nil {
		t.Fatal(err)
	}
	cells, missed := 0, 0
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		what, rest, _ := strings.Cut(line, ": ")
		header, want, _ := strings.Cut(what, ", ")
		for _, cell := range thorough.Glance(t, 5, strings.Split(rest, "|")) {
			cells++
			if got := cellIn(t, header, strings.TrimSpace(cell)); got != want {
				missed++
				t.Errorf("%s: %q is %s, want %s", header, strings.TrimSpace(cell), got, want)
			}
		}
	}
	t.Logf("%d cells, %d read otherwise", cells, missed)
}

// cellIn is what a cell is read as below a header.
func cellIn(t *testing.T, header, cell string) string {
	t.Helper()
	rows := [][]string{{"trial", "butter g", "cider g", "GMS g", "came out", "split", "hold (min)"}}
	plain := map[string][]string{"came out": {"yes", "no"}, "split": {"yes", "no"}, "hold (min)": {"31", "12"}}
	for n, first := range []string{cell, plain[header][0], plain[header][1], plain[header][0]} {
		row := map[string]string{"came out": "yes", "split": "no", "hold (min)": "25"}
		if header != "hold (min)" && n == 0 || header == "came out" && first == "no" {
			row["hold (min)"] = ""
		}
		row[header] = first
		rows = append(rows, []string{strconv.Itoa(n + 1), "150", strconv.Itoa(140 + n), "3", row["came out"], row["split"], row["hold (min)"]})
	}
	var text bytes.Buffer // a workbook takes longer to write than to read
	if err := csv.NewWriter(&text).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, text.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	log := mustReadPath(t, path)
	first := log.Trials[0]
	for _, problem := range log.Problems {
		if problem.At.Row == 2 && problem.Severity == trial.MustFix {
			return "asked"
		}
	}
	switch header {
	case "came out":
		return first.CameOut.String()
	case "split":
		return first.Broke.String()
	}
	h := first.Hold
	switch {
	case h == nil:
		return "unread"
	case h.Low == h.High:
		return fmt.Sprintf("%g", h.Low)
	case math.IsInf(h.High, 1):
		return fmt.Sprintf("%g to", h.Low)
	case h.Low <= 0:
		return fmt.Sprintf("to %g", h.High)
	}
	return fmt.Sprintf("%g to %g", h.Low, h.High)
}

// TestEmulsifiersByWhatTheyLove: the HLB of emulsifiers that a kitchen names only as
// lipophilic and hydrophilic, or by a name that nobody knows here, of equal grams of both;
// nothing where nobody says it.
func TestEmulsifiersByWhatTheyLove(t *testing.T) {
	const rows = "\ntrial|butter g|cider g|%s|%s|came out|hold min\n1|150|144|3|3|yes|25\n2|140|154|3|3|yes|30"
	for _, c := range []struct {
		line, low, high string
		hlb             float64 // NaN = asked
	}{
		{"Lipophilic emulsifier HLB 4, hydrophilic 15", "lipophilic emulsifier (g)", "hydrophilic emulsifier (g)", 9.5},
		{"Lipophilic emulsifier HLB 4, hydrophilic HLB 15", "lipophilic emulsifier (g)", "hydrophilic emulsifier (g)", 9.5},
		{"HLB: lipophilic 4, hydrophilic 15", "Lipophilic em. g", "Hydrophilic em. g", 9.5},
		{"Émulsifiant lipophile HLB 4 – hydrophile HLB 15", "émulsifiant lipophile (g)", "émulsifiant hydrophile (g)", 9.5},
		{"Emulsionante lipofilo HLB 3,8 – idrofilo HLB 15", "Emulsionante lipofilo (g)", "Emulsionante idrofilo (g)", 9.4},
		{"HLB bajo: 4", "Emulsionante HLB bajo (4), g", "Emulsionante HLB alto (15), g", 9.5},
		{"Trials of the week", "Low-HLB emulsifier (3.6), g", "High-HLB emulsifier (14.5), g", 9.05},
		{"Trials of the week", "lipo (HLB 4) g", "hydro (HLB 15) g", 9.5},
		{"Lipophilic = glycerol monostearate, HLB 3.8; hydrophilic = polysorbate 80, HLB 15", "lipophilic (g)", "hydrophilic (g)", 9.4},
		{"Low = sorbitan monostearate, HLB 4.6. High = polysorbate 80, HLB 15", "low emulsifier (g)", "high emulsifier (g)", 9.8},
		{"The foam was low, HLB 4; stands high, HLB 15", "low emulsifier (g)", "high emulsifier (g)", math.NaN()},
		{"Kesterol HLB 4.2, Brulox 20 HLB 16", "Kesterol (g)", "Brulox 20 (g)", 10.1},
		{"Trials of the week", "lipophilic emulsifier (g)", "hydrophilic emulsifier (g)", math.NaN()},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.line + fmt.Sprintf(rows, c.low, c.high)}))
		got, percent := math.NaN(), 0.0
		if h := log.Trials[0].BlendHLB; h != nil {
			got = *h
		}
		if e := log.Trials[0].EmulsifierPercent; e != nil {
			percent = *e
		}
		if !(math.Abs(got-c.hlb) < 0.01 || math.IsNaN(got) && math.IsNaN(c.hlb)) || math.Abs(percent-2) > 0.01 {
			t.Errorf("%s | %s: HLB %g, emulsifier %g %%; want %g and 2", c.line, c.low, got, percent, c.hlb)
		}
	}
}

// TestStoodByTheClock: a foam that had not fallen when they stopped looking held from when
// it was dispensed to then, or longer.
func TestStoodByTheClock(t *testing.T) {
	const rows = "\ntrial|butter g|cider g|GMS g|came out|dispensed at|fell at\n1|150|144|3|yes|14:00|%s\n2|140|154|3|yes|14:10|14:40\n3|140|154|3|yes|14:20|14:45"
	for _, c := range []struct {
		line, cell string
		least      float64 // 0 = not read
	}{
		{"\"up\" under fell at: still up when we went home at 16:30", "up", 150},
		{"/ = still standing at 15:00", "/", 60},
		{"Timing stopped watching at 15:00", "still standing", 60},
		{"- means it was still standing when we closed (17:30)", "-", 210},
		{"Trials of the week", "still up at 15:30", 90},
		{"Trials of the week", "15:30+", 90},
		{"Trials of the week", "> 15:30", 90},
		{"encore debout à 15h00, fermé", "encore debout", 60},
		{"stand um 15:00 noch: s", "s", 60},
		{"Trials of the week", "up", 0},
		{"up: still up at 15:00 or 16:00", "up", 0},
		{"Service began at 12:00", "up", 0},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.line + fmt.Sprintf(rows, c.cell)}))
		least := 0.0
		if h := log.Trials[0].Hold; h != nil && math.IsInf(h.High, 1) {
			least = h.Low
		}
		if least != c.least {
			t.Errorf("%s | %s: at least %g, want %g", c.line, c.cell, least, c.least)
		}
	}
}

// TestMillilitresThatDrained: of so many grams of foam, a millilitre is a gram, unless the mix is thick.
func TestMillilitresThatDrained(t *testing.T) {
	for _, c := range []struct {
		header, liquid string
		percent        float64
	}{
		{"drained after 10 min (ml from 100 g)", "cider", 6},
		{"drained at 10 min, mL off 50 g foam", "stock", 12},
		{"drip after 10 min (ml of 100 g)", "water", 6},
		{"liquid out of 60 g after 10 min (ml)", "water", 10},
		{"Drainage nach 10 min (ml aus 100 g)", "water", 6},
		{"drained after 10 min (ml from 100 g)", "syrup", 0},
		{"drained after 10 min (ml)", "cider", 0},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log",
			fmt.Sprintf("trial|butter g|%s g|GMS g|came out|%s\n1|150|144|3|yes|6\n2|140|154|3|yes|5", c.liquid, c.header)}))
		got := 0.0
		if d := log.Trials[0].Drained; d != nil && d.Low == d.High {
			got = d.Low
		}
		if math.Abs(got-c.percent) > 1e-9 {
			t.Errorf("%s of %s: %g, want %g", c.header, c.liquid, got, c.percent)
		}
	}
}
