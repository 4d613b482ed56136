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

// TestOverMix: words that define an overrun as over the mix, and words that do not.
func TestOverMix(t *testing.T) {
	for text, want := range map[string]bool{
		"overrun = (mix - foam) / mix × 100":                             true,
		"Overrun in %: = 100 x (liquid cup - foam cup)/liquid cup":       true,
		"Overrun % = (cup of mix - cup of foam) / cup of foam x 100":     false,
		"overrun (%) = (mix-foam)/foam x 100":                            false,
		"Weigh a cup of mix and a cup of foam for the overrun":           false,
		"overrun = by eye. Drained = liquid / mix of the sieve × 100, g": false,
	} {
		if got := overMix.MatchString(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
