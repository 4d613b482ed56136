package belief

import (
	"math"

	"foamfield/analysis/posterior"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
)

const (
	// priorDraws is how many kitchens the prior is asked to imagine; priorSteps how many
	// values of each variable from one end of what was tried to the other.
	priorDraws = 200
	priorSteps = 5
)

// Prior is what is believed before any trial: of the middle of what was
// tried, and of whether any mix works as often as is wanted. Null where the arithmetic
// fails: nothing else rests on it.
func (s *Belief) Prior(held region.Basis) *result.PriorBelief {
	before := &region.Chain{Basis: held}
	for i := range s.Links {
		none := &Link{Outcome: s.Links[i].Outcome, ruler: s.Links[i].ruler}
		l, err := s.linkOf(none, priorTerms(priorOf(none.Outcome), s.Surface), true, Stream(s.seed, streamPrior+uint64(i)))
		if err != nil {
			return nil
		}
		before.Links = append(before.Links, l)
	}
	middle := make([]float64, len(s.Vars))
	axes := make([][]float64, len(s.Vars))
	total := 1
	for i, v := range s.Vars {
		if middle[i] = v.Centre; v.Log {
			middle[i] = math.Exp(v.Centre)
		}
		axes[i] = region.Steps(s.Basis.Coordinates[i], v.Low, v.High, priorSteps)
		total *= priorSteps
	}
	mixes := make([][]float64, total)
	for k := range mixes {
		mixes[k] = make([]float64, len(axes))
		for i, at := 0, k; i < len(axes); i++ {
			mixes[k][i] = axes[i][at%priorSteps]
			at /= priorSteps
		}
	}
	draws := before.Draw(priorDraws, Stream(s.seed, streamPrior+uint64(len(s.Links))))
	out := &result.PriorBelief{AtCentre: before.Chance(middle)}
	for _, reaches := range draws.Reach(mixes, s.want.WantedChance.Value) {
		if reaches {
			out.Reaches += 1.0 / priorDraws
		}
	}
	return out
}

// Widths judges mixes anew with the priors of all terms half and twice as wide.
func (s *Belief) Widths(held region.Basis, mixes [][]float64) [][]result.Width {
	factors := []float64{0.5, 2}
	out := make([][]result.Width, len(mixes))
	chains := make([]*region.Chain, len(factors))
	for c := range chains {
		chains[c] = &region.Chain{Basis: held, Links: make([]region.Link, len(s.Links))}
	}
	failed := make([]error, len(factors)*len(s.Links))
	region.Parallel(len(failed), func(k int) {
		c, i := k/len(s.Links), k%len(s.Links)
		terms := priorTerms(priorOf(s.Links[i].Outcome), s.Surface)
		for t := range terms {
			terms[t] = posterior.Normal{Mean: terms[t].Mean, SD: factors[c] * terms[t].SD}
		}
		chains[c].Links[i], failed[k] = s.linkOf(&s.Links[i], terms, true, Stream(s.seed, streamWidths+uint64(k)))
	})
	for c, factor := range factors {
		for m, mix := range mixes {
			w := result.Width{Factor: factor}
			whole := true
			for i := range s.Links {
				whole = whole && failed[c*len(s.Links)+i] == nil
			}
			if whole {
				chance := chains[c].DrawnChance(mix)
				w.Chance = &chance
			}
			out[m] = append(out[m], w)
		}
	}
	return out
}
