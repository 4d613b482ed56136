// Package plan lays out trials before there is a log: which mixes, on which day, in which
// order, and what such trials will be able to tell. It knows mixes in percent; grams are
// worked out from its mixes by analysis/formula.
package plan

import (
	"errors"
	"math"
)

// Mix is a formula in percent of everything in the canister. BlendHLB is 0 where there is
// no emulsifier: it is not read then.
type Mix struct{ FatPercent, EmulsifierPercent, BlendHLB float64 }

// Span is a closed range; one of no width is a number that is not varied.
type Span struct{ Low, High float64 }

func (s Span) at(share float64) float64 { return s.Low + share*(s.High-s.Low) }

// Ranges is the box in which trials are laid out.
type Ranges struct{ Fat, Emulsifier, HLB Span }

// Usual are the ranges that are taken where none are said: what food writing and papers
// use for foams rich in fat, and what two usual emulsifiers can be blended to.
var Usual = Ranges{Fat: Span{30, 60}, Emulsifier: Span{0.5, 5}, HLB: Span{5, 13}}

// point is a place in the box: shares of the sides, 0 to 1. Emulsifier goes by ratios, as
// each further gram buys less.
type point [3]float64

// mix is the mix at a point.
func (r Ranges) mix(p point) Mix {
	e := r.Emulsifier
	m := Mix{r.Fat.at(p[0]), e.at(p[1]), r.HLB.at(p[2])}
	if e.Low > 0 {
		m.EmulsifierPercent = e.Low * math.Pow(e.High/e.Low, p[1])
	}
	return m
}

// varied are the sides that have a width.
func (r Ranges) varied() (sides []int) {
	for i, s := range [...]Span{r.Fat, r.Emulsifier, r.HLB} {
		if s.High > s.Low {
			sides = append(sides, i)
		}
	}
	return sides
}

// errNothingVaried says that all ranges are single numbers.
var errNothingVaried = errors.New("every range is a single number, so there is nothing to find out: give at least one of fat, emulsifier and HLB a range")

// The HLBs between which lipophilic emulsifier is counted: of the usual pair.
const lipophilicHLB, hydrophilicHLB = 3.8, 15

// Thickness ranks mixes by how likely they are to be too thick for the nozzle: fat percent
// and ten times the percent of lipophilic emulsifier, as much of it as the blend HLB says.
// Fat crowds, and lipophilic emulsifier sets the fat; it is a rank, not a measure.
func Thickness(m Mix) float64 {
	lipophilic := m.EmulsifierPercent * (hydrophilicHLB - m.BlendHLB) / (hydrophilicHLB - lipophilicHLB)
	return m.FatPercent + 10*math.Max(lipophilic, 0)
}
