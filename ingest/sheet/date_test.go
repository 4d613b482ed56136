package sheet

import (
	"testing"

	"github.com/xuri/excelize/v2"

	"foamfield/ingest/shown"
)

func Test1904Workbook(t *testing.T) {
	path := save(t, func(f *excelize.File) {
		yes := true
		f.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &yes})
		f.SetCellValue("Sheet1", "A1", 44623)
		style, err := f.NewStyle(&excelize.Style{NumFmt: 14})
		if err != nil {
			t.Fatal(err)
		}
		f.SetCellStyle("Sheet1", "A1", "A1", style)
	})
	b := open(t, path)
	if got := b.Sheets[0].Display(b.Sheets[0].At(1, 1)); got != "2026-03-04" || !b.Date1904 {
		t.Errorf("shows %q, 1904: %v", got, b.Date1904)
	}
}

// The workbook library turns serials into times by its own arithmetic.
func TestTimeAgainstLibrary(t *testing.T) {
	format := shown.Parse("yyyy-mm-dd hh:mm")
	for _, date1904 := range []bool{false, true} {
		for serial := 61.0; serial < 2_900_000; serial += 997.25 {
			want, err := excelize.ExcelDateToTime(serial, date1904)
			if err != nil {
				t.Fatal(err)
			}
			if got, want := format.Date(serial, date1904), want.Format("2006-01-02 15:04"); got != want {
				t.Fatalf("%v (1904: %v) is %s, want %s", serial, date1904, got, want)
			}
		}
	}
}
