package recalc

import "testing"

// TestReduced: heads of what was left of a mix and of percents of it, words that say so of all
// percents, and the like that do not.
func TestReduced(t *testing.T) {
	for text, want := range map[string]bool{
		"after heating (g)":                true,
		"mix weighed again (g)":            true,
		"reduced to g":                     true,
		"fat (% of mix after heating)":     true,
		"nach dem Erhitzen (g)":            true,
		"weighed in (g)":                   false,
		"total (g)":                        false,
		"hold after 20 min":                false,
		"drained after 30 min (g of 50 g)": false,
	} {
		if got := reducedHead.MatchString(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
	for text, want := range map[string]bool{
		"All percents are of the mix AFTER heating.":            true,
		"% are reckoned on the weight left":                     true,
		"Percent of the mix.":                                   false,
		"5 % drained after 20 min":                              false,
		"The percentages are of the mix; weighed after heating": false,
	} {
		if got := ofReduced.MatchString(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
