package fits

import (
	"math"

	"foamfield/analysis/belief"
	"foamfield/analysis/latent"
	"foamfield/analysis/likeliest"
	"foamfield/analysis/region"
	"foamfield/analysis/result"
	"foamfield/analysis/works"
)

// Residuals lists every number against the fit its result is judged by, in the
// log's order, with day and cook beside: whoever draws them sees what moves in
// time.
func (v *Fits) Residuals() (out []result.Residual) {
	each := make([][]result.Residual, len(v.links))
	region.Parallel(len(v.links), func(i int) { each[i] = v.residualsOf(&v.links[i]) })
	for _, r := range each {
		out = append(out, r...)
	}
	return out
}

func (v *Fits) residualsOf(l *belief.Link) (out []result.Residual) {
	f := v.Judged(l.Outcome)
	if f == nil || l.Answers != nil {
		return nil
	}
	fit, x := v.Fitted(l.Outcome, f.Distribution, f.Order), design(v.on, l, f.Order)
	var left []likeliest.LeftOut
	if fit.N <= mostLeftOut {
		left = fit.LeaveOneOut()
	}
	for i, z := range fit.Residuals() {
		t := l.Trials[i]
		r := result.Residual{Result: string(l.Outcome), At: t.At.String(), ID: t.ID, Order: t.Order, Day: t.Day, Cook: t.Cook,
			Fitted:       middle(fit.Family, fit.Predict(x.RawRowView(i)), fit.Scale),
			Standardised: result.Interval{Low: works.Finite(z.Low), High: works.Finite(z.High)}, Score: works.Finite(z.Score)}
		if fit.Family != latent.Normal {
			r.Ratio = &result.Interval{Low: ratio(l.Seen[i].Low, r.Fitted), High: ratio(l.Seen[i].High, r.Fitted)}
		}
		if left != nil && left[i].Err == nil {
			r.LeftOut = works.Finite(middle(fit.Family, left[i].Eta, left[i].Scale))
			r.LeftOutLogLike = works.Finite(left[i].LogLik)
		}
		out = append(out, r)
	}
	return out
}

// ratio is null for a bound that is none.
func ratio(seen, fitted float64) *float64 {
	if seen <= 0 {
		return nil
	}
	return works.Finite(seen / fitted)
}

// middle is the median at a place on the line, in the unit of the result.
func middle(fam latent.Family, eta, scale float64) float64 {
	switch fam {
	case latent.Normal:
		return eta
	case latent.Weibull:
		eta += math.Log(math.Ln2) * scale
	}
	return math.Exp(eta)
}
