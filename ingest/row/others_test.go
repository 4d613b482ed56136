package row_test

import (
	"math"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestNotesOnOthers: a note that speaks of other trials takes those out, and not its own.
func TestNotesOnOthers(t *testing.T) {
	for note, want := range map[string]string{
		"trial 1: forgot the GMS":               "1",
		"no. 3 was made with the wrong oil":     "3",
		"trials 1 and 3: wrong bottle of oil":   "1 3",
		"runs 1-3 were made without the GMS":    "1 2 3",
		"Versuch 2: GMS vergessen":              "2",
		"trial 3 was better":                    "",
		"trial 4: forgot the GMS":               "4",
		"forgot the GMS":                        "4",
		"trial 9: forgot the GMS":               "4",
		"no. 3 again, but forgot the GMS in it": "3",
	} {
		log := read(t, "trial,oil g,water g,GMS g,came out,hold min,notes\n1,45,50,2.5,yes,20,\n2,45,50,2,yes,18,\n3,50,45,2,yes,14,\n4,50,45,3,yes,16,\""+note+"\"\n5,50,45,3,no,,\n")
		var aside []string
		for i := range log.Trials {
			if !log.Trials[i].Used() {
				aside = append(aside, log.Trials[i].ID)
			}
		}
		if got := strings.Join(aside, " "); got != want {
			t.Errorf("%q: %q set aside, want %q", note, got, want)
		}
	}
}

// TestStoodByNote: a note that says that the foam still stood when watching stopped.
func TestStoodByNote(t *testing.T) {
	for note, high := range map[string]float64{
		"still standing": math.Inf(1), "stopped watching at 25": math.Inf(1), "had to stop": math.Inf(1), "stand noch, glatt": math.Inf(1), "still up at 25 min": math.Inf(1),
		"still standing at 10, gone at 25": 25, "still standing at 20": 25, "no longer still standing": 25, "nice": 25, "": 25,
	} {
		log := read(t, "trial,oil % of mix,emulsifier % of mix,HLB,came out,hold min,notes\n1,45,2.5,8,yes,20,\n2,45,2.5,8,yes,25,\""+note+"\"\n3,50,2.5,8,no,,\n")
		h := log.Trials[1].Hold
		if h == nil || h.Low != 25 || h.High != high {
			t.Errorf("%q: %v", note, h)
		}
		said := false
		for _, p := range log.Problems {
			said = said || p.Kind == "hold by its note" && p.Severity == trial.PleaseLook
		}
		if said != (high > 25) {
			t.Errorf("%q: said %v", note, said)
		}
	}
}
