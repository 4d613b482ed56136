package ingest

import (
	"strings"
	"testing"
)

// TestSubtotals: the batch of the first of four trials in which a phase is added up beside its
// ingredients, or something that only looks so is not; -1 where it is not known.
func TestSubtotals(t *testing.T) {
	for _, c := range []struct {
		name, log string
		batch     float64
	}{
		{"each phase has its total", "no|oil g|GMS g|fat phase total g|cider g|PS80 g|water phase total g|held min\n1|120|3|123|170|2|172|20\n2|130|3|133|160|2|162|22\n3|140|4|144|150|3|153|25", 295},
		{"in German", "Nr|Öl g|Butter g|Summe Fettphase g|Wasser g|GMS g|gehalten min\n1|80|40|120|170|4|20\n2|90|40|130|160|4|22\n3|95|45|140|150|4|25", 294},
		{"a total of all is the batch", "no|oil g|cider g|GMS g|total g|held min\n1|120|170|3|293|20\n2|130|160|3|293|22\n3|140|150|4|294|25", 293},
		{"the total of something else is weighed", "no|butter g|oil g|total cider g|GMS g|held min\n1|80|40|160|3|20\n2|90|40|150|3|22\n3|95|45|150|4|25", 283},
		{"weights with their unit", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80 g|40 g|120 g|170|4|20\n2|90 g|40 g|130 g|160|4|22\n3|95 g|45 g|140 g|150|4|25", 294},
		{"one row is not understood", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80|40|120|170|4|20\n2|90|40|130|160|4|22\n3|95|45|140|150|4|25\n4|95|a knob|155|150|4|25", 294},
		{"no row is understood: counted", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80|40|some|170|4|20\n2|90|40|some|160|4|22\n3|95|45|some|150|4|25", -1},
		{"one row is off: counted, as its head says", "no|oil g|butter g|total cream g|cider g|GMS g|held min\n1|80|40|120|170|4|20\n2|90|40|131|160|4|22\n3|95|45|150|150|4|25", 414},
	} {
		t.Run(c.name, func(t *testing.T) {
			read := mustRead(t, strings.ReplaceAll(c.log, "|", ";"))
			if b := gramsOf(read.Trials[0].BatchGrams); b != c.batch {
				t.Errorf("the batch is %v g, want %v", b, c.batch)
			}
		})
	}
}

// gramsOf are grams as a test compares them: -1 where they are not known.
func gramsOf(known *float64) float64 {
	if known == nil {
		return -1
	}
	return *known
}
