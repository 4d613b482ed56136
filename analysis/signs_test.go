package analysis

import (
	"bytes"
	"testing"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest"
	"foamfield/ingest/trial"
)

// studied is a log's study up to the search.
func studied(t *testing.T, log *trial.Log, set Settings) *study {
	t.Helper()
	s := &study{log: log, want: targets(log, set), seed: 1, tradeSigns: !set.FreeSigns}
	s.out = &result.Results{Targets: s.want, Batch: batch(log, set)}
	var err error
	if s.Surface, err = surface.Of(log, s.want, s.out.Batch.ScaleStepGrams); err != nil {
		t.Fatal(err)
	}
	if err := s.fitModel(); err != nil {
		t.Fatal(err)
	}
	return s
}

// With the trade's signs no mix is believed to clog clearly less for being richer; on
// some of the same short logs the free surface believes so.
func TestTradeSigns(t *testing.T) {
	const slack = 0.02 // what a soft sign lets through
	// wrong is how far the chance of coming out ever moves against a sign.
	wrong := func(s *study) (most float64) {
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
					clog := *s.clogChance(mix)
					most, best = max(most, best-clog), max(best, clog)
				}
			}
		}
		return most
	}
	free := 0
	for seed := range uint64(8) {
		k := kitchen.New(kitchen.Hard, 700+seed)
		var b bytes.Buffer
		if err := kitchen.WriteCSV(&b, k.Log(kitchen.Scattered, 12, kitchen.Stream(seed, "signs"))); err != nil {
			t.Fatal(err)
		}
		log, err := ingest.Read([]string{written(t, b.String())}, ingest.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if f := wrong(studied(t, log, Settings{})); f > slack {
			t.Errorf("kitchen %d: the chance of clogging moves by %.3f against a sign", seed, f)
		}
		if wrong(studied(t, log, Settings{FreeSigns: true})) > slack {
			free++
		}
	}
	if free == 0 {
		t.Error("the free surface never shows the wrong sign: these logs test nothing")
	}
}
