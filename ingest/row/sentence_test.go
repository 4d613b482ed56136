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
		{"came out lovely, stood 15-18 min, wept 3 %", 15, 18, 3},
		{"came out, lasted between 10 and 14 min", 10, 14, none},
		{"came out, held there for more than 30 min, lost about 4 % of it", 30, math.Inf(1), 4},
		{"came out, stood at least 40 min", 40, math.Inf(1), none},
		{"came out, held 45+ min", 45, math.Inf(1), none},
		{"came out, held 45 min+", 45, math.Inf(1), none},
		{"came out, held 45 min or more", 45, math.Inf(1), none},
		{"kam raus, hielt 45 min oder länger, nicht gebrochen", 45, math.Inf(1), none},
		{"came out, held 20 min and was still standing", 20, math.Inf(1), none},
		{"came out, gone by 10 min", 0, 10, none},
		{"came out, held less than 2 min", 0, 2, none},
		{"came out, held half an hour", 30, 30, none},
		{"came out, held 1 h 10 then fell", 70, 70, none},
		{"came out, held 80 s", 80. / 60, 80. / 60, none},
		{"came out, tasted at 12 min", none, none, none},
		{"kam raus, stand über 25 min, 4 % abgelaufen", 25, math.Inf(1), 4},
		{"kam raus, hielt 15 bis 20 Minuten, verlor 6 %", 15, 20, 6},
		{"sorti, a tenu plus de 25 min, 4 % d'exsudat", 25, math.Inf(1), 4},
		{"sorti, tenue 15 à 20 min", 15, 20, none},
		{"salió bien, aguantó 18 min, perdió 7 %", 18, 18, 7},
		{"uscito bene, tenuta oltre 20 min, drenato 5 %", 20, math.Inf(1), 5},
		{"kwam eruit, stond 22 minuten, 4 % uitgelekt", 22, 22, 4},
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
