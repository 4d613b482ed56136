package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"slices"

	"foamfield/analysis/kitchen"
)

// tableSeed is the first kitchen of the table; the priors were settled on the
// kitchens from 20 000 on.
const tableSeed = 40_000

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
	for _, family := range kitchen.Families {
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
			printEdges(out, all)
			printBins(out, all)
		}
	}
	return nil
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

// capped is what a surest start counts for: one that truly clogs more often than a start
// may counts no more than the best that does not.
func (v verdict) capped() float64 {
	if v.clogs > mayClog {
		return math.Min(v.surest, v.permitted)
	}
	return v.surest
}

// mayClog is how often a start may clog.
const mayClog = 0.05

// printEdges says how often named starts truly clog beside what was said, and how the
// richest does.
func printEdges(out io.Writer, rows []verdict) {
	var named, said, truly, above, far, short float64
	var rich, richSaid, richTrue, richClogSaid, richClogs float64
	for _, r := range rows {
		if r.named {
			named++
			said, truly, short = said+r.clogClaim, truly+r.clogs, short+r.permitted-r.capped()
			if r.clogs > mayClog {
				above++
			}
			if r.clogs > 2*mayClog {
				far++
			}
		}
		if r.richestNamed {
			rich++
			richSaid, richTrue = richSaid+r.richestClaim, richTrue+r.richest
			richClogSaid, richClogs = richClogSaid+r.richClogClaim, richClogs+r.richClogs
		}
	}
	fmt.Fprintf(out, "       surest clogs: said %.3f, truly %.3f, above 0.05 %.2f, above 0.1 %.2f; short of the best permitted %.3f\n",
		said/named, truly/named, above/named, far/named, short/named)
	fmt.Fprintf(out, "       richest: said %.3f, truly %.3f; clogs said %.3f, truly %.3f\n",
		richSaid/rich, richTrue/rich, richClogSaid/rich, richClogs/rich)
}
