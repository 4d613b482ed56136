package planned

import (
	"strings"
	"testing"

	"foamfield/analysis/result"
)

// A factor that nobody could mean is never printed: too few trials are said to be so.
func TestFactorsThatTellNothing(t *testing.T) {
	for _, c := range []struct {
		shows      result.PlanShows
		two, moves string
	}{
		{result.PlanShows{Least: 2, Most: 4}, "holds 4.0 times as long as the other; if your foams repeat well, 2.0 times.", "by 4.0 or 2.0 times"},
		{result.PlanShows{Least: 2.5, Most: 31}, "holds more than 10 times as long as the other; if your foams repeat well, 2.5 times.", "by more than 10 or 2.5 times"},
		{result.PlanShows{Least: 31, Most: 881}, "Too few trials to tell two formulas", "Too few trials to show what a number does, unless it changes the hold more than 10 times: fat from 30 to 60 %."},
		{result.PlanShows{Least: 6e53, Most: 7e78}, "Too few trials to tell two formulas", "Too few trials to show what a number does"},
	} {
		said := strings.Join(Says(&result.Plan{Ranges: result.PlanRanges{FatPercent: [2]float64{30, 60}},
			Tells: &result.PlanTells{Formulas: c.shows, Moves: map[string]result.PlanShows{"fat_percent": c.shows}}}), "\n")
		if !strings.Contains(said, c.two) || !strings.Contains(said, c.moves) {
			t.Errorf("%v: %s", c.shows, said)
		}
	}
}
