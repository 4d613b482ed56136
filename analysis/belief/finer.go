package belief

import (
	"foamfield/analysis/posterior"
	"foamfield/analysis/region"
)

// Finer is the chain with n draws of every line, for limits: they lie where few of the
// draws are that moments rest on. Where the arithmetic fails the line's own stay, and
// those of a long log, which lie near one another.
func (s *Belief) Finer(n int) *region.Chain {
	out := &region.Chain{Basis: s.Basis, Links: make([]region.Link, len(s.Links))}
	copy(out.Links, s.Chain.Links)
	if !s.Chain.CanLeaveOut() {
		return out
	}
	region.Parallel(len(s.Links), func(i int) {
		l, link := &s.Links[i], &out.Links[i]
		terms, rng := priorTerms(priorOf(l.Outcome), s.Surface), Stream(s.seed, streamFiner+uint64(i))
		if link.YesNo != nil {
			if p, err := s.yesNo(l, terms, false).More(link.YesNo, n, rng); err == nil {
				link.YesNo = &posterior.YesNoPosterior{Posterior: p, Edges: link.YesNo.Edges}
			}
			return
		}
		if p, err := s.line(l, terms, false).More(link.Line, n, rng); err == nil {
			finer := *link.Line
			finer.Posterior = p
			link.Line = &finer
		}
	})
	return out
}
