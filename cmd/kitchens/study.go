package main

import (
	"fmt"
	"foamfield/analysis"
	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/trial"
	"os"
	"path/filepath"
	"runtime"
	"sync"
)

// verdict is what one log of one kitchen led to, beside the truth.
type verdict struct {
	status                     result.Status
	attainable                 float64 // best in the box of what was truly made
	permitted                  float64 // the same among mixes that truly come out 19 times in 20
	surest, claim, low, high   float64 // true chance at the surest start, and what was claimed of it
	named                      bool
	clogs, clogClaim           float64 // that the surest start truly clogs, and what was said
	richest, richestClaim      float64
	richClogs, richClogClaim   float64
	richestNamed, richestThere bool    // a mix of the wanted chance exists
	fatShort                   float64 // points of fat that the richest start falls short of the richest such mix
	habit                      float64
	plugged                    bool
	plug, plugClaim            float64 // true chance where the plain fit is highest, and what it says there
	fixed, covered             int     // mixes fixed beforehand, and whose limits hold the truth
	score, baseScore           float64 // log score of left-out trials, a trial, and of the base rate's
	scored                     bool
}

// fixedMixes are settled before anything is looked at: shares of the sides of the
// box the cook moves in.
var fixedMixes = [][3]float64{{0.5, 0.5, 0.5}, {0.3, 0.5, 0.5}, {0.5, 0.7, 0.4}, {0.6, 0.4, 0.6}}

// studyOne lets a kitchen log n trials, reads the log as a file and analyses it.
func studyOne(dir string, k *kitchen.Kitchen, layout kitchen.Layout, n int) (verdict, error) {
	log := k.Log(layout, n, kitchen.Stream(k.Seed, fmt.Sprint("log ", layout, n)))
	path := filepath.Join(dir, fmt.Sprintf("%v-%d-%d-%d.csv", k.Family, k.Seed, layout, n))
	f, err := os.Create(path)
	if err != nil {
		return verdict{}, err
	}
	defer os.Remove(path)
	if err := kitchen.WriteCSV(f, log); err != nil {
		return verdict{}, err
	}
	if err := f.Close(); err != nil {
		return verdict{}, err
	}
	read, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		return verdict{}, err
	}
	set := analysis.Settings{Seed: 1}
	for _, s := range fixedMixes {
		m := k.Tries.At(s[0], s[1], s[2])
		set.Tries = append(set.Tries, trial.Try{Fat: &m.FatPercent, Emulsifier: &m.EmulsifierPercent, HLB: &m.BlendHLB})
	}
	r, err := analysis.Run(read, set)
	if err != nil {
		return verdict{}, err
	}
	v := verdict{status: r.Status, habit: k.Chance(kitchen.Habit(log, kitchen.Usual), kitchen.Usual)}
	_, v.attainable = k.Best(kitchen.Tested(log), kitchen.Usual)
	permitted := func(m kitchen.Mix) float64 {
		if k.CameOut(m) < 0.95 {
			return 0
		}
		return k.Chance(m, kitchen.Usual)
	}
	_, v.permitted = k.BestOf(kitchen.Tested(log), permitted)
	var fat float64
	fat, v.richestThere = k.Richest(kitchen.Tested(log), 0.8, permitted)
	mix := func(m result.Mix) kitchen.Mix {
		return kitchen.Mix{FatPercent: *m.FatPercent, EmulsifierPercent: *m.EmulsifierPercent, BlendHLB: *m.BlendHLB}
	}
	truth := func(m result.Mix) float64 { return k.Chance(mix(m), kitchen.Usual) }
	clogs := func(m result.Mix) float64 { return 1 - k.CameOut(mix(m)) }
	for _, t := range r.Tries {
		if t.Chance == nil || !t.Tested {
			continue
		}
		v.fixed++
		if c := truth(t.Mix); t.Chance.Low <= c && c <= t.Chance.High {
			v.covered++
		}
	}
	if m, claim, ok := plainFit(r); ok {
		v.plugged, v.plug, v.plugClaim = true, k.Chance(m, kitchen.Usual), claim
	}
	v.score, v.baseScore, v.scored = leftOutScore(r)
	for _, s := range r.Starts {
		if s.Mix.FatPercent == nil || s.Mix.EmulsifierPercent == nil || s.Mix.BlendHLB == nil {
			continue
		}
		switch s.Aim {
		case result.Surest:
			v.named = true
			v.surest, v.claim, v.low, v.high = truth(s.Mix), s.Chance.Mean, s.Chance.Low, s.Chance.High
			v.clogs, v.clogClaim = clogs(s.Mix), s.Fails[result.CameOut]
		case result.Richest:
			v.richestNamed = true
			v.richest, v.richestClaim, v.fatShort = truth(s.Mix), s.Chance.Mean, fat-*s.Mix.FatPercent
			v.richClogs, v.richClogClaim = clogs(s.Mix), s.Fails[result.CameOut]
		}
	}
	return v, nil
}

func studyMany(dir string, family kitchen.Family, layout kitchen.Layout, n int, firstSeed uint64, kitchens int) ([]verdict, error) {
	rows := make([]verdict, kitchens)
	errs := make([]error, kitchens)
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		wg.Go(func() {
			for i := w; i < kitchens; i += workers {
				rows[i], errs[i] = studyOne(dir, kitchen.New(family, firstSeed+uint64(i)), layout, n)
			}
		})
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return rows, nil
}
