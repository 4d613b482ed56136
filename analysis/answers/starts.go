package answers

import (
	"fmt"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/weigh"
)

const (
	// ClogLimitStart and ClogLimitTrial are safety rules: a clogged canister is
	// under pressure.
	ClogLimitStart = 0.05
	clogSearched   = 0.045 // leaves room for rounding to the scale
	ClogLimitTrial = 0.2
	drawsToTell    = 1200
	// Of 1200 draws, of those that moments rest on, a lower limit is off by up to 0.06.
	drawsForLimits = 12000
	finerDraws     = 16000
	slackDrop      = 0.05
	priorWeight    = 0.5 // trials' worth, in the leverage of the tested range
	fatLevels      = 21
)

// found is the starts that were found, and why the run ends as it does.
type found struct {
	status   result.Status
	reason   string
	starts   []result.Start
	fatLimit []result.FatLimit
	fatEnd   *result.FatEnd
}

// findStarts searches the tested range and names the surest and the richest start.
func (s *Ground) findStarts() found {
	surest, ok := s.Search.Surest(s.want.WantedChance.Value)
	if !ok {
		return found{status: result.NoSafeStart, starts: []result.Start{},
			reason: fmt.Sprintf("every mix inside what was tried is more likely to clog than 1 in %.0f%s, so none is named as a start",
				1/ClogLimitStart, map[bool]string{true: " or passes a use limit of yours"}[weigh.Limited(s.Trials)])}
	}
	if own, ok := s.proven(surest); ok {
		surest = own
	}
	first := s.start(result.Surest, surest)
	if own, ok := s.asMade(first); ok {
		first = s.start(result.Surest, own)
	}
	out := found{status: first.Status, reason: reason(s, first), starts: []result.Start{first}}
	if fat := s.Place(surface.FatPercent); fat >= 0 {
		if richest, ok := s.richest(fat, surest); ok && !s.HoldIsAGuess {
			out.starts = append(out.starts, s.start(result.Richest, richest))
		}
		out.fatLimit = fatLimit(s, fat)
		out.fatEnd = fatEnd(s, out.fatLimit, out.starts)
	}
	var named [][]float64
	for _, start := range out.starts {
		named = append(named, s.Values(start.Mix))
	}
	for i, w := range s.Widths(s.Basis, named) {
		out.starts[i].Widths = w
	}
	return out
}

// roomForRounding is by how much more than the wanted chance the richest mix is searched, one
// after the other until its rounded grams have the wanted one.
var roomForRounding = []float64{0, 0.003, 0.01, 0.02, 0.04}

// richest is the mix with most fat whose grams, as they are weighed, have the wanted chance;
// where none has, the one that has it before weighing.
func (s *Ground) richest(fat int, from region.Point) (best region.Point, ok bool) {
	for i, room := range roomForRounding {
		p, reaches := s.Search.Richest(fat, from, s.want.WantedChance.Value+room)
		if !reaches {
			break
		}
		if i == 0 {
			best, ok = p, true
		}
		f, template, _ := s.Scale.Grams(p.Mix)
		if f == nil {
			break
		}
		if len(weigh.OverLimits(template, f, true)) == 0 && s.acceptable(s.Scale.Values(f), p, result.Richest) {
			return p, true
		}
	}
	return best, ok
}

// reason says in one sentence why the run ends as it does.
func reason(s *Ground, first result.Start) string {
	switch {
	case first.Status == result.Recommended:
		return "a mix inside what was tried reaches the wanted chance"
	case s.HoldIsAGuess:
		return fmt.Sprintf("nobody watched a foam past %.0f minutes, so whether one holds %.0f is a guess: watch longer, or ask for less with --hold", *s.WatchedMinutes, s.want.HoldMinutes.Value)
	case len(s.LeftOut(s.want)) > 0 && first.Chance.Mean >= s.want.WantedChance.Value:
		return strings.Join(s.LeftOut(s.want), " and ") + ", so these chances leave it out"
	default:
		return "no mix inside what was tried reaches the wanted chance; of those that the trials can speak for, this is the likeliest"
	}
}

