package judging

import (
	"fmt"
	"math"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/stat/distuv"
)

// repeatability pools the scatter of repeats on the log scale over groups of one
// formula; only exact results can show a scatter.
func repeatability(s *surface.Surface) (all []result.Repeatability) {
	for _, o := range []result.Outcome{result.HoldMinutes, result.DrainedPercent} {
		if !s.Judged[o] {
			continue
		}
		groups := map[int][]float64{}
		for _, t := range s.Trials {
			seen := works.Watched(t.Trial, o)
			if seen == nil {
				continue
			}
			if v, exact := seen.Exact(); exact && v > 0 {
				groups[t.Group] = append(groups[t.Group], math.Log(v))
			}
		}
		r := result.Repeatability{Result: string(o)}
		ss := 0.0
		for i := range s.Trials { // in order, so that sums do not depend on the map
			squares, df := scatter(groups[i])
			if df == 0 {
				continue
			}
			ss += squares
			r.Groups++
			r.Trials += df + 1
			r.DF += df
		}
		if r.DF > 0 {
			sd := math.Sqrt(ss / float64(r.DF))
			chi := distuv.ChiSquared{K: float64(r.DF)}
			r.SDLn, r.CVPercent = &sd, coefficient(sd)
			r.CVLow = coefficient(math.Sqrt(ss / chi.Quantile(0.95)))
			r.CVHigh = coefficient(math.Sqrt(ss / chi.Quantile(0.05)))
			if r.DF < 3 {
				r.Note = fmt.Sprintf("from %d repeats only: a rough figure", r.DF)
				if r.DF == 1 {
					r.Note = "from one repeat only: a rough figure"
				}
			}
		} else {
			r.Note = "no formula was made twice with an exact result, so the spread of repeats is not known"
		}
		all = append(all, r)
	}
	return all
}
