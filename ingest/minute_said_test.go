package ingest

import (
	"path/filepath"
	"testing"
)

// TestMinuteSaid: the minute of drainage that a line says is that of the header without one, and
// is the one that counts; the header's own wins over it.
func TestMinuteSaid(t *testing.T) {
	for _, c := range []struct {
		line, head string
		want       float64 // that counts; 0 = nothing says one
	}{
		{"Drip: % of the foam, after 12 min.", "drip %", 12},
		{"Drip: % of the foam, after 12 min.", "drip at 15 min %", 15},
		{"Rest: 12 min", "drip %", 0},
	} {
		table := c.line + "\nno | walnut oil % | emulsifier % of mix | HLB | came out | hold min | " + c.head + `
1 | 44 | 2 | 8 | yes | 14 | 9
2 | 50 | 2.4 | 9 | yes | 18 | 6
3 | 60 | 3 | 9 | no | |`
		log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"log", table})}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := 0.0
		if target := log.Targets.DrainedAtMinutes; target != nil {
			got = target.Value
		}
		said := 0
		for _, p := range log.Problems {
			if p.Kind == "said beside the table" {
				said++
			}
		}
		if got != c.want || (said == 1) != (c.want == 12) {
			t.Errorf("%q above %q: drainage counts at %g min, said %d times; want %g", c.line, c.head, got, said, c.want)
		}
		if x := log.Trials[0].Drained; x == nil || x.Low != 9 {
			t.Errorf("%q above %q: the first trial drained %v, want 9", c.line, c.head, x)
		}
	}
}
