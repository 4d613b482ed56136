package say

import (
	"strings"

	"foamfield/analysis/result"
)

// LookedFor names what a test of many weeks looks for, as a kitchen calls it.
func LookedFor(t *result.Trend, x result.TrendTest) string {
	if variable, ok := strings.CutPrefix(x.What, "optimum:"); ok {
		for _, o := range t.Optimum {
			if o.Variable == variable {
				return "peak over " + strings.TrimSpace(o.Label+" "+o.Unit)
			}
		}
		return "peak over " + strings.ReplaceAll(variable, "_", " ")
	}
	if x.By != "" {
		return x.By
	}
	return x.What
}
