package answers

import (
	"foamfield/analysis/region"
	"foamfield/analysis/result"
)

// roundingMost is how much of a start's chance rounding to the scale may cost.
const roundingMost = 0.1

// Rules is which mixes may be named, as the results carry it.
func Rules() result.StartRules {
	return result.StartRules{ClogLimit: ClogLimitStart, ClogSearched: clogSearched, ClogTrial: ClogLimitTrial,
		PriorTrials: priorWeight, CoreShare: region.CoreShare, Stray: stray, StrayTrials: few,
		RoundingMost: roundingMost, FlatTop: region.FlatTop, ProvenTimes: ProvenTimes, ProvenShort: provenShort, SlackDrop: slackDrop, SettledAt: settledAt, Draws: drawsForLimits, WeightedDraws: finerDraws}
}

// EffectRules is from where a trend may be stated.
func EffectRules() result.EffectRules {
	return result.EffectRules{Clear: clearFrom, Likely: likelyFrom}
}
