package ingest

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/thorough"
)

// TestSavedAnewBySecondProgram: a workbook reads the same after a second
// spreadsheet program has opened it and saved it: trials, values and problems.
func TestSavedAnewBySecondProgram(t *testing.T) {
	office := thorough.Program(t, "soffice", "no workbook is saved anew here")
	faulty := map[string]any{}
	for _, c := range planted[:10] {
		for cell, v := range c.changes {
			faulty[cell] = v
		}
	}
	faults := filepath.Join(t.TempDir(), "faults.xlsx")
	if err := os.Rename(tidy(t, faulty), faults); err != nil {
		t.Fatal(err)
	}
	logs := []string{"../testdata/demo/week.xlsx", asWorkbook(t, "../testdata/demo/five-columns.csv"), faults, nasty(t)}
	dir := t.TempDir()
	args := []string{"-env:UserInstallation=file://" + dir + "/profile", "--headless", "--convert-to", "xlsx", "--outdir", dir}
	if out, err := exec.Command(office, append(args, logs...)...).CombinedOutput(); err != nil {
		t.Fatalf("soffice: %v: %s", err, out)
	}
	for _, path := range logs {
		t.Run(filepath.Base(path), func(t *testing.T) {
			ours, theirs := whatWasRead(t, path), whatWasRead(t, filepath.Join(dir, filepath.Base(path)))
			if len(ours) < 5 {
				t.Fatalf("only %d lines", len(ours))
			}
			for i := range max(len(ours), len(theirs)) {
				a, b := "nothing", "nothing"
				if i < len(ours) {
					a = ours[i]
				}
				if i < len(theirs) {
					b = theirs[i]
				}
				if a != b {
					t.Errorf("ours:   %s\ntheirs: %s", a, b)
				}
			}
		})
	}
}

