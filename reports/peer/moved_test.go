package peer

import (
	"strings"
	"testing"

	"foamfield/analysis/result"
	"foamfield/plots/wording"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

func TestEffectsStayWithinTheWatching(t *testing.T) {
	for _, c := range []struct {
		watched   float64
		low, high float64
		want      string
	}{
		{60, 23, 32, "Shown: more fat lengthens the hold, from about 23 minutes at 30.0 % fat to about 32 minutes at 50.0 % fat, all else as in the start."},
		{30, 23, 32, "about 23 minutes at 30.0 % fat to more than 30 minutes at 50.0 % fat, all else as in the start."},
		{20, 23, 32, "Shown: more fat lengthens the hold, all else as in the start. By how much is not known: nobody watched past 20 minutes."},
	} {
		b := pages{mixes.Run{Run: say.Run{R: &result.Results{WatchedMinutes: &c.watched}}}}
		e := result.Effect{Variable: wording.FatPercent, X: []float64{30, 50}, Hold: []result.Band{{Mid: c.low}, {Mid: c.high}},
			Tested: []bool{true, true}, Verdict: result.Clear, Shape: result.Rises, Change: result.Band{Mid: 1.4}}
		if got := b.effect("x", e).String(); !strings.Contains(got, c.want) {
			t.Errorf("%q does not say %q", got, c.want)
		}
	}
}
