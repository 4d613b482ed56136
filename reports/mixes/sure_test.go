package mixes

import (
	"testing"

	"foamfield/analysis/result"
	"foamfield/reports/say"
)

// The failures that are named make up nine tenths of what does not work.
func TestFailuresAddUp(t *testing.T) {
	b := Run{say.Run{R: &result.Results{Counts: result.Counts{Clogged: 1, Broke: 1, ShortHold: 1, TooWet: 1}}}}
	for _, c := range []struct {
		clogs, splits, falls, weeps float64
		want                        string
	}{
		{0.0144, 0.0075, 0.0182, 6e-6, "about 2 fall too soon, 1 clogs and 1 splits"},
		{0.04, 0, 0, 0, "about 4 clog"},
		{0.0403, 0.1262, 0.0061, 0, "about 13 split, 4 clog and 1 falls too soon"},
		{0.3, 0.011, 0.02, 0.012, "about 30 clog, 2 fall too soon, 1 drains too much and 1 splits"},
		{0.001, 0.002, 0.001, 0, ""},
		{0.004, 0.004, 0.004, 0, "fewer than 1 clogs, fewer than 1 splits and fewer than 1 falls too soon"},
	} {
		s := result.Start{Fails: map[result.Outcome]float64{result.CameOut: c.clogs, result.Broke: c.splits, result.HoldMinutes: c.falls, result.DrainedPercent: c.weeps}}
		if got := b.fails("x", s).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// What no trial did and how often it may be stand in one pair of brackets.
func TestFailuresNobodySaw(t *testing.T) {
	for _, c := range []struct {
		clogged int
		high    float64
		want    string
	}{
		{1, 0.06, "about 2 clog (perhaps 6) and 1 falls too soon"},
		{0, 0.06, "about 2 clog (perhaps 6; no trial did) and 1 falls too soon"},
		{0, 0.02, "about 2 clog (no trial did) and 1 falls too soon"},
		{1, 0.02, "about 2 clog and 1 falls too soon"},
	} {
		b := Run{say.Run{R: &result.Results{Counts: result.Counts{Clogged: c.clogged, ShortHold: 1}}}}
		s := result.Start{Fails: map[result.Outcome]float64{result.CameOut: 0.02, result.HoldMinutes: 0.01}, Clogging: &result.Chance{Mean: 0.02, High: c.high}}
		if got := b.fails("x", s).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestHoldIsNotPredictedBeyondTheWatching(t *testing.T) {
	minutes := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		watched     *float64
		median, low float64
		want        string
	}{
		{nil, 33, 22, "It should hold about 33 minutes, likely between 22 and 99."},
		{minutes(40), 33, 22, "It should hold about 33 minutes, likely between 22 and 99."},
		{minutes(30), 33, 22, "It should hold more than 30 minutes; none was seen for longer. Of 20 such foams 19 should hold at least 22 minutes."},
		{minutes(15), 33, 22, "It should hold more than 15 minutes; none was seen for longer."},
	} {
		b := Run{say.Run{R: &result.Results{WatchedMinutes: c.watched}}}
		if got := b.holds("x", result.Predicted{Median: c.median, Low: c.low, High: 99}).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
