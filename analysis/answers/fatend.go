package answers

import "foamfield/analysis/result"

// fatEnd is how far the fat can go, the one number that every page says, and what ends it:
// the failure that comes first most often among the best mixes of all richer steps. At a
// single step two failures may be nearly as common, and which leads flickers from one to
// the next.
func fatEnd(s *Ground, steps []result.FatLimit, starts []result.Start) *result.FatEnd {
	if len(starts) < 2 || starts[1].Mix.FatPercent == nil {
		return nil
	}
	end := &result.FatEnd{FatPercent: *starts[1].Mix.FatPercent}
	sums := make([]float64, len(s.Links))
	most := 0.0
	for _, step := range steps {
		if step.FatPercent <= end.FatPercent || step.Chance.Mean >= s.want.WantedChance.Value {
			continue
		}
		for i, share := range s.Chain.FirstFailures(s.Values(step.Mix)) {
			if sums[i] += share; sums[i] > most {
				most, end.FailsFirstBy = sums[i], s.Links[i].Outcome
			}
		}
	}
	return end
}
