package row_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"foamfield/ingest"
	"foamfield/ingest/trial"
)

// TestSentence: what a sentence says of a trial's hold and drainage, where no column
// does; NaN is not said.
func TestSentence(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		text             string
		low, high, drain float64
	}{
		{"Came out fine, held 19 min, 12.9 % drained after 20 min, not split.", 19, 19, 12.9},
		{"Came out well. Stood for 29 minutes and lost 4.7 % of its weight as liquid.", 29, 29, 4.7},
		{"Fine from the siphon, collapsed after 27 min, drained 5.2 %", 27, 27, 5.2},
		{"came out, still standing at 40", 40, math.Inf(1), none},
		{"came out, held 17 min, forgot to weigh the liquid", 17, 17, none},
		{"clogged after 2 shakes, 3 chargers", none, none, none},
		{"came out, fat 40 % is too much", none, none, none},
	} {
		path := filepath.Join(t.TempDir(), "log.csv")
		log := "trial,butter g,cider g,GMS g,what happened\n1,150,146,4,\"" + c.text + "\"\n2,150,146,4,\"came out, held 20 min\"\n"
		if err := os.WriteFile(path, []byte(log), 0o600); err != nil {
			t.Fatal(err)
		}
		read, err := ingest.Read([]string{path}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		hold, drained := read.Trials[0].Hold, read.Trials[0].Drained
		bounds := func(i *trial.Interval) (low, high float64) {
			if i == nil {
				return none, none
			}
			return i.Low, i.High
		}
		low, high := bounds(hold)
		d, _ := bounds(drained)
		same := func(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
		if !same(low, c.low) || !same(high, c.high) || !same(d, c.drain) {
			t.Errorf("%q: hold %g to %g, drained %g; want %g to %g and %g", c.text, low, high, d, c.low, c.high, c.drain)
		}
	}
}

// TestStandingAtEachLook: a row a look says between which two a foam fell.
func TestStandingAtEachLook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log.csv")
	log := "trial,butter g,cider g,GMS g,look at min,standing?\n1,150,146,4,5,yes\n,,,,10,yes\n,,,,20,fell\n2,150,146,4,5,yes\n,,,,10,yes\n,,,,20,yes\n3,150,146,4,5,yes\n,,,,10,no\n,,,,20,no\n"
	if err := os.WriteFile(path, []byte(log), 0o600); err != nil {
		t.Fatal(err)
	}
	read, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []trial.Interval{{Low: 10, High: 20}, {Low: 20, High: math.Inf(1)}, {Low: 5, High: 10}} {
		if got := read.Trials[i].Hold; got == nil || *got != want {
			t.Errorf("trial %d held %v, want %v", i+1, got, want)
		}
	}
}
