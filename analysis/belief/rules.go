package belief

import (
	"foamfield/analysis/posterior"
	"foamfield/analysis/result"
)

// Rules is how lines are believed, as the results carry it.
func Rules() result.BeliefRules {
	return result.BeliefRules{Fewest: fewest, SignSoft: signSoft, SignReach: signReach, OneDaySD: daySD,
		OwnShare: posterior.OwnShare, SigmaPoints: posterior.SigmaNodes, SteepnessPoints: posterior.SteepnessNodes,
		LogisticPoints: posterior.LogisticNodes, EnoughESS: posterior.EnoughESS}
}
