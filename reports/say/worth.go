package say

import "foamfield/analysis/result"

// evenChance is the chance below which a mix fails more often than it works: nothing to
// serve, whatever the others do.
const evenChance = 0.5

// Fails reports that a mix is likelier to fail than to work.
func Fails(s result.Start) bool {
	return s.Status == result.BestAvailable && s.Chance.Mean < evenChance
}

// Promise says in plain words how much a start is worth.
func Promise(s result.Start) string {
	switch {
	case s.Status == result.Recommended:
		return "Likely to work"
	case Fails(s):
		return "Likelier to fail than to work: make it to learn from, not to serve"
	}
	return "The best guess these trials allow, not a promise"
}

// StartName is what every page, card and sheet calls a start.
func (b Run) StartName(i int, s result.Start) string {
	switch {
	case i == 0 && b.Bare():
		return "best guess"
	case i == 0 && Fails(s):
		return "a mix to learn from"
	case i == 0 && s.Status == result.BestAvailable:
		return "best start so far"
	case s.Aim == result.Richest:
		return "richest start"
	}
	return "surest start"
}
