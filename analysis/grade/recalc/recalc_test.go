package recalc

import "testing"

// TestCountsAsFat: words that take a fat for pure, and words that only deny it of something.
func TestCountsAsFat(t *testing.T) {
	for text, want := range map[string]bool{
		"butter counted as all fat":                                  true,
		"i took the ghee as 100 % fat":                               true,
		"fat % means the butter as weighed":                          true,
		"fat as weighed, not without its water":                      true,
		"emulsifiers are not counted as fat":                         false,
		"emulsifiers do not count; only the oil is counted as fat":   true,
		"gms is counted as fat":                                      false,
		"the milk is never counted as fat":                           false,
		"cold at 8 °c. butter was counted as fat, esters were not":   true,
		"for both: emulsifiers are not counted as fat; siphon 0.5 l": false,
	} {
		if got := countsAsFat(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
