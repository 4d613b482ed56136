package line

import (
	"math"
	"strings"
	"time"

	"foamfield/analysis/belief"
	"foamfield/analysis/history"
	"foamfield/analysis/nested"
	"foamfield/analysis/result"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

func Plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// MostNamed is how many changes are named one by one.
const MostNamed = 3

// Level is that of all limits.
const Level = belief.Level

// leastRead is the smallest that anybody reads, half a minute or half a percent: nothing at all
// is at most so much.
const leastRead = 0.5

// Named is an outcome in a sentence.
func Named(o result.Outcome) string {
	if o == result.DrainedPercent {
		return "what drains"
	}
	return "hold"
}

// Watched is what was seen of an outcome on the line: logarithms, infinite where there is
// no bound.
func Watched(t *trial.Trial, o result.Outcome) (low, high float64) {
	i := works.Watched(t, o)
	low, high = math.Inf(-1), math.Inf(1)
	if i.Low > 0 {
		low = math.Log(i.Low)
	}
	if !math.IsInf(i.High, 1) {
		high = math.Log(math.Max(i.High, leastRead))
	}
	return low, high
}

// Grow is e^x, kept a number where a limit is all but unknown.
func Grow(x float64) float64 { return math.Exp(math.Max(-30, math.Min(30, x))) }

func Ratio(v nested.Value) *result.Ratio {
	return &result.Ratio{Ratio: Grow(v.Mean), Low: Grow(v.Low), High: Grow(v.High)}
}

// InWords is a week's label, or a date for programs, in a sentence: "the week of 2 Mar 2026".
func InWords(label string) string {
	if day, err := time.Parse(time.DateOnly, label); err == nil {
		return history.Label(day)
	}
	if strings.HasPrefix(label, "week ") {
		return "the " + label
	}
	return label
}
