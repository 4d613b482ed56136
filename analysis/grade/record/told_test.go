package record

import "testing"

// TestOrderIn: notes that say of which emulsifier there is more, and notes that do not.
func TestOrderIn(t *testing.T) {
	for _, c := range []struct {
		note, more, less string
		ok               bool
	}{
		{"three times as much ester as GMS", "ester", "GMS", true},
		{"3 x as much polysorbate as mono", "polysorbate", "mono", true},
		{"twice the ester of the GMS, looked fine", "ester", "the GMS", true},
		{"more polysorbate than stearate this time", "polysorbate", "stearate this time", true},
		{"less GMS than ester", "ester", "GMS", true},
		{"mostly polysorbate", "polysorbate", "", true},
		{"mainly the sucrose ester; slow to fall", "sucrose ester", "", true},
		{"only a little of the GMS", "", "GMS", true},
		{"held a bit longer than 4", "", "", false},
		{"card 7 once more", "", "", false},
	} {
		o, ok := orderIn(c.note)
		if ok != c.ok || o.more != c.more || o.less != c.less {
			t.Errorf("%q: %+v, %v", c.note, o, ok)
		}
	}
}
