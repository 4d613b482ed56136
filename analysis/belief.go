package analysis

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

// priorBelief is what the study believes before any trial: of the middle of what was
// tried, and of whether any mix works as often as is wanted. Null where the arithmetic
// fails: nothing else rests on it.
func (s *study) priorBelief() *result.PriorBelief {
	before := &region.Chain{Basis: s.Basis}
	for i := range s.links {
		none := &link{outcome: s.links[i].outcome, ruler: s.links[i].ruler}
		l, err := s.linkOf(none, s.priorTerms(priorOf(none.outcome)), true, s.stream(streamPrior+uint64(i)))
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
	draws := before.Draw(priorDraws, s.stream(streamPrior+uint64(len(s.links))))
	shares := make([][]float64, total)
	region.Parallel(total, func(k int) {
		mix := make([]float64, len(axes))
		for i, at := 0, k; i < len(axes); i++ {
			mix[i] = axes[i][at%priorSteps]
			at /= priorSteps
		}
		shares[k] = draws.Believed(mix, priorDraws)
	})
	out := &result.PriorBelief{AtCentre: before.Chance(middle)}
	for k := range priorDraws {
		for _, share := range shares {
			if share[k] >= s.want.WantedChance.Value {
				out.Reaches += 1.0 / priorDraws
				break
			}
		}
	}
	return out
}

// widths judges mixes anew with the priors of all terms half and twice as wide.
func (s *study) widths(mixes [][]float64) [][]result.Width {
	factors := []float64{0.5, 2}
	out := make([][]result.Width, len(mixes))
	chains := make([]*region.Chain, len(factors))
	for c := range chains {
		chains[c] = &region.Chain{Basis: s.chain.Basis, Links: make([]region.Link, len(s.links))}
	}
	failed := make([]error, len(factors)*len(s.links))
	region.Parallel(len(failed), func(k int) {
		c, i := k/len(s.links), k%len(s.links)
		terms := s.priorTerms(priorOf(s.links[i].outcome))
		for t := range terms {
			terms[t] = posterior.Normal{Mean: terms[t].Mean, SD: factors[c] * terms[t].SD}
		}
		chains[c].Links[i], failed[k] = s.linkOf(&s.links[i], terms, true, s.stream(streamWidths+uint64(k)))
	})
	for c, factor := range factors {
		for m, mix := range mixes {
			w := result.Width{Factor: factor}
			whole := true
			for i := range s.links {
				whole = whole && failed[c*len(s.links)+i] == nil
			}
			if whole {
				chance := chains[c].Chance(mix)
				w.Chance = &chance
			}
			out[m] = append(out[m], w)
		}
	}
	return out
}
