package row_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest"
	"foamfield/ingest/trial"
)

// TestCameOutInWords: what sentences of a column on coming out say; unknown where a word of
// them is not understood, whatever was measured beside it.
func TestCameOutInWords(t *testing.T) {
	for want, texts := range map[trial.Answer]string{
		trial.Yes: "came out fine, smooth|came out well|came out, but split|clogged, then came out|clogged at first, came out after shaking|yes*|fine|kam gut",
		trial.Partly: `most of it|half came out, then clogged|came out then clogged|came out, clogged at the end|clogged halfway|first half fine, then blocked|started fine then jammed|blocked after half|` +
			`some came out, then nothing|a little came out, rest stuck|partially blocked|only half|came out in bits|yes, then clogged|half, clogged|verstopft am Ende|bouché à la fin|erst gut, dann verstopft`,
		trial.No:      "clogged|clogged, nothing came|nothing came out|did not come out, clogged|wouldn't budge|no (clogged)|split, then clogged|nur Gas",
		trial.Unknown: "2/3|80 %|clogged twice|came out like soup|blocked, cleared, then fine",
	} {
		for text := range strings.SplitSeq(texts, "|") {
			log := read(t, "trial,oil % of mix,emulsifier % of mix,HLB,came out,hold min\n1,45,2.5,8,yes,20\n2,45,2.5,8,\""+text+"\",12\n3,50,2.5,8,no,\n")
			if got := log.Trials[1].CameOut; got != want {
				t.Errorf("%q: came out %q, want %q", text, got, want)
			}
		}
	}
}

// read reads a log typed as text.
func read(t *testing.T, text string) *trial.Log {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	log, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return log
}
