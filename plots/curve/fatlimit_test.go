package curve

import (
	"strings"
	"testing"

	"foamfield/analysis/result"
)

// A mix that works is what the title speaks of, though a richer one that clogs too often
// to be named works as often.
func TestFatTitleIsOfWhatWorks(t *testing.T) {
	r := &result.Results{Targets: result.Targets{WantedChance: result.Target{Value: 0.8}}}
	for _, s := range []struct {
		fat, chance float64
		workable    bool
	}{{35, 0.7, false}, {38, 0.84, true}, {41, 0.86, true}, {44, 0.87, false}, {47, 0.6, false}} {
		r.FatLimit = append(r.FatLimit, result.FatLimit{FatPercent: s.fat, Chance: result.Chance{Mean: s.chance, Low: s.chance, High: s.chance}, Workable: s.workable, LimitedBy: result.CameOut})
	}
	f, ok := FatLimit(r)
	if !ok || strings.Contains(f.Title, "No fat percent") || !strings.Contains(f.Title, "41 %") {
		t.Errorf("%v: %q", ok, f.Title)
	}
}
