package surface

import (
	"math"
	"slices"

	"foamfield/analysis/result"
)

// Term is a term of every line that does not follow from fat, emulsifier and HLB. Mixes
// are searched and named with it held.
type Term struct {
	Name string // as the terms in the results call it
	// Of and Level, if it is the offset of one level of a choice, or of something that
	// is averaged over.
	Of, Level string
	Averaged  bool
	at        func(*Placed) float64
}

// Chosen says whether it is the offset of something that a mix is made of.
func (t *Term) Chosen() bool { return t.Of != "" && !t.Averaged }

// beside is what goes beside the mix, in the making.
type beside struct {
	trials   []*Placed
	names    []string    // of the variables and the extras that joined them
	columns  [][]float64 // their values in every trial
	terms    []Term
	settings []result.Variable
	usual    map[string]float64
	choices  []result.Choice
	averaged []result.Choice
	aside    []result.SetVariable
	copied   []result.Confounded
}

func newBeside(trials []*Placed, s *Space) *beside {
	b := &beside{trials: trials, usual: map[string]float64{}}
	for i, v := range s.Vars {
		b.names, b.columns = append(b.names, v.Label), append(b.columns, s.Column(i, trials))
	}
	return b
}

// place gives every trial its values beside the mix; it returns those that mixes are
// named with until a way is chosen.
func (b *beside) place() []float64 {
	for _, t := range b.trials {
		for _, term := range b.terms {
			t.Beside = append(t.Beside, term.at(t))
		}
	}
	held := make([]float64, len(b.terms))
	for _, c := range b.averaged {
		for i, term := range b.terms {
			if term.Of == c.By {
				held[i] = 1 / float64(len(c.Levels))
			}
		}
	}
	return held
}

// SameBeside says whether two trials were made the same way, whoever made them: a tenth
// of the range tried apart at most in every setting.
func (s *Surface) SameBeside(a, b []float64) bool {
	for i := range a {
		if !s.Terms[i].Averaged && math.Abs(a[i]-b[i]) > 0.2 {
			return false
		}
	}
	return true
}

// MadeAlike says whether a trial was made in the way that is held.
func (s *Surface) MadeAlike(t *Placed, held []float64) bool {
	for i, b := range s.Terms {
		if b.Chosen() && t.Beside[i] != held[i] {
			return false
		}
	}
	return true
}

// SameAdditions says whether a trial had the percents that the starts are made with.
func (s *Surface) SameAdditions(t *Placed, held []float64) bool {
	for i, b := range s.Terms {
		if slices.Contains(s.Additions, b.Name) && t.Beside[i] != held[i] {
			return false
		}
	}
	return true
}
