package belief

import (
	"foamfield/analysis/posterior"
	"foamfield/analysis/region"
)

// Finer is n draws of every line, for limits: they lie where few of the draws are that
// moments rest on. Where the arithmetic fails the line's own stay, and those of a long log,
// which lie near one another.
func (s *Belief) Finer(n int) []*posterior.Posterior {
	out := make([]*posterior.Posterior, len(s.Links))
	for i := range out {
		out[i] = s.Chain.Links[i].Believed()
	}
	if !s.Chain.CanLeaveOut() {
		return out
	}
	region.Parallel(len(s.Links), func(i int) {
		l, link := &s.Links[i], &s.Chain.Links[i]
		terms, rng := priorTerms(priorOf(l.Outcome), s.Surface), Stream(s.seed, streamFiner+uint64(i))
		var finer *posterior.Posterior
		var err error
		if link.YesNo != nil {
			finer, err = s.yesNo(l, terms, false).More(link.YesNo, n, rng)
		} else {
			finer, err = s.line(l, terms, false).More(link.Line, n, rng)
		}
		if err == nil {
			out[i] = finer
		}
	})
	return out
}
