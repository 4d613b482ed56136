package main

import (
	"fmt"
	"io"
	"os"
	"runtime"
	"sync"

	"foamfield/analysis"
	"foamfield/analysis/kitchen"
)

// followed is one kitchen after 12 scattered trials, after 12 more of these, and after 12
// that were chosen by us instead.
type followed struct{ at12, scattered, chosen verdict }

const (
	followFrom = 12
	followTo   = 24
)

// followOne makes the next trials of every report until there are as many as in the
// scattered log. Each report's are made on a day of their own.
func followOne(dir string, k *kitchen.Kitchen) (out followed, err error) {
	all := k.Log(kitchen.Scattered, followTo, kitchen.Stream(k.Seed, "follow"))
	made := append([]kitchen.Logged(nil), all[:followFrom]...)
	rng := kitchen.Stream(k.Seed, "followed")
	name := fmt.Sprintf("%v-%d-follow", k.Family, k.Seed)
	study := func(log []kitchen.Logged, v *verdict) ([]kitchen.Mix, error) {
		r, err := analyse(dir, name, log, analysis.Settings{Seed: 1})
		if err != nil {
			return nil, err
		}
		*v = verdict{status: r.Status}
		v.starts(r, k)
		var next []kitchen.Mix
		for _, n := range r.NextTrials {
			if m, ok := mixOf(n.Mix); ok {
				next = append(next, m)
			}
		}
		return next, nil
	}
	if _, err = study(all, &out.scattered); err != nil {
		return out, err
	}
	next, err := study(made, &out.at12)
	for err == nil && len(made) < followTo && len(next) > 0 {
		made = k.Continue(made, next[:min(len(next), followTo-len(made))], rng)
		next, err = study(made, &out.chosen)
	}
	return out, err
}

// follow prints what following the next trials gives beside scattered ones.
func follow(out io.Writer, firstSeed uint64, kitchens int) error {
	dir, err := os.MkdirTemp("", "kitchens")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	fmt.Fprintf(out, "%d kitchens a family, seeds from %d\n", kitchens, firstSeed)
	for _, family := range kitchen.Families {
		rows, errs := make([]followed, kitchens), make([]error, kitchens)
		var wg sync.WaitGroup
		workers := runtime.GOMAXPROCS(0)
		for w := range workers {
			wg.Go(func() {
				for i := w; i < kitchens; i += workers {
					rows[i], errs[i] = followOne(dir, kitchen.New(family, firstSeed+uint64(i)))
				}
			})
		}
		wg.Wait()
		for _, err := range errs {
			if err != nil {
				return err
			}
		}
		for _, c := range []struct {
			what string
			of   func(followed) verdict
		}{
			{"12 scattered", func(f followed) verdict { return f.at12 }},
			{"24 scattered", func(f followed) verdict { return f.scattered }},
			{"12 and 12 of ours", func(f followed) verdict { return f.chosen }},
		} {
			var v []verdict
			for _, r := range rows {
				v = append(v, c.of(r))
			}
			printFollowed(out, family, c.what, v)
		}
	}
	return nil
}

func printFollowed(out io.Writer, family kitchen.Family, what string, rows []verdict) {
	var named, surest, claim, clogs, rich, fat, richTrue, richSaid float64
	for _, r := range rows {
		if r.named {
			named++
			surest, claim, clogs = surest+r.surest, claim+r.claim, clogs+r.clogs
		}
		if r.richestNamed {
			rich++
			fat, richTrue, richSaid = fat+r.richestFat, richTrue+r.richest, richSaid+r.richestClaim
		}
	}
	n := float64(len(rows))
	fmt.Fprintf(out, "%-8v %-18s named %.2f surest %.3f, said %.3f, clogs %.3f | richest named %.2f, fat %.1f, truly %.3f, said %.3f\n", family, what,
		named/n, surest/named, claim/named, clogs/named, rich/n, fat/rich, richTrue/rich, richSaid/rich)
}
