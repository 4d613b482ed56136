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

// An outcome is judged from one trial on the surface on, whatever is logged elsewhere; a
// hold beyond all watching that it is judged by is a guess.
func TestCarry(t *testing.T) {
	none := 0.0
	control := &trial.Trial{Composition: trial.Composition{EmulsifierPercent: &none}, Hold: seen(45, 45), CameOut: trial.Yes, Broke: trial.No}
	unknown := &trial.Trial{Hold: seen(45, 45), CameOut: trial.Yes}
	short := &trial.Trial{Hold: seen(12, inf), CameOut: trial.Yes}
	clog := &trial.Trial{Hold: seen(45, 45), CameOut: trial.No}
	out := &trial.Trial{CameOut: trial.Yes}
	for _, c := range []struct {
		name          string
		surface, rest []*trial.Trial
		judged        []result.Outcome
		hold          string // why it is not judged
		watched       float64
		guess         bool
	}{
		{"hold of a control", []*trial.Trial{out}, []*trial.Trial{control}, []result.Outcome{result.CameOut},
			"how long a foam holds is logged only of trials without emulsifier, which lie apart", 0, false},
		{"hold of a mix nobody knows", []*trial.Trial{out}, []*trial.Trial{unknown}, []result.Outcome{result.CameOut},
			"how long a foam holds is logged only of trials whose mix is not wholly known", 0, false},
		{"hold of what clogged", []*trial.Trial{out, clog}, nil, []result.Outcome{result.CameOut},
			"how long a foam holds is logged only of foams that did not come out or split", 0, false},
		{"nothing but coming out", []*trial.Trial{out}, nil, []result.Outcome{result.CameOut}, "how long a foam holds is not logged", 0, false},
		{"watched too shortly, but for a control and a clog", []*trial.Trial{short, clog}, []*trial.Trial{control},
			[]result.Outcome{result.CameOut, result.HoldMinutes}, "", 12, true},
		{"watched long enough", []*trial.Trial{short, unknown}, nil, []result.Outcome{result.CameOut, result.HoldMinutes}, "", 45, false},
	} {
		got := Carry(c.surface, append(c.rest, c.surface...), want)
		for _, o := range want.Outcomes() {
			if judged := slices.Contains(c.judged, o); got.Judged[o] != judged || slices.Contains(got.NotJudged, o) == judged {
				t.Errorf("%s: %s judged %v, not judged %v", c.name, o, got.Judged[o], got.NotJudged)
			}
		}
		if why := got.Why[result.HoldMinutes].Sentence; why != c.hold {
			t.Errorf("%s: %q, want %q", c.name, why, c.hold)
		}
		if got.HoldIsAGuess != c.guess || c.watched > 0 && (got.WatchedMinutes == nil || *got.WatchedMinutes != c.watched) {
			t.Errorf("%s: watched %v, a guess %v", c.name, got.WatchedMinutes, got.HoldIsAGuess)
		}
	}
}
