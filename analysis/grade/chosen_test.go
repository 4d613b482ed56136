package grade

import "testing"

// The best is held against what the student's own rule goes by, in whichever language rule and claim are.
func TestBestByOwnRule(t *testing.T) {
	log := []string{
		"Trial 1: 120 g butter, 180 g cider. It held 3 min and drained 40 %.",
		"Trial 2: 120 g butter, 174 g cider, 4 g sorbitan monostearate, 2 g polysorbate 60. It held 19 min and drained 4 %.",
		"Trial 3: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held >30 min and drained 8 %.",
		"Trial 4: 120 g butter, 174 g cider, 2 g sorbitan monostearate, 4 g polysorbate 60. It held 24 min and drained 7 %.",
		"Trial 5: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held >30 min and drained 9 %.",
		"Trial 6: 120 g butter, 174 g cider, 2 g sorbitan monostearate, 4 g polysorbate 60. It held 23 min and drained 7 %.",
		"Trial 7: 120 g butter, 174 g cider, 4 g sorbitan monostearate, 2 g polysorbate 60. It held 18 min and drained 5 %.",
	}
	const (
		longest = "Rule: stands 15 min or more. The best of these is the one that holds longest."
		driest  = "Goal: holds at least 15 min, does not split. Of those that pass, the one with the least drainage is best."
	)
	for _, c := range []struct {
		rule, said string
		wrong      bool
	}{
		{longest, "By my rule the best is trial 4, because it came out well and held 24 minutes.", true},
		{longest, "By my rule the best is trial 3, because it came out well and still stood at the end.", false},
		{longest, "Best according to my criterion: trial 4.", true},
		{longest, "By my criterion the best mix is that of trials 3 and 5.", false},
		{longest, "The best is trial 4, because it tastes best.", false},
		{longest, "I would serve trial 4, since it is the smoothest.", false},
		{driest, "By my goal the best mix is that of trials 3 and 5.", true},
		{driest, "By my goal the best mix is that of trials 2 and 7.", false},
		{driest, "By my goal trial 7 is best.", false}, // within what the makings differ by
		{"Regla: pasa si aguanta al menos 15 min. La mejor es la que más minutos aguanta.", "La mejor según mi regla es la prueba 4, porque aguanta 24 minutos.", true},
		{"Regla: pasa si aguanta al menos 15 min. La mejor es la que más minutos aguanta.", "La mejor según mi regla es la prueba 5.", false},
		{"Règle : tient au moins 15 min. Le meilleur est celui qui tient le plus longtemps.", "Selon ma règle, le meilleur est l'essai 4.", true},
		{"Règle : tient au moins 15 min. Le meilleur est celui qui tient le plus longtemps.", "Selon ma règle, le meilleur est l'essai 3.", false},
		{"Regola: tiene almeno 15 min. La migliore è quella che tiene di più.", "Secondo la mia regola la migliore è la prova 4.", true},
		{"Regola: tiene almeno 15 min. La migliore è quella che tiene di più.", "Secondo la mia regola la migliore è la prova 3.", false},
		{"Regel: hält mindestens 15 min. Am besten ist, was am längsten hält.", "Nach meiner Regel ist Versuch 4 der beste.", true},
		{"Regel: hält mindestens 15 min. Am besten ist, was am längsten hält.", "Nach meiner Regel ist Versuch 3 der beste.", false},
		{"Regel: staat minstens 15 min. De beste is die het langst staat.", "Volgens mijn regel is proef 4 de beste.", true},
		{"Regel: staat minstens 15 min. De beste is die het langst staat.", "Volgens mijn regel is proef 3 de beste.", false},
	} {
		if found := concludedBy(c.rule, log, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q, %q: %q", c.rule, c.said, found)
		}
	}
}
