package ingest

import (
	"slices"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestUnnamedAmongMasses: a column among the grams that nobody can name is asked about, unless
// the masses show that they are all of the mix without it.
func TestUnnamedAmongMasses(t *testing.T) {
	for _, c := range []struct {
		name, log string
		asked     bool
	}{
		{"a round total without it", "no|oil g|cider g|GMS g|Zork|held min\n1|200|297|3|20|20\n2|210|286|4|35|22\n3|220|275|5|25|25\n4|230|266|4|30|25", false},
		{"no round total", "no|oil g|cider g|GMS g|Zork|held min\n1|200|300|3|20|20\n2|210|290|3|35|22\n3|220|280|3|25|25\n4|230|270|3|30|25", true},
		{"no round total of much", "no|oil g|cider g|GMS g|Zork|held min\n1|1000|1600|3|20|20\n2|1100|1500|3|65|22\n3|1200|1400|3|50|25\n4|1300|1300|3|35|25", true},
		{"a round total of much", "no|oil g|cider g|GMS g|Zork|held min\n1|1000|1597|3|20|20\n2|1100|1496|4|65|22\n3|1200|1395|5|50|25\n4|1300|1295|5|35|25", false},
		{"the logged batch without it", "no|oil g|cider g|Zork|batch g|held min\n1|203|305|20|508|20\n2|211|290|35|501|22\n3|222|281|30|503|25\n4|230|279|25|509|25", false},
		{"a ladder", "no|oil g|cider g|GMS g|Zork|held min\n1|200|300|3|20|20\n2|210|290|3|25|22\n3|220|280|3|30|25\n4|230|270|3|35|25", true},
		{"numbers of runs", "no|oil g|cider g|GMS g|Zork|held min\n1|200|300|3|4|20\n2|210|290|3|5|22\n3|220|280|3|6|25\n4|230|270|3|7|25", false},
		{"numbers of runs, some left out", "no|oil g|cider g|GMS g|Zork|held min\n1|200|300|3|4|20\n2|210|290|3|5|22\n3|220|280|3|8|25\n4|230|270|3|11|25", false},
		{"a round total before any emulsifier", "no|oil g|cider g|Zork|held min\n1|200|300|2|20\n2|210|290|5|22\n3|220|280|4|25\n4|230|270|3|25", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			log := mustRead(t, strings.ReplaceAll(c.log, "|", ";"))
			asked := slices.ContainsFunc(log.Questions, func(q trial.Question) bool { return q.Blocks && strings.Contains(q.Asked, "Zork") })
			if asked != c.asked {
				t.Errorf("asked: %v, want %v; %+v", asked, c.asked, log.Questions)
			}
		})
	}
}
