package works

import (
	"math"
	"slices"
	"testing"

	"foamfield/analysis/result"
	"foamfield/ingest/trial"
)

var inf = math.Inf(1)

func seen(low, high float64) *trial.Interval { return &trial.Interval{Low: low, High: high} }

var want = result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"}}

// What works follows the bounds, and what a foam never reached says nothing of it.
func TestVerdict(t *testing.T) {
	all := Judged{result.CameOut: true, result.Broke: true, result.HoldMinutes: true, result.DrainedPercent: true}
	holds := Judged{result.HoldMinutes: true}
	for _, c := range []struct {
		name   string
		judged Judged
		trial  trial.Trial
		works  Tri
		failed []result.Outcome
	}{
		{"holds as long as is asked", holds, trial.Trial{Hold: seen(20, inf)}, Yes, nil},
		{"watched for less", holds, trial.Trial{Hold: seen(15, inf)}, Unknown, nil},
		{"fell sooner", holds, trial.Trial{Hold: seen(19, 19)}, No, []result.Outcome{result.HoldMinutes}},
		{"a clog fails by nothing else", all, trial.Trial{CameOut: trial.No, Hold: seen(1, 1)}, No, []result.Outcome{result.CameOut}},
		{"partly is not out", all, trial.Trial{CameOut: trial.Partly, Hold: seen(25, 25)}, No, []result.Outcome{result.CameOut}},
		{"a split foam fails by nothing later", all, trial.Trial{CameOut: trial.Yes, Broke: trial.Yes, Hold: seen(2, 2)}, No, []result.Outcome{result.Broke}},
		{"nobody looked whether it split", all, trial.Trial{CameOut: trial.Yes, Hold: seen(30, 30), Drained: seen(2, 2)}, Unknown, nil},
		{"both numbers miss", all, trial.Trial{CameOut: trial.Yes, Broke: trial.No, Hold: seen(2, 2), Drained: seen(12, 12)}, No,
			[]result.Outcome{result.HoldMinutes, result.DrainedPercent}},
		{"hold was never logged", Judged{}, trial.Trial{CameOut: trial.Yes}, Unknown, nil},
	} {
		got, failed := Verdict(c.judged.Passes(&c.trial, want), want.Outcomes())
		if got != c.works || !slices.Equal(failed, c.failed) {
			t.Errorf("%s: %v by %v, want %v by %v", c.name, got, failed, c.works, c.failed)
		}
	}
}

// A trial tells something of an outcome only if it reached it.
func TestTells(t *testing.T) {
	for _, c := range []struct {
		name  string
		of    result.Outcome
		trial trial.Trial
		tells bool
	}{
		{"a foam that was watched came out", result.CameOut, trial.Trial{Hold: seen(3, inf)}, true},
		{"nobody says", result.CameOut, trial.Trial{}, false},
		{"a clog has no hold", result.HoldMinutes, trial.Trial{CameOut: trial.No, Hold: seen(3, 3)}, false},
		{"a split foam has none either", result.HoldMinutes, trial.Trial{Broke: trial.Yes, Hold: seen(3, 3)}, false},
		{"anything at all is nothing", result.HoldMinutes, trial.Trial{Hold: seen(0, inf)}, false},
		{"at most is something", result.DrainedPercent, trial.Trial{Drained: seen(0, 1)}, true},
		{"a taste", "taste", trial.Trial{CameOut: trial.Yes, Extras: map[string]float64{"taste": 6}}, true},
		{"no taste", "taste", trial.Trial{CameOut: trial.Yes}, false},
	} {
		if got := Tells(&c.trial, c.of); got != c.tells {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A target is carried from one observation on, but not by a control without emulsifier;
// a hold beyond all watching is a guess.
func TestCarry(t *testing.T) {
	none := 0.0
	control := trial.Trial{Composition: trial.Composition{EmulsifierPercent: &none}, Hold: seen(30, 30)}
	short := trial.Trial{Hold: seen(12, inf)}
	if c := Carry([]*trial.Trial{&control}, want); c.Judged[result.HoldMinutes] || !slices.Equal(c.NotJudged, []result.Outcome{result.HoldMinutes, result.DrainedPercent}) {
		t.Errorf("a control alone: %+v", c)
	}
	if c := Carry([]*trial.Trial{&short}, want); !c.Judged[result.HoldMinutes] || c.WatchedMinutes == nil || *c.WatchedMinutes != 12 || !c.HoldIsAGuess {
		t.Errorf("watched for 12 minutes: %+v", c)
	}
	if c := Carry([]*trial.Trial{&short, &control}, want); c.HoldIsAGuess {
		t.Errorf("watched for 30 minutes: %+v", c)
	}
}
