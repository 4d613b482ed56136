package analysis

import (
	"slices"

	"foamfield/analysis/answers"
	"foamfield/analysis/belief"
	"foamfield/analysis/history"
	"foamfield/analysis/judging"
	"foamfield/analysis/logged"
	"foamfield/analysis/next"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
	"foamfield/ingest/trial"
)

// Run studies a log. The error is for a log the arithmetic fails on; what a log
// cannot show is a status in the results, never an error.
func Run(log *trial.Log, set Settings) (*result.Results, error) {
	h := history.Of(log)
	r, _, err := study(log, set, h)
	return r, err
}

// study is Run, and the surface that the trials were laid out on. With a history, starts are
// as of its latest week and lots where these matter.
func study(log *trial.Log, set Settings, h *history.History) (*result.Results, *surface.Surface, error) {
	want, batch := targets(log, set), batch(log, set)
	s, err := surface.Of(log, want, batch.ScaleStepGrams)
	if err != nil {
		return nil, nil, err
	}
	counts := logged.Count(s, want)
	questions, why := logged.Open(log)
	status := result.ToBeSettled
	if why == "" {
		status, why = belief.Enough(s, counts)
	}
	var b *belief.Belief
	if status == "" {
		if b, err = belief.Of(s, want, set.Seed, !set.FreeSigns); err != nil {
			return nil, nil, err
		}
	}
	j := judging.Of(log, s, b)
	seen, first := s, b
	now, err := bringUp(log, s, b, want, batch, set, h)
	if err != nil {
		return nil, nil, err
	}
	s, b = now.surface, now.belief
	a := answers.Of(s, b, answers.Asked{Want: want, Batch: batch, Seed: set.Seed, Portions: set.Portions})
	var tells map[*surface.Placed][]result.Outcome
	if b != nil {
		status, why, tells = a.Status, a.Reason, first.Tells()
	}

	r := &result.Results{Schema: result.Schema, Version: set.Version, Seed: set.Seed, Status: status, StatusReason: why, Targets: want, Batch: batch, Rules: rules(),
		Dish: log.Dish, Inputs: logged.Inputs(log), Rows: logged.Rows(log), Counts: counts, Problems: logged.Problems(log), Questions: questions,
		Columns: logged.Columns(log), Trials: logged.Trials(log, seen, j.Foreseen, tells), Method: logged.Method(log),
		Cautions: logged.Cautions(log, s.Trials, batch, want),

		NotJudged: s.NotJudged, WatchedMinutes: s.WatchedMinutes, HoldIsAGuess: s.HoldIsAGuess,
		Variables: slices.Concat(s.Vars, s.Settings), SetAside: s.SetAside,

		Fits: j.Fits, GroupEffects: j.GroupEffects, Residuals: j.Residuals, Detectable: j.Detectable, Confounded: j.Confounded,
		Repeatability: j.Repeatability, Summaries: j.Summaries, CannotTell: judging.CannotTell(log, seen, b, j, len(a.Effects)),

		BestSeen: a.BestSeen, Starts: a.Starts, Cheapest: a.Cheapest, TestedRange: a.TestedRange, RestsOn: a.RestsOn, FatLimit: a.FatLimit, FatEnd: a.FatEnd, Limits: a.Limits, Grid: a.Grid, Effects: a.Effects, Peaks: a.Peaks,
		Choices: a.Choices, Averaged: a.Averaged, HeldTerms: a.HeldTerms, PriorBelief: a.PriorBelief,
		Tries: answers.Tried(slices.Concat(set.Tries, log.Tries), a, why)}
	r.Ingredients, r.Allergens = logged.Ingredients(log)
	if len(a.Starts) > 0 {
		r.Ingredients = append(r.Ingredients, weigh.Taken(a.Starts[0].Ingredients)...)
	}
	r.Plans, r.NextPlan = logged.Plans(log)
	answers.Story(r.Plans, log.Plans, s, a.Starts, batch)
	if b != nil {
		r.Model, r.Assumed = b.Model, b.Assumed()
	}
	if now.standing != nil {
		r.AsOf, r.MayMatter = now.standing.AsOf, now.standing.MayMatter
		now.factors(log, r.Trials)
	}
	canisters := set.Service
	if canisters == nil {
		canisters = log.Targets.Canisters
	}
	r.Service = service(r, canisters, set.ServiceBatch)
	if s := r.Service; s != nil && s.Grams > 0 {
		for i := range r.Starts {
			servedAt(r.Starts[i].Cost, s.Grams)
		}
		if r.Cheapest != nil {
			servedAt(&r.Cheapest.Cost, s.Grams)
		}
	}
	if status != result.ToBeSettled {
		r.NextTrials = next.Trials(s, counts, a, batch, want.WantedChance.Value, set.NextTrials)
	}
	fillEmpty(r)
	return r, seen, nil
}

// fillEmpty turns absent lists into empty ones, so that results.json has [] where
// a reader loops.
func fillEmpty(r *result.Results) {
	none(&r.Problems)
	none(&r.Questions)
	none(&r.NotJudged)
	none(&r.MayMatter)
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
	none(&r.RestsOn)
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
