// Package next names the few trials to make next, each with its reason and at the grams
// that are weighed.
package next

import (
	"fmt"
	"math"

	"foamfield/analysis/answers"
	"foamfield/analysis/formula"
	"foamfield/analysis/plan"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
	"foamfield/analysis/works"
	"foamfield/ingest/say"
)

// Trials is the start twice, to confirm it, the best trial once more, and those that would
// sharpen the decision most: a few, or so many more that there are wanted many. Without a start it is the best trial again and one step away
// from whatever stopped the trials most often.
func Trials(s *surface.Surface, counts result.Counts, found *answers.Answers, batch result.Batch, chance float64, wanted int) []result.NextTrial {
	out := confirm(found)
	switch best := answers.Best(s); {
	case best != nil:
		out = append(out, repeat(s, found, best)...)
		if len(found.Starts) == 0 {
			out = append(out, step(s, counts, found.Scale, best)...)
		}
		limit := float64(answers.ClogLimitTrial)
		if wanted > 0 { // of many trials made before any is looked at, fewer may clog
			limit = clogLimitMany
		}
		out = append(out, explore(found, chance, max(exploring, wanted-len(out)), limit)...)
	default:
		if t := thinnest(s.Trials, batch.Grams); t != nil {
			out = append(out, step(s, counts, found.Scale, t)...)
		}
	}
	plan.InOrder(out)
	for i := range out {
		out[i].Parts = weigh.Parts(out[i].Ingredients, batch)
	}
	return out
}

// clogLimitMany is the chance of clogging up to which one of many trials is suggested: clogging is
// understated most where it is likeliest. Settled on simulated kitchens, of which trials
// with a true chance above 0.2 were to be at most 5 in 100.
const clogLimitMany = 0.04

// confirm is the surest start until it was made twice, or once more if it failed: one that
// always worked is settled, and the other trials go on from it.
func confirm(found *answers.Answers) (out []result.NextTrial) {
	if len(found.Starts) == 0 {
		return nil
	}
	first := found.Starts[0]
	clog := found.Ground.ClogChance(found.Ground.Values(first.Mix))
	if clog != nil && *clog > answers.ClogLimitTrial {
		return nil
	}
	for made := first.MadeTimes; made < answers.ProvenTimes || first.MadeWorked < first.MadeTimes && len(out) == 0; made++ {
		reason := "the surest start, made for the first time: does it do what is predicted?"
		switch {
		case len(out) > 0:
			reason = "the surest start again, as a new mix in a new canister: how far apart are two?"
		case made == 1:
			reason = "the surest start, made once before: does it do so again?"
		case made > 1:
			reason = "the surest start, made " + say.Times(made) + " before: does it still do what is predicted?"
		}
		out = append(out, result.NextTrial{Purpose: "confirm", Mix: first.Mix, Ingredients: first.Ingredients, Reason: reason,
			ClogChance: clog, Clogging: first.Clogging, Chance: &first.Chance.Mean})
	}
	return out
}

// repeat is the best trial once more, unless it would clog too often.
func repeat(s *surface.Surface, found *answers.Answers, best *surface.Placed) []result.NextTrial {
	next := result.NextTrial{Purpose: "repeat", Mix: s.MixOf(best), Ingredients: found.Scale.AsMade(best), Reason: repeatReason(s, best)}
	if g := found.Ground; best.Mix != nil && g != nil {
		chance := g.Chain.With(best.Beside).Chance(best.Mix)
		next.Chance, next.Clogging = &chance, g.CloggingOf(best)
		if next.Clogging != nil {
			next.ClogChance = &next.Clogging.Mean
		}
	}
	if next.ClogChance != nil && *next.ClogChance > answers.ClogLimitTrial {
		return nil
	}
	return []result.NextTrial{next}
}

// repeatReason says why the best trial is worth making again.
func repeatReason(s *surface.Surface, best *surface.Placed) string {
	made := 0
	for i := range s.Trials {
		if s.Trials[i].Group == best.Group {
			made++
		}
	}
	switch {
	case best.Works != works.Yes:
		return fmt.Sprintf("the trial that came nearest (%s) once more, to see how far apart two are", best.Name())
	case made > 1:
		return fmt.Sprintf("the best trial so far (%s, made %s) once more, on another day", best.Name(), say.Times(made))
	}
	return fmt.Sprintf("the best trial so far (%s) once more: one good trial may be luck", best.Name())
}

