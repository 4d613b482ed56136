package ingest

import (
	"fmt"
	"path/filepath"
	"testing"

	"github.com/xuri/excelize/v2"
)

// TestElapsedFormat: a format that counts hours and minutes says which a time is, and that it
// was read so is said; one that a spreadsheet chooses by itself says nothing.
func TestElapsedFormat(t *testing.T) {
	for _, c := range []struct {
		format string
		days   float64
		want   float64
	}{
		{"[h]:mm", 40. / 1440, 40},
		{"[hh]:mm", 95. / 1440, 95},
		{"h:mm", 40. / 1440, 40. / 60},
		{"[h]:mm", 45. / 24, 45}, // 45:00 was typed in minutes
		{"mm:ss", 12. / 1440, 12},
	} {
		f := excelize.NewFile()
		for r, row := range [][]any{{"trial", "oil % of mix", "emulsifier % of mix", "HLB", "hold"}, {1, 45, 2.5, 8, c.days}, {2, 45, 2.5, 8, "38 min"}} {
			if err := f.SetSheetRow("Sheet1", fmt.Sprintf("A%d", 1+r), &row); err != nil {
				t.Fatal(err)
			}
		}
		style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &c.format})
		if err == nil {
			err = f.SetCellStyle("Sheet1", "E2", "E2", style)
		}
		path := filepath.Join(t.TempDir(), "log.xlsx")
		if err == nil {
			err = f.SaveAs(path)
		}
		if err != nil {
			t.Fatal(err)
		}
		log, err := Read([]string{path}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if x := log.Trials[0].Hold; x == nil || x.Low-c.want > 1e-9 || c.want-x.Low > 1e-9 {
			t.Errorf("%s of %g days: %v, want %g", c.format, c.days, x, c.want)
		}
		said := false
		for _, p := range log.Problems {
			said = said || p.Kind == "value in doubt"
		}
		if want := c.days < 1; said != want {
			t.Errorf("%s of %g days: in doubt %v, want %v", c.format, c.days, said, want)
		}
	}
}
