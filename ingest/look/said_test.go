package look

import "testing"

// TestDescribed: what a cell below a head says of its ingredient.
func TestDescribed(t *testing.T) {
	for _, c := range []struct{ text, unit, said string }{
		{"HLB 3.8", "", "HLB 3.8"}, {"(HLB: 4,7)", "", "HLB 4,7"}, {"hlb=15", "", "HLB 15"},
		{"82 % fat", "", "82 % fat"}, {"Fett 82%", "", "82 % fat"}, {"pure fat", "", "100 % fat"},
		{"fat", "", "= fat"}, {"water part", "", "= water part"}, {"Wasserphase", "", "= Wasserphase"}, {"emulsifier", "", "= emulsifier"},
		{"g", "g", ""}, {"% of fat", "% of fat", ""}, {"% of mix", "% of mix", ""},
		{"g, HLB 3.8", "g", "HLB 3.8"}, {"82 % fat (g)", "g", "82 % fat"},
		{"butter", "", ""}, {"3.8", "", ""}, {"HLB", "", ""}, {"yes", "", ""}, {"no fat left", "", ""}, {"HLB 3.8 I think", "", ""},
	} {
		if unit, said, ok := Described(c.text); unit != c.unit || said != c.said || ok != (c.unit+c.said != "") {
			t.Errorf("%q: unit %q, says %q, %t; want %q, %q", c.text, unit, said, ok, c.unit, c.said)
		}
	}
}
