package record

import "testing"

// TestOneFigure: numbers of which one is the other with a single figure mistyped.
func TestOneFigure(t *testing.T) {
	for _, c := range []struct {
		typed, meant float64
		want         bool
	}{{90, 95, true}, {132, 152, true}, {2.5, 3.5, true}, {90, 195, false}, {132, 153, false}, {120, 120, false}} {
		if got := oneFigure(c.typed, c.meant); got != c.want {
			t.Errorf("%v for %v: %v", c.typed, c.meant, got)
		}
	}
}

// TestPraise: notes that praise a foam, and notes that do not.
func TestPraise(t *testing.T) {
	for note, want := range map[string]bool{
		"best standing so far!": true, "stood long": true, "wow": true, "very stable, almost dry": true,
		"gone at once": false, "same as 4": false, "restless": false, "": false,
	} {
		if got := praise.MatchString(note); got != want {
			t.Errorf("%q: %v", note, got)
		}
	}
}
