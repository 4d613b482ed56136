package ingest

import (
	"fmt"
	"path/filepath"
	"testing"
)

// TestHeadsExplained: what a list on another sheet, or below the trials, says of short heads.
func TestHeadsExplained(t *testing.T) {
	const log = "nr|FAT|EM|HLB|OUT|HOLD|DRAIN|SPL\n1|40|2|8|2|30|5|0\n2|42|2.5|9|1|20|6|1\n3|45|3|9|0|||"
	const codes = "column|code|meaning\nOUT|0|nothing came out\n|1|came out in part\n|2|came out completely\nSPL|0|did not split\nSPL|1|split"
	for _, c := range []struct {
		name, list, mix, first, second string // the mix of the first trial, what happened in two
	}{
		{"codes and what percents are of", codes + "\nFAT, EM||% of the whole mix\nDRAIN||% of the foam after 10 min", "40.00 2.00 8.00", "yes no 5", "partly yes 6"},
		{"units beside them", codes + "\n\nvariable|description|unit\nEM|emulsifier in all|% of mix\nDRAIN|drained after 10 min|% of foam", "40.00 2.00 8.00", "yes no 5", "partly yes 6"},
		{"in German", "Spalte|Code|Bedeutung\nOUT|2|kam vollständig heraus\nOUT|1|kam nur teilweise heraus\nOUT|0|verstopft\nSPL|0|stabil\nSPL|1|geronnen\nEM||% der Mischung\nDRAIN||% des Schaums nach 10 min", "40.00 2.00 8.00", "yes no 5", "partly yes 6"},
		{"a code that says nothing of it", "column|code|meaning\nOUT|0|nothing came out\nOUT|1|Tuesday\nOUT|2|came out\nEM||% of mix", "40.00 2.00 8.00", "yes unknown 5", "yes unknown 6"},
		{"of other columns", "column|code|meaning\nOVEN|0|cold\nOVEN|1|hot\nEMPTY||% of mix", "40.00 - 8.00", "yes unknown 5", "yes unknown 6"},
		{"two columns for one thing", codes + "\nDRAIN||fat, % of mix\nEM||% of mix", "40.00 2.00 8.00", "yes no 5", "partly yes 6"},
		{"yes and no of nobody says what", "column|code|meaning\nOUT|0|no\nOUT|1|partly\nOUT|2|yes\nSPL|0|no\nSPL|1|yes\nEM||% of mix", "40.00 2.00 8.00", "yes unknown 5", "partly unknown 6"},
		{"a line that names no column", "Legend: 2 = all out, 1 = half out, 0 = blocked", "40.00 - 8.00", "yes unknown 5", "partly unknown 6"},
		{"in doubt", codes + "\nEM||% of mix or of the fat, ask Ann", "40.00 - 8.00", "yes no 5", "partly yes 6"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for where, sheets := range map[string][]sheetText{"on a sheet of its own": {{"Log", log}, {"Codes", c.list}}, "below": {{"Log", log + "\n\n\n" + c.list}}} {
				read := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheets...))
				if len(read.Trials) < 3 {
					t.Fatalf("%s: %d trials", where, len(read.Trials))
				}
				x, y := &read.Trials[0], &read.Trials[1]
				if got := mixOf(*x); got != c.mix {
					t.Errorf("%s: the mix is %s, want %s; %v", where, got, c.mix, read.Problems)
				}
				if a, b := fmt.Sprint(x.CameOut, " ", x.Broke, " ", bounds(x.Drained)), fmt.Sprint(y.CameOut, " ", y.Broke, " ", bounds(y.Drained)); a != c.first || b != c.second {
					t.Errorf("%s: %s; %s; want %s; %s; %v", where, a, b, c.first, c.second, read.Problems)
				}
			}
		})
	}
}
