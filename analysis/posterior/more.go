package posterior

import (
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
)

// More is a belief's line from n draws of its own: a tail holds few of those that its
// moments rest on. The moments stay those of the belief.
func (l Line) More(of *LinePosterior, n int, rng *rand.Rand) (*Posterior, error) {
	out, err := more(lineDensityOf(l), of.Mean, of.Cov, n, rng)
	if err != nil {
		return nil, err
	}
	out.Mean, out.Cov = of.Mean, of.Cov
	return out, nil
}

// More is the same of a yes/no line.
func (y YesNo) More(of *YesNoPosterior, n int, rng *rand.Rand) (*Posterior, error) {
	each := make([]*Posterior, len(of.Edges))
	for k, e := range of.Edges {
		var err error
		if each[k], err = more(newYesNoDensity(y.times(e.Steepness)), e.Mean, e.Cov, n/2, rng); err != nil {
			return nil, err
		}
	}
	out := mixture(each, y.believed(of.Edges, each))
	out.Mean, out.Cov = of.Mean, of.Cov
	return out, nil
}

// more draws in one round, as wide as the later ones of the recipe.
func more(d density, mean []float64, cov *mat.SymDense, n int, rng *rand.Rand) (*Posterior, error) {
	return new(room).round(d, mean, wider(cov, 1.3), n, false, rng)
}
