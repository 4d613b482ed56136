package verdict

import "testing"

// TestAllRounded: of a column of whole numbers every wrong cell is rounded, unless one of them is more
// than that.
func TestAllRounded(t *testing.T) {
	way := func() *Way { w := By(0, "another way", "other"); return &w }
	for _, c := range []struct {
		wrong   []Verdict
		rounded bool
	}{
		{[]Verdict{{near: true, coarse: true, Way: way()}, {near: true, coarse: true}, {near: true, coarse: true}}, true},
		{[]Verdict{{near: true, coarse: true, Way: way()}, {near: false, coarse: true}, {near: true, coarse: true}}, false},
		{[]Verdict{{near: true, coarse: false, Way: way()}, {near: true}, {near: true}}, false}, // others are typed finer
		{[]Verdict{{near: true, coarse: true, Way: way()}, {near: true, coarse: true}}, false},  // too few
	} {
		if allRounded(c.wrong); c.wrong[0].rounded != c.rounded || (c.wrong[0].Way == nil) != c.rounded {
			t.Errorf("%+v: %v", c.wrong, c.wrong[0].rounded)
		}
	}
}
