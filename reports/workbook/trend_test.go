package workbook

import (
	"bytes"
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/weeks"

	"github.com/xuri/excelize/v2"
)

// The lists of trend.json stand on sheets of their own, with every digit.
func TestTrendBook(t *testing.T) {
	p := 0.0012345678
	r := &result.Trend{Periods: []result.Period{{Label: "week of 2 Mar 2026", FirstDate: "2026-03-02", LastDate: "2026-03-05", Trials: 12,
		Level: &result.Ratio{Ratio: 1.123456789, Low: 0.9, High: 1.3}, Clogged: result.TrendCount{Count: 1, Of: 12, Low: 0.004, High: 0.34}}},
		Tests: []result.TrendTest{{What: "week", Outcome: result.HoldMinutes, P: &p, PAdjusted: &p, Verdict: result.Shown, Effect: &result.Ratio{Ratio: 1.4, Low: 1.2, High: 1.7}, Sentence: "shown"}}}
	content, err := Trend(r, weeks.Build(r))
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(content), excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, c := range []struct{ sheet, cell, want string }{
		{"Weeks", "A2", "week of 2 Mar 2026"}, {"Weeks", "E2", "1.123456789"}, {"Weeks", "Q2", "1"}, {"Weeks", "R2", "12"}, {"Weeks", "U2", ""},
		{"Tests", "D2", "shown"}, {"Tests", "I2", "0.0012345678"}, {"Summary", "A1", "Across weeks: a log"},
	} {
		if got, err := f.GetCellValue(c.sheet, c.cell); err != nil || got != c.want {
			t.Errorf("%s %s is %q, want %q (%v)", c.sheet, c.cell, got, c.want, err)
		}
	}
}
