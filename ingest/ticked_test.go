package ingest

import (
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestColumnOfEachAnswer: came out and split of three trials whose answers are ticked, a column
// for each.
func TestColumnOfEachAnswer(t *testing.T) {
	answer := map[trial.Answer]string{trial.Unknown: "-", trial.Yes: "yes", trial.Partly: "partly", trial.No: "no"}
	const heads = "trial|butter g|cider g|GMS g|held min|"
	log := func(answers string, ticks ...string) string {
		return heads + answers + "\n1|150|144|3|25|" + ticks[0] + "\n2|140|154|3|30|" + ticks[1] + "\n3|180|114|6||" + ticks[2]
	}
	for _, c := range []struct{ name, log, came, broke, says string }{
		{"three answers", log("came out|came out in part|blocked", "x||", "|x|", "||x"), "yes partly no", "- - -", ""},
		{"short heads, capital crosses", log("out|partly|clogged", "X||", "|X|", "||X"), "yes partly no", "- - -", ""},
		{"in German, ticked", log("kam heraus|nur teilweise|verstopft", "✓||", "|✓|", "||✓"), "yes partly no", "- - -", ""},
		{"noughts where it is not", log("came out|partly out|clogged", "1|0|0", "0|1|0", "0|0|1"), "yes partly no", "- - -", ""},
		{"a group above them", "|||||came out||\ntrial|butter g|cider g|GMS g|held min|yes|partly|no\n1|150|144|3|25|x||\n2|140|154|3|30||x|\n3|180|114|6||||x", "yes partly no", "- - -", ""},
		{"split and not", log("tourné|pas tourné|bouché", "x||", "|x|", "||x"), "yes yes no", "yes no -", ""},
		{"none is ticked", log("came out|came out in part|blocked", "||", "|x|", "||x"), "yes partly no", "- - -", ""},
		{"two in one row", log("came out|came out in part|blocked", "x||", "|x|", "||x") + strings.Repeat("\n4|150|144|3|25|x||", 8) + "\n5|150|144|3|25|x|x|",
			"yes partly no" + strings.Repeat(" yes", 9), strings.TrimSpace(strings.Repeat("- ", 12)), "two_answers_ticked"},
		{"no answer each: most rows have both", log("came out|came out in part|hot", "x|x|", "x|x|", "x||x"), "yes yes yes", "- - -", "header_in_doubt"},
		{"more than a tick", log("came out|partly out|clogged", "x||", "|the first half|", "||x"), "yes yes no", "- - -", "header_in_doubt"},
		{"yes and no of nobody says what", log("yes|no|hot", "x||", "|x|", "||x"), "yes yes -", "- - -", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			read := mustRead(t, strings.ReplaceAll(c.log, "|", ";"))
			var came, broke []string
			for i := range read.Trials {
				came, broke = append(came, answer[read.Trials[i].CameOut]), append(broke, answer[read.Trials[i].Broke])
			}
			if a, b := strings.Join(came, " "), strings.Join(broke, " "); a != c.came || b != c.broke {
				t.Errorf("came out %s, split %s; want %s, %s", a, b, c.came, c.broke)
			}
			for _, k := range []string{"two_answers_ticked", "header_in_doubt"} {
				if at, _ := findKind(read, strings.ReplaceAll(k, "_", " ")); (at >= 0) != (k == c.says) {
					t.Errorf("%q is said: %v; %v", k, at >= 0, kinds(read))
				}
			}
		})
	}
}
