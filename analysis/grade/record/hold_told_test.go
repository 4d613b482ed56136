package record

import "testing"

// TestHeldIn: a note tells the hold of its own trial, in so many words and no others.
func TestHeldIn(t *testing.T) {
	for note, want := range map[string]float64{
		"held 15 min":                     15,
		"nice gloss; it stood for 12 min": 12,
		"foam lasted 7.5 minutes, grainy": 7.5,
		"held 3 min longer than M4":       0,
		"held 15 min at 30 C":             0,
		"M4 held 15 min":                  0,
		"rested 15 min":                   0,
		"held 15 min, then held 12 min":   0,
		"still up after 15 min":           0,
	} {
		if got, _ := heldIn(note); got != want {
			t.Errorf("%q: %g, want %g", note, got, want)
		}
	}
}
