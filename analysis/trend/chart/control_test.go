package chart

import (
	"strings"
	"testing"
)

// What is said of points outside: one line a case.
func TestOutsideWords(t *testing.T) {
	for _, c := range []struct {
		list []stray
		want string
	}{
		{nil, ""},
		{[]stray{{"30 Sep 2026", "below", "", 1}}, " Outside: 30 Sep 2026 (below)."},
		{[]stray{{"30 Sep 2026", "below", "fridge open", 1}}, " Outside: 30 Sep 2026 (below; noted that day: “fridge open”, which may be why or not)."},
		{[]stray{{"19 Feb 2026", "below", "", 2}}, " Outside: 19 Feb 2026 (below, twice)."},
		{[]stray{{"19 Feb 2026", "below", strings.Repeat("x", 200), 1}}, " Outside: 19 Feb 2026 (below; noted that day: “" + strings.Repeat("x", 120) + "…”, which may be why or not)."},
		{[]stray{{"row 5", "below", "lid off", 1}, {"row 6", "below", "lid off", 1}, {"row 9", "above", "new whipper", 1}},
			" Outside: row 5 (below; noted that day: “lid off”, which may be why or not), row 6 (below), row 9 (above; noted that day: “new whipper”, which may be why or not)."},
		{[]stray{{"a", "above", "", 1}, {"b", "below", "", 1}, {"c", "below", "", 1}, {"d", "below", "", 1}, {"e", "below", "", 2}}, " Outside: a (above), b (below), c (below), 3 more."},
	} {
		if got := outsideWords(c.list); got != c.want {
			t.Errorf("%v: %q, want %q", c.list, got, c.want)
		}
	}
}
