package likeliest

import (
	"math"
	"testing"

	"foamfield/analysis/latent"
)

func TestResidualsRespectBounds(t *testing.T) {
	x, y := bounded(t, "four_kinds")
	for _, fam := range all {
		f, err := FitScale(fam, x, y)
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range f.Residuals() {
			back := func(z float64) float64 { // to the original unit
				u := f.Predict(x.RawRowView(i)) + f.Scale*z
				if fam != latent.Normal {
					return math.Exp(u)
				}
				return u
			}
			if !math.IsInf(y[i].High, 1) {
				within(t, "high", back(r.High), y[i].High, 1e-12, 0)
			} else if !math.IsInf(r.High, 1) {
				t.Errorf("%v %v: %+v", fam, y[i], r)
			}
			if y[i].Low > 0 {
				within(t, "low", back(r.Low), y[i].Low, 1e-12, 0)
			} else if !math.IsInf(r.Low, -1) {
				t.Errorf("%v %v: %+v", fam, y[i], r)
			}
			exact := y[i].Low == y[i].High
			if fam == latent.Normal && exact {
				within(t, "score", r.Score, r.Low, 1e-12, 1e-12)
			}
			if lo, hi := fam.NormalScore(r.Low, r.Low), fam.NormalScore(r.High, r.High); !exact && !(r.Score > lo && r.Score < hi) {
				t.Errorf("%v %v: score %g outside %g..%g", fam, y[i], r.Score, lo, hi)
			}
		}
	}
}
