package whose

import "testing"

func TestSameName(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{{"Ana Ruiz", "ana_ruiz", true}, {"Ana", "Ana Ruiz", true}, {"Ruiz, Ana", "Ana Ruiz", true}, {"Ana", "Anna", false}, {"", "Ana", false}, {"Ana Ruiz", "Ana Diaz", false}} {
		if got := SameName(c.a, c.b); got != c.same {
			t.Errorf("%q and %q: %v", c.a, c.b, got)
		}
	}
}
