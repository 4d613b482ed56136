package reclaim

import "testing"

// TestFatGramHead: heads of grams of fat, and heads that are of something else.
func TestFatGramHead(t *testing.T) {
	for head, want := range map[string]bool{
		"Fat g": true, "fat (g)": true, "g fat": true, "grams of fat": true, "total fat [g]": true, "fat in mix (g)": true, "Fett g": true, "pure fat, g": true,
		"fat % of mix": false, "fatty powder g": false, "GMS g": false, "fat": false, "butter g": false, "g per kg": false,
	} {
		if got := fatGramHead.MatchString(head); got != want {
			t.Errorf("%q: %v", head, got)
		}
	}
}