// thinnest is the trial with the least fat and emulsifier: where to go back to
// when nothing came out. One that does not say its emulsifier is gone back to only
// if none does.
func thinnest(trials []surface.Placed, batch float64) *surface.Placed {
	var best *surface.Placed
	least, told := math.Inf(1), false
	for i := range trials {
		t := &trials[i]
		if t.FatPercent == nil || t.Flagged != "" {
			continue
		}
		percent := emulsifier(t, batch)
		thick, says := *t.FatPercent+10*works.Or(percent, nil), percent != nil
		if says && !told || says == told && thick < least {
			best, least, told = t, thick, says
		}
	}
	return best
}

// emulsifier is the percent of a trial, nil if the log has none: grams without the mass of
// their mix are taken as of a batch.
func emulsifier(t *surface.Placed, batch float64) *float64 {
	if t.EmulsifierPercent != nil || t.EmulsifierGrams == nil {
		return t.EmulsifierPercent
	}
	percent := 100 * *t.EmulsifierGrams / batch
	return &percent
}

// step suggests one mix a step away from a trial, against what failed most: less
// of what thickens if trials clogged, less fat if they split, more emulsifier if
// they fell or wept.
func step(s *surface.Surface, c result.Counts, scale *weigh.Scale, from *surface.Placed) []result.NextTrial {
	m := s.MixOf(from)
	var reason string
	failed := func(n int, how string) string {
		of := fmt.Sprintf("%d of the %d trials that failed", n, c.Failed)
		switch {
		case n == c.Failed && n == 1:
			of = "the one trial that failed"
		case n == c.Failed:
			of = fmt.Sprintf("all %d trials that failed", n)
		}
		return of + " " + how + ", so this mix "
	}
	times := func(p *float64, factor float64) *float64 {
		if p == nil {
			return nil
		}
		v := *p * factor
		return &v
	}
	missed := 0
	for _, n := range c.Missed {
		missed = max(missed, n)
	}
	stuck := min(c.Clogged+c.Partly, c.Failed) // partly is no failure where a kitchen says so
	switch most := max(stuck, c.Broke, c.FellOrDrained, missed); {
	case most == 0:
		return nil
	case most == stuck:
		m.FatPercent, m.EmulsifierPercent, m.EmulsifierGrams = times(m.FatPercent, 0.85), times(m.EmulsifierPercent, 0.75), times(m.EmulsifierGrams, 0.75)
		reason = failed(most, "did not come out fully") + "is thinner: less fat and less emulsifier"
	case most == c.Broke:
		m.FatPercent = times(m.FatPercent, 0.85)
		reason = failed(most, "split") + "has less fat"
	case most > c.FellOrDrained: // which way a taste lies nobody knows beforehand
		return nil
	default:
		m.EmulsifierPercent, m.EmulsifierGrams = times(m.EmulsifierPercent, 1.25), times(m.EmulsifierGrams, 1.25)
		reason = failed(most, "fell too soon or drained too much") + "has a quarter more emulsifier; one small step, since more emulsifier thickens and may clog"
	}
	next := result.NextTrial{Purpose: "step", Mix: m, Reason: reason, Ingredients: []result.FormulaLine{}}
	if from.Recipe != nil && m.FatPercent != nil && m.EmulsifierPercent != nil {
		f, err := scale.Solve(from.Recipe, formula.Wanted{FatPercent: *m.FatPercent, EmulsifierPercent: *m.EmulsifierPercent, BlendHLB: m.BlendHLB})
		if err == nil {
			next.Ingredients = scale.Lines(f)
			next.Mix = result.Mix{FatPercent: &f.FatPercent, EmulsifierPercent: &f.EmulsifierPercent, EmulsifierGrams: &f.EmulsifierGrams, BlendHLB: f.BlendHLB, Extras: m.Extras}
		}
	}
	if out := outside(s, next.Mix); out != "" {
		next.Reason += "; its " + out + " lies outside what was tried, so it is a test and no start"
	}
	return []result.NextTrial{next}
}

// asPrinted is by how much a value may differ and print the same.
const asPrinted = 0.05

// outside names a variable whose value in a mix no trial came near; "" if none.
func outside(s *surface.Surface, m result.Mix) string {
	values := map[string]*float64{surface.FatPercent: m.FatPercent, surface.EmulsifierPercent: m.EmulsifierPercent, surface.BlendHLB: m.BlendHLB}
	for _, v := range s.Vars {
		if x := values[v.Name]; x != nil && (*x < v.Low-asPrinted || *x > v.High+asPrinted) {
			return v.Label
		}
	}
	return ""
}
