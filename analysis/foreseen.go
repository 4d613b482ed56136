package analysis

import (
	"foamfield/analysis/region"
	"foamfield/analysis/surface"
)

// foresee gives every trial on the surface the chance it would have been given
// from the other trials; a log of more than some hundred is not foreseen.
func (s *study) foresee() []*float64 {
	if !s.chain.CanLeaveOut() {
		return nil
	}
	out := make([]*float64, len(s.Trials))
	place := make([]map[*surface.Placed]int, len(s.links))
	for i, l := range s.links {
		place[i] = map[*surface.Placed]int{}
		for k, t := range l.Trials {
			place[i][t] = k
		}
	}
	region.Parallel(len(out), func(k int) {
		t := &s.Trials[k]
		if t.Mix == nil {
			return
		}
		forget := make([]int, len(s.links))
		for i := range forget {
			forget[i] = -1
			if obs, ok := place[i][t]; ok {
				forget[i] = obs
			}
		}
		c := s.chain.With(t.Beside).ChanceWithout(t.Mix, forget)
		out[k] = &c
	})
	return out
}
