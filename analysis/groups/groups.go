// Package groups asks what else moved a result than the mix: days, cooks, canisters, lots,
// settings, the order of the trials. Each is tested beside the terms of the fit that the
// result is judged by, and the p values of one result's tests are adjusted together.
package groups

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/fits"
	"foamfield/analysis/latent"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/say"
)

// When a group's test is called clear and likely, by the p value that is adjusted for
// the tests of its result. Stricter than for one trend, since it is of several results.
const (
	groupClear  = 0.01
	groupLikely = 0.05
)

// mostLevels is how many days or lots are still compared one by one.
const mostLevels = 40

// inseparable is the factor by which a group may swell the variance of a term before the
// two are not told apart, a common rule of thumb.
const inseparable = 10

// question is what a result may differ by: levels, or a number from 0 to 1.
type question struct {
	by      string // as the results name it
	name    string // in a sentence
	of      func(*surface.Placed) string
	number  func(*surface.Placed) float64
	orderBy result.OrderBy // of the order of the trials
	setting int            // which of the settings it is, or -1
}

// comparison is what groups are compared with.
type comparison struct {
	on   *surface.Surface
	fits *fits.Fits
}

// Effects asks of hold and drained whether days, cooks, canisters and the labels of a log
// differ, whether settings matter, and whether results drift along the log.
func Effects(s *surface.Surface, f *fits.Fits, links []belief.Link, labels []string) []result.GroupEffect {
	v := &comparison{s, f}
	type job struct {
		question
		l *belief.Link
	}
	var jobs []job
	for i := range links {
		l := &links[i]
		if !works.IsLine(l.Outcome) {
			continue
		}
		for _, g := range compared(labels) {
			if names, _ := Levels(l.Trials, g.Of); len(names) > 1 {
				jobs = append(jobs, job{question{by: g.By, name: "the " + g.By, of: g.Of, setting: -1}, l})
			}
		}
		for k := range v.on.Settings {
			jobs = append(jobs, job{v.ofSetting(k), l})
		}
		jobs = append(jobs, job{inOrder(l.Trials), l})
	}
	out := make([]result.GroupEffect, len(jobs))
	region.Parallel(len(jobs), func(i int) { out[i] = v.groupEffect(jobs[i].question, jobs[i].l) })
	tests := adjust(out)
	for i := range out {
		groupVerdict(&out[i], jobs[i].name, tests[out[i].Result])
	}
	return out
}

// compared is the ways of splitting trials that may move a result: those of the
// log, and every column of lots a kitchen logs.
func compared(labels []string) []surface.Split {
	out := []surface.Split{surface.ByDay, surface.ByCook}
	out = append(out, surface.Split{By: "canister size", Of: func(t *surface.Placed) string { return t.Canister }})
	for _, name := range labels {
		out = append(out, surface.Split{By: name, Of: func(t *surface.Placed) string { return t.Raw[name] }})
	}
	return out
}

// ofSetting asks what a setting does over the range tried.
func (v *comparison) ofSetting(k int) question {
	s := v.on.Settings[k]
	low := (s.Low - s.Centre) / s.Scale
	return question{by: s.Name, name: s.Label, setting: k,
		number: func(t *surface.Placed) float64 { return (t.Beside[k] - low) * s.Scale / (s.High - s.Low) }}
}

// Levels is the names of a group in order of appearance, and which of them each
// trial has, -1 where it has none.
func Levels(trials []*surface.Placed, of func(*surface.Placed) string) (names []string, at []int) {
	place := map[string]int{}
	for _, t := range trials {
		name := of(t)
		k := -1
		if name != "" {
			known := false
			if k, known = place[name]; !known {
				k = len(names)
				place[name], names = k, append(names, name)
			}
		}
		at = append(at, k)
	}
	return names, at
}

func unnamed(at []int) (n int) {
	for _, k := range at {
		if k < 0 {
			n++
		}
	}
	return n
}

