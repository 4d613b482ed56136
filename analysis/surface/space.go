package surface

import (
	"maps"
	"math"

	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/floats"
)

// Names of the variables of a foam.
const (
	FatPercent        = "fat_percent"
	EmulsifierPercent = "emulsifier_percent"
	EmulsifierGrams   = "emulsifier_grams"
	BlendHLB          = "blend_hlb"
)

// Space is the variables that mixes are searched in, and what goes with every mix.
type Space struct {
	Vars      []result.Variable
	Basis     region.Basis
	Constants map[string]float64 // variables that never changed
	Usual     map[string]float64 // extras that go with every mix that is named
}

// Place is the index of a variable, or -1.
func (s *Space) Place(name string) int {
	for i, v := range s.Vars {
		if v.Name == name {
			return i
		}
	}
	return -1
}

// Mix is a point as a mix, constants filled in.
func (s *Space) Mix(values []float64) result.Mix {
	m := result.Mix{}
	set := func(name string, v float64) {
		switch name {
		case FatPercent:
			m.FatPercent = &v
		case EmulsifierPercent:
			m.EmulsifierPercent = &v
		case EmulsifierGrams:
			m.EmulsifierGrams = &v
		case BlendHLB:
			m.BlendHLB = &v
		}
	}
	for name, v := range s.Constants {
		set(name, v)
	}
	for i, v := range s.Vars {
		set(v.Name, values[i])
	}
	if len(s.Usual) > 0 {
		m.Extras = maps.Clone(s.Usual)
	}
	return m
}

// Values is a mix's point.
func (s *Space) Values(m result.Mix) []float64 {
	out := make([]float64, len(s.Vars))
	for i, v := range s.Vars {
		switch v.Name {
		case FatPercent:
			out[i] = works.Or(m.FatPercent, nil)
		case EmulsifierPercent:
			out[i] = works.Or(m.EmulsifierPercent, nil)
		case EmulsifierGrams:
			out[i] = works.Or(m.EmulsifierGrams, nil)
		case BlendHLB:
			out[i] = works.Or(m.BlendHLB, nil)
		}
	}
	return out
}

// Distance between two mixes in the space's own coordinates.
func (s *Space) Distance(a, b []float64) float64 {
	return floats.Distance(s.Basis.Place(a), s.Basis.Place(b), 2)
}

// Column is a variable's coordinate in every trial.
func (s *Space) Column(v int, trials []*Placed) []float64 {
	out := make([]float64, len(trials))
	for k, t := range trials {
		out[k] = s.Basis.Coordinates[v].Of(t.Mix[v])
	}
	return out
}

// TermNames is the variables that a term multiplies.
func (s *Space) TermNames(t []int) []string {
	names := []string{}
	for _, i := range t {
		names = append(names, s.Vars[i].Name)
	}
	return names
}

// What counts as the same formula where only percents are known: closer than a
// kitchen scale tells apart.
const (
	sameFat        = 0.25 // points
	sameEmulsifier = 0.03 // of itself
	sameHLB        = 0.15
)

// Near says whether a variable is the same in two mixes within the weighing error.
func (s *Space) Near(v int, a, b float64) bool {
	switch s.Vars[v].Name {
	case FatPercent:
		return math.Abs(a-b) <= sameFat
	case BlendHLB:
		return math.Abs(a-b) <= sameHLB
	}
	return math.Abs(a-b) <= sameEmulsifier*math.Max(a, b)
}

// SameMix says whether two points are one formula within the weighing error.
func (s *Space) SameMix(a, b []float64) bool {
	for i := range s.Vars {
		if !s.Near(i, a[i], b[i]) {
			return false
		}
	}
	return true
}