// whatWasRead is all of a log but its file's hash, a line each.
func whatWasRead(t *testing.T, path string) []string {
	t.Helper()
	log, err := Read([]string{path}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	accounts(t, log)
	lines := []string{fmt.Sprint(log.Rows, log.Extras, log.Method)}
	for _, c := range log.Columns {
		lines = append(lines, fmt.Sprint(c))
	}
	for i := range log.Trials {
		x := &log.Trials[i]
		s := fmt.Sprint(line(x), x.At, x.Rows, x.Canister, x.Note, x.Extras, x.Raw, x.Missing, x.Flagged, x.Aside)
		for _, p := range x.Parts {
			s += fmt.Sprintf(" %s %.12g", p.Name, p.Grams)
		}
		lines = append(lines, s)
	}
	for _, p := range log.Problems {
		lines = append(lines, fmt.Sprint(p))
	}
	return lines
}

// asWorkbook writes a text log as a workbook, numbers as numbers.
func asWorkbook(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return saved(t, "five-columns.xlsx", func(f *excelize.File, set func(string, any)) {
		for r, l := range strings.Split(strings.TrimSpace(string(text)), "\n") {
			for c, cell := range strings.Split(strings.TrimSpace(l), ",") {
				name, _ := excelize.CoordinatesToCellName(c+1, r+1)
				if v, err := strconv.ParseFloat(cell, 64); err == nil {
					set(name, v)
				} else {
					set(name, cell)
				}
			}
		}
	})
}

// nasty is a log with what a second program may save in another way: formulas,
// merged cells, dates, clock times, signs that live only in a number format,
// percent cells, hidden rows and columns, rich text, a sheet that is no log.
func nasty(t *testing.T) string {
	t.Helper()
	return saved(t, "nasty.xlsx", func(f *excelize.File, set func(string, any)) {
		do := func(err error) {
			if err != nil {
				t.Fatal(err)
			}
		}
		style := func(cell, format string) {
			id, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
			do(err)
			do(f.SetCellStyle("Sheet1", cell, cell, id))
		}
		set("A1", "Foam trials, week 12")
		set("D3", "FORMULA")
		do(f.MergeCell("Sheet1", "D3", "G3"))
		set("H3", "RESULTS")
		do(f.MergeCell("Sheet1", "H3", "L3"))
		for i, h := range []any{"Trial", "Date", "Chef", "Butter", "Cider", "GMS", "Sucrose ester 15", "Came out", "Hold", "Drained at 20 min", "Split", "Rest", "Fat", "Notes"} {
			set(fmt.Sprintf("%c4", 'A'+i), h)
		}
		for i, u := range []any{"", "", "", "g", "g", "g", "g", "", "min", "%", "", "h", "%", ""} {
			set(fmt.Sprintf("%c5", 'A'+i), u)
		}
		for n := range 12 {
			r := n + 6
			at := func(col string) string { return fmt.Sprintf("%s%d", col, r) }
			set(at("A"), n+1)
			set(at("B"), time.Date(2024, 10, 7+n/3, 0, 0, 0, 0, time.UTC))
			if n%3 == 0 {
				set(at("C"), "A "+string(rune('F'+n)))
				do(f.MergeCell("Sheet1", at("C"), fmt.Sprintf("C%d", r+2)))
			}
			fat := 110 + 5*float64(n)
			set(at("D"), fat)
			set(at("E"), 294-fat)
			do(f.SetCellFormula("Sheet1", at("E"), fmt.Sprintf("294-D%d", r)))
			set(at("F"), 3.4)
			set(at("G"), 2.6)
			set(at("H"), []any{"yes", true, "oui"}[n%3])
			set(at("I"), 12+n)
			set(at("J"), 0.05+0.005*float64(n))
			style(at("J"), "0.0%")
			set(at("K"), "no")
			set(at("L"), 0.0625)
			style(at("L"), "h:mm")
			set(at("M"), 0.82*fat/300)
			style(at("M"), "0.00%")
		}
		style("I7", `">"0`)
		style("I8", `0"+"`)
		set("I9", time.Date(2024, 10, 15, 0, 0, 0, 0, time.UTC)) // was 10-15
		set("J9", 0)
		style("I10", `"about "0`)
		set("I11", "1:30")
		set("I12", ">20")
		set("J12", "trace")
		set("H13", "clogged")
		set("I13", nil)
		set("J13", nil)
		style("I14", `"ca. "0.0`)
		style("D14", `0.0" g"`)
		style("I15", `0;-0;"none"`)
		set("I15", 0)
		do(f.SetCellRichText("Sheet1", "N8", []excelize.RichTextRun{{Text: "strained, "}, {Text: "then fine", Font: &excelize.Font{Bold: true}}}))
		set("A18", "AVG")
		set("D18", 137.5)
		do(f.SetCellFormula("Sheet1", "D18", "AVERAGE(D6:D17)"))
		do(f.SetRowVisible("Sheet1", 16, false))
		do(f.SetColVisible("Sheet1", "L", false))
		_, err := f.NewSheet("Shopping")
		do(err)
		do(f.SetCellValue("Shopping", "A1", "butter, 2 kg"))
	})
}

// saved writes a workbook of one sheet, Sheet1, to begin with.
func saved(t *testing.T, name string, fill func(f *excelize.File, set func(cell string, v any))) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	fill(f, func(cell string, v any) {
		if err := f.SetCellValue("Sheet1", cell, v); err != nil {
			t.Fatal(err)
		}
	})
	path := filepath.Join(t.TempDir(), name)
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestNastyLog: the log itself is read as meant.
func TestNastyLog(t *testing.T) {
	lines := whatWasRead(t, nasty(t))
	for _, want := range []string{"hold 13+ ", "is a date where a time is expected", "drained 5.5 ", "rest_minutes:90", "hidden column", "hidden rows"} {
		if !slices.ContainsFunc(lines, func(l string) bool { return strings.Contains(l, want) }) {
			t.Errorf("no %q in\n%s", want, strings.Join(lines, "\n"))
		}
	}
}
