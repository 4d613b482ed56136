package surface

import (
	"math"
	"strings"

	"foamfield/analysis/formula"
)

// group finds the trials that repeat a formula: each trial is held against the first
// trials that lie no farther from it than repeats can.
func (s *Surface) group(scaleStep float64) {
	firsts := newNeighbours(s.Trials, scaleStep)
	labelled := map[string]int{}
	for i := range s.Trials {
		t := &s.Trials[i]
		t.Group = i
		if j, named := labelled[repeatOf(t.Raw["repeat"])]; named {
			t.Group, t.RepeatOf = j, s.Trials[j].At.String()
		} else if j := firsts.earliest(t, func(j int) bool { return s.repeats(&s.Trials[j], t, scaleStep) }); j >= 0 {
			t.Group, t.RepeatOf = j, s.Trials[j].At.String()
		} else {
			firsts.add(i, t)
		}
		if t.ID != "" {
			labelled[t.ID] = t.Group
		}
	}
}

// repeatOf is the number of the trial that a label names: "repeat of 2" is 2.
func repeatOf(label string) string {
	words := strings.Fields(label)
	if len(words) == 0 {
		return ""
	}
	return words[len(words)-1]
}

// repeats says whether b is a new mix of a's formula, made the same way.
func (s *Surface) repeats(a, b *Placed, scaleStep float64) bool {
	if a.Mix != nil && b.Mix != nil && !s.SameBeside(a.Beside, b.Beside) {
		return false
	}
	if a.Recipe != nil && b.Recipe != nil {
		return formula.Same(a.Recipe, b.Recipe, scaleStep) && (!a.Blends() || sameNumber(a.BlendHLB, b.BlendHLB))
	}
	// Of two whose mix is not all known, the grams that are may differ all the same.
	if (len(a.Parts) > 0 || len(b.Parts) > 0) && !formula.Same(parts(a.Trial), parts(b.Trial), scaleStep) {
		return false
	}
	return len(a.Mix) > 0 && len(b.Mix) > 0 && s.SameMix(a.Mix, b.Mix) && sameConstants(a, b)
}

// sameConstants keeps trials apart that differ in a number that is no variable of
// the surface.
func sameConstants(a, b *Placed) bool {
	return sameNumber(a.FatPercent, b.FatPercent) && sameNumber(a.BlendHLB, b.BlendHLB) &&
		(sameNumber(a.EmulsifierPercent, b.EmulsifierPercent) || sameNumber(a.EmulsifierGrams, b.EmulsifierGrams))
}

func sameNumber(x, y *float64) bool {
	return (x == nil) == (y == nil) && (x == nil || math.Abs(*x-*y) <= sameEmulsifier*math.Abs(*x))
}
