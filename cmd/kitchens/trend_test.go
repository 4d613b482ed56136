package main

import (
	"flag"
	"math"
	"testing"

	"foamfield/ingest/thorough"
)

var histories = flag.Int("histories", 0, "simulated histories of four weeks a row; unless set 1, in a thorough run 3")

// guardHistories is the first history of the guard, none of the table's.
const guardHistories = 90_000

// What truly moved is found and what did not is not shown: loose bounds for a few histories,
// which narrow with their number. A lot that goes with a week is never shown alone.
func TestTrendsAreFound(t *testing.T) {
	thorough.NotShort(t, "simulates and analyses histories for some seconds")
	dir, n := t.TempDir(), *histories
	if n == 0 {
		n = thorough.Of(t, 1, 3)
	}
	var falsely, all float64
	for _, c := range courses() {
		switch c.name {
		case "nothing, day SD 0.1", "nothing, day SD 0.2", "step to 0.7 with week 3", "drift to 0.5 in four weeks", "nothing, a lot with week 3":
			if n < 50 {
				continue
			}
		}
		rows, err := coursesOf(dir, c, guardHistories, n)
		if err != nil {
			t.Fatal(err)
		}
		s, of := sumTrend(rows), float64(n)
		t.Logf("%s: shown %.2f, suggested %.2f, falsely %.2f, optima inside %.2f", c.name, s.found/of, s.suggested/of, s.falsely/of, s.inside/s.optima)
		falsely, all = falsely+s.falsely, all+of
		if (c.truth == "lot" || c.moves != 0) && s.found+s.suggested < 0.8*of {
			t.Errorf("%s: found in %.0f of %.0f", c.name, s.found+s.suggested, of)
		}
		if c.withWeek && (s.alone > 0 || s.named < of) {
			t.Errorf("%s: lot alone in %.0f, lot or week named in %.0f of %.0f", c.name, s.alone, s.named, of)
		}
		if s.inside < (0.9-0.9/math.Sqrt(of))*s.optima { // three standard errors: those of one history go together
			t.Errorf("%s: limits hold %.0f of %.0f optima", c.name, s.inside, s.optima)
		}
	}
	if falsely > 0.05*all+2 {
		t.Errorf("falsely shown in %.0f of %.0f histories", falsely, all)
	}
}
