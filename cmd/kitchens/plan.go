package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"

	"foamfield/analysis"
	"foamfield/analysis/kitchen"
	"foamfield/analysis/plan"
	"foamfield/analysis/result"
)

// planSeed is the first kitchen that plans are measured on; the region that they are laid
// out in was settled on those from 20 000 on.
const planSeed = 70_000

// tooThick is the true chance of clogging above which a trial should not have been made.
const tooThick = 0.2

// thickness counts trials, and those that were too thick.
type thickness struct{ made, thick int }

func (t *thickness) add(k *kitchen.Kitchen, l kitchen.Logged) {
	t.made++
	if 1-k.CameOut(l.Made) > tooThick {
		t.thick++
	}
}

func (t thickness) share() float64 { return float64(t.thick) / float64(t.made) }

// weekResult is what a way of working gave in one kitchen.
type weekResult struct {
	verdict
	best           float64   // that is permitted, of all that the kitchen tries
	made           float64   // best permitted of the mixes made before any of them was looked at
	all, firstDay  thickness // of the trials laid out before any of them was made
	followed, next thickness // of those made where the sheet's word on clogs is kept to; of next trials
}

// way is a way of making trials: it fills in what it made and gives the log.
type way struct {
	name string
	make func(k *kitchen.Kitchen, out *weekResult, study func([]kitchen.Logged, analysis.Settings) (*result.Results, error)) ([]kitchen.Logged, error)
}

type studying = func([]kitchen.Logged, analysis.Settings) (*result.Results, error)

func usual(l kitchen.Layout, n int) way {
	return way{fmt.Sprintf("%d %v", n, l), func(k *kitchen.Kitchen, out *weekResult, _ studying) ([]kitchen.Logged, error) {
		log := k.Log(l, n, kitchen.Stream(k.Seed, fmt.Sprint("plan ", l, n)))
		out.count(k, log)
		return log, nil
	}}
}

func laidOut(l plan.Layout, n, days int) way {
	return way{fmt.Sprintf("%d planned, %v", n, l), func(k *kitchen.Kitchen, out *weekResult, _ studying) ([]kitchen.Logged, error) {
		return weekOf(k, out, l, n, days), nil
	}}
}

// plannedAndNext goes on with the next trials of the week's report.
func plannedAndNext(n, days, more int) way {
	return way{fmt.Sprintf("%d planned, %d next", n, more), func(k *kitchen.Kitchen, out *weekResult, study studying) ([]kitchen.Logged, error) {
		log := weekOf(k, out, plan.Cover, n, days)
		r, err := study(log, analysis.Settings{Seed: 1, NextTrials: more})
		if err != nil {
			return nil, err
		}
		_, ordered := plan.After(r, more, plan.Shifts{})
		var mixes []kitchen.Mix
		for _, n := range ordered.NextTrials {
			if m, ok := mixOf(n.Mix); ok {
				mixes = append(mixes, m)
			}
		}
		if len(mixes) == 0 {
			return log, nil
		}
		log = k.Continue(log, mixes, kitchen.Stream(k.Seed, "plan next"))
		for _, l := range log[len(log)-len(mixes):] {
			out.next.add(k, l)
		}
		return log, nil
	}}
}

// weekOf makes a planned week.
func weekOf(k *kitchen.Kitchen, out *weekResult, l plan.Layout, n, days int) (log []kitchen.Logged) {
	rng := kitchen.Stream(k.Seed, fmt.Sprint("plan ", l, n))
	r := plan.Ranges{Fat: plan.Span(k.Tries.Fat), Emulsifier: plan.Span(k.Tries.Emulsifier), HLB: plan.Span(k.Tries.HLB)}
	week := plan.Week(r, l, n, days, k.Seed)
	for day := 1; day <= days; day++ {
		var today []kitchen.Mix
		for _, t := range week {
			if t.Day == day {
				today = append(today, kitchen.Mix(t.Mix))
			}
		}
		log = k.Continue(log, today, rng)
	}
	out.count(k, log)
	skipped := map[int]bool{}
	for i, l := range log {
		if skipped[i] {
			continue
		}
		out.followed.add(k, l)
		if !l.CameOut {
			for _, j := range week[i].Skip {
				skipped[j] = true
			}
		}
	}
	return log
}

func (w *weekResult) count(k *kitchen.Kitchen, log []kitchen.Logged) {
	for _, l := range log {
		w.all.add(k, l)
		w.made = max(w.made, permitted(k, l.Made))
		if l.Day == 1 {
			w.firstDay.add(k, l)
		}
	}
}

func (w way) studyOne(dir string, k *kitchen.Kitchen) (out weekResult, err error) {
	name := fmt.Sprintf("%v-%d-%s", k.Family, k.Seed, w.name)
	study := func(log []kitchen.Logged, set analysis.Settings) (*result.Results, error) {
		return analyse(dir, name, log, set)
	}
	log, err := w.make(k, &out, study)
	if err != nil {
		return out, err
	}
	r, err := study(log, analysis.Settings{Seed: 1})
	if err != nil {
		return out, err
	}
	out.starts(r, k)
	_, out.best = k.BestOf(k.Tries, func(m kitchen.Mix) float64 { return permitted(k, m) })
	return out, nil
}

// permitted is the true chance of a mix that may be a start, 0 of one that clogs too often.
func permitted(k *kitchen.Kitchen, m kitchen.Mix) float64 {
	if k.CameOut(m) < 0.95 {
		return 0
	}
	return k.Chance(m, kitchen.Usual)
}

