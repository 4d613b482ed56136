package main

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/ingest/thorough"

	"github.com/xuri/excelize/v2"
)

// A peer's program finds the fits, the starts' chances and their limits again from
// results.json alone, and notices where one of its numbers is another.
func TestAPeerRebuildsIt(t *testing.T) {
	r := thorough.Program(t, "Rscript", "no result is rebuilt by a second program here")
	if err := exec.Command(r, "-e", "library(jsonlite); library(survival)").Run(); err != nil {
		t.Skip("R's jsonlite or survival is not installed: no result is rebuilt by a second program here")
	}
	script, err := os.ReadFile(filepath.Join("..", "..", "testdata", "reference", "rebuild", "rebuild.R"))
	if err != nil {
		t.Fatal(err)
	}
	rebuild := func(args ...string) ([]byte, error) {
		c := exec.Command(r, append([]string{"-"}, args...)...)
		c.Stdin = bytes.NewReader(script)
		return c.CombinedOutput()
	}
	demo := filepath.Join("..", "..", "testdata", "demo")
	for name, log := range map[string]string{"week": filepath.Join(demo, "week.xlsx"), "five columns": filepath.Join(demo, "five-columns.csv"),
		"kitchen": simulated(t), "everything": withEverything(t)} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			results := resultsOf(t, log)
			out, err := rebuild(results)
			if err != nil {
				t.Errorf("%v: %s", err, out)
			}
			t.Logf("%s", out)
		})
	}
	t.Run("another number", func(t *testing.T) {
		t.Parallel()
		results := resultsOf(t, filepath.Join(demo, "five-columns.csv"))
		text, err := os.ReadFile(results)
		if err != nil {
			t.Fatal(err)
		}
		own := regexp.MustCompile(`"own_share": [0-9.]+`)
		if err := os.WriteFile(results, own.ReplaceAll(text, []byte(`"own_share": 0`)), 0o666); err != nil {
			t.Fatal(err)
		}
		if out, err := rebuild(results, "--once"); err == nil {
			t.Errorf("the limits are found again though no scatter stays with a mix: %s", out)
		}
	})
}

// resultsOf is where the results of a log are written.
func resultsOf(t *testing.T, log string) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "report")
	var said bytes.Buffer
	c := &call{ctx: context.Background(), last: make(chan struct{}, 1), stdout: &said, stderr: &said}
	if err := command(c, []string{"report", log, "--out", out, "--write", "json", "--quiet"}); err != nil {
		t.Fatal(log, err)
	}
	return filepath.Join(out, "results.json")
}

// simulated is a kitchen's log of 40 trials.
func simulated(t *testing.T) string {
	t.Helper()
	var log bytes.Buffer
	if err := kitchen.WriteCSV(&log, kitchen.New(kitchen.Hard, 3).Log(kitchen.Scattered, 40, kitchen.Stream(3, "log"))); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "kitchen.csv")
	if err := os.WriteFile(file, log.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	return file
}

// withEverything is a log of one day with all that a line may have beside the mix: two
// pairs of emulsifiers, minutes of rest, two cooks; and a taste that is asked for.
func withEverything(t *testing.T) string {
	t.Helper()
	f := excelize.NewFile()
	rows := [][]any{{"no", "day", "cook", "oil g", "water g", "GMS g", "sucrose ester 15 g", "polysorbate 80 g", "rest min", "came out", "split", "hold min", "drained %", "taste /9"}}
	rng := kitchen.Stream(9, "everything")
	tenth := func(v float64) float64 { return math.Round(10*v) / 10 }
	for i := range 42 {
		fat, e, high, rest := 32+20*rng.Float64(), 1.2+1.8*rng.Float64(), 0.3+0.3*rng.Float64(), 10*rng.IntN(3)
		oil, low, second := tenth(2*fat), tenth(2*e*(1-high)), tenth(2*e*high)
		out, split := "yes", "no"
		if rng.Float64() < 1/(1+math.Exp(-(0.4*(fat-50)+2*(e-2.5)))) {
			out = "no"
		} else if rng.Float64() < 1/(1+math.Exp(-0.4*(fat-51))) {
			split = "yes"
		}
		row := []any{i + 1, "Mon", []string{"Ana", "Bo"}[i%2], oil, tenth(200 - oil - low - second), low, second, 0.0, rest, out, split, nil, nil, nil}
		if i%3 == 2 {
			row[6], row[7] = 0.0, second
		}
		if out == "yes" && split == "no" {
			hold := 38 * math.Exp(0.3*(e-2)-0.02*(fat-42)+0.01*float64(rest)-0.1*float64(i%2)+0.25*rng.NormFloat64())
			row[11], row[12] = tenth(hold), tenth(5*math.Exp(-0.5*(e-2)+0.3*rng.NormFloat64()))
			if hold > 45 {
				row[11] = ">45"
			}
			row[13] = math.Round(min(max(5+8*(high-0.45)+rng.NormFloat64(), 1), 9))
		}
		rows = append(rows, row)
	}
	for name, rows := range map[string][][]any{"Sheet1": rows, "Targets": {{"Target", "Value"}, {"taste", "4 to 7"}}} {
		if _, err := f.NewSheet(name); err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			if err := f.SetSheetRow(name, fmt.Sprintf("A%d", i+1), &row); err != nil {
				t.Fatal(err)
			}
		}
	}
	file := filepath.Join(t.TempDir(), "everything.xlsx")
	if err := f.SaveAs(file); err != nil {
		t.Fatal(err)
	}
	return file
}
