package row_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest"
)

// TestCorrection: a remark that says a cell of its row is not true sets the trial
// aside; other remarks do not.
func TestCorrection(t *testing.T) {
	for _, c := range []struct {
		note  string
		aside bool
	}{
		{"forgot the GMS", true},
		{"found the glycerol monostearate on the scale, so this one went in without it", true},
		{"mixed up the jars, no lecithin in it", true},
		{"delivery was wrong, this is with the 18 % cream", true},
		{"hold should read 32, typed wrong", true},
		{"hold is 20, not 26", true},
		{"hold 20, not 1 drop drained", false},
		{"Lecithin vergessen", true},
		{"GMS is 1.6 g, point got lost", true},
		{"only had the light cream left, 20 % fat", true},
		{"pressed start late, add 6 min", true},
		{"the jar of GMS turned out to be lecithin", true},
		{"forgot the oil", true},
		{"had to take the other cream, no label on it", true},
		{"opened a different olive oil", false},
		{"mit einer anderen cream gemacht", true},
		{"avec une autre cream", true},
		{"unlabelled lecithin", true},
		{"another oil today", false},
		{"better than the other cream", false},
		{"another cream, same fat", false},
		{"put on another cream charger", false},
		{"the other cream foam stood longer", false},
		{"another spoon", false},
		{"next time another cream", false},
		{"on the other plate, cream beside it", false},
		{"cream was warm", false},
		{"cream was 6 degrees", false},
		{"milk was 4 °C", false},
		{"without shaking, oil on the plate", false},
		{"next time without the lecithin", false},
		{"try 40 % fat cream", false},
		{"HLB 8 suits the GMS", false},
		{"stood without water under it", false},
		{"this one without the lecithin", true},
		{"wrong plate, water under it", false},
		{"ran out of parsley, none in it", false},
		{"no oil ring", false},
		{"wrong nozzle", false},
		{"without shaking", false},
		{"should be served sooner", false},
		{"too thick, less cream next time", false},
	} {
		path := filepath.Join(t.TempDir(), "log.csv")
		log := "trial,cream 36% g,olive oil g,milk g,GMS g,lecithin g,hold min,note\n1,200,10,150,2,2,20,\n2,210,10,140,2,2,22,\"" + c.note + "\"\n"
		if err := os.WriteFile(path, []byte(log), 0o600); err != nil {
			t.Fatal(err)
		}
		read, err := ingest.Read([]string{path}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := !read.Trials[1].Used(); got != c.aside || got && !strings.Contains(read.Trials[1].Aside, "the note says") {
			t.Errorf("%q: set aside %v (%s), want %v", c.note, got, read.Trials[1].Aside, c.aside)
		}
	}
}

// TestInstead: a note that gives the number which counts and the very number that stands in
// the cell is taken at its word; anything else is not.
func TestInstead(t *testing.T) {
	for _, c := range []struct {
		note string
		want string // fat, emulsifier, hold and why it is set aside
	}{
		{"", "40.00 1.00 22"},
		{"ghee was 150, not 160", "38.46 1.03 22"},
		{"ghee: 150 g instead of 160 g", "38.46 1.03 22"},
		{"Ghee should be 150 not 160 (typo)", "38.46 1.03 22"},
		{"ghee was not 160 but 150", "38.46 1.03 22"},
		{"hold is 32 min, not 22", "40.00 1.00 32"},
		{"held min war 32 statt 22", "40.00 1.00 32"},
		{"lecithin était 3 et non 2", "39.90 1.25 22"},
		{"lecitina era 3, no 2", "39.90 1.25 22"},
		{"lecithine moet zijn 3, niet 2", "39.90 1.25 22"},
		{"ghee was 150, not 170", "aside"},
		{"hold is 20, not 26", "aside"},
		{"GMS 3, not 2 as planned", "40.00 1.00 22"},
		{"felt like 30 not 22", "40.00 1.00 22"},
		{"ghee was 150", "40.00 1.00 22"},
	} {
		path := filepath.Join(t.TempDir(), "log.csv")
		log := "trial,ghee 100 % fat g,tea g,GMS g,lecithin g,held min,note\n1,150,236,2,2,20,\n2,160,236,2,2,22,\"" + c.note + "\"\n"
		if err := os.WriteFile(path, []byte(log), 0o600); err != nil {
			t.Fatal(err)
		}
		read, err := ingest.Read([]string{path}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		x, got := &read.Trials[1], "aside"
		if x.Used() {
			got = fmt.Sprintf("%.2f %.2f %g", *x.FatPercent, *x.EmulsifierPercent, x.Hold.Low)
		}
		if got != c.want {
			t.Errorf("%q: %s, want %s; %v", c.note, got, c.want, read.Problems)
		}
	}
}
