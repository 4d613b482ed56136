package analysis

import (
	"foamfield/analysis/answers"
	"foamfield/analysis/belief"
	"foamfield/analysis/groups"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

// rules is the constants of every room that chances, limits and verdicts rest on.
func rules() result.Rules {
	return result.Rules{Trials: surface.Rules(), Belief: belief.Rules(), Starts: answers.Rules(),
		Effects: answers.EffectRules(), Groups: groups.Rules()}
}
