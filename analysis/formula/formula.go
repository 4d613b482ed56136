// Package formula turns a wanted mix into grams: it keeps the proportions of a
// trial that was made, changes only what the wanted mix asks for, and rounds to
// what the scale can weigh.
package formula

import (
	"errors"
	"math"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"
)

// Part is grams of one ingredient of the trial whose proportions are kept.
type Part struct {
	Name    string
	Grams   float64
	What    *ingredient.Ingredient
	Blended bool // emulsifiers weighed together, which the kitchen blends to the HLB of each mix
}

// Wanted is the mix to reach; a nil BlendHLB keeps the emulsifiers' proportions.
type Wanted struct {
	FatPercent, EmulsifierPercent float64
	BlendHLB                      *float64
}

// Line is one ingredient of a formula, as weighed. PercentOfPart is nil for
// what is in no part or has no part to be in.
type Line struct {
	Name                 string
	What                 ingredient.Ingredient
	Grams                float64
	PercentOfMix         float64
	PercentOfPart        *float64
	Blended              bool    // as the template's
	Part                 string  // "fat", "water" or ""
	WeighingErrorPercent float64 // at most
}

// Formula is grams on the scale's step and the mix they make.
type Formula struct {
	Lines             []Line // in the template's order; what rounds to 0 g is left out
	BatchGrams        float64
	FatPercent        float64
	EmulsifierPercent float64
	EmulsifierGrams   float64
	BlendHLB          *float64
}

// Solve works out batch grams of the wanted mix from the template's
// ingredients. Fats keep their proportions, as do waters, the emulsifiers below
// the wanted HLB and those above it, and emulsifiers that are blended to it; ionic emulsifiers keep their share of all
// emulsifiers, and everything else its percent of the mix. Only where that
// cannot reach the wanted fat do proportions among fats and waters shift: those
// leaner and those richer than needed keep theirs. A fat percent missed by no
// more than 0.5 because the ingredients go no farther is let pass. Grams are then rounded to
// the step, the water part taking up the difference, so that they add up to the
// batch (itself rounded to the step). A mix out of reach is an *Unreachable.
func Solve(template []Part, w Wanted, batch, step float64) (*Formula, error) {
	if !(batch > 0 && step > 0 && batch >= step) || math.IsInf(batch, 0) {
		return nil, errors.New("the batch and the scale's step must be more than 0 g, the batch the larger")
	}
	shares, err := shares(template, w)
	if err != nil {
		return nil, err
	}
	steps := round(template, shares, int(math.Round(batch/step)), batch/step)
	parts := make([]mix.Part, len(template))
	for i, n := range steps {
		parts[i] = mix.Part{Grams: OnScale(n, step), What: *template[i].What}
		if h := w.BlendHLB; template[i].Blended && h != nil {
			parts[i].What.HLB = &ingredient.Range{Low: *h, Value: *h, High: *h}
		}
	}
	t := mix.Total(parts)
	if w.EmulsifierPercent > 0 && t.EmulsifierGrams == 0 {
		return nil, tooLittle(w, batch, step)
	}
	if w.BlendHLB != nil && w.EmulsifierPercent > 0 && t.BlendHLB == nil {
		return nil, tooLittle(w, batch, step)
	}
	f := &Formula{
		BatchGrams:        OnScale(int(math.Round(batch/step)), step),
		FatPercent:        *t.FatPercent,
		EmulsifierPercent: *t.EmulsifierPercent,
		EmulsifierGrams:   t.EmulsifierGrams,
	}
	if t.BlendHLB != nil {
		f.BlendHLB = &t.BlendHLB.Value
	}
	for i, p := range parts {
		if p.Grams > 0 {
			f.Lines = append(f.Lines, line(&template[i], p, t, step))
		}
	}
	return f, nil
}

// OnScale is n steps in grams, without the dust of binary fractions: 3 × 0.1 is 0.3.
func OnScale(n int, step float64) float64 {
	if inverse := math.Round(1 / step); math.Abs(inverse*step-1) < 1e-12 {
		return float64(n) / inverse
	}
	return float64(n) * step
}

// line is one part of a formula, with its percents of the mix and of the part of
// the mix it goes into.
func line(of *Part, p mix.Part, t mix.Totals, step float64) Line {
	l := Line{
		Name: of.Name, What: p.What, Grams: p.Grams, Blended: of.Blended,
		PercentOfMix:         100 * p.Grams / t.Grams,
		WeighingErrorPercent: 100 * mix.WeighingError(p.Grams, step),
	}
	part := goesInto(p.What, t.BlendHLB)
	if of.Blended {
		part = "" // some of them go with the fat, others with the water
	}
	if whole := map[string]float64{"fat": t.FatPartGrams, "water": t.WaterPartGrams}[part]; whole > 0 {
		percent := 100 * p.Grams / whole
		l.Part, l.PercentOfPart = part, &percent
	}
	return l
}

// lipophilic bounds the HLB of an emulsifier that goes with the fat where there
// is no pair to compare ("< 9 lipophilic" in kitchen-science teaching; other
// texts draw the line at 8 to 11).
const lipophilic = 9

// goesInto is the part of the mix an ingredient belongs to, "" for none. Of
// emulsifiers those below the blend go with the fat, those above it with the water.
func goesInto(what ingredient.Ingredient, blend *ingredient.Range) string {
	switch {
	case what.Kind == ingredient.Fat:
		return "fat"
	case what.Kind == ingredient.Water:
		return "water"
	case what.Kind != ingredient.Emulsifier || what.HLB == nil:
		return ""
	}
	border := float64(lipophilic)
	if blend != nil && math.Abs(what.HLB.Value-blend.Value) > same {
		border = blend.Value
	}
	if what.HLB.Value < border {
		return "fat"
	}
	return "water"
}
