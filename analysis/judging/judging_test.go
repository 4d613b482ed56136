package judging

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"foamfield/analysis/belief"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest"
	"foamfield/ingest/trial"
)

var want = result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"},
	WantedChance: result.Target{Value: 0.8, From: "assumed"}}

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

// judged is a log's judgement, and what it cannot tell.
func judged(t *testing.T, paths ...string) (*trial.Log, *Judgement, []result.NotShown) {
	t.Helper()
	log, s := laidOut(t, paths...)
	var b *belief.Belief
	if len(s.OnSurface()) >= 8 {
		var err error
		if b, err = belief.Of(s, want, 1, true); err != nil {
			t.Fatal(err)
		}
	}
	j := Of(log, s, b)
	return log, j, CannotTell(log, s, b, j, len(s.Vars))
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
