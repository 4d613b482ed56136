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

// TestListBesideCards: right of the cards and an empty column, a list and lines of words are of the
// whole work and no further trials; numbers there are.
func TestListBesideCards(t *testing.T) {
	card := func(n int, beside ...string) string {
		var lines []string
		for i, l := range []string{"trial|%d", "butter, g|150", "cider, g|144", "mono, g|6", "came out|yes", "held, min|2%d"} {
			own, next, more := strings.ReplaceAll(l, "%d", fmt.Sprint(n)), strings.ReplaceAll(l, "%d", fmt.Sprint(n+1)), ""
			if i < len(beside) {
				more = "||" + beside[i]
			}
			lines = append(lines, own+"||"+next+more)
		}
		return strings.Join(lines, "\n") + "\n"
	}
	for _, c := range []struct {
		name, log string
		trials    int
		first     string
	}{
		{"nothing beside", card(1) + "\n" + card(3), 4, "41.00 2.00 3.80"},
		{"a list", card(1, "what|fat %|HLB", "butter|80|", "cider|0|", "mono|0|4", "question|how much mono?") + "\n" + card(3), 4, "40.00 2.00 4.00"},
		{"lines below a list", card(1, "what|fat %|HLB", "butter|80|", "mono|0|4") + "\n" + card(3, "rule|holds at least 20 min", "safety|let the gas off", "result|pot 2"), 4, "40.00 2.00 4.00"},
		{"another trial", card(1, "3", "160", "134", "6", "yes", "25"), 3, "41.00 2.00 3.80"},
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log", c.log}))
		if len(log.Trials) != c.trials {
			t.Errorf("%s: %d trials, want %d", c.name, len(log.Trials), c.trials)
			continue
		}
		if got := mixOf(log.Trials[0]); got != c.first {
			t.Errorf("%s: the first mix is %s, want %s; %v", c.name, got, c.first, log.Problems)
		}
	}
}
