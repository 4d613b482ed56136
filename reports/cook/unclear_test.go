package cook

import (
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/mixes"
	"foamfield/reports/say"
)

// What makes trials unclear is named, what is written most seldom first; a bound, a trial that
// clogged and what nobody judges are no gaps.
func TestUnclearTrialsSayWhatIsMissing(t *testing.T) {
	no := false
	open := func(missing ...string) result.Trial {
		x := result.Trial{Used: true, Missing: map[string]string{}}
		for _, m := range missing {
			x.Missing[m] = "not_measured"
		}
		return x
	}
	clogged := open()
	clogged.Works, clogged.Missing["hold_minutes"] = &no, "did_not_come_out"
	for _, c := range []struct {
		trials    []result.Trial
		notJudged []result.Outcome
		want      string
	}{
		{[]result.Trial{open("broke"), open("broke"), open("broke", "drained_percent"), clogged}, nil,
			"Of 3 trials it is unclear whether they worked: nothing is written of splitting or drainage. Where a foam did not split, type no. What nobody looked at stays empty."},
		{[]result.Trial{open("hold_minutes")}, nil, "Of 1 trial it is unclear whether it worked: nothing is written of hold. What nobody looked at stays empty."},
		{[]result.Trial{open("hold_minutes"), open()}, nil, "Of 2 trials it is unclear whether they worked: of some nothing is written of hold. What nobody looked at stays empty."},
		{[]result.Trial{open("broke")}, []result.Outcome{result.Broke}, ""},
		{[]result.Trial{open(), clogged}, nil, ""},
	} {
		r := &result.Results{Trials: c.trials, NotJudged: c.notJudged}
		for _, x := range c.trials {
			if x.Works == nil {
				r.Counts.Unknown++
			}
		}
		if got := (pages{mixes.Run{Run: say.Run{R: r}}}).unclear().String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
