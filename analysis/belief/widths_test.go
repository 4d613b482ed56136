package belief

import (
	"math"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/region"
)

// Half the draws give the chances of all draws to a few points, and the
// prior, from no observation at all, gives its own.
func TestQuickLinks(t *testing.T) {
	log := logged(kitchen.New(kitchen.Easy, 1).Log(kitchen.Scattered, 28, kitchen.Stream(1, "widths")))
	s := believed(t, log, true)
	quick := &region.Chain{Basis: s.Chain.Basis}
	for i := range s.Links {
		l, err := s.linkOf(&s.Links[i], priorTerms(priors[s.Links[i].Outcome], s.Surface), true, Stream(s.seed, 99+uint64(i)))
		if err != nil {
			t.Fatal(err)
		}
		quick.Links = append(quick.Links, l)
	}
	if len(s.OnSurface()) < 24 || len(s.Links) < 4 {
		t.Fatalf("%d trials and %d links", len(s.OnSurface()), len(s.Links))
	}
	for _, trial := range s.OnSurface() {
		if a, b := s.Chain.Chance(trial.Mix), quick.Chance(trial.Mix); math.Abs(a-b) > 0.04 {
			t.Errorf("trial %s: %.3f from all draws, %.3f from half", trial.ID, a, b)
		}
	}
}
