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

// AsOf is a week and the lots in use in a sentence: "as of the week of 2 Mar 2026 with lot B".
func AsOf(period string, lots []string) string {
	var words []string
	if period != "" {
		words = append(words, "as of "+Week(period))
	}
	if len(lots) > 0 {
		words = append(words, "with "+strings.Join(lots, " and "))
	}
	return strings.Join(words, " ")
}
