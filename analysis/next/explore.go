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
	lookDraws         = 300
	exploreCandidates = 100 // mixes weighed for a next trial
	// A suggested trial lies no further than this, in half ranges, from one that came
	// out: thick mixes are approached in steps.
	exploreStep = 1.0
	leastChance = 0.002 // a smaller gain of chance, or of fat in points, is not worth its cream
	leastFat    = 0.05
	apart       = 0.5 // half ranges between two suggested trials
	exploring   = 3   // trials suggested
	// Of a suggested trial that works less often it is said that it is likely to fail.
	likelyToFail = 0.5
)

// explore names the trials that are expected to do most to the answers: to the chance of
// the surest start, and to how much fat the richest has.
func explore(found *answers.Answers, wanted float64, many int, clogs float64) (out []result.NextTrial) {
	s := found.Ground
	if s == nil || len(found.Starts) == 0 {
		return nil
	}
	fat := s.Place(surface.FatPercent)
	candidates := s.Views(safeToTry(s, clogs), fat, lookDraws)
	var aims []aim
	if fat >= 0 {
		levels := s.Views(s.Frontier(fat), fat, lookDraws)
		lowest := *found.Starts[0].Mix.FatPercent // where none is rich enough
		aims = append(aims, aim{"richest", "a test of how far the fat can go: of the mixes that seldom clog, this one may move the richest start furthest",
			levels, func(weights []float64) float64 {
				if rich, ok := answers.Richest(levels, wanted, weights); ok {
					return rich
				}
				return lowest
			}, leastFat, nil})
	}
	first := found.Starts[0]
	tops := s.Views(append(s.Contenders(first.Chance.Mean-answers.Contending), s.Values(first.Mix)), fat, lookDraws)
	aims = append(aims, aim{"surest", "a test of which mix is surest: of the mixes that seldom clog, this one may raise the chance of the start most",
		tops, func(weights []float64) float64 {
			chance, _ := answers.Surest(tops, weights)
			return chance
		}, leastChance, nil})
	for a := range aims {
		aims[a].gains = make([]float64, len(candidates))
		now := aims[a].answer(nil)
		region.Parallel(len(candidates), func(i int) { aims[a].gains[i] = gain(candidates[i], aims[a].answer, now) })
	}
	var taken []answers.View
	// More than the usual few take what gains less, and stand closer.
	for again, gap := 0, apart; again < 4 && len(out) < many; again, gap = again+1, gap/2 {
		turns := many
		if many > exploring {
			turns = len(aims) * many
		}
		for turn := 0; turn < turns && len(out) < many; turn++ {
			a := aims[turn%len(aims)]
			if again > 0 {
				a.least = 0
			}
			i := a.best(candidates, func(c answers.View) bool {
				return !slices.ContainsFunc(taken, func(t answers.View) bool { return s.Distance(c.Mix, t.Mix) < gap })
			})
			if i < 0 {
				continue
			}
			taken = append(taken, candidates[i])
			out = append(out, suggest(s, candidates[i], a, a.gains[i])...)
		}
		if many == exploring {
			break
		}
	}
	return out
}

// aim is one of the answers that a trial may better.
type aim struct {
	of, reason string
	contenders []answers.View
	answer     answer
	least      float64 // a smaller gain is not worth its cream
	gains      []float64
}

// best is the candidate that gains most among those that may be taken, -1 if none gains enough.
func (a aim) best(candidates []answers.View, may func(answers.View) bool) int {
	at := -1
	for i, c := range candidates {
		if a.gains[i] >= a.least && (at < 0 || a.gains[i] > a.gains[at]) && may(c) {
			at = i
		}
	}
	return at
}

// told is the share of the doubt about the contenders' chances that a trial is expected
// to remove: what a trial that works or fails tells of a chance is, over the draws, the
// variance of that chance's mean after it, cov²/p(1-p).
func (a aim) told(trial answers.View) float64 {
	told, doubt := 0.0, 0.0
	for _, c := range a.contenders {
		v := stat.PopVariance(c.Works, nil)
		doubt += v
		told += v * tells(trial.Works, c.Works)
	}
	if doubt == 0 {
		return 0
	}
	return told / doubt
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

// safeToTry is mixes of the tested range that clog at most so often
// and lie near one that came out.
func safeToTry(s *answers.Ground, clogs float64) [][]float64 {
	var out [][]float64
	for _, t := range s.OnSurface() {
		if works.CameOut(t.Trial) == works.Yes && t.Flagged == "" && s.MadeAlike(t, s.Basis.Beside) {
			out = append(out, t.Mix)
		}
	}
	return answers.MixesOf(s.Search.Points(), func(p region.Point) bool {
		if !p.Tested || s.PointClogs(p) > clogs {
			return false
		}
		return slices.ContainsFunc(out, func(m []float64) bool { return s.Distance(p.Mix, m) <= exploreStep })
	}, exploreCandidates)
}

// suggest is a trial at the grams the scale can weigh, unless rounding makes it
// clog too often.
func suggest(s *answers.Ground, v answers.View, a aim, gain float64) []result.NextTrial {
	values, told := v.Mix, a.told(v)
	next := result.NextTrial{Purpose: "map", Reason: a.reason, Gain: &gain, Tells: &told, TellsOf: a.of, Ingredients: []result.FormulaLine{}}
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
	if chance < likelyToFail {
		next.Reason += "; it is likely to fail"
	}
	next.Mix, next.ClogChance, next.Clogging, next.Chance = s.Mix(values), clog, s.Clogging(values), &chance
	return []result.NextTrial{next}
}
