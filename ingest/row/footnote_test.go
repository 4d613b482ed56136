package row_test

import (
	"math"
	"testing"

	"foamfield/ingest/trial"
)

// TestFootnotes: what a line below the table says of the mark behind a number.
func TestFootnotes(t *testing.T) {
	open := math.Inf(1)
	for _, c := range []struct {
		cell, line string
		low, high  float64 // NaN = none
		aside      bool
	}{
		{"14*", "* stopwatch started late, it stood at least this long", 14, open, false},
		{"14 *", "*: still standing when we left", 14, open, false},
		{"14†", "† door was open", 14, 14, false},
		{"14**", "* door was open ** Uhr zu spät gestartet, stand mindestens so lange", 14, open, false},
		{"14 ¹", "1) door was open", 14, 14, false},
		{"14 (a)", "a) timed by phone", 14, 14, false},
		{"14a", "a = timed by phone", 14, 14, false},
		{"14*", "* typed wrong, should be 19", math.NaN(), math.NaN(), false},
		{"14*", "* does not count", 14, 14, true},
		{"14*", "no footnote at all", 14, 14, false},
		{"14b", "a = timed by phone", 14, 14, false},
	} {
		log := read(t, "trial,oil % of mix,emulsifier % of mix,HLB,came out,hold min\n1,45,2.5,8,yes,20\n2,45,2.5,8,yes,"+c.cell+"\n3,50,2.5,8,no,\n\n\""+c.line+"\"\n")
		x := &log.Trials[1]
		low, high := math.NaN(), math.NaN()
		if x.Hold != nil {
			low, high = x.Hold.Low, x.Hold.High
		}
		same := func(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
		if !same(low, c.low) || !same(high, c.high) || x.Used() == c.aside {
			t.Errorf("%q with %q: %v to %v, used %v; want %v to %v, aside %v", c.cell, c.line, low, high, x.Used(), c.low, c.high, c.aside)
		}
		if said(log, "F3") == "" {
			t.Errorf("%q with %q: nothing is said at the cell", c.cell, c.line)
		}
	}
	log := read(t, "trial,oil % of mix,emulsifier % of mix,HLB,came out,hold min\n1,45,2.5,8,yes,20\n2*,45*,2.5,8,yes*,14\n3,50,2.5,8,no,\n\n* wrong bottle of oil\n")
	if x := &log.Trials[1]; x.Used() || x.ID != "2" {
		t.Errorf("trial %q used %v; its oil was another", x.ID, x.Used())
	}
}

// said is what a problem says at a cell, alone or as one of several.
func said(log *trial.Log, cell string) string {
	for _, p := range log.Problems {
		if p.At.String() == "log.csv, cell "+cell || p.Count > 1 {
			return p.Read
		}
	}
	for _, x := range log.Trials {
		if x.Aside != "" {
			return x.Aside
		}
	}
	return ""
}
