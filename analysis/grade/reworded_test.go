package grade

import (
	"testing"

	"foamfield/ingest/thorough"
)

// A claim may be worded in many ways: each stands here where the trials bear it out and where they do not.
func TestReworded(t *testing.T) {
	for _, c := range thorough.Glance(t, 4, []struct {
		said  string
		wrong bool
	}{
		// who is best
		{"First place goes to trial 4.", true},
		{"First place goes to trial 6.", false},
		{"No other foam beats trial 2.", true},
		{"No other foam beats trial 5.", false},
		{"Trial 3 comes out on top.", true},
		{"Trial 6 comes out on top.", false},
		{"Trial 3 outlasted all the others.", true},
		{"Trial 10 outlasted all the others.", false},
		{"Nothing stood longer than trial 4.", true},
		{"Nothing stood longer than trial 10.", false},
		{"Trial 3 tops the list with 24 min.", true},
		{"Trial 6 has the best hold.", true},
		{"Trial 10 has the best hold.", false},
		{"The driest foam is trial 5.", true},
		{"The driest foam is trial 10.", false},
		{"The wettest was trial 9.", true},
		{"The wettest was the control.", false},
		// what moves with what
		{"Butter up, hold up.", true},
		{"Butter up, hold down.", false},
		{"Fat is good for stability.", true},
		{"Fat is bad for stability.", false},
		{"Fat stabilises the foam.", true},
		{"Fat destabilises the foam.", false},
		{"The richer the mix the longer it stands.", true},
		{"The richer the mix the shorter it stands.", false},
		{"Richer foams stand longer.", true},
		{"Richer foams collapse sooner.", false},
		{"Leaner foams collapse faster.", true},
		{"Leaner foams stand longer.", false},
		{"Adding butter prolongs the hold.", true},
		{"Adding butter shortens the hold.", false},
		{"Every extra 10 g of butter adds a minute.", true},
		{"Every extra 10 g of butter costs a minute.", false},
		{"Hold and fat rise together.", true},
		{"There is a positive relation between fat and hold.", true},
		{"There is a negative relation between fat and hold.", false},
		{"The hold is proportional to the fat.", true},
		{"Emulsifier has a negative effect on the hold.", true},
		{"Emulsifier has a positive effect on the hold.", false},
		{"High fat foams held longer than low fat foams.", true},
		{"Low fat foams held longer than high fat foams.", false},
		{"The foams with 12 g emulsifier held longer than those with 6 g.", false},
		{"The foams with 6 g emulsifier held longer than those with 12 g.", true},
		{"A mix with 120 g butter stands longer than one with 180 g.", false},
		{"A mix with 180 g butter stands longer than one with 120 g.", true},
		{"A mix with 180 g butter drained less than one with 120 g.", true},
		{"A mix with 150 g butter stands longer than one with 120 g.", false},
		// where it is best
		{"The best fat content is 49 %.", true},
		{"The hold peaks at 49 % fat.", true},
		{"The hold peaks at 33 % fat.", false},
		{"2 % emulsifier is the best dose.", true},
		{"4 % emulsifier is the best dose.", false},
		// what does not matter
		{"The hold does not depend on the fat.", true},
		{"Fat content is irrelevant.", true},
		{"Butter hardly changes the hold.", true},
		{"The amount of emulsifier has little influence.", true},
		{"It does not matter how much butter is in it.", true},
		{"Whether the fat hardly matters I could not test.", false},
		// how many
		{"Three of the foams with emulsifier failed.", false},
		{"Two of the foams with emulsifier failed.", true},
	}) {
		if found := concluded(c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}
