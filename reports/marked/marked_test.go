package marked_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	cells "foamfield/ingest/sheet"
	"foamfield/ingest/thorough"
	"foamfield/reports/marked"
)

func at(row, col int) marked.Place { return marked.Place{Row: row, Col: col} }

func text(row, col int, s string) marked.Cell { return marked.Cell{Row: row, Col: col, Text: s} }

func number(row, col int, v float64, format string) marked.Cell {
	return marked.Cell{Row: row, Col: col, Kind: marked.Number, Number: v, Format: format}
}

func week() *marked.Log {
	return &marked.Log{
		File: "week.xlsx",
		Sheets: []marked.Sheet{
			{Name: "Mon", Cells: []marked.Cell{
				text(3, 1, "trial"), text(3, 2, "butter g"), text(3, 3, "mood"),
				number(4, 1, 1, ""), number(4, 2, 120.1, `0.0" g"`), text(4, 3, `=HYPERLINK("x","y")`),
				number(5, 1, 46093, "yyyy-mm-dd"), text(5, 2, "banana"), {Row: 5, Col: 3, Kind: marked.Bool, Number: 1},
			}},
			{Name: "To mend", Cells: []marked.Cell{text(1, 1, "+1")}},
		},
		Problems: []marked.Problem{
			{marked.ForInformation, at(5, 2), "week.xlsx, sheet Mon, cell B5", 1, "said in passing", "nothing to do"},
			{marked.PleaseLook, at(4, 4), "week.xlsx, sheet Mon, cell D4", 1, "nothing is here", "type something"},
			{marked.MustFix, at(5, 2), "week.xlsx, sheet Mon, cell B5", 3, "“banana” is no number", "type the grams"},
			{marked.PleaseLook, at(0, 3), "week.xlsx, sheet Mon, column C", 1, "not a known header", "say what it is"},
			{marked.MustFix, marked.Place{Sheet: -1}, "week.xlsx", 1, "all of it", "look"},
		},
		Columns: []marked.Column{{at(3, 1), "trial", "trial"}, {at(3, 2), "butter g", "butter, g"}, {at(3, 3), "mood", ""}},
	}
}

func open(t *testing.T, l *marked.Log) (*excelize.File, int) {
	content, n, err := marked.Write(l)
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(content))
	if err != nil {
		t.Fatal(err)
	}
	return f, n
}

func ground(t *testing.T, f *excelize.File, sheet, cell string) string {
	t.Helper()
	id, err := f.GetCellStyle(sheet, cell)
	if err != nil {
		t.Fatal(err)
	}
	s, err := f.GetStyle(id)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(s.Fill.Color, "")
}

func TestCellsAreMarkedAndSayWhy(t *testing.T) {
	f, n := open(t, week())
	if n != 3 {
		t.Errorf("%d cells marked, want 3", n)
	}
	remarks, err := f.GetComments("Mon")
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	for _, r := range remarks {
		for _, p := range r.Paragraph {
			said[r.Cell] += p.Text
		}
	}
	for cell, want := range map[string][]string{
		"A3": {"Read as: trial"}, "B3": {"Read as: butter, g"},
		"C3": {"Read as: not used", "Not a known header. Say what it is."},
		"B5": {"“banana” is no number. Type the grams. (3 times in this column.)", "Said in passing."},
		"D4": {"Nothing is here. Type something."},
	} {
		for _, w := range want {
			if !strings.Contains(said[cell], w) {
				t.Errorf("%s says %q, want %q", cell, said[cell], w)
			}
		}
	}
	if len(said) != 5 {
		t.Errorf("%d comments, want 5: %v", len(said), said)
	}
	worst, look, head, none := ground(t, f, "Mon", "B5"), ground(t, f, "Mon", "D4"), ground(t, f, "Mon", "A3"), ground(t, f, "Mon", "A4")
	if worst == "" || look == "" || head == "" || worst == look || head == look || none != "" {
		t.Errorf("grounds: must fix %q, please look %q, header %q, nothing %q", worst, look, head, none)
	}
	// The list means by a colour what the sheet means by it.
	list := f.GetSheetList()[0]
	if got := ground(t, f, list, "A5"); got != worst {
		t.Errorf("the list colours must fix %q, the cell %q", got, worst)
	}
}

func TestTheListLeadsToTheCells(t *testing.T) {
	f, _ := open(t, week())
	sheets := f.GetSheetList()
	if want := []string{"To mend (2)", "Columns read", "Mon", "To mend"}; fmt.Sprint(sheets) != fmt.Sprint(want) {
		t.Fatalf("sheets %q, want %q", sheets, want)
	}
	rows, err := f.GetRows(sheets[0])
	if err != nil {
		t.Fatal(err)
	}
	var order []string
	for _, r := range rows[4:] {
		order = append(order, r[0])
	}
	if got := strings.Join(order, ", "); got != "fix, fix, check, check, note" {
		t.Errorf("the order is %s", got)
	}
	for cell, want := range map[string]string{"B5": "'Mon'!B5", "B7": "'Mon'!D4", "B8": "'Mon'!C3"} {
		if ok, to, err := f.GetCellHyperLink(sheets[0], cell); err != nil || !ok || to != want {
			t.Errorf("%s leads to %q (%v), want %q", cell, to, err, want)
		}
	}
	if ok, _, err := f.GetCellHyperLink(sheets[0], "B6"); ok || err != nil {
		t.Errorf("a problem of the whole file leads somewhere (%v)", err)
	}
	if v, err := f.GetCellValue("Columns read", "C7"); err != nil || v != "“mood” is not used" {
		t.Errorf("the third column is %q (%v)", v, err)
	}
}

