package reports

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"foamfield/analysis/result"
)

func TestJSON(t *testing.T) {
	r := kitchen()
	r.Trials[0].Note = "<script> & =cmd()"
	b, err := JSON(r)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasSuffix(b, []byte("}\n")) || !bytes.Contains(b, []byte("\n  \"schema\": \"foamfield/results/1\"")) {
		t.Error("not indented, or no line feed at the end")
	}
	if !bytes.Contains(b, []byte("<script> & =cmd()")) {
		t.Error("a note is not as typed")
	}
	back := new(result.Results)
	if err := json.Unmarshal(b, back); err != nil {
		t.Fatal(err)
	}
	if again, err := JSON(back); err != nil || !bytes.Equal(b, again) {
		t.Errorf("reading and writing changes it (%v)", err)
	}
}

// Lines are a key or a trial each, whatever a note holds, and lose nothing.
func TestJSONInLines(t *testing.T) {
	r := kitchen()
	r.Trials[0].Note = `a "quoted \\" {note}, [1]: end\`
	b, err := JSON(r)
	if err != nil {
		t.Fatal(err)
	}
	var lost, kept bytes.Buffer
	if err := json.Compact(&lost, b); err != nil {
		t.Fatal(err)
	}
	plain := json.NewEncoder(&kept)
	plain.SetEscapeHTML(false)
	if err := plain.Encode(r); err != nil {
		t.Fatal(err)
	}
	if lost.String() != strings.TrimSuffix(kept.String(), "\n") {
		t.Error("breaking into lines changes the content")
	}
	for i, trial := range r.Trials {
		line := fmt.Sprintf("\n    {\"at\": %q, ", trial.At)
		if !bytes.Contains(b, []byte(line)) {
			t.Errorf("trial %d does not begin its line by %q", i, line)
		}
	}
	if !bytes.Contains(b, []byte("\n    \"hold_minutes\": {")) || !bytes.Contains(b, []byte("\n    \"used\": 10,\n")) {
		t.Errorf("not a key a line: %.2000s", b)
	}
}

func TestJSONRefusesWhatIsNotANumber(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		r := kitchen()
		r.Starts[0].Chance.Mean = v
		if _, err := JSON(r); err == nil || !strings.HasPrefix(err.Error(), "results.json: ") {
			t.Errorf("%v: %v", v, err)
		}
	}
}
