package next

import (
	"math"

	"foamfield/analysis/answers"
)

// answer is how good the answer would be if every draw counted by its weight.
type answer func(weights []float64) float64

// gain is by how much the answer is expected to be better once it is known whether a trial
// clogs, fails otherwise, or works, than it is now. Looking can but help: an answer that
// only moves is no better.
func gain(trial answers.View, of answer, now float64) float64 {
	n := len(trial.Works)
	weights := make([]float64, n)
	expected := 0.0
	for _, outcome := range []func(k int) float64{
		func(k int) float64 { return trial.Works[k] },
		func(k int) float64 { return clogs(trial, k) },
		func(k int) float64 { return math.Max(0, 1-trial.Works[k]-clogs(trial, k)) },
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
	return expected - now
}

func clogs(v answers.View, k int) float64 {
	if v.Clogs == nil {
		return 0
	}
	return v.Clogs[k]
}
