package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"foamfield/ingest/thorough"
)

// A trend of one week without dates, most of whose holds are bounds, says what it can.
func TestTrendOfOneWeek(t *testing.T) {
	thorough.NotShort(t, "writes a trend")
	out := filepath.Join(t.TempDir(), "out")
	var stdout, stderr bytes.Buffer
	if code := run([]string{"trend", "../../testdata/demo/week.xlsx", "--write", "json", "--out", out}, &stdout, &stderr); code != exitDone {
		t.Fatalf("exit code %d: %s", code, stderr.String())
	}
	said := strings.Join(strings.Fields(stdout.String()), " ")
	for _, want := range []string{"no dates were found", "weeks cannot be compared"} {
		if !strings.Contains(said, want) {
			t.Errorf("does not say %q: %s", want, said)
		}
	}
	if _, err := os.Stat(filepath.Join(out, "trend.json")); err != nil {
		t.Error(err)
	}
}
