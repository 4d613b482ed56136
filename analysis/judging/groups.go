package judging

import (
	"errors"
	"slices"
	"strings"

	"foamfield/analysis/belief"
	"foamfield/analysis/latent"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
)

// When a group's test is called clear and likely. Stricter than for one trend,
// since several groups of several results are looked at.
const (
	groupClear  = 0.01
	groupLikely = 0.05
)

// mostLevels is how many days or lots are still compared one by one.
const mostLevels = 40

// inseparable is the variance inflation above which two things are not told
// apart, a common rule of thumb.
const inseparable = 10

// groupEffects asks of hold and drained whether days, cooks, canisters and lots
// differ, and whether results drift along the log.
func (v *view) groupEffects(links []belief.Link, labels []string) []result.GroupEffect {
	type job struct {
		by string
		of func(*surface.Placed) string // nil = the order
		l  *belief.Link
	}
	var jobs []job
	for i := range links {
		l := &links[i]
		if !works.IsLine(l.Outcome) {
			continue
		}
		for _, g := range compared(labels) {
			if names, _ := levels(l.Trials, g.Of); len(names) > 1 {
				jobs = append(jobs, job{g.By, g.Of, l})
			}
		}
		jobs = append(jobs, job{"order", nil, l})
	}
	out := make([]result.GroupEffect, len(jobs))
	region.Parallel(len(jobs), func(i int) {
		j := jobs[i]
		out[i] = v.groupEffect(j.by, j.of, j.l)
	})
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

// levels is the names of a group in order of appearance, and which of them each
// trial has, -1 where it has none.
func levels(trials []*surface.Placed, of func(*surface.Placed) string) (names []string, at []int) {
	for _, t := range trials {
		name := of(t)
		k := -1
		if name != "" {
			if k = slices.Index(names, name); k < 0 {
				k = len(names)
				names = append(names, name)
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

// groupEffect tests one group of one result.
func (v *view) groupEffect(by string, of func(*surface.Placed) string, l *belief.Link) result.GroupEffect {
	fam, name := v.family(l.Outcome)
	e := result.GroupEffect{By: by, Result: string(l.Outcome), Distribution: name, Levels: []result.Level{},
		NotToldFrom: []string{}, Verdict: result.CannotTell}
	refuse := func(why string) result.GroupEffect {
		e.Failure, e.Sentence = why, why
		return e
	}
	e.N = len(l.Trials)
	if of != nil {
		names, at := levels(l.Trials, of)
		e.N -= unnamed(at)
		if len(names) > mostLevels || 2*len(names) > e.N {
			return refuse("almost every trial has a " + by + " of its own, so they cannot be compared")
		}
	}
	x, seen, at := groupDesign(v.on, &e, of, l)
	_, p := x.Dims()
	rest := told(seen) - float64(p)
	e.ResidualDF = &rest
	if rest < 2 {
		return refuse(refusals[latent.TooFew])
	}
	separate(v.on, &e, x)
	groupVerdict(&e, test(&e, v.fitted(l.Outcome, name, 1), fam, x, seen, at))
	return e
}

// family is the distribution of positive values a result is judged by; the
// lognormal where it is judged by none.
func (v *view) family(o result.Outcome) (latent.Family, string) {
	if f := v.judged(o); f != nil {
		if fam := familyOf(f.Distribution); fam != latent.Normal {
			return fam, f.Distribution
		}
	}
	return latent.Lognormal, distributions[0].name
}

func familyOf(name string) latent.Family {
	for _, d := range distributions {
		if d.name == name {
			return d.family
		}
	}
	return latent.Normal
}

// judged is the fit a result is judged by, nil if there is none.
func (v *view) judged(o result.Outcome) *result.Fit {
	for i := range v.fits {
		if f := &v.fits[i]; f.JudgedBy && f.Result == string(o) {
			return f
		}
	}
	return nil
}

// groupVerdict says what the test came to, or why there is none.
func groupVerdict(e *result.GroupEffect, err error) {
	what := "the " + e.By
	if e.By == "order" {
		what = "the order of the trials"
	}
	name := map[string]string{string(result.HoldMinutes): "hold", string(result.DrainedPercent): "what drains"}[e.Result]
	if len(e.NotToldFrom) > 0 {
		e.Sentence = "these trials cannot tell " + what + " from " + inWords(e.NotToldFrom)
	}
	if err != nil {
		e.Failure = groupFailure(err, e.By)
		if e.Sentence == "" {
			e.Sentence = e.Failure
		}
		return
	}
	if e.Sentence != "" {
		return
	}
	switch {
	case e.P == nil:
	case *e.P < groupClear:
		e.Verdict = result.Clear
	case *e.P < groupLikely:
		e.Verdict = result.Likely
	}
	change := "differs from one " + e.By + " to another"
	if e.By == "order" {
		change = "drifts along the log"
	}
	if e.Verdict == result.CannotTell {
		e.Sentence = "these trials do not show whether " + name + " " + change
		return
	}
	e.Sentence = string(e.Verdict) + ": " + name + " " + change
}

func groupFailure(err error, by string) string {
	var refusal *latent.Refusal
	if errors.As(err, &refusal) {
		if refusal.Status == latent.Separated {
			return "the results split cleanly by the " + by + ", so its effect has no finite estimate"
		}
		if why := refusals[refusal.Status]; why != "" {
			return why
		}
	}
	var rank *latent.RankError
	if errors.As(err, &rank) {
		return "the " + by + " is a combination of the variables in these trials"
	}
	return err.Error()
}

// inWords joins names: "fat", "fat and blend HLB", "fat, emulsifier and blend HLB".
func inWords(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}
