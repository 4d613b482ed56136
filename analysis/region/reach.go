package region

import "slices"

// Reach says draw by draw whether the surface itself foresees for any of the mixes a share
// of at least so much.
func (d *Draws) Reach(mixes [][]float64, least float64) []bool {
	features := make([][]float64, len(mixes))
	for i, mix := range mixes {
		features[i] = d.chain.Basis.Features(mix)
	}
	out := make([]bool, d.n)
	Parallel(d.n, func(k int) {
		out[k] = slices.ContainsFunc(features, func(f []float64) bool {
			p := 1.0
			for i := range d.links {
				if p *= d.chain.Links[i].passesGiven(f, d.links[i].RawRowView(k)); !(p >= least) {
					return false
				}
			}
			return true
		})
	})
	return out
}
