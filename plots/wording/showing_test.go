package wording

import (
	"testing"

	"foamfield/analysis/result"
)

func TestCompared(t *testing.T) {
	for _, c := range []struct {
		e    result.GroupEffect
		want result.Showing
	}{
		{result.GroupEffect{Verdict: result.Clear}, result.Shown},
		{result.GroupEffect{Verdict: result.Likely}, result.Shown},
		{result.GroupEffect{Verdict: result.CannotTell, Sentence: "suggested, not shown: hold drifts"}, result.Suggested},
		{result.GroupEffect{Verdict: result.CannotTell, Sentence: "these trials do not show whether hold drifts"}, result.NotSeen},
		{result.GroupEffect{Verdict: result.CannotTell, Failure: "almost every trial has a day of its own"}, result.NotTested},
		{result.GroupEffect{Verdict: result.CannotTell, NotToldFrom: []string{"fat"}}, result.NotTested},
	} {
		if got := Compared(c.e); got != c.want {
			t.Errorf("%+v: %s, want %s", c.e, got, c.want)
		}
	}
}