// start describes one mix as a start: at its rounded grams where there are grams.
func (s *Ground) start(aim result.Aim, p region.Point) result.Start {
	values := p.Mix
	out := result.Start{Aim: aim, Notes: []string{}}
	f, template, note := s.Scale.Grams(values)
	if f != nil {
		rounded := s.Scale.Values(f)
		switch {
		case len(weigh.OverLimits(template, f, true)) > 0:
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
		out.Ingredients = s.Scale.Lines(f)
		for i, grams := range within(s, f) {
			out.Ingredients[i].WithinGrams = &grams
		}
	} else {
		out.Ingredients = []result.FormulaLine{}
	}
	out.Parts = weigh.Parts(out.Ingredients, s.batch)
	out.Chance = s.chance(values)
	out.Status = result.Recommended
	if out.Chance.Mean < s.want.WantedChance.Value || s.HoldIsAGuess || len(s.LeftOut(s.want)) > 0 {
		out.Status = result.BestAvailable
	}
	out.Clogging = s.Clogging(values)
	out.Fails = map[result.Outcome]float64{}
	for i, v := range s.Chain.FirstFailures(values) {
		out.Fails[s.Links[i].Outcome] = v
	}
	out.Predicted = s.predicted(values)
	out.MadeTimes, out.MadeWorked, out.MadeUnclear = s.made(values, out.Ingredients)
	out.ClosestTrial = closest(s, values)
	out.Confirm = confirm(s.limits.Shares(values), s.want.WantedChance.Value)
	out.Slack = map[string]result.Slack{}
	at := region.Point{Mix: values, Chance: out.Chance.Mean}
	for v := range s.Vars {
		low, high := s.Search.Slack(at, v, slackDrop)
		out.Slack[s.Vars[v].Name] = result.Slack{Low: low, High: high}
	}
	out.Notes = append(out.Notes, notes(s, f, template)...)
	return out
}

// notes is what is to be said of a start beside its numbers.
func notes(s *Ground, f *formula.Formula, template *surface.Placed) (out []string) {
	for _, v := range s.Settings {
		if _, named := s.Usual[v.Name]; !named {
			out = append(out, fmt.Sprintf("the log does not say how big the canister is, so how much it takes (%s) is not named; the chance is for what these trials usually had", v.Label))
		}
	}
	if template != nil && f != nil {
		out = append(out, weigh.LimitNotes(weigh.OverLimits(template, f, false))...)
	}
	if template != nil && len(template.Recipe) > len(s.Vars)+1 {
		out = append(out, fmt.Sprintf("proportions between ingredients of one kind are those of trial %s", template.ID))
	}
	return out
}

// acceptable says whether a mix moved by rounding may still be named.
func (s *Ground) acceptable(rounded []float64, p region.Point, aim result.Aim) bool {
	if c := s.ClogChance(rounded); c != nil && *c > ClogLimitStart {
		return false
	}
	chance := s.Chain.Chance(rounded)
	return chance > p.Chance-roundingMost && (aim != result.Richest || chance >= s.want.WantedChance.Value)
}

// fatLimit is the best chance at each fat percent and what limits it: of mixes that may be
// named where one of them has the wanted chance, so that the fat at which they end is where
// the richest start ends.
func fatLimit(s *Ground, fat int) []result.FatLimit {
	best := s.Search.BestAt(fat, fatLevels)
	out := make([]result.FatLimit, len(best))
	region.Parallel(len(best), func(i int) {
		p, workable := best[i].Best, false
		if named := best[i].Named; named.Allowed && named.Chance >= s.want.WantedChance.Value {
			p, workable = named, !s.HoldIsAGuess
		}
		out[i] = result.FatLimit{FatPercent: p.Mix[fat], Chance: s.chanceOf(p.Mix, s.Draws), Mix: s.Mix(p.Mix),
			LimitedBy: s.Links[p.LimitedBy].Outcome, Workable: workable}
	})
	return out
}
