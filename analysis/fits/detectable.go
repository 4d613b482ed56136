package fits

import (
	"math"

	"foamfield/analysis/latent"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/result"
	"foamfield/analysis/works"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// sdOfUnit is the standard deviation of a distribution of scale 1 on the line.
var sdOfUnit = map[latent.Family]float64{latent.Lognormal: 1, latent.Weibull: math.Pi / math.Sqrt(6), latent.Loglogistic: math.Pi / math.Sqrt(3)}

// Detectable works out the smallest differences the scatter and the layout let
// show, at a size of 0.05 and a power of 0.8.
func (v *Fits) Detectable() (out []result.Detectable) {
	show := func(d result.Detectable, se float64) {
		d.Factor = math.Exp(shown(d.DF) * se)
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

// shown is how many standard errors apart two things must be for Student's
// two-sided test at 0.05 to find it 8 times in 10.
func shown(df int) float64 {
	critical := distuv.StudentsT{Sigma: 1, Nu: float64(df)}.Quantile(0.975)
	// The test statistic is a shifted normal over s, an estimated standard error in
	// true ones: the power is integrated over s.
	chi := distuv.ChiSquared{K: float64(df)}
	const nodes = 300
	at, weight := make([]float64, nodes), make([]float64, nodes)
	quad.Legendre{}.FixedLocations(at, weight, 0, math.Sqrt(chi.Quantile(1-1e-12)/float64(df)))
	for i, s := range at {
		weight[i] *= 2 * float64(df) * s * chi.Prob(float64(df)*s*s)
	}
	power := func(shift float64) (p float64) {
		for i, s := range at {
			p += weight[i] * (distuv.UnitNormal.CDF(shift-critical*s) + distuv.UnitNormal.CDF(-shift-critical*s))
		}
		return p
	}
	low, high := 0.0, 40.0
	for high-low > 1e-9 {
		if mid := (low + high) / 2; power(mid) < 0.8 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
