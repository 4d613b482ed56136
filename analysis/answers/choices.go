package answers

import (
	"math"
	"slices"

	"foamfield/analysis/belief"
	"foamfield/analysis/result"

	"gonum.org/v1/gonum/stat/distuv"
)

// choices is what the trials had one of, with the level that mixes are named with, and
// what each other level does to the hold against it.
func choices(s *Ground) []result.Choice {
	out := slices.Clone(s.Choices)
	for k := range out {
		c := &out[k]
		for i, b := range s.Terms {
			if b.Of == c.By && s.Basis.Beside[i] != 0 {
				c.Held = b.Level
			}
		}
		if c.Held != "" {
			c.Levels = compare(s, *c)
		}
	}
	return out
}

// averaged is what mixes are averaged over, and what each of it does to the hold against
// the average.
func averaged(s *Ground) []result.Choice {
	out := slices.Clone(s.Averaged)
	for k := range out {
		out[k].Levels = compare(s, out[k])
	}
	return out
}

// heldTerms is the values that chances are worked out with.
func heldTerms(s *Ground) (out []result.HeldTerm) {
	for i, b := range s.Terms {
		if b.Of != "" {
			out = append(out, result.HeldTerm{Term: b.Name, Value: s.Basis.Beside[i]})
		}
	}
	return out
}

// compare holds every level of a choice against what the mixes are named with.
func compare(s *Ground, c result.Choice) []result.ChoiceLevel {
	line := s.LineOf(result.HoldMinutes)
	if line == nil {
		return c.Levels
	}
	out := slices.Clone(c.Levels)
	z := distuv.UnitNormal.Quantile((1 + belief.Level) / 2)
	for j := range out {
		l := &out[j]
		if l.Name == c.Held {
			continue
		}
		m, sd := line.Level(s.Shift(s.Basis.Beside, c.By, l.Name))
		l.HoldFactor = &result.Band{Mid: math.Exp(m), Low: math.Exp(m - z*sd), High: math.Exp(m + z*sd)}
		l.Verdict = verdict(distuv.UnitNormal.CDF(math.Abs(m) / sd))
	}
	return out
}
