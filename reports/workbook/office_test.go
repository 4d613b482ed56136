package workbook

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/analysis"
	solved "foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
	"foamfield/reports"
)

// demo is the demo's log read and analysed.
func demo(t *testing.T) (*trial.Log, *result.Results) {
	t.Helper()
	log, err := ingest.Read([]string{"../../testdata/demo/week.xlsx"}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := analysis.Run(log, analysis.Settings{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return log, r
}

// A second spreadsheet program opens the report and works out what stands beside every
// formula; after a change of batch and scale in the file, it weighs what the program does.
func TestSecondProgramAgrees(t *testing.T) {
	thorough.Program(t, "soffice", "the workbook is not opened by a second program here")
	b, err := Report(kitchen(), everyBlock())
	if n := recalculated(t, b, err); n < 20 {
		t.Errorf("only %d formulas were compared", n)
	}
	log, r := demo(t)
	b, err = Report(r, reports.Build(r))
	if n := recalculated(t, b, err); n < 40 {
		t.Errorf("of the demo only %d formulas were compared", n)
	}
	var template []solved.Part
	for _, l := range r.Starts[0].Ingredients {
		for _, in := range log.Ingredients {
			if in.Name == l.Name {
				template = append(template, solved.Part{Name: l.Name, Grams: l.Grams, What: &in})
			}
		}
	}
	files := map[string][]byte{}
	wanted := map[string]*solved.Formula{}
	mix := r.Starts[0].Mix
	for _, c := range []struct{ batch, step float64 }{{600, 0.1}, {745, 0.5}, {1000, 1}, {333, 0.01}, {2400, 0.2}} {
		name := fmt.Sprintf("%v-%v", c.batch, c.step)
		f := open(t, b, nil)
		for at, v := range map[string]float64{"B3": c.batch, "B4": c.step} {
			if err := f.SetCellFloat("Formula", at, v, -1, 64); err != nil {
				t.Fatal(err)
			}
		}
		files[name] = bare(t, f)
		if wanted[name], err = solved.Solve(template, solved.Wanted{FatPercent: *mix.FatPercent, EmulsifierPercent: *mix.EmulsifierPercent, BlendHLB: mix.BlendHLB}, c.batch, c.step); err != nil {
			t.Fatal(err)
		}
	}
	sheets := office(t, files)
	for name, want := range wanted {
		grams := map[string]float64{}
		for _, row := range sheets[name+"-Formula"] { // the first table is of the surest start
			if v, err := strconv.ParseFloat(row[3], 64); err == nil {
				if _, again := grams[row[0]]; !again {
					grams[row[0]] = v
				}
			}
		}
		total := 0.0
		for _, l := range want.Lines {
			total += l.Grams
			if math.Abs(grams[l.Name]-l.Grams) > 1e-6 {
				t.Errorf("%s: %v g of %s, the formula says %v", name, grams[l.Name], l.Name, l.Grams)
			}
		}
		if math.Abs(grams["in all"]-total) > 1e-6 || !(grams["blend HLB"] > 0) || !(grams["fat, % of the mix"] > 0) {
			t.Errorf("%s: %v", name, grams)
		}
	}
}

// recalculated holds the value beside each formula against what a second program makes
// of the formula alone, and counts them.
func recalculated(t *testing.T, b []byte, err error) int {
	t.Helper()
	f := open(t, b, err)
	seen := office(t, map[string][]byte{"report": b, "bare": bare(t, open(t, b, nil))})
	numbers := 0
	for _, sheet := range f.GetSheetList() {
		for i, row := range rows(t, f, sheet) {
			for k, s := range row {
				formula, _ := f.GetCellFormula(sheet, place(k, i+1))
				if formula == "" {
					continue
				}
				want, err := strconv.ParseFloat(s, 64)
				if err != nil {
					t.Errorf("%s!%s has a formula and no value beside it", sheet, place(k, i+1))
				}
				numbers++
				for _, name := range []string{"report", "bare"} {
					table := seen[name+"-"+sheet]
					if i >= len(table) || k >= len(table[i]) {
						t.Fatalf("%s has no %s!%s", name, sheet, place(k, i+1))
					}
					got, err := strconv.ParseFloat(table[i][k], 64)
					if err != nil || math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
						t.Errorf("%s, %s!%s: %q, want %v", name, sheet, place(k, i+1), table[i][k], want)
					}
				}
			}
		}
	}
	return numbers
}

// bare is a workbook without the values beside its formulas, so that whoever opens it
// has to work them out.
func bare(t *testing.T, f *excelize.File) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := f.UpdateLinkedValue(); err != nil {
		t.Fatal(err)
	}
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// office is every sheet of the workbooks as a second program sees it, by the names of
// book and sheet.
func office(t *testing.T, books map[string][]byte) map[string][][]string {
	t.Helper()
	dir := t.TempDir()
	args := []string{"-env:UserInstallation=file://" + dir + "/profile", "--headless", "--convert-to",
		"csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1", "--outdir", dir}
	for name, b := range books {
		file := filepath.Join(dir, name+".xlsx")
		if err := os.WriteFile(file, b, 0o644); err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	if out, err := exec.Command("soffice", args...).CombinedOutput(); err != nil {
		t.Fatalf("soffice: %v: %s", err, out)
	}
	written, err := filepath.Glob(filepath.Join(dir, "*.csv"))
	if err != nil {
		t.Fatal(err)
	}
	sheets := map[string][][]string{}
	for _, path := range written {
		file, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		reader := csv.NewReader(file)
		reader.FieldsPerRecord = -1
		all, err := reader.ReadAll()
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		sheets[strings.TrimSuffix(filepath.Base(path), ".csv")] = all
	}
	return sheets
}
