package ingest

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestCardsByTheirTitles: what the trials of cards below each other are called.
func TestCardsByTheirTitles(t *testing.T) {
	card := func(title, more string) string {
		return title + "\n" + more + "butter (% of mix)|48\nemulsifier (% of mix)|2\nblend HLB|8\ncame out|yes\nheld (min)|22\n-\n"
	}
	for _, c := range []struct{ name, log, want string }{
		{"titles with numbers", card("Slip 1", "") + card("Slip 2", "") + card("Slip 3", ""), "Slip 1, Slip 2, Slip 3"},
		{"a number of their own", card("Slip 1", "trial|7\n") + card("Slip 2", "trial|8\n"), "7, 8"},
		{"one title twice", card("Slip 1", "") + card("Slip 1", ""), ", "},
		{"words alone", card("Butter foam", "") + card("More of it", ""), ", "},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", strings.ReplaceAll(c.log, "-\n", "\n")}))
		var ids []string
		for i := range log.Trials {
			ids = append(ids, log.Trials[i].ID)
		}
		if got := strings.Join(ids, ", "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
