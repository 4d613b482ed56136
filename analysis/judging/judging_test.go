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
	"foamfield/analysis/works"
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

// Repeats scatter about their own formula: two pairs, each a factor of e apart, have a
// standard deviation of logarithms of 1/sqrt 2.
func TestRepeatability(t *testing.T) {
	hold := func(group int, minutes float64) surface.Placed {
		return surface.Placed{Trial: &trial.Trial{Hold: &trial.Interval{Low: minutes, High: minutes}}, Group: group}
	}
	s := &surface.Surface{Carried: works.Carried{Judged: works.Judged{result.HoldMinutes: true}},
		Trials: []surface.Placed{hold(0, 10), hold(0, 10*math.E), hold(2, 5), hold(2, 5*math.E), hold(4, 60)}}
	all := repeatability(s)
	if len(all) != 1 || all[0].DF != 2 || all[0].Groups != 2 || all[0].Trials != 4 || math.Abs(*all[0].SDLn-math.Sqrt(0.5)) > 1e-12 {
		t.Errorf("%+v", all)
	}
}
