package groups

import (
	"slices"
	"strconv"
	"testing"

	"foamfield/analysis/surface"
	"foamfield/ingest/trial"
)

func ofDays(n int, day func(i int) string) []*surface.Placed {
	out := make([]*surface.Placed, n)
	for i := range out {
		out[i] = &surface.Placed{Trial: &trial.Trial{Day: day(i)}}
	}
	return out
}

// Levels stand in the order they come in; a trial without one has none.
func TestLevels(t *testing.T) {
	days := []string{"Tue", "", "Mon", "Tue", "Wed", "Mon"}
	names, at := Levels(ofDays(len(days), func(i int) string { return days[i] }), surface.ByDay.Of)
	if !slices.Equal(names, []string{"Tue", "Mon", "Wed"}) || !slices.Equal(at, []int{0, -1, 1, 0, 2, 1}) {
		t.Errorf("%v, %v", names, at)
	}
}

// A log of years has thousands of days.
func BenchmarkLevels(b *testing.B) {
	trials := ofDays(100_000, func(i int) string { return strconv.Itoa(i / 6) })
	for b.Loop() {
		Levels(trials, surface.ByDay.Of)
	}
}
