package ingest

import "testing"

// TestSummaries: blocks above, below and beside a log that say of its trials what the log
// says are no trials, and take nothing from it.
func TestSummaries(t *testing.T) {
	const (
		head  = "trial,oil % of mix,emulsifier % of mix,HLB,came out,hold min,drained % at 10 min,split\n"
		lines = "1,45,1.5,6,yes,15,12,no\n2,50,2,8,yes,16,11,no\n3,55,2.5,9,yes,17,10,no\n4,60,1.5,6,yes,18,9,no\n5,45,2,8,no,,,\n6,50,2.5,9,yes,20,7,yes\n"
	)
	for name, log := range map[string]string{
		"nothing":                       head + lines,
		"best and worst below":          head + lines + ",,,,,,,\nBest,50,2.5,9,yes,20,7,yes\nWorst,45,1.5,6,yes,15,12,no\n",
		"best by its number, less said": head + lines + "Best: no. 4,60,1.5,6,,18,9,\nLongest (4),60,1.5,6,,18,,\n",
		"the best above, heads again":   "BEST SO FAR\n" + head + "6,50,2.5,9,yes,20,7,yes\n4,60,1.5,6,yes,18,9,no\n\nALL TRIALS\n" + head + lines,
		"the best below, heads again":   head + lines + "\nTOP 2\n" + head + "6,50,2.5,9,yes,20,7,yes\n4,60,1.5,6,yes,18,9,no\n",
		"means above, heads of its own": "Summary,n,mean hold min,mean drained %\n45 %,2,15,12\n50 %,2,18,9\n\n" + head + lines,
		"figures above":                 "trials,6\nbest trial,6,held,20\naverage hold,17.2\nclogged,1\n\n" + head + lines,
		"means to the right": "trial,oil % of mix,emulsifier % of mix,HLB,came out,hold min,drained % at 10 min,split,,fat,mean hold\n" +
			"1,45,1.5,6,yes,15,12,no,,45,15\n2,50,2,8,yes,16,11,no,,50,18\n3,55,2.5,9,yes,17,10,no,,55,17\n4,60,1.5,6,yes,18,9,no,,60,18\n5,45,2,8,no,,,\n6,50,2.5,9,yes,20,7,yes\n",
	} {
		read := mustRead(t, log)
		holds, drained := 0.0, 0.0
		for i := range read.Trials {
			if x := &read.Trials[i]; x.Used() && x.Hold != nil && x.Drained != nil && x.Hold.Low == x.Hold.High {
				holds += x.Hold.Low
				drained += x.Drained.High
			}
		}
		if len(read.Trials) != 6 || holds != 86 || drained != 49 {
			t.Errorf("%s: %d trials, holds %v and drained %v in all; want 6, 86 and 49", name, len(read.Trials), holds, drained)
		}
	}
	// In one block equal rows are repeats, and on another day a number may come again.
	for name, log := range map[string]string{
		"repeats":  head + lines + "6,50,2.5,9,yes,20,7,yes\n",
		"two days": "Monday\n" + head + lines + "\nTuesday\n" + head + "1,45,1.5,6,yes,15,12,no\n",
	} {
		if read := mustRead(t, log); len(read.Trials) != 7 {
			t.Errorf("%s: %d trials, want 7", name, len(read.Trials))
		}
	}
}
