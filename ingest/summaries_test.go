package ingest

import (
	"path/filepath"
	"testing"
)

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
		"counts above, fat again":       "fat %,trials,mean hold,best hold\n45,2,15,15\n50,2,18,20\n55,1,17,17\n\n" + head + lines,
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

// TestSheetsBeside: sheets of what is asked for, of counts and of what stands in the log say
// nothing that is a trial.
func TestSheetsBeside(t *testing.T) {
	const log = "trial|fat % of mix|emulsifier % of mix|HLB|hold min|drained at 10 min %\n1|45|1.5|6|15|12\n2|50|2|8|16|11\n3|55|2.5|9|17|10\n4|60|2|8|12|15"
	testParts(t, []partsCase{
		{"bounds of what is asked for", log + "\n===\nfor the pass|at least|at most\nfat, % of mix|45|55\nhold, min|20|\ndrained at 10 min, %||8\nemulsifier, % of mix||2.5", 4, "45.00 1.50 6.00", ""},
		{"in German", log + "\n===\nfür den Pass|mindestens|höchstens\nfat, % of mix|45|55\nhold, min|20|\ndrained at 10 min, %||8", 4, "45.00 1.50 6.00", ""},
		{"counts and the longest", log + "\n===\nfat %|no. of runs|longest hold (min)|average drained %\n45|2|16|11.5\n50|2|17|12.5", 4, "45.00 1.50 6.00", "no_log_on_the_sheet"},
		{"trials of their own", log + "\n===\ntrial|fat % of mix|emulsifier % of mix|HLB|mean hold min\n5|45|1.5|6|19\n6|50|2|8|18", 6, "45.00 1.50 6.00", ""},
		{"a list of names with full stops", "trial|butter g|tea g|Em. A g|Em. B g|hold min\n1|200|190|5|5|15\n2|220|170|5|5|16\n===\nin the log|what it is|HLB\nEm. A|mono- and diglycerides|3.5\nEm. B|polysorbate|14.9", 2, "41.00 2.50 9.20", ""},
	})
}

// TestMeanBesideItsParts: a mean counts, and the columns it was taken of are not asked; of parts
// without a mean nobody can tell which counts.
func TestMeanBesideItsParts(t *testing.T) {
	for heads, asked := range map[string]bool{
		"hold siphon A, min | hold siphon B, min | hold min (mean of A and B)": false, "Standzeit 1 (min) | Standzeit 2 (min) | Standzeit Mittelwert (min)": false,
		"hold A min | hold B min | hold average min": false, "hold A min | hold B min | drained %": true,
	} {
		log := mustReadPath(t, writeBook(t, filepath.Join(t.TempDir(), "log.xlsx"), sheetText{"Log",
			"no | fat % of mix | emulsifier % of mix | HLB | came out | " + heads + "\n1 | 30 | 1 | 8 | yes | 14 | 16 | 15\n2 | 35 | 1 | 8 | yes | 15 | 19 | 17\n3 | 40 | 1 | 9 | no | | |\n"}))
		if h := log.Trials[0].Hold; (h != nil) == asked || h != nil && h.Low != 15 {
			t.Errorf("%s: hold %v", heads, h)
		}
		if question := len(log.Questions) > 0; question != asked {
			t.Errorf("%s: asked %v, want %v; %v", heads, question, asked, log.Problems)
		}
	}
}
