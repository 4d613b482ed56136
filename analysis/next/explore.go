package next

import (
	"slices"

	"foamfield/analysis/answers"
	"foamfield/analysis/formula"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/stat"
)

const (
	exploreCandidates = 120 // mixes weighed for a next trial
	exploreDraws      = 400
	// A suggested trial lies no further than this, in half ranges, from one that came
	// out: thick mixes are approached in steps.
	exploreStep = 1.0
	contending  = 0.1  // a mix this far below the surest may still turn out to be it
	leastTold   = 0.02 // a trial that tells less of the doubt is not worth its cream

	leastOfFrontier = 0.2 // the chance below which a richer mix is given up
)

// explore names the trials that tell most: one of which mix is surest, one of how far
// the fat can go. What a trial that works or fails at a mix tells of the chance at
// another is, over the draws, the variance of that chance's mean after it: cov²/p(1-p).
// The trial that tells most of all contenders together is the one suggested.
func explore(found *answers.Answers) (out []result.NextTrial) {
	s := found.Ground
	if s == nil || len(found.Starts) == 0 {
		return nil
	}
	candidates := safeToTry(s)
	views := make([]view, len(candidates))
	region.Parallel(len(candidates), func(i int) {
		views[i] = view{mix: candidates[i], shares: s.Draws.Believed(candidates[i], exploreDraws)}
	})
	first := found.Starts[0]
	surest := mixesOf(s.Search.Points(), func(p region.Point) bool { return p.Allowed && p.Chance >= first.Chance.Mean-contending }, exploreCandidates)
	if v, told := most(s.Draws, views, append(surest, s.Values(first.Mix))); told >= leastTold {
		out = append(out, suggest(s, v, told, "surest", "to learn which mix is surest: of all safe mixes this one tells most about it")...)
	}
	fat := s.Place(surface.FatPercent)
	if fat < 0 {
		return out
	}
	reached := *first.Mix.FatPercent
	if len(found.Starts) > 1 {
		reached = *found.Starts[1].Mix.FatPercent
	}
	var frontier [][]float64
	for _, l := range found.FatLimit {
		if *l.Mix.FatPercent >= reached && l.Chance.Mean >= leastOfFrontier {
			frontier = append(frontier, s.Values(l.Mix))
		}
	}
	if v, told := most(s.Draws, views, frontier); told >= leastTold {
		out = append(out, suggest(s, v, told, "richest", "to learn how far the fat can go: of all safe mixes this one tells most about the richer ones")...)
	}
	return out
}

// view is a candidate trial and what each draw believes of it.
type view struct {
	mix    []float64
	shares []float64
}

// safeToTry is mixes of the tested range that clog at most as often as a trial may
// and lie near one that came out.
func safeToTry(s *answers.Ground) [][]float64 {
	var out [][]float64
	for _, t := range s.OnSurface() {
		if works.CameOut(t.Trial) == works.Yes && t.Flagged == "" && s.MadeAlike(t, s.Basis.Beside) {
			out = append(out, t.Mix)
		}
	}
	return mixesOf(s.Search.Points(), func(p region.Point) bool {
		if !p.Tested {
			return false
		}
		if c := s.ClogChance(p.Mix); c != nil && *c > answers.ClogLimitTrial {
			return false
		}
		return slices.ContainsFunc(out, func(m []float64) bool { return s.Distance(p.Mix, m) <= exploreStep })
	}, exploreCandidates)
}

// mixesOf is at most n of the lattice points that may be taken, evenly among them.
func mixesOf(points []region.Point, may func(region.Point) bool, n int) (out [][]float64) {
	var all [][]float64
	for _, p := range points {
		if may(p) {
			all = append(all, p.Mix)
		}
	}
	if len(all) <= n {
		return all
	}
	for i := range n {
		out = append(out, all[i*len(all)/n])
	}
	return out
}

// most is the candidate that tells most of the chances of the contenders: the share of
// their variance that is expected to go with it.
func most(draws *region.Draws, views []view, contenders [][]float64) (view, float64) {
	if len(views) == 0 || len(contenders) == 0 {
		return view{}, 0
	}
	chances := make([][]float64, len(contenders))
	region.Parallel(len(contenders), func(i int) { chances[i] = draws.Believed(contenders[i], exploreDraws) })
	doubt, variances := 0.0, make([]float64, len(chances))
	for k, c := range chances {
		variances[k] = stat.PopVariance(c, nil)
		doubt += variances[k]
	}
	if doubt == 0 {
		return view{}, 0
	}
	told := make([]float64, len(views))
	region.Parallel(len(views), func(i int) {
		for k, c := range chances {
			told[i] += tells(views[i].shares, c) * variances[k] / doubt
		}
	})
	best := 0
	for i := range told {
		if told[i] > told[best] {
			best = i
		}
	}
	return views[best], told[best]
}

// tells is the share of a chance's variance that is expected to go once it is known
// whether a trial works, both draw by draw.
func tells(works, chance []float64) float64 {
	p, mean := stat.Mean(works, nil), stat.Mean(chance, nil)
	if p < 1e-6 || p > 1-1e-6 {
		return 0
	}
	cov := 0.0
	for k, a := range works {
		cov += (a - p) * (chance[k] - mean) / float64(len(works))
	}
	if cov == 0 {
		return 0
	}
	return cov * cov / (p * (1 - p)) / stat.PopVariance(chance, nil)
}

// suggest is a trial at the grams the scale can weigh, unless rounding makes it
// clog too often.
func suggest(s *answers.Ground, v view, told float64, of, reason string) []result.NextTrial {
	values := v.mix
	next := result.NextTrial{Purpose: "map", Reason: reason, Tells: &told, TellsOf: of, Ingredients: []result.FormulaLine{}}
	var f *formula.Formula
	if f, _, _ = s.Scale.Grams(values); f != nil {
		values = s.Scale.Values(f)
		next.Ingredients = s.Scale.Lines(f)
	}
	clog := s.ClogChance(values)
	if clog != nil && *clog > answers.ClogLimitTrial {
		return nil
	}
	chance := s.Chain.Chance(values)
	next.Mix, next.ClogChance, next.Chance = s.Mix(values), clog, &chance
	return []result.NextTrial{next}
}
