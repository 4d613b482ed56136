package judging

import (
	"foamfield/analysis/belief"
	"foamfield/analysis/region"
	"foamfield/analysis/surface"
)

// foresee gives every trial on the surface the chance it would have been given
// from the other trials; a log of more than some hundred is not foreseen.
func foresee(b *belief.Belief) []*float64 {
	if !b.Chain.CanLeaveOut() {
		return nil
	}
	out := make([]*float64, len(b.Trials))
	place := make([]map[*surface.Placed]int, len(b.Links))
	for i, l := range b.Links {
		place[i] = map[*surface.Placed]int{}
		for k, t := range l.Trials {
			place[i][t] = k
		}
	}
	region.Parallel(len(out), func(k int) {
		t := &b.Trials[k]
		if t.Mix == nil {
			return
		}
		forget := make([]int, len(b.Links))
		for i := range forget {
			forget[i] = -1
			if obs, ok := place[i][t]; ok {
				forget[i] = obs
			}
		}
		c := b.Chain.With(t.Beside).ChanceWithout(t.Mix, forget)
		out[k] = &c
	})
	return out
}
