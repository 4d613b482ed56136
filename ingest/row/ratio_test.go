package row

import (
	"testing"

	"foamfield/ingest/sheet"
)

// TestPartsOf: the share of the first part in percent; 0 is no ratio.
func TestPartsOf(t *testing.T) {
	for _, c := range []struct {
		text  string
		kind  sheet.Kind
		first float64
	}{
		{"70:30", sheet.Text, 70}, {"7:3", sheet.Text, 70}, {"1 : 1", sheet.Text, 50}, {"70/30", sheet.Text, 70}, {"70 % / 30 %", sheet.Text, 70},
		{"70 zu 30", sheet.Text, 70}, {"62.5:37.5", sheet.Text, 62.5}, {"100:0", sheet.Text, 100},
		{"70:30:00", sheet.Clock, 70}, {"1:01", sheet.Clock, 50}, {"3:01", sheet.Clock, 75},
		{"41:00", sheet.Clock, 0}, // of 40:60
		{"21:20", sheet.Clock, 0}, // of 20:80
		{"70:40", sheet.Text, 0}, {"0:0", sheet.Text, 0}, {"70", sheet.Text, 0}, {"mostly GMS", sheet.Text, 0}, {"1/2", sheet.Date, 0},
	} {
		if first, ok := partsOf(c.text, c.kind); ok != (c.first > 0) || first != c.first {
			t.Errorf("%q: %g, want %g", c.text, first, c.first)
		}
	}
}
