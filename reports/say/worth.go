package say

import (
	"foamfield/analysis/result"
	"foamfield/plots/wording"
)

// Promise says in plain words how much a start is worth.
func Promise(s result.Start) string {
	switch {
	case s.Status == result.Recommended:
		return "Likely to work"
	case wording.Fails(s):
		return "Likelier to fail than to work: make it to learn from, not to serve"
	}
	return "The best guess these trials allow, not a promise"
}

// StartName is what every page, card and sheet calls a start.
func (b Run) StartName(i int, s result.Start) string {
	switch {
	case i == 0 && b.Bare():
		return "best guess"
	case i == 0 && wording.Fails(s):
		return "a mix to learn from"
	case i == 0 && s.Status == result.BestAvailable:
		return "best start so far"
	case s.Aim == result.Richest:
		return "richest start"
	}
	return "surest start"
}
