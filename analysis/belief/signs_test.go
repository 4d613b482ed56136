package belief

import (
	"strconv"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/thorough"
	"foamfield/ingest/trial"
)

var want = result.Targets{HoldMinutes: result.Target{Value: 20, From: "assumed"}, DrainedPercent: result.Target{Value: 10, From: "assumed"},
	WantedChance: result.Target{Value: 0.8, From: "assumed"}}

func believed(t *testing.T, log *trial.Log, tradeSigns bool) *Belief {
	t.Helper()
	on, err := surface.Of(log, want, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	b, err := Of(on, want, 1, tradeSigns)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// logged is what a kitchen logged, as trials that were read without a doubt.
func logged(made []kitchen.Logged) *trial.Log {
	said := map[bool]trial.Answer{true: trial.Yes, false: trial.No}
	of := func(b *kitchen.Bounds) *trial.Interval {
		if b == nil {
			return nil
		}
		return &trial.Interval{Low: b.Low, High: b.High}
	}
	log := &trial.Log{}
	for i, l := range made {
		mix := l.Mix()
		x := trial.Trial{At: trial.Place{File: "log.csv", Row: i + 2}, ID: strconv.Itoa(l.No), Order: i + 1, CameOut: said[l.CameOut], Composition: trial.Composition{
			FatPercent: &mix.FatPercent, EmulsifierPercent: &mix.EmulsifierPercent}}
		if mix.EmulsifierPercent > 0 {
			x.BlendHLB = &mix.BlendHLB
		}
		switch {
		case l.Partly:
			x.CameOut = trial.Partly
		case l.CameOut:
			x.Broke = said[l.Broke]
			if !l.Broke {
				x.Hold, x.Drained = of(l.Hold), of(l.Drained)
			}
		}
		log.Trials = append(log.Trials, x)
	}
	return log
}

// With the trade's signs no mix is believed to clog clearly less for being richer; on
// some of the same short logs the free surface believes so.
func TestTradeSigns(t *testing.T) {
	thorough.NotShort(t, "believes sixteen logs")
	const slack = 0.02 // what a soft sign lets through
	// wrong is how far the chance of coming out ever moves against a sign.
	wrong := func(s *Belief) (most float64) {
		for v, of := range s.Vars {
			for _, rest := range []float64{0, 0.5, 1} {
				best := 0.0
				for k := range 11 {
					mix := make([]float64, len(s.Vars))
					for i, w := range s.Vars {
						share := rest
						if i == v {
							if share = float64(k) / 10; tradeSigns[result.CameOut][of.Name] > 0 {
								share = 1 - share
							}
						}
						mix[i] = w.Low + (0.5+signReach*(share-0.5))*(w.High-w.Low)
					}
					clog := 1 - s.Chain.Links[0].Passes(s.Basis.Features(mix))
					most, best = max(most, best-clog), max(best, clog)
				}
			}
		}
		return most
	}
	free := 0
	for seed := range uint64(8) {
		k := kitchen.New(kitchen.Hard, 700+seed)
		log := logged(k.Log(kitchen.Scattered, 12, kitchen.Stream(seed, "signs")))
		if f := wrong(believed(t, log, true)); f > slack {
			t.Errorf("kitchen %d: the chance of clogging moves by %.3f against a sign", seed, f)
		}
		if wrong(believed(t, log, false)) > slack {
			free++
		}
	}
	if free == 0 {
		t.Error("the free surface never shows the wrong sign: these logs test nothing")
	}
}
