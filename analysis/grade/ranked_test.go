package grade

import "testing"

// An order of trials, what two trials have in common, and which makings count.
func TestRankedAndPicked(t *testing.T) {
	for _, c := range []struct {
		said  string
		wrong bool
	}{
		{"Ranking by hold: trial 3, trial 10, trial 5.", true},
		{"Ranking by hold: trial 10, trial 4, trial 5.", false},
		{"In order of holding time: 10 > 3 > 2 > 8.", false},
		{"In order of holding time: 10 > 9 > 3 > 8.", true},
		{"In order of holding time: 10 > 3 > 4 > 2.", false}, // 3 and 4 are of one mix
		{"Ranking from longest to shortest: 10 (30 min), 7 (14 min), 9 (18 min).", true},
		{"Ranking by taste: 8, 10, 3, though 10 held longest.", false},
		{"Order in which the trials were made: 3, 10, 4 with the hold beside it.", false},
		{"Order of hold from shortest to longest: 8, 7, 9, 10.", false},
		{"Trial 4 held second longest.", false},
		{"Trial 9 held second longest.", true},
		{"The third longest hold has trial 8.", true},
		{"Trial 4 is clearly better than trial 3.", true},
		{"Trial 6 held much longer than trial 5.", true},
		{"Trial 10 is clearly better than trial 3.", false},
		{"Trial 4 held longer than trial 3, its twin.", false},
		{"Trial 4 tastes clearly better than trial 3.", false},
		{"Trial 4 is not clearly better than trial 3.", false},
		{"Trial 5 is a repeat of trial 4.", true},
		{"Trial 6 is a repeat of trial 5.", false},
		{"Trials 3 and 5 are of one mix.", true},
		{"Trial 5 is no repeat of trial 4.", false},
		{"Trials 5 and 10 differ only in the fat.", true},
		{"Trials 3 and 5 differ only in the fat.", false},
		{"Trials 8 and 9 differ only in the blend.", false},
		{"Trials 7 and 9 differ only in the blend.", true},
		{"Trials 3 and 10 differ only in the amount of emulsifier.", false},
		{"Trials 7 and 9 differ in the fat and in the blend.", false},
		{"I took the longer of the two repeats as the result.", true},
		{"Of each pair I only counted the better one.", true},
		{"I took the mean of the two repeats as the result.", false},
		{"I did not take the better of the two repeats, but the mean.", false},
		{"The best of the mixes is trial 6.", false},
		{"I left out trial 8 because it did not fit.", true},
		{"Trial 8 was not counted since it was too short.", true},
		{"I left out trial 8 because the scale was broken.", false},
		{"I dropped the result of trial 8, which is off the line.", true},
		{"At 49 % fat the hold dropped to 14 min, which is too short.", false},
		{"I did not leave out trial 8, though it does not fit.", false},
	} {
		if found := concluded(c.said); (len(found) > 0) != c.wrong {
			t.Errorf("%q: %q", c.said, found)
		}
	}
}
