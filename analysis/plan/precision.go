package plan

import (
	"math"

	"foamfield/analysis/regress"
	"foamfield/analysis/result"

	"gonum.org/v1/gonum/mat"
)

// Scatter is what two mixes of one formula are taken to differ by before any log says so:
// holds scatter by 15 to 30 % in kitchens (from memory, unverified).
var Scatter = [2]float64{0.15, 0.30}

// Efficiency is 100·|X'X/n|^(1/p) of coded points: 100 only where every term is told as
// well as n trials at the corners of a straight surface would. 0 where the points cannot
// tell all terms.
func Efficiency(points [][]float64, terms func([]float64) []float64) float64 {
	m := information(points, terms, nil)
	var c mat.Cholesky
	if !c.Factorize(m) || c.Cond() > 1e12 {
		return 0
	}
	return 100 * math.Exp(c.LogDet()/float64(m.SymmetricDim())) / float64(len(points))
}

// Variance is f(x)'(X'X)⁻¹f(x), mean and most over places, in variances of one trial; +Inf
// where the points cannot tell all terms.
func Variance(points, places [][]float64, terms func([]float64) []float64) (mean, most float64) {
	m := information(points, terms, nil)
	var c mat.Cholesky
	if !c.Factorize(m) || c.Cond() > 1e12 {
		return math.Inf(1), math.Inf(1)
	}
	for _, x := range places {
		f := terms(x)
		v := mat.NewVecDense(len(f), f)
		var solved mat.VecDense
		if err := c.SolveVecTo(&solved, v); err != nil {
			return math.Inf(1), math.Inf(1)
		}
		d := mat.Dot(v, &solved)
		mean, most = mean+d/float64(len(places)), max(most, d)
	}
	return mean, most
}

// tells works out what the week will be able to tell of hold, by a straight surface: of
// one with squares and products too few trials have much left to judge it by.
func tells(g region, at []point, repeats int) *result.PlanTells {
	points, places := make([][]float64, len(at)), make([][]float64, len(g.places))
	for i, p := range at {
		points[i] = g.coded(p)
	}
	for i, p := range g.places {
		places[i] = g.coded(p)
	}
	t := &result.PlanTells{Scatter: Scatter, Moves: map[string]result.PlanShows{}, Repeats: repeats,
		Terms: len(curved(places[0])), DEfficiency: Efficiency(points, curved), StraightEfficiency: Efficiency(points, straight)}
	t.MeanVariance, t.MostVariance = Variance(points, places, straight)
	m := information(points, straight, nil)
	df := len(at) - m.SymmetricDim()
	var c mat.Cholesky
	var inverse mat.SymDense
	if df < 1 || !c.Factorize(m) || c.InverseTo(&inverse) != nil {
		return t
	}
	apart := regress.SmallestShown(df)
	shows := func(variance float64) (s result.PlanShows) {
		for i, to := range []*float64{&s.Least, &s.Most} {
			sd := math.Sqrt(math.Log1p(Scatter[i] * Scatter[i])) // of ln hold
			*to = math.Exp(apart * sd * math.Sqrt(variance))
		}
		return s
	}
	t.Formulas = shows(2)
	for i, s := range g.sides {
		t.Moves[sideNames[s]] = shows(4 * inverse.At(i+1, i+1)) // both ends of the side are two apart
	}
	return t
}

// sideNames are the variables of the box as results call them.
var sideNames = [...]string{"fat_percent", "emulsifier_percent", "blend_hlb"}
