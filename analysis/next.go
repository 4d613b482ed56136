package analysis

import (
	"fmt"
	"math"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
)

// nextTrials names the few mixes to make next: the start twice, to confirm it, the
// best trial once more, and those that would sharpen the decision most. Without a start
// it is the best trial again and one step away from whatever stopped the trials most
// often.
func (s *study) nextTrials() {
	if len(s.out.Starts) > 0 {
		first := s.out.Starts[0]
		at := s.Values(first.Mix)
		if clog := s.clogChance(at); clog == nil || *clog <= clogLimitTrial {
			for i := range 2 {
				s.out.NextTrials = append(s.out.NextTrials, result.NextTrial{Purpose: "confirm", Mix: first.Mix, Ingredients: first.Ingredients,
					Reason: []string{"the surest start, made for the first time: does it do what is foreseen?",
						"the surest start again, as a new mix in a new canister: how far apart are two?"}[i],
					ClogChance: clog, Chance: &first.Chance.Mean})
			}
			if first.MadeTimes > 0 {
				s.out.NextTrials[0].Reason = fmt.Sprintf("the surest start, made %d times before: does it still do what is foreseen?", first.MadeTimes)
			}
		}
	}
	best := s.best()
	if best == nil {
		best = s.thinnest()
		if best != nil {
			s.step(best)
		}
		return
	}
	repeat := result.NextTrial{Purpose: "repeat", Mix: s.MixOf(best), Ingredients: s.asMade(best),
		Reason: s.repeatReason(best)}
	if best.Mix != nil && s.chain != nil {
		chance := s.chain.With(best.Beside).Chance(best.Mix)
		repeat.Chance, repeat.ClogChance = &chance, s.clogChanceOf(best)
	}
	if repeat.ClogChance == nil || *repeat.ClogChance <= clogLimitTrial {
		s.out.NextTrials = append(s.out.NextTrials, repeat)
	}
	if len(s.out.Starts) == 0 {
		s.step(best)
	}
	s.explore()
}

// repeatReason says why the best trial is worth making again.
func (s *study) repeatReason(best *surface.Placed) string {
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
		return fmt.Sprintf("the best trial so far (%s, made %d times) once more, on another day", best.Name(), made)
	}
	return fmt.Sprintf("the best trial so far (%s) once more: one good trial may be luck", best.Name())
}

// named is how a person would call a trial.
func named(t *surface.Placed) string {
	if t.ID != "" {
		return "trial " + t.ID
	}
	return t.At.String()
}

// thinnest is the trial with the least fat and emulsifier: where to go back to
// when nothing came out.
func (s *study) thinnest() *surface.Placed {
	var best *surface.Placed
	least := math.Inf(1)
	for i := range s.Trials {
		t := &s.Trials[i]
		if t.FatPercent == nil {
			continue
		}
		thick := *t.FatPercent + 10*works.Or(t.EmulsifierPercent, t.EmulsifierGrams)
		if t.Flagged == "" && thick < least {
			best, least = t, thick
		}
	}
	return best
}

// step suggests one mix a step away from a trial, against what failed most: less
// of what thickens if trials clogged, less fat if they split, more emulsifier if
// they fell or wept.
func (s *study) step(from *surface.Placed) {
	c := s.out.Counts
	m := s.MixOf(from)
	var reason string
	scale := func(p *float64, factor float64) *float64 {
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
	switch most := max(c.Clogged+c.Partly, c.Broke, c.ShortHold, c.TooWet, missed); {
	case most == 0:
		return
	case most == c.Clogged+c.Partly:
		m.FatPercent, m.EmulsifierPercent, m.EmulsifierGrams = scale(m.FatPercent, 0.85), scale(m.EmulsifierPercent, 0.75), scale(m.EmulsifierGrams, 0.75)
		reason = "most trials that failed did not come out: a thinner mix, with less fat and less emulsifier"
	case most == c.Broke:
		m.FatPercent = scale(m.FatPercent, 0.85)
		reason = "most trials that failed split: the same with less fat"
	case most > max(c.ShortHold, c.TooWet): // which way a taste lies nobody knows beforehand
		return
	default:
		m.EmulsifierPercent, m.EmulsifierGrams = scale(m.EmulsifierPercent, 1.25), scale(m.EmulsifierGrams, 1.25)
		reason = "most trials that failed fell too soon or wept: the same with a quarter more emulsifier, one small step since more emulsifier thickens and may clog"
	}
	next := result.NextTrial{Purpose: "step", Mix: m, Reason: reason, Ingredients: []result.FormulaLine{}}
	if from.Recipe != nil && m.FatPercent != nil && m.EmulsifierPercent != nil {
		f, err := formula.Solve(from.Recipe, formula.Wanted{FatPercent: *m.FatPercent, EmulsifierPercent: *m.EmulsifierPercent, BlendHLB: m.BlendHLB},
			s.out.Batch.Grams, s.out.Batch.ScaleStepGrams)
		if err == nil {
			next.Ingredients = s.lines(f)
			next.Mix = result.Mix{FatPercent: &f.FatPercent, EmulsifierPercent: &f.EmulsifierPercent, EmulsifierGrams: &f.EmulsifierGrams, BlendHLB: f.BlendHLB, Extras: m.Extras}
		}
	}
	s.out.NextTrials = append(s.out.NextTrials, next)
}

// asMade is a trial's own formula scaled to the batch.
func (s *study) asMade(t *surface.Placed) []result.FormulaLine {
	if t.Recipe == nil || t.FatPercent == nil || t.EmulsifierPercent == nil {
		return []result.FormulaLine{}
	}
	f, err := formula.Solve(t.Recipe, formula.Wanted{FatPercent: *t.FatPercent, EmulsifierPercent: *t.EmulsifierPercent, BlendHLB: t.BlendHLB},
		s.out.Batch.Grams, s.out.Batch.ScaleStepGrams)
	if err != nil {
		return []result.FormulaLine{}
	}
	return s.lines(f)
}
