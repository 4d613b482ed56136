package posterior

import "gonum.org/v1/gonum/mat"

// mixture joins beliefs about the same parameters, each to count by its share: draws of
// every one in that proportion and evenly among the others', so that the first of them
// are a sample of the mixture too. Its moments are not yet worked out.
func mixture(each []*Posterior, share []float64) *Posterior {
	if len(each) == 1 {
		return each[0]
	}
	of, taken := turns(each, share)
	within := make([]float64, len(each)) // weight of the draws taken
	present := 0.0
	for k, p := range each {
		for _, w := range p.weight[:taken[k]] {
			within[k] += w
		}
		if within[k] > 0 {
			present += share[k]
		}
	}
	_, size := each[0].draws.Dims()
	out := &Posterior{draws: mat.NewDense(len(of), size, nil), weight: make([]float64, len(of))}
	if each[0].loglik != nil { // all or none are kept
		_, n := each[0].loglik.Dims()
		out.loglik = mat.NewDense(min(len(of), drawsLeftOut), n, nil)
	}
	at := make([]int, len(each))
	squares := 0.0
	for i, k := range of {
		p := each[k]
		out.draws.SetRow(i, p.draws.RawRowView(at[k]))
		if out.loglik != nil && i < drawsLeftOut {
			out.loglik.SetRow(i, p.loglik.RawRowView(at[k]))
		}
		if within[k] > 0 { // the one draw taken of a share of next to nothing may weigh nothing
			out.weight[i] = share[k] / present * p.weight[at[k]] / within[k]
		}
		squares += out.weight[i] * out.weight[i]
		at[k]++
	}
	out.ESS = 1 / squares
	return out
}

// turns is of which belief each draw of the mixture comes, the one furthest behind its
// share first, until that one has no more; and how many each gives.
func turns(each []*Posterior, share []float64) (of, taken []int) {
	taken = make([]int, len(each))
	for {
		next, behind := 0, -1.0
		for k := range each {
			if b := share[k]*float64(len(of)+1) - float64(taken[k]); b > behind {
				next, behind = k, b
			}
		}
		if taken[next] == each[next].Draws() {
			return of, taken
		}
		taken[next]++
		of = append(of, next)
	}
}
