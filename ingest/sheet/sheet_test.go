package sheet

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/cellname"
)

// save writes a workbook made by fill and returns its path.
func save(t testing.TB, fill func(f *excelize.File)) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	fill(f)
	path := filepath.Join(t.TempDir(), "log.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

// write writes bytes to a file of a name and returns its path.
func write(t testing.TB, name, data string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(data), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func open(t testing.TB, path string) *Book {
	t.Helper()
	b, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestDisplayOfSavedCells(t *testing.T) {
	cases := []struct {
		name   string
		value  any
		format string
		kind   Kind
		want   string
	}{
		{"integer", 12, "", Number, "12"},
		{"noise in the last digit", 0.1 + 0.2, "", Number, "0.3"},
		{"third", 1.0 / 3, "", Number, "0.333333333333333"},
		{"rounded by its format", 1.23456, "0.00", Number, "1.23456"},
		{"small", 1e-12, "", Number, "1E-12"},
		{"large", 123456789012.0, "", Number, "123456789012"},
		{"negative", -4.5, "0.0;[Red]0.0", Number, "-4.5"},
		{"negative in brackets", -4.5, "0.0;(0.0)", Number, "-4.5"},
		{"sign in the format", 5, `"<"0.0`, Number, "<5"},
		{"sign after", 20, `0"+"`, Number, "20+"},
		{"unit", 12.5, `0.0" g"`, Number, "12.5 g"},
		{"escaped unit", 12.5, `0.0\ \g`, Number, "12.5 g"},
		{"unit of minutes", 20, `0" min"`, Number, "20 min"},
		{"general with a unit", 20, `General" g"`, Number, "20 g"},
		{"currency", 3.5, `[$kr-41D] #,##0.00`, Number, "kr 3.5"},
		{"thousands", 1234.5, `#,##0.00`, Number, "1234.5"},
		{"per cent", 0.45, "0%", Number, "45%"},
		{"per cent with noise", 0.07, "0.0%", Number, "7%"},
		{"condition", 0.4, `[<1]"<"0;0`, Number, "<0.4"},
		{"condition not met", 4, `[<1]"<"0;0`, Number, "4"},
		{"words instead of the number", 1, `"yes";"no";"no"`, Number, "1"},
		{"colour", 7, `[Red]0.0`, Number, "7"},
		{"scientific", 12000, `0.00E+00`, Number, "12000"},
		{"date", 46085, "yyyy-mm-dd", Date, "2026-03-04"},
		{"date with time", 46085.5, "d/m/yy h:mm", Date, "2026-03-04 12:00"},
		{"date without its time", 46085.75, "dd/mm/yyyy", Date, "2026-03-04"},
		{"month only", 46085, "mmm yy", Date, "2026-03-04"},
		{"red is no day", 3, `[Red]0`, Number, "3"},
		{"time", 0.53125, "h:mm", Clock, "12:45"},
		{"time with seconds", 0.5 + 1.0/86400, "h:mm:ss AM/PM", Clock, "12:00:01"},
		{"elapsed", 1.25, "[h]:mm", Clock, "30:00"},
		{"elapsed minutes", 27.5 / 1440, "[mm]:ss", Clock, "00:27:30"},
		{"minutes and seconds", 27.5 / 1440, "mm:ss", Clock, "00:27:30"},
		{"tenths", 27.5 / 86400, "mm:ss.0", Clock, "00:00:27.5"},
		{"time rounded up", 0.9999999, "h:mm", Clock, "00:00"},
		{"date rounded up", 46085.9999999, "yyyy-mm-dd hh:mm", Date, "2026-03-05 00:00"},
		{"last February of the fiction", 60, "yyyy-mm-dd", Date, "1900-02-29"},
		{"first of March 1900", 61, "yyyy-mm-dd", Date, "1900-03-01"},
		{"first of January 1900", 1, "yyyy-mm-dd", Date, "1900-01-01"},
		{"number under a date format", -3, "yyyy-mm-dd", Number, "-3"},
		{"language mark", 46085, `[$-F800]dddd\,\ mmmm\ dd\,\ yyyy`, Date, "2026-03-04"},
		{"unquoted unit", 5, `0.0 s`, Number, "5 s"},
		{"true", true, "", Bool, "TRUE"},
		{"text", " 20+ ", "", Text, " 20+ "},
		{"text like a number", "007", "", Text, "007"},
	}
	path := save(t, func(f *excelize.File) {
		for i, c := range cases {
			f.SetCellValue("Sheet1", cellname.Of(i+1, 2), c.value)
			if c.format != "" {
				style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &c.format})
				if err != nil {
					t.Fatal(err)
				}
				f.SetCellStyle("Sheet1", cellname.Of(i+1, 2), cellname.Of(i+1, 2), style)
			}
		}
	})
	s := open(t, path).Sheets[0]
	for _, f := range s.Faults {
		t.Errorf("damage in a sound file: %+v", f)
	}
	for i, c := range cases {
		cell := s.At(i+1, 2)
		if got := s.Display(cell); got != c.want || cell.Kind != c.kind {
			t.Errorf("%s: %v as %q shows %q, a %v; want %q, a %v", c.name, c.value, c.format, got, cell.Kind, c.want, c.kind)
		}
		if got := s.Format(cell); got != c.format {
			t.Errorf("%s: format %q, want %q", c.name, got, c.format)
		}
	}
}
