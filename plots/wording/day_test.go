package wording

import "testing"

func TestDays(t *testing.T) {
	for _, c := range []struct{ first, last, want string }{
		{"2022-04-11", "2022-04-15", "11 to 15 Apr 2022"},
		{"2022-03-28", "2022-04-01", "28 Mar to 1 Apr 2022"},
		{"2021-12-27", "2022-01-02", "27 Dec 2021 to 2 Jan 2022"},
		{"2022-04-11", "2022-04-11", "11 Apr 2022"},
		{"", "", ""},
		{"week 3", "week 3", "week 3"},
	} {
		if got := Days(c.first, c.last); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.first, c.last, got, c.want)
		}
	}
}