// aroundTheBest is a bound: a week laid out by somebody who knows the best mix, and makes it,
// a fifth of each side to either side of it, and two mixes between.
func aroundTheBest() way {
	return way{"12 around the best", func(k *kitchen.Kitchen, out *weekResult, _ studying) ([]kitchen.Logged, error) {
		const step = 0.2
		best, _ := k.BestOf(k.Tries, func(m kitchen.Mix) float64 { return permitted(k, m) })
		control := kitchen.Mix{FatPercent: best.FatPercent}
		days := [][]kitchen.Mix{{control, best}, {control, best}}
		move := func(day int, fat, emulsifier, hlb float64) {
			e := math.Log(k.Tries.Emulsifier.High / k.Tries.Emulsifier.Low)
			within := func(s kitchen.Span, x float64) float64 { return min(max(x, s.Low), s.High) }
			days[day] = append(days[day], kitchen.Mix{FatPercent: within(k.Tries.Fat, best.FatPercent+fat*(k.Tries.Fat.High-k.Tries.Fat.Low)),
				EmulsifierPercent: within(k.Tries.Emulsifier, best.EmulsifierPercent*math.Exp(emulsifier*e)),
				BlendHLB:          within(k.Tries.HLB, best.BlendHLB+hlb*(k.Tries.HLB.High-k.Tries.HLB.Low))})
		}
		for day, sign := range []float64{-step, step} {
			move(day, sign, 0, 0)
			move(day, 0, sign, 0)
			move(day, 0, 0, sign)
			move(day, -0.15, sign*0.75, sign*0.75)
		}
		var log []kitchen.Logged
		rng := kitchen.Stream(k.Seed, "plan around the best")
		for _, today := range days {
			log = k.Continue(log, today, rng)
		}
		out.count(k, log)
		return log, nil
	}}
}

func (w way) study(dir string, family kitchen.Family, firstSeed uint64, kitchens int) ([]weekResult, error) {
	rows, errs := make([]weekResult, kitchens), make([]error, kitchens)
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for at := range workers {
		wg.Go(func() {
			for i := at; i < kitchens; i += workers {
				rows[i], errs[i] = w.studyOne(dir, kitchen.New(family, firstSeed+uint64(i)))
			}
		})
	}
	wg.Wait()
	if i := slices.IndexFunc(errs, func(err error) bool { return err != nil }); i >= 0 {
		return nil, errs[i]
	}
	return rows, nil
}

// plans prints what weeks that were laid out give beside those that were not: all rows, or
// those whose family and name have what is said.
func plans(out io.Writer, firstSeed uint64, kitchens int, only ...string) error {
	dir, err := os.MkdirTemp("", "kitchens")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	ways := []way{usual(kitchen.Scattered, 12), usual(kitchen.OneAtATime, 24), usual(kitchen.Scattered, 24), plannedAndNext(16, 3, 8), aroundTheBest()}
	for _, l := range plan.Layouts {
		ways = append(ways, laidOut(l, 12, 2))
	}
	fmt.Fprintf(out, "%d kitchens a family, seeds from %d; thick: truly clogs more than 1 in 5\n", kitchens, firstSeed)
	for _, family := range kitchen.Families {
		for _, w := range ways {
			if len(only) > 0 && !strings.Contains(fmt.Sprint(family, " ", w.name), only[0]) {
				continue
			}
			rows, err := w.study(dir, family, firstSeed, kitchens)
			if err != nil {
				return err
			}
			fmt.Fprintf(out, "%-8v %-22s %v\n", family, w.name, summed(rows))
		}
	}
	return nil
}

// weekSum is what many kitchens came to.
type weekSum struct {
	named, surest, surestError, best, short, shortError, made float64
	all, firstDay, followed, next                             thickness
}

func summed(rows []weekResult) (s weekSum) {
	var truths, shorts []float64
	for _, r := range rows {
		for _, c := range []struct {
			to   *thickness
			from thickness
		}{{&s.all, r.all}, {&s.firstDay, r.firstDay}, {&s.followed, r.followed}, {&s.next, r.next}} {
			c.to.made, c.to.thick = c.to.made+c.from.made, c.to.thick+c.from.thick
		}
		if r.named {
			truths, shorts = append(truths, r.surest), append(shorts, r.best-min(r.surest, r.best))
			s.best += r.best
			s.made += r.best - min(r.made, r.best)
		}
	}
	n := float64(len(truths))
	s.named, s.best, s.made = n/float64(len(rows)), s.best/n, s.made/n
	s.surest, s.surestError = meanAndError(truths)
	s.short, s.shortError = meanAndError(shorts)
	return s
}

func meanAndError(v []float64) (mean, se float64) {
	n := float64(len(v))
	for _, x := range v {
		mean += x / n
	}
	for _, x := range v {
		se += (x - mean) * (x - mean)
	}
	return mean, math.Sqrt(se / (n - 1) / n)
}

func (s weekSum) String() string {
	text := fmt.Sprintf("named %.2f, surest %.3f ± %.3f, best %.3f, short %.3f ± %.3f, best made %.3f | thick %.3f, first day %.3f", s.named, s.surest, s.surestError, s.best, s.short, s.shortError, s.made,
		s.all.share(), s.firstDay.share())
	if s.followed.made > 0 {
		text += fmt.Sprintf(", clogs heeded %.3f of %.1f made", s.followed.share(), float64(s.followed.made)/float64(s.all.made)*100)
	}
	if s.next.made > 0 {
		text += fmt.Sprintf(", next %.3f", s.next.share())
	}
	return text
}
