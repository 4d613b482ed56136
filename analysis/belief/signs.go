package belief

import (
	"slices"

	"foamfield/analysis/posterior"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

// tradeSigns is which way a chance is believed to move with a variable, whatever
// few trials say: richer mixes clog and split more; more emulsifier clogs more;
// and at the same grams a lower blend HLB is more of the lipophilic emulsifier,
// which sets a network. Common practice, no source. +1 = the outcome's own yes
// (came out, broke) becomes likelier.
var tradeSigns = map[result.Outcome]map[string]float64{
	result.CameOut: {surface.FatPercent: -1, surface.EmulsifierPercent: -1, surface.EmulsifierGrams: -1, surface.BlendHLB: +1},
	result.Broke:   {surface.FatPercent: +1},
}

// Assumed puts the signs in force in words.
func (s *Belief) Assumed() []string {
	out := []string{}
	say := func(o result.Outcome, v, words string) {
		if s.tradeSigns && s.Place(v) >= 0 && slices.ContainsFunc(s.Links, func(l Link) bool { return l.Outcome == o }) {
			out = append(out, words)
		}
	}
	say(result.CameOut, surface.FatPercent, "more fat does not make clogging less likely")
	say(result.CameOut, surface.EmulsifierPercent, "more emulsifier does not make clogging less likely")
	say(result.CameOut, surface.EmulsifierGrams, "more emulsifier does not make clogging less likely")
	say(result.CameOut, surface.BlendHLB, "a lower blend HLB, which is more of the lipophilic emulsifier, does not make clogging less likely")
	say(result.Broke, surface.FatPercent, "more fat does not make splitting less likely")
	return out
}

const (
	// signSoft is how far, in logits per half range tried, a slope may go the
	// wrong way before it is hard to believe.
	signSoft = 0.3
	// signReach is the part of the tested box whose corners the signs hold at: at the
	// very corners nobody mixed, a square would be forbidden that the middle shows.
	signReach = 0.7
)

// signsOf is the signs in force for one outcome.
func (s *Belief) signsOf(o result.Outcome) []posterior.Sign {
	if !s.tradeSigns {
		return nil
	}
	return signs(s.Surface, o)
}

// signs is the trade's signs for one outcome as combinations of the basis's terms.
// A slope of a second-order line is straight in every variable, so it has a sign
// throughout a box if it has it at the corners.
func signs(s *surface.Surface, o result.Outcome) (out []posterior.Sign) {
	d := len(s.Vars)
	z := make([]float64, d)
	for corner := range 1 << d {
		for i, v := range s.Vars {
			end := v.Low
			if corner>>i&1 == 1 {
				end = v.High
			}
			z[i] = signReach * s.Basis.Coordinates[i].Of(end)
		}
		for i, v := range s.Vars {
			sign, known := tradeSigns[o][v.Name]
			if !known {
				continue
			}
			row := s.Basis.Slope(z, i)
			for k := range row {
				row[k] *= sign
			}
			out = append(out, posterior.Sign{Row: row, Soft: signSoft})
		}
	}
	return out
}
