package answers

import (
	"slices"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/trial"
)

// Story fills in what became of the start that each plan went on from: how often it was
// made and worked since, and whether it is the start again.
func Story(plans []result.PlanFile, said []trial.Planned, s *surface.Surface, starts []result.Start, batch result.Batch) {
	for i := range plans {
		p := &plans[i]
		at := slices.IndexFunc(said, func(o trial.Planned) bool { return o.File == p.File })
		if at < 0 || len(said[at].Parts) == 0 {
			continue
		}
		old := batch
		old.Grams = 0
		var lines []result.FormulaLine
		for _, part := range said[at].Parts {
			lines = append(lines, result.FormulaLine{Name: part.Name, Grams: part.Amount})
			old.Grams += part.Amount
		}
		for k := range s.Trials {
			t := &s.Trials[k]
			if same, known := sameGrams(t.Recipe, lines, old); !known || !same {
				continue
			}
			p.Made++
			switch t.Works {
			case works.Yes:
				p.Worked++
			case works.No:
			default:
				p.Unclear++
			}
		}
		p.Start = len(starts) > 0 && sameStart(lines, starts[0].Ingredients, old.Grams, batch)
	}
}

// sameStart says whether a start is one that was named before: each ingredient within what
// it may be off, or what the scale tells apart.
func sameStart(old, now []result.FormulaLine, grams float64, batch result.Batch) bool {
	if len(old) != len(now) || grams <= 0 {
		return false
	}
	for _, l := range now {
		i := slices.IndexFunc(old, func(o result.FormulaLine) bool { return o.Name == l.Name })
		if i < 0 {
			return false
		}
		off := leastSteps * batch.ScaleStepGrams
		if l.WithinGrams != nil {
			off = max(off, *l.WithinGrams)
		}
		if d := old[i].Grams*batch.Grams/grams - l.Grams; d > off+1e-9 || d < -off-1e-9 {
			return false
		}
	}
	return true
}
