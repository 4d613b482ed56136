package ingest

import (
	"fmt"
	"strings"
	"testing"

	"foamfield/ingest/trial"
)

func findKind(log *trial.Log, kind string) (at int, p trial.Problem) {
	for i, p := range log.Problems {
		if p.Kind == kind {
			return i, p
		}
	}
	return -1, trial.Problem{}
}

// TestRowsWithoutResult: rows that say what was in the mix and not what became
// of it are asked about once, first of all when nothing is logged as clogged.
func TestRowsWithoutResult(t *testing.T) {
	const head = "trial,butter g,cider g,mystery,GMS g,came out,hold min\n1,120,174,,6,y,12\n2,130,164,,6,,\n3,140,154,,6,,\n"
	for _, c := range []struct {
		name, more, read string
		first            bool
	}{
		{"nothing clogged", "", "2 rows have a mix but no result, and no trial is logged as clogged", true},
		{"one clogged", "4,150,144,,6,n,\n", "2 rows have a mix but no result", false},
		{"clogged as a hold", "4,150,144,,6,,\n5,160,134,,6,,clogged\n", "3 rows have a mix but no result", false},
	} {
		log := mustRead(t, head+c.more)
		i, p := findKind(log, "no result")
		if i < 0 || (i == 0) != c.first || p.Severity != trial.PleaseLook || p.At.Row != 3 || !strings.HasPrefix(p.Do, "if they clogged, type no under came out") {
			t.Fatalf("%s: problem %d %+v", c.name, i, p)
		}
		if p.Read != c.read || fmt.Sprint(p.Count) != c.read[:1] {
			t.Errorf("%s: %q, %d", c.name, p.Read, p.Count)
		}
	}
	if i, _ := findKind(mustRead(t, "trial,butter g,cider g,GMS g,came out\n1,120,174,6,y\n"), "no result"); i >= 0 {
		t.Error("a full log is asked about")
	}
}

// TestCappedHolds: a pile of equal holds at the top may be the end of the watch.
func TestCappedHolds(t *testing.T) {
	for _, c := range []struct{ holds, want string }{
		{"20 20 20 20 20 12 9", "5 of 7 holds are exactly 20 and none is longer"},
		{"20 20 20 20 20 12 9 15-20", "5 of 7 holds are exactly 20 and none is longer"},
		{"12 20 20 9 20 20 20 1 2 3 4 5 6 7 8", "5 of 15 holds are exactly 20 and none is longer"},
		{"20 20 20 20 20 1 2 3 4 5 6 7 8 9 10 11", ""}, // less than a third
		{"20 20 20 20 12 9", ""},
		{"20 20 20 20 20 12 21", ""},
		{"20 20 20 20 20 12 20+", ""},
		{"20 20 20 20 20 12 15-25", ""},
		{"20 20 20 20 20 12 10+", "5 of 6 holds"},
	} {
		text := "trial,butter g,cider g,GMS g,hold min\n"
		for i, h := range strings.Fields(c.holds) {
			text += fmt.Sprintf("%d,120,174,6,%s\n", i+1, h)
		}
		_, p := findKind(mustRead(t, text), "holds all end alike")
		if !strings.HasPrefix(p.Read, c.want) || c.want == "" && p.Kind != "" {
			t.Errorf("%s: %q, want %q", c.holds, p.Read, c.want)
		}
		if c.want != "" && (p.Severity != trial.PleaseLook || p.At.Col != 5 || p.Do != "if those foams still stood, type 20+") {
			t.Errorf("%s: %+v", c.holds, p)
		}
	}
}
