package main

import (
	"foamfield/ingest/trial"
	"math"
	"testing"
)

// TestCheckSaysResultTargets: what a Targets sheet asks of a score is said like the rest.
func TestCheckSaysResultTargets(t *testing.T) {
	at := trial.Place{File: "log.xlsx", Sheet: "Targets", Row: 2, Col: 2}
	for _, c := range []struct {
		low, high float64
		want      string
	}{
		{6, math.Inf(1), "overrun at least 6 %"}, {math.Inf(-1), 6, "overrun at most 6 %"}, {4, 6.5, "overrun 4 to 6.5 %"},
	} {
		a := &account{log: &trial.Log{}}
		a.log.Targets.Results = []trial.ResultTarget{{Result: trial.Variable{Label: "overrun", Unit: "%"}, Interval: trial.Interval{Low: c.low, High: c.high}, At: at}}
		a.targets()
		if want := "\nTargets\n  " + c.want + " (log.xlsx, sheet Targets, cell B2)\n"; a.String() != want {
			t.Errorf("%q, want %q", a.String(), want)
		}
	}
}
