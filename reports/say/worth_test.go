package say

import (
	"testing"

	"foamfield/analysis/result"
)

// What a start is called says no more than it is worth.
func TestStartName(t *testing.T) {
	for _, c := range []struct {
		place  int
		aim    result.Aim
		status result.Status
		chance float64
		guess  bool
		want   string
	}{
		{0, result.Surest, result.Recommended, 0.9, false, "surest start"},
		{0, result.Surest, result.Recommended, 0.3, false, "surest start"}, // 2 in 10 were asked for
		{0, result.Surest, result.BestAvailable, 0.7, false, "best start so far"},
		{0, result.Surest, result.BestAvailable, 0.3, false, "a mix to learn from"},
		{0, result.Surest, result.BestAvailable, 0.9, true, "best guess"},
		{1, result.Richest, result.Recommended, 0.8, false, "richest start"},
	} {
		r := Run{R: &result.Results{HoldIsAGuess: c.guess}}
		if got := r.StartName(c.place, result.Start{Aim: c.aim, Status: c.status, Chance: result.Chance{Mean: c.chance}}); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}
