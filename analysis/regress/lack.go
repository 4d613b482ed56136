package regress

import "math"

// LackOfFit compares how far the fit misses the means of repeats with how far
// repeats differ among themselves.
type LackOfFit struct {
	LackSS, PureSS float64 // sums of squares, weighted as the fit is
	LackDF, PureDF int
	F, P           float64
}

// LackOfFit takes observations with the same group label for repeats.
func (f *Fit) LackOfFit(groups []int) (LackOfFit, error) {
	if len(groups) != f.N {
		panic("regress: groups and observations differ in length")
	}
	first := map[int]int{}
	type pile struct{ w, sum float64 } // of differences from the group's first value
	var piles []pile
	weight := func(i int) float64 {
		if f.weights == nil {
			return 1
		}
		return f.weights[i]
	}
	origin := make([]float64, 0, f.N)
	for i, g := range groups {
		k, seen := first[g]
		if !seen {
			k = len(piles)
			first[g] = k
			piles = append(piles, pile{})
			origin = append(origin, f.y[i])
		}
		piles[k].w += weight(i)
		piles[k].sum += weight(i) * (f.y[i] - origin[k])
	}
	var l LackOfFit
	for i, g := range groups {
		k := first[g]
		d := f.y[i] - origin[k] - piles[k].sum/piles[k].w
		l.PureSS += weight(i) * d * d
	}
	l.PureDF = f.N - len(piles)
	l.LackDF = f.DF - l.PureDF
	refusal := &Refusal{N: f.N, Parameters: f.N - f.DF, Groups: len(piles)}
	switch {
	case l.PureDF == 0:
		refusal.Status = NoRepeats
	case l.LackDF <= 0:
		refusal.Status = NoLack
	case l.PureSS == 0:
		refusal.Status = RepeatsAlike
	default:
		l.LackSS = math.Max(0, f.RSS-l.PureSS)
		l.F = l.LackSS / float64(l.LackDF) / (l.PureSS / float64(l.PureDF))
		l.P = aboveF(l.F, float64(l.LackDF), float64(l.PureDF))
		return l, nil
	}
	return LackOfFit{}, refusal
}
