package ingest

import (
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestAbsurdMagnitudes: what no kitchen can mean is not used, and says what to
// type; the bounds themselves are still read.
func TestAbsurdMagnitudes(t *testing.T) {
	const (
		logged = "trial,fat %,HLB,emulsifier % of mix,batch g,hold min\n1,45,8,2,300,12\n2,"
		masses = "trial,butter g,cider g,GMS g,came out\n1,120,174,6,y\n2,"
	)
	for _, c := range []struct{ name, log, cell, do string }{
		{"fat", logged + "0.3 %,8,2,300,12", "B3", "45 for 45 %"},
		{"fat as a fraction of a fraction", logged + "0.0045,8,2,300,12", "B3", "45 for 45 %"},
		{"least fat", logged + "0.5 %,8,2,300,12", "", ""},
		{"no fat", logged + "0,8,2,300,12", "", ""},
		{"emulsifier", logged + "45,8,41,300,12", "D3", "between 0 and 40"},
		{"most emulsifier", logged + "45,8,40,300,12", "", ""},
		{"HLB", logged + "45,40.5,2,300,12", "C3", "between 0 and 20"},
		{"HLB below 0", logged + "45,-1,2,300,12", "C3", "between 0 and 20"},
		{"highest HLB", logged + "45,20,2,300,12", "", ""},
		{"batch in tonnes", logged + "45,8,2,300000,12", "E3", "100 kg"},
		{"batch of nothing", logged + "45,8,2,0.3,12", "E3", "1 or more"},
		{"hold in years", logged + "45,8,2,300,43201", "F3", "minutes it stood"},
		{"hold bound in years", logged + "45,8,2,300,60000+", "F3", "minutes it stood"},
		{"hold of 30 days", logged + "45,8,2,300,43200", "", ""},
		{"denormal hold", logged + "45,8,2,300,4e-310", "F3", "as it was read"},
		{"denormal HLB", logged + "45,1e-308,2,300,12", "C3", "as it was read"},
		{"denormal mass", masses + "120,174,5e-324,y", "D3", "as it was read"},
		{"grams no scale shows", masses + "120,174,0.00001,y", "D3", "0 for none"},
		{"kilograms under grams", masses + "0.12,0.174,0.006,y", "B3", "type grams"},
		{"grams of a tonne", masses + "120000,174,6,y", "B3", "100 kg"},
		{"emulsifier by mass", masses + "120,10,174,y", "D3", "type their grams again"},
		{"fat of an ingredient beside the table", "butter 820 % fat,,,,\n" + masses + "120,174,6,y", "A1", "between 0 and 100"},
		{"all fat beside the table", "butter 100 % fat,,,,\n" + masses + "120,174,6,y", "", ""},
	} {
		log := mustRead(t, c.log+"\n")
		i := slices.IndexFunc(log.Problems, func(p trial.Problem) bool { return p.Kind == "impossible value" })
		if c.cell == "" {
			if i >= 0 {
				t.Errorf("%s: %+v", c.name, log.Problems[i])
			}
			continue
		}
		if i < 0 {
			t.Errorf("%s: nothing is said", c.name)
			continue
		}
		p := log.Problems[i]
		if _, cell, _ := strings.Cut(p.At.String(), "cell "); cell != c.cell || p.Severity != trial.MustFix || !strings.Contains(p.Do, c.do) {
			t.Errorf("%s: %s %q %q, want %s with %q", c.name, cell, p.Read, p.Do, c.cell, c.do)
		}
	}
}
