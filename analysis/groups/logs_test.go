package groups

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"foamfield/analysis/belief"
	"foamfield/analysis/fits"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest"
	"foamfield/ingest/trial"
)

var want = result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"},
	WantedChance: result.Target{Value: 0.8, From: "assumed"}}

const groupReference = "../../testdata/reference/groups"

func laidOut(t *testing.T, paths ...string) (*trial.Log, *surface.Surface) {
	t.Helper()
	log, err := ingest.Read(paths, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	s, err := surface.Of(log, want, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	return log, s
}

// effects is what a log's groups come to.
func effects(t *testing.T, path string) []result.GroupEffect {
	t.Helper()
	log, s := laidOut(t, path)
	b, err := belief.Of(s, want, 1, true)
	if err != nil {
		t.Fatal(err)
	}
	return Effects(s, fits.Of(s, b.Links), b.Links, log.Labels)
}

// holdOf is what a log tells of hold alone.
func holdOf(s *surface.Surface) []belief.Link {
	if l := belief.Gather(s, result.HoldMinutes); len(l.Trials) > 0 {
		return []belief.Link{l}
	}
	return nil
}

func written(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// between is the i-th of numbers spread over a range.
func between(i int, step, low, high float64) string {
	_, share := math.Modf(float64(i) * step)
	return fmt.Sprintf("%.2f", low+share*(high-low))
}

// rowsOf reads a reference file as one map a row.
func rowsOf(t *testing.T, path string) (out []map[string]string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, name := range rows[0] {
			m[name] = row[i]
		}
		out = append(out, m)
	}
	return out
}

func agree(t *testing.T, what string, got *float64, want string, tolerance float64) {
	t.Helper()
	w, err := strconv.ParseFloat(want, 64)
	if err != nil {
		t.Fatal(err)
	}
	if got == nil || !(math.Abs(*got-w) <= tolerance*math.Abs(w)) {
		t.Errorf("%s is %v, R has %v", what, read(got), w)
	}
}

func read(v *float64) any {
	if v == nil {
		return "null"
	}
	return *v
}
