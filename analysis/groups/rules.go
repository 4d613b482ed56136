package groups

import "foamfield/analysis/result"

// Rules is from where groups are told to differ, as the results carry it.
func Rules() result.GroupRules {
	return result.GroupRules{Clear: groupClear, Likely: groupLikely, Inseparable: inseparable}
}
