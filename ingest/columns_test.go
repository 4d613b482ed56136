package ingest

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"testing"
)

// TestColumnsByTheirNeighbours: what a column is read as where its own header says
// little, a line a log; "" is a column that is not used.
func TestColumnsByTheirNeighbours(t *testing.T) {
	for _, c := range []struct{ name, log, header, as string }{
		{"the minute behind what drained", "trial|butter g|cider g|GMS g|held min|drained %|at (min)\n1|150|144|3|25|10|30\n2|140|154|3|30|5|30", "at (min)", "minute the drainage was read"},
		{"a fat to weigh is no percent", "trial|butter|goose breast fat|cider|GMS|held min\n1|100|30|166|3|25\n2|110|30|156|3|20", "goose breast fat", "to be settled"},
		{"an ingredient under the group fat", "|fat|liquid|||\ntrial|goat butter|cider|GMS g|held min\n1|45|300|3|25\n2|45|300|3|20", "fat / goat butter", "butter"},
		{"grams in the cells of a name nobody knows", "trial|butter g|celandine|cider g|GMS g|held min\n1|150|20 g|120 g|3|25\n2|140|30 g|120 g|3|20\n3|140|10 g|120 g|3|20", "celandine", "to be settled"},
		{"labels under a longer word for a trial", "banquet trial|butter g|cider g|GMS g|held min\nB1|150|144|3|25\nB2|140|154|3|20\nB3|140|154|4|26", "banquet trial", "trial"},
		{"numbers of something else", "banquet trial|butter g|cider g|GMS g|held min\n20.5|150|144|3|25\n21|140|154|3|20\n22.5|140|154|4|26", "banquet trial", ""},
		{"sentences under words nobody knows", "trial|butter g|cider g|GMS g|held min|what grandmother made of it\n1|150|144|3|25|rather good\n2|140|154|3|20|too thin for her\n3|140|154|4|26|", "what grandmother made of it", "note"},
		{"labels under a letter that may be minutes", "t|butter g|cider g|GMS g|held min|n\nt1|150|144|3|25|\nt2|140|154|3|20|\nt3|140|154|4|26|rather good", "t", "trial"},
		{"remarks under a letter", "t|butter g|cider g|GMS g|held min|n\nt1|150|144|3|25|\nt2|140|154|3|20|\nt3|140|154|4|26|rather good", "n", "note"},
		{"levels of a plan", "trial|butter level|butter g|cider g|GMS g|held min\n1|-|150|144|3|25\n2|+|190|104|3|20\n3|-|150|144|4|26\n4|+|190|104|4|26", "butter level", "known, not used"},
		{"a dash where nothing was weighed", "trial|butter|cider|GMS|held min\n1|-|144|3|25\n2|150|104|3|20\n3|150|144|4|26\n4|-|104|4|26", "butter", "butter"},
		{"answers under a word for a squirt", "trial|butter g|cider g|GMS g|squirt?|held min\n1|150|144|3|yes|25\n2|140|154|3|half|20\n3|140|154|4|no|", "squirt?", "came out"},
		{"answers under a word for a jet", "trial|butter g|cider g|GMS g|jet|held min\n1|150|144|3|oui|25\n2|140|154|3|en partie|20\n3|140|154|4|non|", "jet", "came out"},
		{"sizes under a word for a squirt", "trial|butter g|cider g|GMS g|portion|held min\n1|150|144|3|half|25\n2|140|154|3|half|20\n3|140|154|4|small|19", "portion", "which squirt"},
		{"answers under a word for a squirt, beside those that are asked for", "trial|butter g|cider g|GMS g|squirt|came out|held min\n1|150|144|3|yes|yes|25\n2|140|154|3|yes|partly|20\n3|140|154|4|no|no|", "squirt", "which squirt"},
		{"squirts by their place", "trial|butter g|cider g|GMS g|squirt|held min\n1|150|144|3|first|25\n1|150|144|3|last|20\n2|140|154|4|first|19", "squirt", "which squirt"},
		{"a second table with another ingredient", "trial|cream 35%|cheddar|water|GMS|held min\n1|250|80|150|3|15\n2|250|90|150|3|25\n\ntrial|cream 35%|walnut|milk|GMS|held min\n3|200|60|200|3|28\n4|200|90|200|3|19", "milk", "milk"},
	} {
		t.Run(c.name, func(t *testing.T) {
			log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.log}))
			var read []string
			for _, col := range log.Columns {
				if col.Header == c.header {
					read = append(read, col.ReadAs)
				}
			}
			if !slices.Equal(read, []string{c.as}) {
				t.Errorf("%q is read as %q, want %q; columns %v", c.header, read, c.as, log.Columns)
			}
		})
	}
}

// A class average beside the groups' names is no trial.
func TestClassAverageIsNoTrial(t *testing.T) {
	const log = "group|try|cream 35% g|oil g|milk g|GMS g|minutes\nred|1|150|20|150|2|10\nred|2|150|20|150|2|12\nblue|1|100|50|150|2|16\nblue|2|100|80|150|2|8\nCLASS AVERAGE||137|||| 10.6"
	read := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", log}))
	if len(read.Trials) != 4 {
		t.Errorf("%d trials, want 4", len(read.Trials))
	}
}