// groupEffect tests one group of one result beside as much as the log can carry.
func (v *comparison) groupEffect(q question, l *belief.Link) result.GroupEffect {
	_, name := v.family(l.Outcome)
	asked := result.GroupEffect{By: q.by, OrderBy: q.orderBy, Result: string(l.Outcome), Distribution: name, N: len(l.Trials),
		Levels: []result.Level{}, Beside: [][]string{}, NotToldFrom: []string{}, Verdict: result.CannotTell}
	if q.of != nil {
		names, at := Levels(l.Trials, q.of)
		asked.N -= unnamed(at)
		if len(names) > mostLevels || 2*len(names) > asked.N {
			asked.Failure = "almost every trial has a " + q.by + " of its own, so they cannot be compared"
			return asked
		}
	}
	stands := v.stands(l.Outcome)
	for i, st := range stands {
		e := asked
		err := v.against(&e, q, l, st)
		if i+1 < len(stands) && tooSmall(&e, err, leastCarried) {
			continue
		}
		if err == nil && tooSmall(&e, nil, leastRest) {
			err = &likeliest.Refusal{Status: likeliest.TooFew}
		}
		if err != nil {
			e.Failure = groupFailure(err, q.name)
		}
		e.BesideReason = st.instead
		return e
	}
	return asked
}

// family is the distribution of positive values a result is judged by; the
// lognormal where it is judged by none.
func (v *comparison) family(o result.Outcome) (latent.Family, string) {
	if f := v.fits.Judged(o); f != nil {
		if fam := fits.FamilyOf(f.Distribution); fam != latent.Normal {
			return fam, f.Distribution
		}
	}
	return latent.Lognormal, "lognormal"
}

// adjust gives the p values of each result's tests what their number asks for (Holm
// 1979, Scand. J. Statist. 6:65-70): whatever is there, that anything that is not is called
// shown has a chance of 1 in 20. It returns how many tests each result has.
func adjust(effects []result.GroupEffect) map[string]int {
	of := map[string][]*result.GroupEffect{}
	for i := range effects {
		if e := &effects[i]; e.P != nil {
			of[e.Result] = append(of[e.Result], e)
		}
	}
	tests := map[string]int{}
	for name, list := range of {
		tests[name] = len(list)
		slices.SortStableFunc(list, func(a, b *result.GroupEffect) int { return cmp.Compare(*a.P, *b.P) })
		least := 0.0
		for i, e := range list {
			least = math.Max(least, math.Min(1, *e.P*float64(len(list)-i)))
			p := least
			e.PAdjusted = &p
		}
	}
	return tests
}

// groupVerdict says what the test came to, or why there is none; tests is how many its
// result has.
func groupVerdict(e *result.GroupEffect, what string, tests int) {
	name := map[string]string{string(result.HoldMinutes): "hold", string(result.DrainedPercent): "what drains"}[e.Result]
	change := name + " differs from one " + e.By + " to another"
	switch {
	case e.OrderBy == result.ByDate:
		change = name + " drifts from the first date to the last"
	case e.OrderBy == result.ByLog:
		change = name + " drifts along the log"
	case len(e.Levels) == 0:
		change = name + " changes with " + what
	}
	switch {
	case len(e.NotToldFrom) > 0:
		e.Sentence = "these trials do not separate " + what + " from " + say.List(e.NotToldFrom)
	case e.P == nil:
		e.Sentence = e.Failure
	case *e.PAdjusted < groupClear:
		e.Verdict, e.Sentence = result.Clear, string(result.Shown)+": "+change
	case *e.PAdjusted < groupLikely:
		e.Verdict, e.Sentence = result.Likely, string(result.Shown)+": "+change
	case *e.P < groupLikely:
		e.Sentence = fmt.Sprintf("suggested, not shown: %s, but %d comparisons were made, and among so many one looks like this by chance more often than 1 time in 20", change, tests)
	default:
		e.Sentence = "these trials do not show whether " + change
	}
}

func groupFailure(err error, what string) string {
	var refusal *likeliest.Refusal
	if errors.As(err, &refusal) {
		if refusal.Status == likeliest.Separated {
			return "the results separate cleanly by " + what + ", so its effect has no finite estimate"
		}
		if why := fits.Refusals[refusal.Status]; why != "" {
			return why
		}
	}
	var rank *likeliest.RankError
	if errors.As(err, &rank) {
		return what + " is a combination of the variables in these trials"
	}
	return err.Error()
}
