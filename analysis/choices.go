package analysis

import (
	"math"

	"foamfield/analysis/belief"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"

	"gonum.org/v1/gonum/stat/distuv"
)

// hold makes every mix from here on one of this way.
func (s *study) hold(w surface.Way) {
	s.Basis = s.Basis.With(w.Beside)
	s.chain = s.chain.With(w.Beside)
}

// choices says what mixes are named with, and what each other level does to the hold against the one that is held, or
// against the average.
func (s *study) choices() {
	for k := range s.out.Choices {
		c := &s.out.Choices[k]
		for i, b := range s.Terms {
			if b.Of == c.By && s.Basis.Beside[i] != 0 {
				c.Held = b.Level
			}
		}
		if c.Held != "" {
			s.compare(c)
		}
	}
	for k := range s.out.Averaged {
		s.compare(&s.out.Averaged[k])
	}
	for i, b := range s.Terms {
		if b.Of != "" {
			s.out.HeldTerms = append(s.out.HeldTerms, result.HeldTerm{Term: b.Name, Value: s.Basis.Beside[i]})
		}
	}
}

// compare holds every level of a choice against what the mixes are named with.
func (s *study) compare(c *result.Choice) {
	line := s.bel.LineOf(result.HoldMinutes)
	if line == nil {
		return
	}
	z := distuv.UnitNormal.Quantile((1 + belief.Level) / 2)
	for j := range c.Levels {
		l := &c.Levels[j]
		if l.Name == c.Held {
			continue
		}
		m, sd := line.Level(s.Shift(s.Basis.Beside, c.By, l.Name))
		l.HoldFactor = &result.Band{Mid: math.Exp(m), Low: math.Exp(m - z*sd), High: math.Exp(m + z*sd)}
		l.Verdict = verdict(distuv.UnitNormal.CDF(math.Abs(m) / sd))
	}
}
