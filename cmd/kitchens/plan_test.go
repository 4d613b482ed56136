package main

import (
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/plan"
	"foamfield/ingest/thorough"
)

// Planned weeks keep out of the thick corner that scattered ones walk into. The true
// chances of their starts take more kitchens than a test has time for: kitchens plan.
func TestPlannedWeeksAreThinFirst(t *testing.T) {
	thorough.NotShort(t, "lays out forty-five weeks")
	const each = 15
	var first, all, scattered weekResult
	for _, family := range []kitchen.Family{kitchen.Easy, kitchen.Hard, kitchen.Edges} {
		for seed := range uint64(each) {
			k := kitchen.New(family, guardSeed+seed)
			var w, s weekResult
			weekOf(k, &w, plan.Cover, 12, 2)
			s.count(k, k.Log(kitchen.Scattered, 12, kitchen.Stream(k.Seed, "guard")))
			for _, c := range [][2]*thickness{{&first.all, &w.firstDay}, {&all.all, &w.all}, {&scattered.all, &s.all}} {
				c[0].made, c[0].thick = c[0].made+c[1].made, c[0].thick+c[1].thick
			}
		}
	}
	t.Logf("thick: first day %.3f, week %.3f, scattered %.3f", first.all.share(), all.all.share(), scattered.all.share())
	if first.all.share() > 0.05 || all.all.share() > 0.15 || all.all.share() > scattered.all.share()/2 {
		t.Errorf("thick trials: first day %.3f (at most 0.05), week %.3f (at most 0.15 and half of the scattered %.3f)", first.all.share(), all.all.share(), scattered.all.share())
	}
}

// A week that was laid out, read and analysed names a start in most kitchens that can do well.
func TestPlannedWeekNamesAStart(t *testing.T) {
	thorough.NotShort(t, "logs and analyses kitchens for some seconds")
	kitchens := thorough.Of(t, 2, 4)
	rows, err := laidOut(plan.Cover, 12, 2).study(t.TempDir(), kitchen.Easy, guardSeed, kitchens)
	if err != nil {
		t.Fatal(err)
	}
	s := summed(rows)
	t.Log(s)
	if s.named < 0.7 || s.surest < 0.5 {
		t.Errorf("named in %.2f, truly %.3f: a habit does better", s.named, s.surest)
	}
}
