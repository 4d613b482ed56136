package record

import (
	"math"
	"testing"
)

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
		"stood half an hour, very firm":   30,
		"held for a quarter of an hour":   15,
		"lasted an hour":                  60,
		"held 45 s":                       0.75,
		"held an hour longer than M4":     0,
	} {
		if got, _ := heldIn(note); got != want {
			t.Errorf("%q: %g, want %g", note, got, want)
		}
	}
}

// TestBoundsIn: notes that tell a hold to be longer or shorter than so much, and notes of something else.
func TestBoundsIn(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		note        string
		least, most float64
	}{
		{"over half an hour", 30, inf},
		{"was still up after 25 min", 25, inf},
		{"stand über eine halbe Stunde", 30, inf},
		{"fell in under a minute", 0, 1},
		{"control; collapsed within 2 minutes", 0, 2},
		{"retombée en moins d’une minute", 0, 1},
		{"in weniger als einer Minute zusammengefallen", 0, 1},
		{"cayó en menos de un minuto", 0, 1},
		{"crollata in meno di un minuto", 0, 1},
		{"ingezakt binnen een minuut", 0, 1},
		{"down in less than 40 s", 0, 0.67},
		{"blended under a minute", 0, inf}, // of the blender
		{"stood well, poured in less than 2 min, read at 20 min", 0, inf},
		{"lovely", 0, inf},
	} {
		if least, most := boundsIn(c.note); least != c.least || most != c.most {
			t.Errorf("%q: %g to %g", c.note, least, most)
		}
	}
}
