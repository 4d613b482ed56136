package ingest

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"foamfield/ingest/trial"

	"github.com/xuri/excelize/v2"
)

// What the demo's generator (cmd/kitchens) says of its week: clarified butter of
// 99.5 % fat, emulsifiers of HLB 3.8 and 15, and one batch that is off.
const (
	demoButterFat = 99.5
	demoLow       = 3.8
	demoHigh      = 15.0
)

// TestDemoWeek reads the demo week and compares each trial with the cells as a
// second reader, the workbook library, gives them.
func TestDemoWeek(t *testing.T) {
	const path = "../testdata/demo/week.xlsx"
	log, err := Read([]string{path}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	accounts(t, log)
	book, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	rows, err := book.GetRows(book.GetSheetName(0), excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	var trials [][]string
	for _, r := range rows {
		if len(r) > 0 {
			if _, err := strconv.Atoi(r[0]); err == nil {
				trials = append(trials, append(r, make([]string, 20)...))
			}
		}
	}
	if len(trials) < 20 || len(log.Trials) != len(trials) {
		t.Fatalf("%d trials, the workbook has %d", len(log.Trials), len(trials))
	}
	num := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	answers := map[string]trial.Answer{"y": trial.Yes, "n": trial.No, "partly": trial.Partly, "": trial.Unknown}
	off := 0
	for i := range log.Trials {
		x, r := &log.Trials[i], trials[i]
		butter, cider, low, high := num(r[4]), num(r[5]), num(r[6]), num(r[7])
		sum := butter + cider + low + high
		if math.Abs(sum-num(r[3])) > 3 {
			off++
		}
		for _, c := range []struct {
			name      string
			got       *float64
			want, tol float64
		}{
			{"batch", x.BatchGrams, sum, 1e-9},
			{"fat percent", x.FatPercent, butter * demoButterFat / sum, 1e-9},
			{"emulsifier percent", x.EmulsifierPercent, 100 * (low + high) / sum, 1e-9},
			{"blend HLB", x.BlendHLB, (low*demoLow + high*demoHigh) / (low + high), 1e-9},
		} {
			if c.got == nil || math.Abs(*c.got-c.want) > c.tol {
				t.Errorf("%s: %s %v, want %v", x.At, c.name, value(c.got), c.want)
			}
		}
		if !x.Used() || x.ID != r[0] || x.Day != r[1] || x.Cook != r[2] || x.CameOut != answers[r[11]] {
			t.Errorf("%s: used %v, id %s, day %s, cook %s, came out %s", x.At, x.Used(), x.ID, x.Day, x.Cook, x.CameOut)
		}
		if broke := answers[r[15]]; x.Broke != broke {
			t.Errorf("%s: broke %s, want %s", x.At, x.Broke, broke)
		}
		if hold, err := strconv.ParseFloat(r[12], 64); err == nil && (x.Hold == nil || x.Hold.Low != hold || x.Hold.High != hold) {
			t.Errorf("%s: hold %s, want %v", x.At, bounds(x.Hold), hold)
		}
		if drained, err := strconv.ParseFloat(r[14], 64); err == nil && drained > 0 {
			want := 100 * drained / num(r[13])
			if x.Drained == nil || math.Abs(x.Drained.Low-want) > 1e-9 || x.Drained.High != x.Drained.Low {
				t.Errorf("%s: drained %s, want %v", x.At, bounds(x.Drained), want)
			}
		}
	}
	if got := len(kinds(log)); off != 1 || got != 1 || kinds(log)[0] != "does not add up @ sheet foam week, cell D18" {
		t.Errorf("%d batches are off, problems %q", off, kinds(log))
	}
}

// TestDemoColumns reads the log with only the five classic columns.
func TestDemoColumns(t *testing.T) {
	const path = "../testdata/demo/five-columns.csv"
	log, err := Read([]string{path}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	accounts(t, log)
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(log.Trials) != len(rows)-1 {
		t.Fatalf("%d trials of %d rows", len(log.Trials), len(rows)-1)
	}
	for i := range log.Trials {
		x, r := &log.Trials[i], rows[i+1]
		if !x.Used() || x.FatPercent == nil || x.EmulsifierPercent != nil || x.BatchGrams != nil {
			t.Errorf("%s: used %v, fat %s, emulsifier %s %%", x.At, x.Used(), value(x.FatPercent), value(x.EmulsifierPercent))
		}
		if value(x.BlendHLB) != r[1] || value(x.EmulsifierGrams) != r[2] {
			t.Errorf("%s: HLB %s, emulsifier %s g, want %s and %s", x.At, value(x.BlendHLB), value(x.EmulsifierGrams), r[1], r[2])
		}
		want := map[string]string{"clogged": "no unknown -", "split": "yes yes -", "20+": "yes no 20+"}[r[3]]
		if want == "" {
			want = "yes no " + r[3]
		}
		if got := x.CameOut.String() + " " + x.Broke.String() + " " + bounds(x.Hold); got != want {
			t.Errorf("%s: came out, broke, hold %q, want %q", x.At, got, want)
		}
	}
}
