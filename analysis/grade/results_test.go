package grade

import "testing"

// What is said of drainage against hold, of percents, and of a level that nobody made.
func TestResultsTogether(t *testing.T) {
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"The longer a foam held, the more it drained.", true},
		{"The longer a foam held, the less it drained.", false},
		{"The less a mix drained, the longer it held.", false},
		{"The more liquid ran out, the longer it held.", true},
		{"The foams that drained least also held shortest.", true},
		{"The foams that drained most held shortest.", false},
		{"I expected that the longer a foam held, the more it drained.", false},
		{"The longer a foam stood before, the more it would drain next time.", false},
		{"Je länger der Schaum hielt, desto mehr drainage.", false}, // not understood
		{"Trial 10 held 50 % longer than trial 3.", true},
		{"Trial 10 held 25 % longer than trial 3.", false},
		{"Trial 3 held 20 % shorter than trial 10.", false},
		{"Trial 7 held 60 % shorter than trial 3.", true},
		{"Trial 10 held about 30 % longer than trial 3.", false},
		{"Trials 3 and 4 held 16 % longer than trials 5 and 6.", false},
		{"Trials 3 and 4 held 40 % longer than trials 5 and 6.", true},
		{"Trial 3 drained 42 % less than trial 9.", false}, // of what trial 9 drained
		{"Trial 3 drained 5 % less than trial 9.", false},
		{"Trial 3 drained 25 % less than trial 9.", true},
		{"The best fat content is 37 %.", true},
		{"The best fat content is 30 % fat.", true},
		{"The best fat content is 33 %.", false},
		{"The best fat content is probably about 37 %.", false},
		{"The best fat content lies between 33 and 41 %.", false},
	} {
		if found := concluded(c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
	blends := []string{
		"Trial 1: 120 g butter, 180 g cider. It held 3 min.",
		"Trial 2: 120 g butter, 174 g cider, 5 g sorbitan monostearate, 1 g polysorbate 60. It held 12 min.",
		"Trial 3: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 20 min.",
		"Trial 4: 120 g butter, 174 g cider, 1 g sorbitan monostearate, 5 g polysorbate 60. It held 15 min.",
		"Trial 5: 120 g butter, 174 g cider, 3 g sorbitan monostearate, 3 g polysorbate 60. It held 21 min.",
	}
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"The optimum lies at HLB 8.", true},
		{"HLB 11.5 is the best for this foam.", true},
		{"The best HLB is 9.8.", false},
		{"The optimum lies near HLB 9 or 10.", false},
		{"The best of all is the ester with HLB 8.", false},
		{"The best HLB may be 11.", false}, // a guess
		{"Next I would look if HLB 11 is the best.", false},
	} {
		if found := concludedBy("Rule: stands 15 min or more.", blends, c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}
