package plots

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis"
	simulated "foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
)

// everyLog are the kitchens of the fixture and, where the run has the time, logs read and
// analysed as a report does it: the figures of what really comes out of an analysis, not
// of what the fixture thinks does.
func everyLog(t *testing.T) map[string]*result.Results {
	t.Helper()
	if len(shown) == 0 {
		shown = maps.Clone(kitchens())
		for name, file := range written(t) {
			shown[name] = study(t, file)
		}
	}
	return shown
}

// shown are all of these logs, once they are made: the figures only read them.
var shown map[string]*result.Results

// written are the logs to be analysed: none in a short run.
func written(t *testing.T) map[string]string {
	t.Helper()
	if testing.Short() {
		return nil
	}
	files := map[string]string{
		"the demo's log": filepath.Join("..", "testdata", "demo", "week.xlsx"),
		"a log of six":   simulatedLog(t, 6, 3),
		"a hostile log":  hostileLog(t),
	}
	for _, l := range []struct {
		trials int
		seed   uint64
	}{{200, 4}, {2000, 5}}[:thorough.Of(t, 1, 2)] {
		files[fmt.Sprint("a log of ", l.trials)] = simulatedLog(t, l.trials, l.seed)
	}
	return files
}

func study(t *testing.T, file string) *result.Results {
	t.Helper()
	log, err := ingest.Read([]string{file}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := analysis.Run(log, analysis.Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func simulatedLog(t *testing.T, trials int, seed uint64) string {
	t.Helper()
	var b bytes.Buffer
	if err := simulated.WriteCSV(&b, made(trials, seed)); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

func made(trials int, seed uint64) []simulated.Logged {
	return simulated.New(simulated.Easy, seed).Log(simulated.Scattered, trials, simulated.Stream(seed, "log"))
}

// hostileLog is a log with the longest names that a header may have, forty days of
// names as long, twenty cooks, and a setting that the log varied.
func hostileLog(t *testing.T) string {
	t.Helper()
	const (
		days   = 40
		length = 110 // the reader takes what is longer than 120 with its unit for prose
	)
	name := func(s string) string { return (s + " " + strings.Repeat("sorbitan", 25))[:length] }
	lipophilic, hydrophilic, setting := name("lipo"), name("hydro"), name("speed")
	f := excelize.NewFile()
	row := func(sheet string, at int, cells ...any) {
		if err := f.SetSheetRow(sheet, fmt.Sprintf("A%d", at), &cells); err != nil {
			t.Fatal(err)
		}
	}
	row("Sheet1", 1, "trial", "day", "cook", "sunflower oil (g)", "water (g)", lipophilic+" (g)", hydrophilic+" (g)", "came out", "broke", "hold (min)", "drained at 20 min (%)", setting)
	log := made(3*days, 4)
	for i, l := range log {
		out, broke, hold, drained := "no", "", "", ""
		if l.CameOut {
			out, broke = "yes", "no"
			if l.Broke {
				broke = "yes"
			} else if l.Hold != nil && l.Drained != nil {
				hold, drained = fmt.Sprint(l.Hold.Low), fmt.Sprint(l.Drained.Low)
			}
		}
		row("Sheet1", i+2, i+1, name(fmt.Sprintf("day %02d", i*days/len(log))),
			name(fmt.Sprintf("=cook %d", i%(days/2))), l.OilGrams, l.WaterGrams, l.LipophilicGrams, l.HydrophilicGrams, out, broke, hold, drained, 1+i%5)
	}
	for _, sheet := range []string{"Ingredients", "Columns"} {
		if _, err := f.NewSheet(sheet); err != nil {
			t.Fatal(err)
		}
	}
	row("Ingredients", 1, "Name in the log", "What it is", "HLB", "Fat %")
	row("Ingredients", 2, lipophilic, "emulsifier", 3.8)
	row("Ingredients", 3, hydrophilic, "emulsifier", 15)
	row("Columns", 1, "Header in the log", "Meaning", "Unit", "Basis")
	row("Columns", 2, setting, "variable")
	file := filepath.Join(t.TempDir(), "log.xlsx")
	if err := f.SaveAs(file); err != nil {
		t.Fatal(err)
	}
	return file
}
