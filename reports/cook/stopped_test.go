package cook

import (
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// A formula made twice has two holds, of which one is told: whose it is, is said.
func TestSawOfTheBestTrial(t *testing.T) {
	at := func(v float64) *result.Interval { return &result.Interval{Low: &v, High: &v} }
	const luck = ". This is what was seen, not what to expect: a good trial may be luck."
	for _, c := range []struct {
		best result.BestSeen
		want string
	}{
		{result.BestSeen{MadeTimes: 1, HoldMinutes: at(25), Drained: at(8)}, "Made once; held 25 minutes, drained 8 %"},
		{result.BestSeen{MadeTimes: 2, HoldMinutes: at(25), Drained: at(8)}, "Made twice; this one held 25 minutes, drained 8 %"},
		{result.BestSeen{MadeTimes: 3, Drained: at(8)}, "Made 3 times; this one drained 8 %"},
		{result.BestSeen{MadeTimes: 2}, "Made twice"},
	} {
		if got := (pages{mixes.Run{Run: say.Run{R: &result.Results{}}}}).saw(&c.best).String(); got != c.want+luck {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
