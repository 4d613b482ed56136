package analysis

import (
	"fmt"
	"math"
	"strings"

	"foamfield/analysis/belief"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
)

const (
	// clogLimitStart and clogLimitTrial are safety rules: a clogged canister is
	// under pressure.
	clogLimitStart = 0.05
	clogSearched   = 0.045 // leaves room for rounding to the scale
	clogLimitTrial = 0.2
	drawsForLimits = 1200
	slackDrop      = 0.05
	priorWeight    = 0.5 // trials' worth, in the leverage of the tested range
	fatLevels      = 21
)

// findStarts searches the tested range and names the surest and the richest start, made
// in the way that has the surest.
func (s *study) findStarts() {
	ways := s.Ways()
	best, top := surface.Way{}, math.Inf(-1)
	for _, w := range ways {
		s.hold(w)
		search := s.searchOf(w)
		if highest := search.Highest().Chance; highest > top {
			best, top, s.search = w, highest, search
		}
	}
	s.hold(best)
	s.draws = s.chain.Draw(drawsForLimits, belief.Stream(s.seed, belief.StreamDraws))
	surest, ok := s.search.Surest(s.want.WantedChance.Value)
	if !ok {
		s.out.Status = result.NoSafeStart
		s.out.StatusReason = fmt.Sprintf("every mix inside what was tried is more likely to clog than 1 in %.0f%s, so none is named as a start",
			1/clogLimitStart, map[bool]string{true: " or passes a use limit of yours"}[s.limited()])
		s.out.Starts = []result.Start{}
		return
	}
	wanted := s.want.WantedChance.Value
	first := s.start(result.Surest, surest)
	s.out.Starts = []result.Start{first}
	if fat := s.Place(surface.FatPercent); fat >= 0 {
		if richest, ok := s.search.Richest(fat, surest, wanted); ok && !s.HoldIsAGuess {
			s.out.Starts = append(s.out.Starts, s.start(result.Richest, richest))
		}
		s.fatLimit(fat)
	}
	var named [][]float64
	for _, start := range s.out.Starts {
		named = append(named, s.Values(start.Mix))
	}
	for i, w := range s.bel.Widths(s.Basis, named) {
		s.out.Starts[i].Widths = w
	}
	s.out.Status, s.out.StatusReason = first.Status, s.reason(first)
}

// reason says in one sentence why the run ends as it does.
func (s *study) reason(first result.Start) string {
	switch {
	case first.Status == result.Recommended:
		return "a mix inside what was tried reaches the wanted chance"
	case s.HoldIsAGuess:
		return fmt.Sprintf("nobody watched a foam past %.0f minutes, so whether one holds %.0f is a guess: watch longer, or ask for less with --hold", *s.WatchedMinutes, s.want.HoldMinutes.Value)
	case len(s.NotJudged) > 0 && first.Chance.Mean >= s.want.WantedChance.Value:
		return "the log says nothing of " + s.unjudged() + ", so these chances leave it out"
	default:
		return "no mix inside what was tried reaches the wanted chance; this is the best there is"
	}
}

// unjudged names the targets that no result was logged for.
func (s *study) unjudged() string {
	var names []string
	for _, o := range s.NotJudged {
		switch asked := s.want.Asked(o); {
		case asked != nil:
			names = append(names, asked.Label)
		case o == result.HoldMinutes:
			names = append(names, "how long a foam holds")
		default:
			names = append(names, "how much it drains")
		}
	}
	return strings.Join(names, " and ")
}

// clogChance is the chance that a mix does not come out, nil if nobody logged it.
func (s *study) clogChance(mix []float64) *float64 { return s.clogs(s.Basis.Features(mix)) }

// clogChanceOf is the same of a trial made once more, as it was made.
func (s *study) clogChanceOf(t *surface.Placed) *float64 {
	return s.clogs(s.Basis.With(t.Beside).Features(t.Mix))
}

func (s *study) clogs(features []float64) *float64 {
	for i, l := range s.links {
		if l.Outcome == result.CameOut {
			c := 1 - s.chain.Links[i].Passes(features)
			return &c
		}
	}
	return nil
}

// chance of a mix with its limits.
func (s *study) chance(mix []float64) result.Chance {
	mean := s.chain.Chance(mix)
	// The mean is integrated and the limits are of draws: next to 0 and 1 they can
	// cross.
	low, high := s.draws.Limits(mix, belief.Level)
	return result.Chance{Mean: mean, Low: min(low, mean), High: max(high, mean), Level: belief.Level}
}

