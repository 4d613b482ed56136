package main

import (
	"math"

	"foamfield/analysis/kitchen"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
)

// plainFit is what somebody without a prior would do with the same terms: take the
// maximum likelihood estimates of every link as they are, multiply the chances, and
// go where the product is highest in the box of what was logged. Where the curved
// fit has no maximum (one outcome seen too seldom) the straight one stands in, and
// where that has none either the link is left out.
func plainFit(r *result.Results) (best kitchen.Mix, claim float64, ok bool) {
	if len(r.Variables) != 3 {
		return best, 0, false
	}
	coords := make([]region.Coordinate, 3)
	axes := make([][]float64, 3)
	for i, v := range r.Variables {
		coords[i] = region.Coordinate{Log: v.Log, Centre: v.Centre, Scale: v.Scale}
		axes[i] = region.Steps(coords[i], v.Low, v.High, 17)
	}
	basis := region.Curved(coords)
	type line struct {
		result result.Outcome
		terms  []float64
		scale  float64
		bound  float64
	}
	fitted := map[string]line{}
	for _, f := range r.Fits { // straight ones come first, curved ones replace them where they exist
		if f.Failure != "" || f.Distribution != "lognormal" && f.Distribution != "logistic" {
			continue
		}
		l := line{result: result.Outcome(f.Result), terms: make([]float64, len(basis.Terms))}
		for i, t := range f.Terms {
			l.terms[i] = t.Estimate
		}
		switch l.result {
		case result.HoldMinutes:
			l.scale, l.bound = *f.Scale, math.Log(r.Targets.HoldMinutes.Value)
		case result.DrainedPercent:
			l.scale, l.bound = *f.Scale, math.Log(r.Targets.DrainedPercent.Value)
		}
		fitted[f.Result] = l
	}
	var lines []line
	for _, o := range result.Chain {
		if l, there := fitted[string(o)]; there {
			lines = append(lines, l)
		}
	}
	if len(lines) == 0 {
		return best, 0, false
	}
	for _, fat := range axes[0] {
		for _, emulsifier := range axes[1] {
			for _, hlb := range axes[2] {
				features := basis.Features([]float64{fat, emulsifier, hlb})
				chance := 1.0
				for _, l := range lines {
					m := 0.0
					for i, v := range l.terms {
						m += v * features[i]
					}
					switch l.result {
					case result.CameOut:
						chance /= 1 + math.Exp(-m)
					case result.Broke:
						chance /= 1 + math.Exp(m)
					case result.HoldMinutes:
						chance *= 0.5 * math.Erfc((l.bound-m)/l.scale/math.Sqrt2)
					case result.DrainedPercent:
						chance *= 0.5 * math.Erfc((m-l.bound)/l.scale/math.Sqrt2)
					}
				}
				if !ok || chance > claim {
					best, claim, ok = kitchen.Mix{FatPercent: fat, EmulsifierPercent: emulsifier, BlendHLB: hlb}, chance, true
				}
			}
		}
	}
	return best, claim, ok
}

// leftOutScore is the mean log of the chance that was foreseen for what happened to
// each trial, from the others, beside that of the share that worked among the others.
func leftOutScore(r *result.Results) (score, base float64, ok bool) {
	worked, n := 0.0, 0.0
	for _, t := range r.Trials {
		if t.ForeseenChance != nil && t.Works != nil {
			n++
			if *t.Works {
				worked++
			}
		}
	}
	if n < 4 {
		return 0, 0, false
	}
	for _, t := range r.Trials {
		if t.ForeseenChance == nil || t.Works == nil {
			continue
		}
		p, w := *t.ForeseenChance, 0.0
		if *t.Works {
			w = 1
		}
		others := (worked - w + 0.5) / n // half a success and half a failure beside them
		if w == 0 {
			p, others = 1-p, 1-others
		}
		score += math.Log(math.Max(p, 1e-6)) / n
		base += math.Log(others) / n
	}
	return score, base, true
}
