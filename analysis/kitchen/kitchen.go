// Package kitchen simulates kitchens that develop siphon foams: what is true in
// each (truths), what its cook tries (layouts) and what ends up in the log. The
// truths are not of any fitted model's form: they are built from packing,
// coverage and limits, saturate, have kinks, and interact. They exist to find
// out whether a recommended start truly works, so nothing here may know of a
// model, and no truth is changed to suit one.
//
// Every random number comes from a seed: New(family, seed) is always the same
// kitchen, and Log draws only from the stream it is given.
package kitchen

import (
	"fmt"
	"math"
)

// Mix is a formula in percent of everything in the canister.
type Mix struct{ FatPercent, EmulsifierPercent, BlendHLB float64 }

// Outcome is what truly happened to one mix, before watching and reading limits.
type Outcome struct {
	CameOut, Partly bool // Partly implies not CameOut
	Broke           bool // only of a foam that came out
	HoldMinutes     float64
	DrainedPercent  float64 // of the foam's mass, by minute 20
}

// Targets decide what works: came out, did not break, holds at least, drained at most.
type Targets struct{ HoldMinutes, DrainedPercent float64 }

// Met reports whether the outcome works.
func (t Targets) Met(o Outcome) bool {
	return o.CameOut && !o.Broke && o.HoldMinutes >= t.HoldMinutes && o.DrainedPercent <= t.DrainedPercent
}

// Span is a closed range.
type Span struct{ Low, High float64 }

func (s Span) at(share float64) float64 { return s.Low + share*(s.High-s.Low) }
func (s Span) width() float64           { return s.High - s.Low }
func (s Span) clamp(x float64) float64  { return math.Min(math.Max(x, s.Low), s.High) }

// Box is a range of mixes.
type Box struct{ Fat, Emulsifier, HLB Span }

// At is the mix at the given shares (0 to 1) of each side.
func (b Box) At(fat, emulsifier, hlb float64) Mix {
	return Mix{b.Fat.at(fat), b.Emulsifier.at(emulsifier), b.HLB.at(hlb)}
}

func (b Box) clamp(m Mix) Mix {
	return Mix{b.Fat.clamp(m.FatPercent), b.Emulsifier.clamp(m.EmulsifierPercent), b.HLB.clamp(m.BlendHLB)}
}

// Family says how kind the truths are.
type Family uint8

// Easy kitchens can mostly do well. Hard ones mostly can, some cannot; they
// scatter more, differ by day, and log with slips. In Edges mixes stop coming out
// and start to split suddenly in one kitchen and little by little in the next.
// Demonstration is the one kitchen of the demo logs. Stranger kitchens obey laws of other
// forms, thought of apart: they tell whether a claim holds only where truths are like
// the others'; nothing is ever settled on them.
const (
	Easy Family = iota
	Hard
	Edges
	Demonstration
	Stranger
)

// Families lists those that kitchens are drawn from.
var Families = []Family{Easy, Hard, Edges, Stranger}

func (f Family) String() string {
	switch f {
	case Easy:
		return "easy"
	case Hard:
		return "hard"
	case Edges:
		return "edges"
	case Demonstration:
		return "demonstration"
	case Stranger:
		return "stranger"
	}
	panic(fmt.Sprintf("kitchen: family %d", f))
}

// Kitchen is one truth, and how its cook works.
type Kitchen struct {
	Family  Family
	Seed    uint64
	Why     string // how a kitchen could come to be so
	Tries   Box    // the ranges its cook moves in
	laws    laws
	watches watching
}