// Values stay where they were, as they were, and never become formulas.
func TestEveryValueStaysWhatItWas(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		l := &marked.Log{File: "x.csv", Sheets: []marked.Sheet{{Name: rapid.String().Draw(t, "sheet")}}}
		for row := 1; row <= rapid.IntRange(1, 5).Draw(t, "rows"); row++ {
			if rapid.Bool().Draw(t, "number") {
				l.Sheets[0].Cells = append(l.Sheets[0].Cells, number(row, 2, rapid.Float64Range(-1e9, 1e9).Draw(t, "value"), ""))
				continue
			}
			s := rapid.StringMatching(`[=+\-@]?[ -~éü€]{1,20}`).Draw(t, "text")
			l.Sheets[0].Cells = append(l.Sheets[0].Cells, text(row, 2, s))
			l.Problems = append(l.Problems, marked.Problem{At: at(row, 2), Count: 1, Read: s, Do: s, Where: s})
		}
		content, _, err := marked.Write(l)
		if err != nil {
			t.Fatal(err)
		}
		f, err := excelize.OpenReader(bytes.NewReader(content))
		if err != nil {
			t.Fatal(err)
		}
		for _, sheet := range f.GetSheetList() {
			for row := 1; row < 12; row++ {
				for _, col := range []string{"A", "B", "C", "D", "E"} {
					if formula, err := f.GetCellFormula(sheet, col+fmt.Sprint(row)); err != nil || formula != "" {
						t.Fatalf("%s!%s%d holds the formula %q (%v)", sheet, col, row, formula, err)
					}
				}
			}
		}
		// Our own reader, which keeps every digit, reads the values back.
		path := filepath.Join(dir, "copy.xlsx")
		if err := os.WriteFile(path, content, 0o666); err != nil {
			t.Fatal(err)
		}
		book, err := cells.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range l.Sheets[0].Cells {
			got := book.Sheets[2].At(c.Row, c.Col)
			if got.Number != c.Number || got.Text != c.Text {
				t.Fatalf("row %d is %v %q, want %v %q", c.Row, got.Number, got.Text, c.Number, c.Text)
			}
		}
	})
}

func TestFormatsThatCarryAUnitAreKept(t *testing.T) {
	f, _ := open(t, week())
	for cell, want := range map[string]string{"B4": "120.1 g", "A5": "2026-03-12"} {
		if got, err := f.GetCellValue("Mon", cell); err != nil || got != want {
			t.Errorf("%s shows %q (%v), want %q", cell, got, err, want)
		}
	}
}

func TestTheSameBytesEveryTime(t *testing.T) {
	first, _, err := marked.Write(week())
	if err != nil {
		t.Fatal(err)
	}
	for range 3 {
		again, _, err := marked.Write(week())
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, again) {
			t.Fatal("the bytes differ")
		}
	}
}

// A log with more to say than a workbook can carry: all is coloured, the worst
// say why, and the list says so.
func TestMoreProblemsThanComments(t *testing.T) {
	thorough.NotShort(t, "marks five thousand cells")
	l := &marked.Log{File: "long.csv", Sheets: []marked.Sheet{{Name: "long"}}}
	for row := 2; row < 5002; row++ {
		l.Sheets[0].Cells = append(l.Sheets[0].Cells, text(row, 1, "x"))
		s := marked.PleaseLook
		if row > 4900 {
			s = marked.MustFix
		}
		l.Problems = append(l.Problems, marked.Problem{Severity: s, At: at(row, 1), Count: 1, Read: "x", Do: "y"})
	}
	f, n := open(t, l)
	if n != 5000 {
		t.Errorf("%d marked", n)
	}
	if got := ground(t, f, "long", "A4800"); got == "" {
		t.Error("a cell beyond the comments is not coloured")
	}
	remarks, err := f.GetComments("long")
	if err != nil {
		t.Fatal(err)
	}
	worst := 0
	for _, r := range remarks {
		var row int
		if _, err := fmt.Sscanf(r.Cell, "A%d", &row); err == nil && row > 4900 {
			worst++
		}
	}
	if len(remarks) != 4000 || worst != 101 {
		t.Errorf("%d comments, %d of the worst", len(remarks), worst)
	}
	if v, err := f.GetCellValue("To mend", "A3"); err != nil || !strings.Contains(v, "4000 worst") {
		t.Errorf("the list says %q (%v)", v, err)
	}
}

func BenchmarkTheLargestCopy(b *testing.B) {
	l := &marked.Log{File: "long.csv", Sheets: []marked.Sheet{{Name: "long"}}}
	for row := 1; row <= marked.MostCells/20; row++ {
		for col := 1; col <= 20; col++ {
			l.Sheets[0].Cells = append(l.Sheets[0].Cells, number(row, col, float64(row), ""))
		}
		l.Problems = append(l.Problems, marked.Problem{At: at(row, 1), Count: 1, Read: "x", Do: "y"})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := marked.Write(l); err != nil {
			b.Fatal(err)
		}
	}
}
