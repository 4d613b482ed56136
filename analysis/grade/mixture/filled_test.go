package mixture

import "testing"

// TestFilledUp: water that was added up to a mark, and water of which nobody knows how much there was.
func TestFilledUp(t *testing.T) {
	for text, want := range map[string]bool{
		"ad 400 g": true, "to 400": true, "up to 400 g": true, "made up to 400 g": true, "auf 400 g": true, "à 400 g": true, "jusqu’à 400": true, "hasta 400 g": true,
		"fino a 400": true, "tot 400 g": true, "q.s.": true, "qsp 400 g": true, "rest": true, "the rest": true, "Rest": true, "reste": true,
		"some": false, "not weighed": false, "400?": false, "to taste": false, "about 200": false, "rest in the fridge": false, "": false,
	} {
		if got := filledUp.MatchString(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