// TestMinuteOfTheLog: the one minute at which a log drained its foams is the one that
// counts; several, or none, leave it at 20.
func TestMinuteOfTheLog(t *testing.T) {
	const row = "trial|butter g|cider g|GMS g|held min|%s\n1|150|144|3|25|4|6\n2|140|154|3|30|5|7"
	for _, c := range []struct {
		name, heads string
		at          float64
	}{
		{"one minute", "drained % at 15 min|score", 15},
		{"two minutes", "drained % at 15 min|drained % at 30 min", 20},
		{"none said", "drained %|score", 20},
		{"each row its own", "drained %|drained at (min)", 20},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", fmt.Sprintf(row, c.heads)}))
		at := 20.0
		if m := log.Targets.DrainedAtMinutes; m != nil {
			at = m.Value
		}
		if at != c.at {
			t.Errorf("%s: drainage counts at %g min, want %g", c.name, at, c.at)
		}
	}
}

// TestSaidBesideTheTable: what a line above the table says holds for all its trials.
func TestSaidBesideTheTable(t *testing.T) {
	const log = "Made up with water to 400 g. Butter = 80 % fat. GMS is HLB 3.6. Drained: g out of 50 g foam, at 20 min\n\n" +
		"trial|butter g|cream 36% g|GMS g|held min|drained at 20 min g\n1|200|100|4|25|5\n2|180|50|4|30|4"
	read := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", log}))
	first := read.Trials[0]
	for _, c := range []struct {
		what string
		got  *float64
		want float64
	}{
		{"fat percent", first.FatPercent, 49},
		{"emulsifier percent", first.EmulsifierPercent, 1},
		{"blend HLB", first.BlendHLB, 3.6},
		{"drained", &first.Drained.Low, 10},
	} {
		if c.got == nil || math.Abs(*c.got-c.want) > 1e-9 {
			t.Errorf("%s is %v, want %g", c.what, c.got, c.want)
		}
	}
}

// TestMadeUpInTheCell: a liquid that was added up to a mass is what brought the mix to
// it.
func TestMadeUpInTheCell(t *testing.T) {
	const log = "trial|butter 80 % fat g|cider|GMS g|held min\n1|200|to make 400|4|25\n2|200|ad 500 g|5|30"
	read := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", log}))
	for i, want := range []float64{40, 32} {
		if got := read.Trials[i].FatPercent; got == nil || math.Abs(*got-want) > 1e-9 {
			t.Errorf("trial %d: fat percent %v, want %g", i+1, got, want)
		}
	}
}

// TestLettersNamedOnASheet: columns of one letter are what a list of abbreviations says.
func TestLettersNamedOnASheet(t *testing.T) {
	const list = "code|what|HLB|lot\nA|sorbitan monostearate|4.7|L-1\nB|polysorbate 60|14.9|L-2\nF|coconut oil, refined||L-3\nW|water||-"
	const log = "exp|F|W|A|B|hold min|siphon\n1|120|174|3|3|20|ok\n2|150|144|3|3|25|ok"
	read := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Codes", list}, sheetText{"Data", log}))
	first := read.Trials[0]
	if first.FatPercent == nil || math.Abs(*first.FatPercent-40) > 1e-9 || first.BlendHLB == nil || math.Abs(*first.BlendHLB-9.8) > 1e-9 {
		t.Errorf("fat percent %v and HLB %v, want 40 and 9.8", first.FatPercent, first.BlendHLB)
	}
}

// TestResultsWithoutAMix: several are said in the order of the sheet, whatever the
// order they are kept in.
func TestResultsWithoutAMix(t *testing.T) {
	const mixes = "trial|butter 82 % fat g|cider g|GMS g\n1|150|144|3\n2|160|134|3\n3|150|144|4\n4|160|134|4\n5|150|144|5\n6|160|134|5"
	const results = "trial|hold min|drained %|came out\n1|20|5|yes\n2|22|5|yes\n3|20|5|yes\n4|20|5|yes\n5|20|5|yes\n6|20|5|yes\n7|20|5|yes\n8|21|5|yes\n9|22|5|yes\n10|23|5|yes\n11|24|5|yes"
	read := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Mix", mixes}, sheetText{"Results", results}))
	var rows []int
	for _, p := range read.Problems {
		if p.Kind == "results without a mix" {
			rows = append(rows, p.At.Row)
		}
	}
	if !slices.Equal(rows, []int{8, 9, 10, 11, 12}) {
		t.Errorf("said of rows %v, want 8 to 12 in order", rows)
	}
}

// TestMilkOfThreePercentIsNotFatFree: the 0 of 3.0 % fat is no fat percent.
func TestMilkOfThreePercentIsNotFatFree(t *testing.T) {
	const log = "trial|butter 80 % fat g|milk 3.0 % fat g|GMS g|held min\n1|200|196|4|25\n2|200|196|4|30"
	read := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", log}))
	if got := read.Trials[0].FatPercent; got == nil || math.Abs(*got-41.47) > 1e-9 {
		t.Errorf("fat percent %v, want 41.47", got)
	}
}
