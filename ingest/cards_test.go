package ingest

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// TestCardsBelowEachOther: every card has rows of its own, and what is said of a cell is of its trial.
func TestCardsBelowEachOther(t *testing.T) {
	const card = "butter (% of mix)|48\nemulsifier (% of mix)|2\nblend HLB|8\ncame out|yes\nheld (min)|22\n"
	for _, c := range []struct{ name, log, places, rows string }{
		{"with titles", "Go 1\n" + card + "\nGo 2\n" + card, "cell B2, cell B9", "1-6, 8-13"},
		{"without", card + "\n" + card, "cell B1, cell B7", "1-5, 7-11"},
		{"trials across", "trial|1|2\n" + strings.ReplaceAll(strings.ReplaceAll(card, "|48", "|48|50"), "|22", "|22|20"), "column B, column C", "2-2, 3-3"},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.log}))
		var places, rows []string
		for i := range log.Trials {
			x := &log.Trials[i]
			_, at, _ := strings.Cut(x.At.String(), "sheet Log, ")
			places, rows = append(places, at), append(rows, fmt.Sprintf("%d-%d", x.Rows[0], x.Rows[len(x.Rows)-1]))
		}
		if got := strings.Join(places, ", "); got != c.places || strings.Join(rows, ", ") != c.rows {
			t.Errorf("%s: %q of rows %q, want %q of %q", c.name, got, rows, c.places, c.rows)
		}
	}
}

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
