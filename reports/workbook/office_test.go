package workbook

import (
	"encoding/csv"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
)

// A second spreadsheet program opens the report and works out the same grams.
func TestSecondProgramAgrees(t *testing.T) {
	office, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("soffice is not installed: the workbook is not opened by a second program here")
	}
	dir := t.TempDir()
	b, err := Report(kitchen(), document())
	f := open(t, b, err)
	if err := os.WriteFile(filepath.Join(dir, "report.xlsx"), b, 0o644); err != nil {
		t.Fatal(err)
	}
	// Without the values beside the formulas it has to work them out itself.
	if err := f.UpdateLinkedValue(); err != nil {
		t.Fatal(err)
	}
	if err := f.SaveAs(filepath.Join(dir, "bare.xlsx")); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"report", "bare"} {
		out, err := exec.Command(office, "-env:UserInstallation=file://"+dir+"/profile", "--headless", "--convert-to",
			"csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1", "--outdir", dir, filepath.Join(dir, name+".xlsx")).CombinedOutput()
		if err != nil {
			t.Fatalf("soffice: %v: %s", err, out)
		}
	}
	read := func(name, sheet string) [][]string {
		file, err := os.Open(filepath.Join(dir, name+"-"+sheet+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		defer file.Close()
		all, err := csv.NewReader(file).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		return all
	}
	numbers := 0
	for _, sheet := range []string{"Formula", "Bench card"} {
		cached, bare := read("report", sheet), read("bare", sheet)
		for i, row := range rows(t, open(t, b, nil), sheet) {
			for k, s := range row {
				formula, _ := f.GetCellFormula(sheet, place(k, i+1))
				want, err := strconv.ParseFloat(s, 64)
				if formula == "" || err != nil {
					continue
				}
				numbers++
				for name, table := range map[string][][]string{"as written": cached, "worked out": bare} {
					got, err := strconv.ParseFloat(table[i][k], 64)
					if err != nil || math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
						t.Errorf("%s!%s, %s: %q, want %v", sheet, place(k, i+1), name, table[i][k], want)
					}
				}
			}
		}
	}
	if numbers < 40 {
		t.Errorf("only %d formulas were compared", numbers)
	}
}
