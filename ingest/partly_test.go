package ingest

import (
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

// TestLetterOfPart: what single letters in a column of coming out say.
func TestLetterOfPart(t *testing.T) {
	answer := map[trial.Answer]string{trial.Unknown: "-", trial.Yes: "yes", trial.Partly: "partly", trial.No: "no"}
	for typed, want := range map[string]string{
		"Y P N": "yes partly no", "o p n": "yes partly no", "J T N": "yes partly no", "J D N": "yes partly no", "S P N": "yes partly no", "y. p. n.": "yes partly no",
		"T T F": "yes yes no", "P P F": "- - no", "yes P no": "yes - no",
	} {
		c := strings.Fields(typed)
		log := mustRead(t, "trial;fat %;GMS % of mix;came out;held min\n1;40;2;"+c[0]+";20\n2;42;2;"+c[1]+";15\n3;45;2;"+c[2]+";")
		var got []string
		for i := range log.Trials {
			got = append(got, answer[log.Trials[i].CameOut])
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%s: %s, want %s; %v", typed, s, want, log.Problems)
		}
	}
}
