package surface

import "slices"

// Way is one combination of levels that trials were made with.
type Way struct {
	Beside []float64
	Trials []*Placed
}

// Ways are those a start may be made in: of every choice a level used often enough.
// Where no choice was made there is one, with every trial.
func (s *Surface) Ways() []Way {
	var out []Way
	for _, t := range s.OnSurface() {
		held := slices.Clone(s.Basis.Beside)
		chosen := 0
		for i, b := range s.Terms {
			if b.Chosen() && t.Beside[i] != 0 && b.Level != others {
				held[i] = t.Beside[i]
				chosen++
			}
		}
		at := slices.IndexFunc(out, func(w Way) bool { return slices.Equal(w.Beside, held) })
		switch {
		case chosen < len(s.Choices): // one of the others, or the trial does not say
		case at < 0:
			out = append(out, Way{held, []*Placed{t}})
		default:
			out[at].Trials = append(out[at].Trials, t)
		}
	}
	if len(out) == 0 {
		out = []Way{{s.Basis.Beside, s.OnSurface()}}
	}
	return out
}

// LevelOf is the level of a choice that a trial was made with, "" if it does not say.
func (s *Surface) LevelOf(choice string, t *Placed) string {
	for i, b := range s.Terms {
		if b.Of == choice && t.Beside[i] != 0 {
			return b.Level
		}
	}
	return ""
}

// Shift is by what the features move from what is held of a choice to one level of it.
func (s *Surface) Shift(held []float64, by, level string) []float64 {
	change := make([]float64, s.Basis.Width())
	for i, b := range s.Terms {
		if b.Of == by {
			change[len(s.Basis.Terms)+i] = -held[i]
			if b.Level == level {
				change[len(s.Basis.Terms)+i]++
			}
		}
	}
	return change
}
