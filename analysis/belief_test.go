package analysis

import (
	"math"
	"testing"

	"foamfield/analysis/region"
	"foamfield/ingest"
)

// Half the draws give the chances of all draws to a few points, and the
// prior, from no observation at all, gives its own.
func TestQuickLinks(t *testing.T) {
	log, err := ingest.Read([]string{demo}, ingest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	s := studied(t, log, Settings{})
	quick := &region.Chain{Basis: s.chain.Basis}
	for i := range s.links {
		l, err := s.linkOf(&s.links[i], s.priorTerms(priors[s.links[i].outcome]), true, s.stream(99+uint64(i)))
		if err != nil {
			t.Fatal(err)
		}
		quick.Links = append(quick.Links, l)
	}
	for _, trial := range s.OnSurface() {
		if a, b := s.chain.Chance(trial.Mix), quick.Chance(trial.Mix); math.Abs(a-b) > 0.04 {
			t.Errorf("trial %s: %.3f from all draws, %.3f from half", trial.ID, a, b)
		}
	}
}

// The prior is no opinion on these trials: it is the same belief whatever happened in
// them, it leaves the middle open, and a start's chance lies between half and double.
func TestPriorBelief(t *testing.T) {
	r := run(t, demo, Settings{})
	p := r.PriorBelief
	if p == nil || p.AtCentre < 0.05 || p.AtCentre > 0.5 || p.Reaches < 0.3 || p.Reaches > 0.95 {
		t.Errorf("the prior believes %+v", p)
	}
	for _, s := range r.Starts {
		if len(s.Widths) != 2 || s.Widths[0].Factor != 0.5 || s.Widths[1].Factor != 2 {
			t.Fatalf("%+v", s.Widths)
		}
		half, double := *s.Widths[0].Chance, *s.Widths[1].Chance
		if half > s.Chance.Mean+0.03 || double < s.Chance.Mean-0.03 {
			t.Errorf("%s: half %.3f, as it is %.3f, double %.3f", s.Aim, half, s.Chance.Mean, double)
		}
	}
}
