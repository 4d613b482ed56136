package row_test

import (
	"math"
	"testing"

	"foamfield/ingest/trial"
)

// TestCodes: the codes of a column of results, as a line beside the table explains them.
func TestCodes(t *testing.T) {
	for _, c := range []struct {
		legend, code string
		came, broke  trial.Answer
		said         bool
	}{
		{"C = clogged; P = partly; F = came out; S = split", "P", trial.Partly, trial.Unknown, false},
		{"C = clogged, P = came out in part, F = came out fine, S = split", "S", trial.Yes, trial.Yes, false},
		{"C: clogged | P: partly | F: came out | S: split", "P/S", trial.Partly, trial.Yes, false},
		{"F kam raus, C verstopft", "F", trial.Yes, trial.Unknown, true},
		{"C = clogged, F = came out", "S", trial.Yes, trial.Unknown, true},
		{"C = Cleo, F = Fred, S = Sam", "S", trial.Yes, trial.Unknown, true},
		{"", "S", trial.Yes, trial.Unknown, true},
	} {
		log := read(t, "\""+c.legend+"\"\n\ntrial,oil % of mix,emulsifier % of mix,HLB,outcome,hold min\n1,45,2.5,8,"+c.code+",15\n2,50,2.5,8,F,16\n3,55,2.5,8,C,\n4,55,2.5,8,F,18\n")
		x := &log.Trials[0]
		said := false
		for _, p := range log.Problems {
			said = said || p.Kind == "result not read"
		}
		if x.CameOut != c.came || (x.Broke == trial.Yes) != (c.broke == trial.Yes) || said != c.said {
			t.Errorf("%q, %q: came out %v, split %v, said %v", c.legend, c.code, x.CameOut, x.Broke, said)
		}
	}
}

// TestHoldInResults: a column of results and no other on the hold.
func TestHoldInResults(t *testing.T) {
	for text, want := range map[string][2]float64{
		"18 min": {18, 18}, "held 18 min": {18, 18}, "> 25 min": {25, math.Inf(1)}, "still standing after 25 min": {25, math.Inf(1)}, "about 20 minutes": {20, 20},
	} {
		log := read(t, "trial,oil % of mix,emulsifier % of mix,HLB,result,drained % at 20 min\n1,45,2.5,8,"+text+",15\n2,50,2.5,8,clogged,\n")
		if h := log.Trials[0].Hold; h == nil || h.Low != want[0] || h.High != want[1] {
			t.Errorf("%q: %v", text, h)
		}
	}
}

// TestFellAtText: a clock at which a foam still stood.
func TestFellAtText(t *testing.T) {
	for text, high := range map[string]float64{"16:25": 25, "still up 16:25": math.Inf(1), "16:25+": math.Inf(1), ">16:25": math.Inf(1), "stand noch 16:25": math.Inf(1)} {
		log := read(t, "trial,oil % of mix,emulsifier % of mix,HLB,came out,start,end\n1,45,2.5,8,yes,14:05,14:20\n2,45,2.5,8,yes,15:00,15:20\n3,45,2.5,8,yes,16:00,"+text+"\n")
		if h := log.Trials[2].Hold; h == nil || h.Low != 25 || h.High != high {
			t.Errorf("%q: %v", text, h)
		}
	}
}
