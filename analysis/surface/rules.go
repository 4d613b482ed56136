package surface

import "foamfield/analysis/result"

// Rules is what makes a variable or a term, as the results carry it.
func Rules() result.TrialRules {
	least := map[string]float64{}
	for _, c := range []candidate{fatCandidate, percentCandidate, gramsCandidate, hlbCandidate} {
		least[c.name] = c.least
	}
	return result.TrialRules{KnownIn: KnownShare, ScaleSDs: scaleSDs, LeastScale: least,
		VariedIn: variedIn, VariedTrials: variedLeast, FirstTrials: firstTrials, TrialsEach: trialsAnExtra, Copied: copied,
		LevelTrials: levelLeast, MostLevels: mostKinds}
}
