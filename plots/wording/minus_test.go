package wording

import "testing"

func TestMinus(t *testing.T) {
	for typed, want := range map[string]string{
		"-2 cannot be: it is less than nothing": "−2 cannot be: it is less than nothing",
		"from 3 to -1.5 (-2), trial T-1, 3-501": "from 3 to −1.5 (−2), trial T-1, 3-501",
		"“-2 g” is a mass of -2":                "“-2 g” is a mass of −2",
		"":                                      "",
	} {
		if got := Minus(typed); got != want {
			t.Errorf("%q: %q, want %q", typed, got, want)
		}
	}
}
