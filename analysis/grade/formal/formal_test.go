package formal

import "testing"

func TestDays(t *testing.T) {
	for _, c := range []struct {
		text       string
		day        string
		ok, cannot bool
	}{
		{"2026-03-02", "2026-03-02", true, false},
		{"2.3.2026", "2026-03-02", true, false},
		{"02/03/26", "2026-03-02", true, false},
		{"3/25/2026", "2026-03-25", true, false}, // month first, as no other reading is a day
		{"31.02.2026", "", false, true},
		{"2026-13-40", "", false, true},
		{"Mon 4 May", "", false, false},
		{"", "", false, false},
	} {
		d, ok, cannot := parse(c.text)
		if ok != c.ok || cannot != c.cannot || ok && d.Format("2006-01-02") != c.day {
			t.Errorf("%q: %v %v %v", c.text, d, ok, cannot)
		}
	}
}

// TestTellsDay: what may stand beside a label of days, and constants beside a label "Data".
func TestTellsDay(t *testing.T) {
	for text, want := range map[string]bool{
		"12 November 2026": true, "9.-10.4.": true, "3/4": true, "week 14": true, "31.02.2026": true, "day 1: 5 May, day 2: 6 May": true,
		"cream 35 % fat, butter 80 % fat, GMS HLB 3.8": false, "cream fat 35; butter fat 82": false, "see the sheet": false,
	} {
		if got := tellsDay(text); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
