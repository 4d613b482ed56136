package ingest

import (
	"fmt"
	"math"
	"path/filepath"
	"testing"

	"foamfield/ingest/trial"
)

var tastedLog = sheetText{"log", "trial | butter g | cider g | GMS g | came out | hold min | taste (1-9) | firmness /9 | rest min | foisonnement (%)\n" +
	"1 | 100 | 100 | 2 | yes | 20 | 6 | 4 | 30 | 120\n2 | 110 | 90 | 2 | yes | 25 | 8 | 7 | 30 | 160"}

// TestResultTargets has a row of a Targets sheet a line: what is asked of which result,
// or the problem it is.
func TestResultTargets(t *testing.T) {
	for _, c := range []struct{ name, value, want string }{
		{"taste", "at least 6", "taste of score: 6 to +Inf"},
		{"Taste (1-9)", ">= 6", "taste of score: 6 to +Inf"},
		{"firmness", "4 to 6", "firmness of mouthfeel: 4 to 6"},
		{"FIRMNESS", "at most 6", "firmness of mouthfeel: -Inf to 6"},
		{"taste", "6", "target not read at B2"},
		{"taste", "good", "target not read at B2"},
		{"looks", "at least 6", "unknown target at A2"},
		{"rest", "at least 30", "unknown target at A2"}, // set before the foam is made
		{"foisonnement", "at least 150 %", "overrun of overrun_percent: 150 to +Inf"},
		{"overrun", "at least 0.5", "overrun of overrun_percent: 0.5 to +Inf"},
		{"foisonnement (%)", "150 to 180 | percent", "overrun of overrun_percent: 150 to 180"},
		{"overrun", "at least 150 | min", "target not read at B2"},
		{"overrun", "at least 5 min", "target not read at B2"},
		{"taste", "at least 6\ntaste | at most 8", "taste of score: 6 to +Inftarget twice at A3"},
		{"taste", "at least 6\nTaste (1-9) | at most 8", "taste of score: 6 to +Inftarget twice at A3"},
		{"batch", "300\nbatch | 400", "target twice at A3"},
		{"holds up", "at least 20", "unknown target at A2"},
	} {
		t.Run(c.name+" "+c.value, func(t *testing.T) {
			log, err := Read([]string{writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), tastedLog,
				sheetText{"Targets", "Target | Value | Unit\n" + c.name + " | " + c.value})}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			got := ""
			for _, w := range log.Targets.Results {
				got += fmt.Sprintf("%s of %s: %v to %v", w.Result.Label, w.Result.Name, w.Low, w.High)
			}
			for _, p := range log.Problems {
				if p.Kind == "unknown target" || p.Kind == "target not read" || p.Kind == "target twice" {
					got += fmt.Sprintf("%s at %s%d", p.Kind, string(rune('A'+p.At.Col-1)), p.At.Row)
				}
			}
			if got != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
		})
	}
}

// TestResultTargetsOfTwoLogs: one target may stand in both, two that differ may not.
func TestResultTargetsOfTwoLogs(t *testing.T) {
	dir := t.TempDir()
	asking := func(name, value string) string {
		return writeBook(t, filepath.Join(dir, name), tastedLog, sheetText{"Targets", "Target | Value\ntaste | " + value})
	}
	log, err := Read([]string{asking("a.xlsx", "6 to 8"), asking("b.xlsx", "6 to 8")}, Options{})
	if err != nil || len(log.Targets.Results) != 1 || log.Targets.Results[0].Interval != (trial.Interval{Low: 6, High: 8}) {
		t.Errorf("%+v, %v", log.Targets.Results, err)
	}
	if _, err := Read([]string{asking("a.xlsx", "6 to 8"), asking("b.xlsx", "at least 6")}, Options{}); err == nil {
		t.Error("two logs that ask for different tastes were read together")
	}
	kitchen := writeBook(t, filepath.Join(dir, "kitchen.xlsx"), sheetText{"Targets", "Target | Value\ntaste | at least 7"})
	log, err = Read([]string{asking("a.xlsx", "6 to 8")}, Options{Kitchen: kitchen})
	if err != nil || len(log.Targets.Results) != 1 || log.Targets.Results[0].Interval != (trial.Interval{Low: 7, High: math.Inf(1)}) {
		t.Errorf("%+v, %v", log.Targets.Results, err)
	}
}
