package answers

import (
	"math"

	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
)

// gridSteps is the number of cells a side: finer shows nothing a kitchen could weigh.
const gridSteps = 49

// grids maps the chance over fat and each other variable, the rest at the surest
// start.
func grids(s *Ground, at []float64) (out []result.Grid) {
	fat := s.Place(surface.FatPercent)
	if fat < 0 {
		return nil
	}
	for _, y := range []struct {
		v    int
		name string
	}{{max(s.Place(surface.EmulsifierPercent), s.Place(surface.EmulsifierGrams)), "fat_by_emulsifier"}, {s.Place(surface.BlendHLB), "fat_by_hlb"}} {
		if y.v >= 0 {
			out = append(out, grid(s, y.name, fat, y.v, at))
		}
	}
	return out
}

func grid(s *Ground, name string, x, y int, at []float64) result.Grid {
	t := s.Search.Tested
	g := result.Grid{Name: name, Fixed: s.Mix(at)}
	axis := func(v int) result.Axis {
		return result.Axis{Variable: s.Vars[v].Name,
			Values: region.Steps(s.Basis.Coordinates[v], t.Low[v], t.High[v], gridSteps)}
	}
	g.X, g.Y = axis(x), axis(y)
	g.Chance = make([][]float64, gridSteps)
	g.Tested = make([][]bool, gridSteps)
	g.LimitedBy = make([][]result.Outcome, gridSteps)
	region.Parallel(gridSteps, func(j int) {
		mix := append([]float64(nil), at...)
		for i := range gridSteps {
			mix[x], mix[y] = g.X.Values[i], g.Y.Values[j]
			first := s.Chain.FirstFailures(mix)
			chance, most := 1.0, 0
			for k, v := range first {
				chance -= v
				if v > first[most] {
					most = k
				}
			}
			// four decimals: a figure shows no more and the file stays small
			g.Chance[j] = append(g.Chance[j], math.Round(math.Max(chance, 0)*1e4)/1e4)
			g.Tested[j] = append(g.Tested[j], t.Holds(mix))
			g.LimitedBy[j] = append(g.LimitedBy[j], s.Links[most].Outcome)
		}
	})
	return g
}

// limits counts what stops the tested mixes that are not workable.
func limits(s *Ground) (out []result.Limit) {
	n := 0
	by := make([]int, len(s.Links))
	for _, p := range s.Search.Points() {
		if p.Tested && p.Chance < s.want.WantedChance.Value {
			by[p.LimitedBy]++
			n++
		}
	}
	for i, l := range s.Links {
		if n > 0 {
			out = append(out, result.Limit{Outcome: l.Outcome, Share: float64(by[i]) / float64(n)})
		}
	}
	return out
}
