package answers

import (
	"math"

	"foamfield/analysis/formula"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
)

// made counts the trials of a start's own formula, made the same way.
func (s *Ground) made(values []float64, lines []result.FormulaLine) (times, worked, unclear int) {
	for _, t := range s.OnSurface() {
		if !s.SameBeside(t.Beside, s.Basis.Beside) || !s.isFormula(t, values, lines) {
			continue
		}
		times++
		switch t.Works {
		case works.Yes:
			worked++
		case works.Unknown:
			unclear++
		}
	}
	return times, worked, unclear
}

// isFormula says whether a trial was made of a start's formula: by its grams where both
// are known, else by the mix.
func (s *Ground) isFormula(t *surface.Placed, values []float64, lines []result.FormulaLine) bool {
	if same, known := sameGrams(t.Recipe, lines, s.batch); known {
		return same && (!t.Blends() || s.SameMix(t.Mix, values))
	}
	return s.SameMix(t.Mix, values)
}

// leastSteps of the scale are never a difference: a batch rounded otherwise moves that much.
const leastSteps = 2

// sameGrams says whether a recipe, brought to the batch, has every ingredient of a formula
// within what the formula forgives, or what the scale tells apart. It is not known where
// there are no grams, or as many ingredients of other names: they may be spelt otherwise.
func sameGrams(recipe []formula.Part, lines []result.FormulaLine, batch result.Batch) (same, known bool) {
	total := 0.0
	grams := map[string]float64{}
	for _, p := range recipe {
		if p.Grams > 0 {
			total += p.Grams
			grams[p.Name] += p.Grams
		}
	}
	switch {
	case total == 0 || len(lines) == 0:
		return false, false
	case len(grams) != len(lines):
		return false, true
	}
	same = true
	for _, l := range lines {
		g, named := grams[l.Name]
		if !named {
			return false, false
		}
		step := batch.ScaleStepGrams
		off := math.Max(leastSteps*step, step*batch.Grams/total) // half a step either side, brought to the batch
		if l.WithinGrams != nil {
			off = math.Max(off, *l.WithinGrams)
		}
		same = same && math.Abs(g*batch.Grams/total-l.Grams) <= off+1e-9
	}
	return same, true
}

const (
	// ProvenTimes is how often a mix was made that is the start again if it always worked,
	// while it is as good as the best but for provenShort: a start that moves with every
	// trial is never confirmed.
	ProvenTimes = 2
	provenShort = 0.02
)

// proven is the best mix that was made twice or more and always worked, if it is about as
// good as the surest and may be named. Of a long log no mix is held against all others.
func (s *Ground) proven(surest region.Point) (best region.Point, ok bool) {
	trials := s.OnSurface()
	if len(trials) > mostForgotten {
		return best, false
	}
	for _, t := range trials {
		if t.Works != works.Yes || t.Flagged != "" || !s.SameBeside(t.Beside, s.Basis.Beside) {
			continue
		}
		p := s.Search.At(t.Mix)
		if !p.Allowed || p.Chance < surest.Chance-provenShort || ok && p.Chance <= best.Chance {
			continue
		}
		if times, worked, _ := s.made(t.Mix, s.Scale.AsMade(t)); times >= ProvenTimes && worked == times {
			best, ok = p, true
		}
	}
	return best, ok
}

// asMade is the mix of a start as it was made, if it was twice or more and always worked:
// what is said to be made is weighed as it was.
func (s *Ground) asMade(start result.Start) (best region.Point, ok bool) {
	if start.MadeTimes < ProvenTimes || start.MadeWorked < start.MadeTimes || len(s.OnSurface()) > mostForgotten {
		return best, false
	}
	values := s.Values(start.Mix)
	for _, t := range s.OnSurface() {
		if !s.SameBeside(t.Beside, s.Basis.Beside) || !s.isFormula(t, values, start.Ingredients) {
			continue
		}
		if p := s.Search.At(t.Mix); p.Allowed && (!ok || p.Chance > best.Chance) {
			best, ok = p, true
		}
	}
	return best, ok
}
