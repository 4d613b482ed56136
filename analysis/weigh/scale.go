// Package weigh turns a wanted mix into grams on the kitchen's scale: in the proportions
// of a trial that was made, within the limits it set, in the order of addition, and with
// how far each weight may be off. It knows no chance; who asks says what may pass.
package weigh

import (
	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

// Scale weighs formulas for one batch, made in one way.
type Scale struct {
	on    *surface.Surface
	batch result.Batch
	held  []float64 // values beside the mix
}

// New is the scale for a batch made in the way that is held.
func New(on *surface.Surface, batch result.Batch, held []float64) *Scale {
	return &Scale{on: on, batch: batch, held: held}
}

// Solve is a recipe changed to what is wanted of the mix, on the scale's step.
func (s *Scale) Solve(recipe []formula.Part, w formula.Wanted) (*formula.Formula, error) {
	return formula.Solve(recipe, w, s.batch.Grams, s.batch.ScaleStepGrams)
}
