package next

import (
	"math"

	"foamfield/analysis/answers"
	"foamfield/analysis/region"

	"gonum.org/v1/gonum/stat"
)

// view is what each draw believes of a mix: that it works, and that it clogs.
type view struct {
	mix          []float64
	fat          float64 // its percent, 0 where fat is no variable
	works, clogs []float64
}

// views looks at mixes.
func views(s *answers.Ground, mixes [][]float64, fat int) []view {
	out := make([]view, len(mixes))
	region.Parallel(len(mixes), func(i int) {
		v := view{mix: mixes[i], works: s.Draws.Believed(mixes[i], exploreDraws), clogs: s.Clogs(mixes[i], exploreDraws)}
		if fat >= 0 {
			v.fat = mixes[i][fat]
		}
		out[i] = v
	})
	return out
}

// answer is how good the answer would be if every draw counted by its weight.
type answer func(weights []float64) float64

// surest is the highest chance among contenders that may be a start.
func surest(contenders []view) answer {
	return func(weights []float64) float64 {
		best := 0.0
		for _, c := range contenders {
			if mayStart(c, weights) {
				best = math.Max(best, stat.Mean(c.works, weights))
			}
		}
		return best
	}
}

// richest is the highest fat percent at which a contender may be a start and has the wanted
// chance; between two levels the chance is taken to fall evenly. Contenders stand by
// rising fat.
func richest(contenders []view, wanted float64) answer {
	return func(weights []float64) float64 {
		reach, at := contenders[0].fat, -1.0 // the highest level that has it, and its chance
		var next []float64                   // chance at the level above, and its fat
		for i := 0; i < len(contenders); {
			fat, best := contenders[i].fat, 0.0
			for ; i < len(contenders) && contenders[i].fat == fat; i++ {
				if mayStart(contenders[i], weights) {
					best = math.Max(best, stat.Mean(contenders[i].works, weights))
				}
			}
			switch {
			case best >= wanted:
				reach, at, next = fat, best, nil
			case at >= 0 && next == nil:
				next = []float64{best, fat}
			}
		}
		if next != nil {
			reach += (next[1] - reach) * (at - wanted) / (at - next[0])
		}
		return reach
	}
}

// mayStart says whether a mix hardly clogs.
func mayStart(c view, weights []float64) bool {
	return c.clogs == nil || stat.Mean(c.clogs, weights) <= answers.ClogLimitStart
}

// gain is by how much the answer is expected to be better once it is known whether a trial
// clogs, fails otherwise, or works. Looking can but help: an answer that only moves is
// no better.
func gain(trial view, of answer) float64 {
	n := len(trial.works)
	weights := make([]float64, n)
	expected := 0.0
	for _, outcome := range []func(k int) float64{
		func(k int) float64 { return trial.works[k] },
		func(k int) float64 { return clogs(trial, k) },
		func(k int) float64 { return math.Max(0, 1-trial.works[k]-clogs(trial, k)) },
	} {
		sum := 0.0
		for k := range weights {
			weights[k] = outcome(k)
			sum += weights[k]
		}
		if sum > 1e-9*float64(n) {
			expected += sum / float64(n) * of(weights)
		}
	}
	return expected - of(nil)
}

func clogs(v view, k int) float64 {
	if v.clogs == nil {
		return 0
	}
	return v.clogs[k]
}
