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
	richestFat, fatShort       float64 // its percent, and points short of the richest such mix
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

// analyse reads a log as a file and studies it.
func analyse(dir, name string, log []kitchen.Logged, set analysis.Settings) (*result.Results, error) {
	path := filepath.Join(dir, name+".csv")
	f, err := os.Create(path)
	if err != nil {
		return nil, err
	}
	defer os.Remove(path)
	if err := kitchen.WriteCSV(f, log); err != nil {
		return nil, err
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	read, err := ingest.Read([]string{path}, ingest.Options{})
	if err != nil {
		return nil, err
	}
	return analysis.Run(read, set)
}

// mixOf is a mix as the simulated kitchens have it; false if a part is not said.
func mixOf(m result.Mix) (kitchen.Mix, bool) {
	if m.FatPercent == nil || m.EmulsifierPercent == nil || m.BlendHLB == nil {
		return kitchen.Mix{}, false
	}
	return kitchen.Mix{FatPercent: *m.FatPercent, EmulsifierPercent: *m.EmulsifierPercent, BlendHLB: *m.BlendHLB}, true
}

// studyOne lets a kitchen log n trials, reads the log as a file and analyses it.
func studyOne(dir string, k *kitchen.Kitchen, layout kitchen.Layout, n int) (verdict, error) {
	log := k.Log(layout, n, kitchen.Stream(k.Seed, fmt.Sprint("log ", layout, n)))
	set := analysis.Settings{Seed: 1}
	for _, s := range fixedMixes {
		m := k.Tries.At(s[0], s[1], s[2])
		set.Tries = append(set.Tries, trial.Try{Fat: &m.FatPercent, Emulsifier: &m.EmulsifierPercent, HLB: &m.BlendHLB})
	}
	r, err := analyse(dir, fmt.Sprintf("%v-%d-%d-%d", k.Family, k.Seed, layout, n), log, set)
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
	for _, t := range r.Tries {
		if t.Chance == nil || !t.Tested {
			continue
		}
		v.fixed++
		m, _ := mixOf(t.Mix)
		if c := k.Chance(m, kitchen.Usual); t.Chance.Low <= c && c <= t.Chance.High {
			v.covered++
		}
	}
	if m, claim, ok := plainFit(r); ok {
		v.plugged, v.plug, v.plugClaim = true, k.Chance(m, kitchen.Usual), claim
	}
	v.score, v.baseScore, v.scored = leftOutScore(r)
	v.starts(r, k)
	v.fatShort = fat - v.richestFat
	return v, nil
}

// starts fills in what the starts truly do.
func (v *verdict) starts(r *result.Results, k *kitchen.Kitchen) {
	for _, s := range r.Starts {
		m, ok := mixOf(s.Mix)
		if !ok {
			continue
		}
		truly, clogs := k.Chance(m, kitchen.Usual), 1-k.CameOut(m)
		switch s.Aim {
		case result.Surest:
			v.named = true
			v.surest, v.claim, v.low, v.high = truly, s.Chance.Mean, s.Chance.Low, s.Chance.High
			v.clogs, v.clogClaim = clogs, s.Fails[result.CameOut]
		case result.Richest:
			v.richestNamed = s.Status == result.Recommended
			v.richest, v.richestClaim, v.richestFat = truly, s.Chance.Mean, m.FatPercent
			v.richClogs, v.richClogClaim = clogs, s.Fails[result.CameOut]
		}
	}
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
