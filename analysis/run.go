package analysis

import (
	"math"
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/judging"
	"foamfield/analysis/logged"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Run studies a log. The error is for a log the arithmetic fails on; what a log
// cannot show is a status in the results, never an error.
func Run(log *trial.Log, set Settings) (*result.Results, error) {
	s := &study{log: log, want: targets(log, set), seed: set.Seed, tradeSigns: !set.FreeSigns}
	s.out = &result.Results{Schema: result.Schema, Version: set.Version, Seed: set.Seed,
		Targets: s.want, Batch: batch(log, set)}
	var err error
	if s.Surface, err = surface.Of(log, s.want, s.out.Batch.ScaleStepGrams); err != nil {
		return nil, err
	}
	s.read()
	s.out.BestSeen = s.bestSeen()
	mapped := s.settled() && s.enough()
	if mapped {
		if s.bel, err = belief.Of(s.Surface, s.want, s.seed, s.tradeSigns); err != nil {
			return nil, err
		}
	}
	j := judging.Of(log, s.Surface, s.bel)
	s.out.Fits, s.out.GroupEffects, s.out.Residuals, s.out.Detectable = j.Fits, j.GroupEffects, j.Residuals, j.Detectable
	s.out.Summaries, s.out.Repeatability, s.out.Confounded = j.Summaries, j.Repeatability, j.Confounded
	if mapped {
		s.mapOut()
	}
	s.tries(append(slices.Clone(set.Tries), log.Tries...))
	if s.out.Status != result.ToBeSettled {
		s.nextTrials()
	}
	for i := range s.out.NextTrials {
		n := &s.out.NextTrials[i]
		n.Parts = s.parts(n.Ingredients)
	}
	s.out.CannotTell = judging.CannotTell(log, s.Surface, s.bel, j, len(s.out.Effects))
	s.out.Trials = logged.Trials(log, s.Surface, j.Foreseen)
	s.out.Cautions = logged.Cautions(log, s.Trials, s.out.Batch, s.want)
	fillEmpty(s.out)
	return s.out, nil
}

// read copies what was read into the results.
func (s *study) read() {
	out := s.out
	out.NotJudged, out.WatchedMinutes, out.HoldIsAGuess = s.NotJudged, s.WatchedMinutes, s.HoldIsAGuess
	out.Inputs, out.Rows, out.Counts = logged.Inputs(s.log), logged.Rows(s.log), logged.Count(s.Surface, s.want)
	out.Problems, out.Questions, out.Columns = logged.Problems(s.log), logged.Questions(s.log), logged.Columns(s.log)
	out.Method = logged.Method(s.log)
	out.Ingredients, out.Allergens = logged.Ingredients(s.log)
	out.Variables = slices.Concat(s.Vars, s.Settings)
	out.SetAside, out.Choices, out.Averaged = s.SetAside, s.Choices, s.Averaged
}

// settled reports whether the recipes can be built on what was read.
func (s *study) settled() bool {
	why := logged.Open(s.log)
	if why != "" {
		s.out.Status, s.out.StatusReason = result.ToBeSettled, why
	}
	return why == ""
}

// enough settles whether a surface is fitted at all.
func (s *study) enough() bool {
	s.out.Status, s.out.StatusReason = belief.Enough(s.Surface, s.out.Counts)
	return s.out.Status == ""
}

// mapOut believes, searches and draws the conclusions that need a surface.
func (s *study) mapOut() {
	s.links, s.chain, s.out.Model = s.bel.Links, s.bel.Chain, s.bel.Model
	s.findStarts()
	s.out.Assumed = s.bel.Assumed()
	s.out.PriorBelief = s.bel.Prior(s.Basis)
	at := s.reference()
	s.grids(at)
	s.limits()
	s.effects(at)
	s.peaks(at)
	s.choices()
}

// reference is the mix that figures fix their other variables at: the surest
// start, or else the best trial made.
func (s *study) reference() []float64 {
	if len(s.out.Starts) > 0 {
		return s.Values(s.out.Starts[0].Mix)
	}
	if best := s.best(); best != nil && best.Mix != nil {
		return best.Mix
	}
	return s.OnSurface()[0].Mix
}

// best is the best trial made, as a cook would say: one that worked before one
// that may have, those made and worked more often first, then the longest hold,
// then the most fat. Nil if nothing came out.
func (s *study) best() *surface.Placed {
	rank := func(t *surface.Placed) [5]float64 {
		worked, failed := 0.0, 0.0
		for i := range s.Trials {
			if o := &s.Trials[i]; o.Group == t.Group {
				switch o.Works {
				case works.Yes:
					worked++
				case works.No:
					failed++
				}
			}
		}
		r := [5]float64{map[works.Tri]float64{works.Yes: 2, works.Unknown: 1}[t.Works], worked - failed}
		if t.Hold != nil {
			r[2] = t.Hold.Low
		}
		if t.Drained != nil && !math.IsInf(t.Drained.High, 1) {
			r[3] = -t.Drained.High
		}
		r[4] = works.Or(t.FatPercent, nil)
		return r
	}
	var best *surface.Placed
	var top [5]float64
	for i := range s.Trials {
		t := &s.Trials[i]
		if works.CameOut(t.Trial) != works.Yes || t.Flagged != "" || works.Broke(t.Trial) == works.Yes {
			continue
		}
		r := rank(t)
		if best == nil || before(r, top) {
			best, top = t, r
		}
	}
	return best
}

func before(a, b [5]float64) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] > b[i]
		}
	}
	return false
}

func (s *study) bestSeen() *result.BestSeen {
	t := s.best()
	if t == nil {
		return nil
	}
	out := &result.BestSeen{At: t.At.String(), ID: t.ID, Works: t.Works.Pointer(), Mix: s.MixOf(t),
		HoldMinutes: works.Interval(t.Hold), Drained: works.Interval(t.Drained), Ingredients: s.asMade(t)}
	for i := range s.Trials {
		if s.Trials[i].Group == t.Group {
			out.MadeTimes++
		}
	}
	return out
}

// fillEmpty turns absent lists into empty ones, so that results.json has [] where
// a reader loops.
func fillEmpty(r *result.Results) {
	none(&r.Problems)
	none(&r.Questions)
	none(&r.NotJudged)
	none(&r.Rows.SetAside)
	none(&r.Method)
	none(&r.Variables)
	none(&r.SetAside)
	none(&r.Choices)
	none(&r.Averaged)
	none(&r.HeldTerms)
	none(&r.Fits)
	none(&r.Model)
	none(&r.Assumed)
	none(&r.Effects)
	none(&r.Repeatability)
	none(&r.GroupEffects)
	none(&r.Residuals)
	none(&r.Detectable)
	none(&r.Confounded)
	none(&r.CannotTell)
	none(&r.Peaks)
	none(&r.Limits)
	none(&r.Grid)
	none(&r.Summaries)
	none(&r.Starts)
	none(&r.Tries)
	none(&r.FatLimit)
	none(&r.NextTrials)
	none(&r.Ingredients)
}

func none[T any](list *[]T) {
	if *list == nil {
		*list = []T{}
	}
}
