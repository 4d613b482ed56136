package answers

import (
	"cmp"
	"math"
	"slices"

	"foamfield/analysis/region"

	"gonum.org/v1/gonum/stat"
)

const (
	nearTop        = 0.02 // of the highest chance
	mostContenders = 100
	// Contending is by how much a mix may fall short of the surest and still turn out to be it.
	Contending = 0.1
)

// View is what each draw believes of a mix: that it works, and that it clogs.
type View struct {
	Mix          []float64
	Fat          float64 // its percent, 0 where fat is no variable
	Works, Clogs []float64
}

// Views looks at mixes through the first draws.
func (s *Ground) Views(mixes [][]float64, fat, draws int) []View {
	out := make([]View, len(mixes))
	region.Parallel(len(mixes), func(i int) {
		v := View{Mix: mixes[i], Works: s.Draws.Believed(mixes[i], draws), Clogs: s.clogShares(mixes[i], draws)}
		if fat >= 0 {
			v.Fat = mixes[i][fat]
		}
		out[i] = v
	})
	return out
}

// Surest is the highest chance among mixes that may be a start if every draw counted by its
// weight, and the fat of those that come near it, the nearer the more.
func Surest(among []View, weights []float64) (chance, fat float64) {
	means := make([]float64, len(among))
	for i, c := range among {
		if mayStart(c, weights) {
			means[i] = stat.Mean(c.Works, weights)
			chance = math.Max(chance, means[i])
		}
	}
	sum := 0.0
	for i, c := range among {
		if near := means[i] - chance + nearTop; near > 0 {
			fat += near * c.Fat
			sum += near
		}
	}
	return chance, fat / sum
}

// Richest is the highest fat percent at which a mix may be a start and has the wanted chance if
// every draw counted by its weight; between two levels the chance is taken to fall
// evenly. The mixes stand by rising fat. It is false if none has the chance.
func Richest(among []View, wanted float64, weights []float64) (fat float64, ok bool) {
	var last, above struct{ fat, chance float64 } // the highest level that has it, and the next
	open := false
	for i := 0; i < len(among); {
		level, best := among[i].Fat, 0.0
		for ; i < len(among) && among[i].Fat == level; i++ {
			if mayStart(among[i], weights) {
				best = math.Max(best, stat.Mean(among[i].Works, weights))
			}
		}
		switch {
		case best >= wanted:
			last.fat, last.chance, ok, open = level, best, true, false
		case ok && !open:
			above.fat, above.chance, open = level, best, true
		}
	}
	fat = last.fat
	if open {
		fat += (above.fat - last.fat) * (last.chance - wanted) / (last.chance - above.chance)
	}
	return fat, ok
}

// mayStart says whether a mix hardly clogs.
func mayStart(c View, weights []float64) bool {
	return c.Clogs == nil || stat.Mean(c.Clogs, weights) <= ClogLimitStart
}

// Contenders are mixes that may turn out to be the surest start, those that are now a
// little too likely to clog among them.
func (s *Ground) Contenders(least float64) [][]float64 {
	return MixesOf(s.Search.Points(), func(p region.Point) bool {
		return p.Chance >= least && s.mayTurnOut(p)
	}, mostContenders)
}

// Frontier is, at every fat percent of the search, the likeliest mixes that clog seldom and
// that clog a little more often, by rising fat.
func (s *Ground) Frontier(fat int) (out [][]float64) {
	type level struct{ firm, open region.Point }
	levels := map[float64]level{}
	for _, p := range s.Search.Points() {
		if !s.mayTurnOut(p) {
			continue
		}
		l := levels[p.Mix[fat]]
		if p.Allowed && p.Chance > l.firm.Chance {
			l.firm = p
		}
		if p.Chance > l.open.Chance {
			l.open = p
		}
		levels[p.Mix[fat]] = l
	}
	for _, l := range levels {
		for _, p := range []region.Point{l.firm, l.open} {
			if p.Mix != nil {
				out = append(out, p.Mix)
			}
		}
	}
	slices.SortFunc(out, func(a, b []float64) int { return cmp.Or(cmp.Compare(a[fat], b[fat]), slices.Compare(a, b)) })
	return out
}

// MixesOf is at most n of the lattice points that may be taken, evenly among them.
func MixesOf(points []region.Point, may func(region.Point) bool, n int) (out [][]float64) {
	var all [][]float64
	for _, p := range points {
		if may(p) {
			all = append(all, p.Mix)
		}
	}
	if len(all) <= n {
		return all
	}
	for i := range n {
		out = append(out, all[i*len(all)/n])
	}
	return out
}
