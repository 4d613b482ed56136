package mix

import (
	"math"

	"foamfield/ingest/ingredient"
)

// Error is what weighing does to a number: at most, and its standard deviation.
type Error struct{ AtMost, SD float64 }

// Errors are the weighing errors of a mix; nil where the number is not known.
type Errors struct{ FatPercent, EmulsifierPercent, BlendHLB *Error }

// WeighingErrors says how far the numbers of a mix may be off when each part is
// weighed on a scale of the given step: any true grams within half a step of
// those read, each part by itself.
func WeighingErrors(parts []Part, step float64) Errors {
	t := Total(parts)
	var e Errors
	whole := func(value func(ingredient.Ingredient) float64) *Error {
		var m weightedMean
		for _, p := range parts {
			m.add(p.Grams, value(p.What))
		}
		return m.weighing(step)
	}
	if t.FatPercent != nil {
		e.FatPercent = whole(func(i ingredient.Ingredient) float64 {
			if i.FatPercent == nil {
				return 0
			}
			return i.FatPercent.Value
		})
	}
	if t.EmulsifierPercent != nil {
		e.EmulsifierPercent = whole(func(i ingredient.Ingredient) float64 {
			if i.WeighedAsEmulsifier() {
				return 100
			}
			return 0
		})
	}
	if t.BlendHLB != nil {
		var m weightedMean
		for _, p := range parts {
			if p.What.Kind == ingredient.Emulsifier && p.Grams > 0 {
				m.add(p.Grams, p.What.HLB.Value)
			}
		}
		e.BlendHLB = m.weighing(step)
	}
	return e
}

// weightedMean is Σ gᵢvᵢ / Σ gᵢ: fat percent, emulsifier percent and blend HLB
// are all of this form.
type weightedMean struct{ grams, values []float64 }

func (m *weightedMean) add(grams, value float64) {
	if grams > 0 {
		m.grams = append(m.grams, grams)
		m.values = append(m.values, value)
	}
}

// weighing finds the mean's largest change over grams within half a step, not
// below 0, and its first-order standard deviation. The mean is a ratio of linear
// functions, so its extremes have every weight at an end: more of all values
// from a threshold up and less of all below it, or the reverse.
func (m weightedMean) weighing(step float64) *Error {
	mean, total := m.at(0, func(float64) float64 { return 0 })
	var e Error
	for _, threshold := range m.values {
		for _, sign := range [...]float64{-1, 1} {
			moved, left := m.at(step/2, func(v float64) float64 {
				if v >= threshold {
					return sign
				}
				return -sign
			})
			if left > 0 {
				e.AtMost = max(e.AtMost, math.Abs(moved-mean))
			}
		}
	}
	var variance float64
	for _, v := range m.values {
		slope := (v - mean) / total
		variance += slope * slope
	}
	e.SD = math.Sqrt(variance) * step / math.Sqrt(12)
	return &e
}

// at is the mean and the total after moving each weight by half a step in its
// direction.
func (m weightedMean) at(half float64, direction func(value float64) float64) (mean, total float64) {
	for i, g := range m.grams {
		g = max(0, g+half*direction(m.values[i]))
		total += g
		mean += g * m.values[i]
	}
	return mean / total, total
}