// start describes one mix as a start: at its rounded grams where there are grams.
func (s *study) start(aim result.Aim, p region.Point) result.Start {
	values := p.Mix
	out := result.Start{Aim: aim, Notes: []string{}}
	f, template, note := s.grams(values)
	if f != nil {
		rounded := s.valuesOf(f)
		switch {
		case len(overLimits(template, f, true)) > 0:
			note = "in grams it passes a use limit of yours; weigh finer or make a bigger batch"
			f = nil
		case s.acceptable(rounded, p, aim):
			values = rounded
		default:
			note = "at this scale step the rounded grams leave the range; weigh finer or make a bigger batch"
			f = nil
		}
	}
	out.GramsNote = note
	out.Mix = s.Mix(values)
	if f != nil {
		out.Ingredients = s.lines(f)
		s.setWithin(out.Ingredients, f)
	} else {
		out.Ingredients = []result.FormulaLine{}
	}
	out.Parts = s.parts(out.Ingredients)
	out.Chance = s.chance(values)
	out.Status = result.Recommended
	if out.Chance.Mean < s.want.WantedChance.Value || s.HoldIsAGuess || s.mustJudge() {
		out.Status = result.BestAvailable
	}
	out.Fails = map[result.Outcome]float64{}
	for i, v := range s.chain.FirstFailures(values) {
		out.Fails[s.links[i].Outcome] = v
	}
	out.Predicted = s.predicted(values)
	out.MadeTimes, out.MadeWorked = s.made(values)
	out.ClosestTrial = s.closest(values)
	out.Confirm = s.confirm(values)
	out.Slack = map[string]result.Slack{}
	at := region.Point{Mix: values, Chance: out.Chance.Mean}
	for v := range s.Vars {
		low, high := s.search.Slack(at, v, slackDrop)
		out.Slack[s.Vars[v].Name] = result.Slack{Low: low, High: high}
	}
	for _, v := range s.Settings {
		if _, named := s.Usual[v.Name]; !named {
			out.Notes = append(out.Notes, fmt.Sprintf("the log does not say how big the canister is, so how much it takes (%s) is not named; the chance is for what these trials usually had", v.Label))
		}
	}
	if template != nil && f != nil {
		out.Notes = append(out.Notes, limitNotes(overLimits(template, f, false))...)
	}
	if template != nil && len(template.Recipe) > len(s.Vars)+1 {
		out.Notes = append(out.Notes, fmt.Sprintf("proportions between ingredients of one kind are those of trial %s", template.ID))
	}
	return out
}

// mustJudge says whether a target without results is one the chance cannot do
// without: hold always, and whatever the kitchen asked for itself.
func (s *study) mustJudge() bool {
	for _, o := range s.NotJudged {
		if o != result.DrainedPercent || s.want.DrainedPercent.From != "assumed" {
			return true
		}
	}
	return false
}

// predicted is the median and 90 % limits of the next mix's hold and drained.
func (s *study) predicted(values []float64) map[result.Outcome]result.Predicted {
	out := map[result.Outcome]result.Predicted{}
	f := s.Basis.Features(values)
	for i, l := range s.links {
		line := s.chain.Links[i].Line
		if line == nil {
			continue
		}
		q := func(p float64) float64 { return l.Value(line.Quantile(f, p, s.chain.Links[i].ExtraSD)) }
		out[l.Outcome] = result.Predicted{Median: q(0.5), Low: q((1 - belief.Level) / 2), High: q((1 + belief.Level) / 2)}
	}
	return out
}

// made counts the trials of a start's own formula.
func (s *study) made(values []float64) (times, worked int) {
	for _, t := range s.OnSurface() {
		if !s.SameMix(t.Mix, values) || !s.SameBeside(t.Beside, s.Basis.Beside) {
			continue
		}
		times++
		if t.Works == works.Yes {
			worked++
		}
	}
	return times, worked
}

// closest is the kitchen's own trial nearest to a mix.
func (s *study) closest(values []float64) *result.Closest {
	var best *surface.Placed
	near := math.Inf(1)
	for _, t := range s.OnSurface() {
		d := s.Distance(values, t.Mix)
		for i, b := range s.Terms {
			if b.Averaged {
				continue
			}
			d = math.Hypot(d, t.Beside[i]-s.Basis.Beside[i])
		}
		if d < near {
			best, near = t, d
		}
	}
	if best == nil {
		return nil
	}
	c := &result.Closest{At: best.At.String(), ID: best.ID, Worked: best.Works.Pointer(), Differences: map[string]float64{}}
	for i, v := range s.Vars {
		c.Differences[v.Name] = values[i] - best.Mix[i]
	}
	for i, v := range s.Settings {
		c.Differences[v.Name] = -best.Beside[i] * v.Scale
	}
	return c
}

// fatLimit is the best chance at each fat percent and what limits it.
func (s *study) fatLimit(fat int) {
	best := s.search.BestAt(fat, fatLevels)
	s.out.FatLimit = make([]result.FatLimit, len(best))
	region.Parallel(len(best), func(i int) {
		p := best[i]
		c := s.chance(p.Mix)
		s.out.FatLimit[i] = result.FatLimit{
			FatPercent: p.Mix[fat], Chance: c, Mix: s.Mix(p.Mix),
			LimitedBy: s.links[p.LimitedBy].Outcome,
			Workable:  c.Mean >= s.want.WantedChance.Value && !s.HoldIsAGuess,
		}
	})
}
