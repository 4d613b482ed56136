package main

import (
	"fmt"
	"io"
	"maps"
	"slices"

	"foamfield/analysis/kitchen"
)

const (
	truthsKitchens = 200
	truthsTrials   = 24
)

// spread is what a family's kitchens are like before anything is analysed.
type spread struct {
	best                 []float64 // best attainable chance, sorted
	works, stands, habit map[kitchen.Layout][]float64
	slips                int                  // scattered logs with a value typed wrong
	stories              map[string][]float64 // best attainable chance by why the kitchen is so
}

// measure makes kitchens from firstSeed on and lets each log once in every layout.
func measure(family kitchen.Family, firstSeed uint64, kitchens, trials int) spread {
	s := spread{
		works:  map[kitchen.Layout][]float64{},
		stands: map[kitchen.Layout][]float64{},
		habit:  map[kitchen.Layout][]float64{},

		stories: map[string][]float64{},
	}
	for i := range uint64(kitchens) {
		k := kitchen.New(family, firstSeed+i)
		_, best := k.Best(k.Tries, kitchen.Usual)
		s.best = append(s.best, best)
		s.stories[k.Why] = append(s.stories[k.Why], best)
		for _, layout := range kitchen.Layouts {
			log := k.Log(layout, trials, kitchen.Stream(k.Seed, fmt.Sprint("log ", layout, trials)))
			works, stands := 0.0, 0.0
			for _, l := range log {
				if kitchen.Usual.Met(l.Truth) {
					works++
				}
				if l.StillStanding() {
					stands++
				}
				if l.Slip != kitchen.NoSlip && layout == kitchen.Scattered {
					s.slips++
				}
			}
			n := float64(len(log))
			s.works[layout] = append(s.works[layout], works/n)
			s.stands[layout] = append(s.stands[layout], stands/n)
			s.habit[layout] = append(s.habit[layout], k.Chance(kitchen.Habit(log, kitchen.Usual), kitchen.Usual))
		}
	}
	slices.Sort(s.best)
	return s
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

// below is the share of sorted x that is under limit.
func below(sorted []float64, limit float64) float64 {
	i, _ := slices.BinarySearch(sorted, limit)
	return float64(i) / float64(len(sorted))
}

func quantile(sorted []float64, p float64) float64 { return sorted[int(p*float64(len(sorted)-1)+0.5)] }

// truths prints how the families are spread.
func truths(out io.Writer) error {
	for _, family := range kitchen.Families {
		s := measure(family, 1, truthsKitchens, truthsTrials)
		fmt.Fprintf(out, "%s: %d kitchens, %d trials each\n", family, truthsKitchens, truthsTrials)
		fmt.Fprintf(out, "  best attainable chance: 5 %% %.2f, 25 %% %.2f, median %.2f, 75 %% %.2f, 95 %% %.2f\n",
			quantile(s.best, 0.05), quantile(s.best, 0.25), quantile(s.best, 0.5), quantile(s.best, 0.75), quantile(s.best, 0.95))
		fmt.Fprintf(out, "  below 0.8 everywhere (no workable region): %.0f %%; below 0.85: %.0f %%\n",
			100*below(s.best, 0.8), 100*below(s.best, 0.85))
		fmt.Fprintf(out, "  logs with a slip: %.0f %%\n", 100*float64(s.slips)/truthsKitchens)
		fmt.Fprintf(out, "  %-14s %-15s %-34s %s\n", "layout", "trials working", "still standing (10 %, mean, 90 %)", "true chance of the habit")
		for _, layout := range kitchen.Layouts {
			stands := slices.Sorted(slices.Values(s.stands[layout]))
			fmt.Fprintf(out, "  %-14s %-15.2f %-34s %.2f\n", layout, mean(s.works[layout]),
				fmt.Sprintf("%.2f, %.2f, %.2f", quantile(stands, 0.1), mean(stands), quantile(stands, 0.9)), mean(s.habit[layout]))
		}
		fmt.Fprintln(out, "  kitchens, and their median best chance, by story")
		for _, why := range slices.Sorted(maps.Keys(s.stories)) {
			best := slices.Sorted(slices.Values(s.stories[why]))
			fmt.Fprintf(out, "  %4d  %.2f  %s\n", len(best), quantile(best, 0.5), why)
		}
	}
	return nil
}
