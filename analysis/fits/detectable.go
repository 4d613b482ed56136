package fits

import (
	"math"

	"foamfield/analysis/latent"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/regress"
	"foamfield/analysis/result"
	"foamfield/analysis/works"
)

// sdOfUnit is the standard deviation of a distribution of scale 1 on the line.
var sdOfUnit = map[latent.Family]float64{latent.Lognormal: 1, latent.Weibull: math.Pi / math.Sqrt(6), latent.Loglogistic: math.Pi / math.Sqrt(3)}

// Detectable works out the smallest differences the scatter and the layout let
// show, at a size of 0.05 and a power of 0.8.
func (v *Fits) Detectable() (out []result.Detectable) {
	show := func(d result.Detectable, se float64) {
		d.Factor = math.Exp(regress.SmallestShown(d.DF) * se)
		if works.Finite(d.Factor) != nil && works.Finite(d.SDLn) != nil {
			out = append(out, d)
		}
	}
	for i := range v.links {
		l := &v.links[i]
		f := v.Judged(l.Outcome)
		if f == nil || !works.IsLine(l.Outcome) || FamilyOf(f.Distribution) == latent.Normal {
			continue
		}
		if fit := v.Fitted(l.Outcome, f.Distribution, f.Order); fit.Freedom() > 0 {
			sd := fit.Scale * sdOfUnit[fit.Family] * small(fit)
			for made := 1; made <= 2; made++ {
				show(result.Detectable{Result: string(l.Outcome), Between: "two_formulas", Made: made, SDLn: sd, DF: fit.Freedom()},
					sd*math.Sqrt(2/float64(made)))
			}
		}
		straight := v.Fitted(l.Outcome, f.Distribution, 1)
		if straight == nil || straight.Freedom() < 1 {
			continue
		}
		for k, c := range v.on.Basis.Coordinates {
			se := math.Sqrt(straight.Covariance.At(k+1, k+1)) * small(straight)
			show(result.Detectable{Result: string(l.Outcome), Between: v.on.Vars[k].Name, DF: straight.Freedom(),
				SDLn: straight.Scale * sdOfUnit[straight.Family] * small(straight)},
				se*(c.Of(v.on.Vars[k].High)-c.Of(v.on.Vars[k].Low)))
		}
	}
	return out
}

// small is the factor by which the likelihood understates a standard deviation.
func small(f *likeliest.Fit) float64 { return math.Sqrt(float64(f.N) / float64(f.Freedom())) }
