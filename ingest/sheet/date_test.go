package sheet

import (
	"testing"

	"github.com/xuri/excelize/v2"
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
