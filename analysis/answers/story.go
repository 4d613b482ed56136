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
		if at < 0 || said[at].Start == nil {
			continue
		}
		start := said[at].Start
		mix := s.Values(result.Mix{FatPercent: start.Fat, EmulsifierPercent: start.Emulsifier, EmulsifierGrams: start.EmulsifierGrams, BlendHLB: start.HLB})
		old := batch
		old.Grams = 0
		var lines []result.FormulaLine
		for _, part := range start.Parts {
			lines = append(lines, result.FormulaLine{Name: part.Name, Grams: part.Amount})
			old.Grams += part.Amount
		}
		for k := range s.Trials {
			t := &s.Trials[k]
			if len(lines) == 0 && (t.Mix == nil || !s.SameMix(t.Mix, mix)) {
				continue
			}
			if same, known := sameGrams(t.Recipe, lines, old); len(lines) > 0 && !(known && same) {
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
		if len(starts) == 0 {
			continue
		}
		if p.Start = sameStart(lines, starts[0].Ingredients, old.Grams, batch); len(lines) == 0 {
			p.Start = s.SameMix(s.Values(starts[0].Mix), mix)
		}
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
