package grade

import "testing"

// A level is named by what its makings' names have in common, and stands for all of them.
func TestLevelsNamed(t *testing.T) {
	log := []string{
		"Trial 0: 120 g butter, 180 g cider. It held 3 min and drained 40 %.",
		"Trial 1a: 120 g butter, 176 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 12 min and drained 9 %.",
		"Trial 1b: 120 g butter, 176 g cider, 2 g sorbitan monostearate, 2 g polysorbate 60. It held 17 min and drained 8 %.",
		"Trial 2a: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 24 min and drained 5 %.",
		"Trial 2b: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 25 min and drained 5 %.",
		"Trial 3a: 120 g butter, 172 g cider, 4 g sorbitan monostearate, 4 g polysorbate 60. It held 9 min and drained 4 %.",
		"Trial 3b: 120 g butter, 172 g cider, 4 g sorbitan monostearate, 4 g polysorbate 60. It held 8 min and drained 4 %.",
	}
	const rule = "Rule: a foam passes that stands 15 min or more."
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"Level 3 is best by my rule.", true},
		{"Level 2 is best by my rule.", false},
		{"The best trial by my rule is the 3.", true},
		{"The best trial by my rule is the 2.", false},
		{"The best foam is 3 min older than that.", false}, // minutes, and no level
		{"La prova migliore secondo la mia regola è la 3.", true},
		{"La prova migliore secondo la mia regola è la 2.", false},
		{"Der beste Versuch nach meiner Regel ist Stufe 3.", true},
		{"Der beste Versuch nach meiner Regel ist Stufe 2.", false},
		{"Trial 3 passed.", true},
		{"Trial 2 passed in both makings.", false},
		{"Trial 1 passed.", false}, // one of the two did
		{"Trial 1 passed in both makings.", true},
		{"Only level 2 passed.", true}, // 1b did too
		{"Only level 2 passed in both makings.", false},
		{"Only level 3 passed in both makings.", true},
		{"Trial 2 failed.", true},
		{"Trial 1 failed.", false},
		{"Level 2 held longest.", false},
		{"Level 1 held longest.", true},
		{"3 is the mix to use: it drained least.", true},
		{"Trial 3 is the best, as it drained least of all.", true},
		{"Trial 2 is the blend I would take: it held longest.", false},
		{"Trial 3 has the best drainage: it drained least.", false},
		{"Trial 3 is best for its smooth bite; it drained least.", false},
		{"On average 2 and 3 differ in the scatter of the makings by 1 min.", false},
		{"The mean holds lie within the scatter of the makings (1 to 5 min in trials 1 and 2).", false},
	} {
		if found := concludedBy(rule, log, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}
