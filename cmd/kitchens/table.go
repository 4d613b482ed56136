package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"

	"foamfield/analysis"
	"foamfield/analysis/kitchen"
	"foamfield/analysis/result"
	"foamfield/ingest"
	"foamfield/ingest/trial"
)

// tableSeed is the first kitchen of the table; the priors were settled on the
// kitchens from 20 000 on.
const tableSeed = 40_000

// verdict is what one log of one kitchen led to, beside the truth.
type verdict struct {
	status                     result.Status
	attainable                 float64 // best in the box of what was truly made
	permitted                  float64 // the same among mixes that truly come out 19 times in 20
	surest, claim, low, high   float64 // true chance at the surest start, and what was claimed of it
	named                      bool
	richest, richestClaim      float64
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
	truth := func(m result.Mix) float64 {
		return k.Chance(kitchen.Mix{FatPercent: *m.FatPercent, EmulsifierPercent: *m.EmulsifierPercent, BlendHLB: *m.BlendHLB}, kitchen.Usual)
	}
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
		case result.Richest:
			v.richestNamed = true
			v.richest, v.richestClaim, v.fatShort = truth(s.Mix), s.Chance.Mean, fat-*s.Mix.FatPercent
		}
	}
	return v, nil
}

// table prints, for each family, layout and number of trials, what the starts
// truly do beside what was claimed of them and what repeating the best trial does.
func table(out io.Writer, firstSeed uint64, kitchens int, sizes []int) error {
	dir, err := os.MkdirTemp("", "kitchens")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	fmt.Fprintf(out, "%d kitchens a row, seeds from %d\n", kitchens, firstSeed)
	fmt.Fprintf(out, "%-6s %-14s %3s | %6s %6s %6s %6s %6s %6s %6s %6s | %6s %6s %6s %6s | %6s %6s %6s %6s | %6s %6s %6s\n", "family", "layout", "n",
		"named", "best", "safe", "surest", "claim", "cover", "p10", "over", "habit", "plain", "claim", "over", "rich", "<0.6", "unnamd", "short", "fixed", "score", "base")
	for _, family := range []kitchen.Family{kitchen.Easy, kitchen.Hard} {
		for _, n := range sizes {
			var all []verdict
			for i, layout := range kitchen.Layouts {
				// every layout has kitchens of its own, so that all are four times as many
				rows, err := studyMany(dir, family, layout, n, firstSeed+uint64(i*kitchens), kitchens)
				if err != nil {
					return err
				}
				all = append(all, rows...)
				printRow(out, family, fmt.Sprint(layout), n, rows)
			}
			printRow(out, family, "all", n, all)
			printBins(out, all)
		}
	}
	return nil
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

func printRow(out io.Writer, family kitchen.Family, layout string, n int, rows []verdict) {
	mean := func(of func(verdict) float64, which func(verdict) bool) float64 {
		sum, n := 0.0, 0.0
		for _, r := range rows {
			if which(r) {
				sum += of(r)
				n++
			}
		}
		return sum / n
	}
	named := func(v verdict) bool { return v.named }
	rich := func(v verdict) bool { return v.richestNamed }
	share := func(of func(verdict) bool, which func(verdict) bool) float64 {
		return mean(func(v verdict) float64 {
			if of(v) {
				return 1
			}
			return 0
		}, which)
	}
	var truths []float64
	for _, r := range rows {
		if r.named {
			truths = append(truths, r.surest)
		}
	}
	slices.Sort(truths)
	p10 := math.NaN()
	if len(truths) > 0 {
		p10 = truths[len(truths)/10]
	}
	anyone := func(verdict) bool { return true }
	plugged := func(v verdict) bool { return v.plugged }
	covered, fixed := 0.0, 0.0
	for _, r := range rows {
		covered, fixed = covered+float64(r.covered), fixed+float64(r.fixed)
	}
	scored := func(v verdict) bool { return v.scored }
	fmt.Fprintf(out, "%-6v %-14s %3d | %6.2f %6.3f %6.3f %6.3f %6.3f %6.2f %6.2f %6.3f | %6.3f %6.3f %6.3f %6.3f | %6.3f %6.3f %6.2f %6.1f | %6.3f %6.3f %6.3f\n", family, layout, n,
		share(named, anyone),
		mean(func(v verdict) float64 { return v.attainable }, named),
		mean(func(v verdict) float64 { return v.permitted }, named),
		mean(func(v verdict) float64 { return v.surest }, named),
		mean(func(v verdict) float64 { return v.claim }, named),
		share(func(v verdict) bool { return v.low <= v.surest && v.surest <= v.high }, named), p10,
		share(func(v verdict) bool { return v.surest < 0.7 }, func(v verdict) bool { return v.named && v.claim >= 0.8 }),
		mean(func(v verdict) float64 { return v.habit }, anyone),
		mean(func(v verdict) float64 { return v.plug }, plugged),
		mean(func(v verdict) float64 { return v.plugClaim }, plugged),
		share(func(v verdict) bool { return v.plug < 0.7 }, func(v verdict) bool { return v.plugged && v.plugClaim >= 0.8 }),
		mean(func(v verdict) float64 { return v.richest }, rich),
		share(func(v verdict) bool { return v.richest < 0.6 }, rich),
		share(func(v verdict) bool { return !v.richestNamed }, func(v verdict) bool { return v.richestThere }),
		mean(func(v verdict) float64 { return v.fatShort }, func(v verdict) bool { return v.richestNamed && v.richestThere }),
		covered/fixed,
		mean(func(v verdict) float64 { return v.score }, scored),
		mean(func(v verdict) float64 { return v.baseScore }, scored))
}

// printBins holds claims against truths by size of claim.
func printBins(out io.Writer, rows []verdict) {
	for _, bin := range [][2]float64{{0, 0.5}, {0.5, 0.7}, {0.7, 0.8}, {0.8, 0.9}, {0.9, 1.01}} {
		n, claim, truth := 0, 0.0, 0.0
		for _, r := range rows {
			if r.named && r.claim >= bin[0] && r.claim < bin[1] {
				n++
				claim += r.claim
				truth += r.surest
			}
		}
		if n > 0 {
			fmt.Fprintf(out, "       claims %.1f-%.1f: %4d, claimed %.3f, truly %.3f, difference %+.3f\n", bin[0], bin[1], n,
				claim/float64(n), truth/float64(n), (claim-truth)/float64(n))
		}
	}
}
