package regress

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// LackOfFit compares how far the fit misses the means of repeats with how far
// repeats differ among themselves.
type LackOfFit struct {
	LackSS, PureSS float64 // sums of squares, weighted as the fit is
	LackDF, PureDF int
	F, P           float64
}

// PureSD is the standard deviation of repeats.
func (l LackOfFit) PureSD() float64 { return math.Sqrt(l.PureSS / float64(l.PureDF)) }

// LackOfFit takes observations with the same group label for repeats.
func (f *Fit) LackOfFit(groups []int) (LackOfFit, error) {
	if len(groups) != f.N {
		panic("regress: groups and observations differ in length")
	}
	first := map[int]int{}
	type pile struct{ w, sum float64 } // of differences from the group's first value
	var piles []pile
	weight := func(i int) float64 {
		if f.weights == nil {
			return 1
		}
		return f.weights[i]
	}
	origin := make([]float64, 0, f.N)
	for i, g := range groups {
		k, seen := first[g]
		if !seen {
			k = len(piles)
			first[g] = k
			piles = append(piles, pile{})
			origin = append(origin, f.y[i])
		}
		piles[k].w += weight(i)
		piles[k].sum += weight(i) * (f.y[i] - origin[k])
	}
	var l LackOfFit
	for i, g := range groups {
		k := first[g]
		d := f.y[i] - origin[k] - piles[k].sum/piles[k].w
		l.PureSS += weight(i) * d * d
	}
	l.PureDF = f.N - len(piles)
	l.LackDF = f.DF - l.PureDF
	refusal := &Refusal{N: f.N, Parameters: f.N - f.DF, Groups: len(piles)}
	switch {
	case l.PureDF == 0:
		refusal.Status = NoRepeats
	case l.LackDF <= 0:
		refusal.Status = NoLack
	case l.PureSS == 0:
		refusal.Status = RepeatsAlike
	default:
		l.LackSS = math.Max(0, f.RSS-l.PureSS)
		l.F = l.LackSS / float64(l.LackDF) / (l.PureSS / float64(l.PureDF))
		l.P = aboveF(l.F, float64(l.LackDF), float64(l.PureDF))
		return l, nil
	}
	return LackOfFit{}, refusal
}

// Interval is an estimate with its standard error and limits.
type Interval struct {
	Estimate, SE, Low, High float64
}

// Combination is the combination a of the coefficients, with limits of Student's
// t on DF: a row of a design gives the mean there, the difference of two rows
// compares them.
func (f *Fit) Combination(a []float64, confidence float64) Interval {
	estimate, v := f.at(a)
	return f.around(estimate, math.Sqrt(v), confidence)
}

// Next is a new observation of weight 1 at row a of a design.
func (f *Fit) Next(a []float64, confidence float64) Interval {
	estimate, v := f.at(a)
	return f.around(estimate, math.Sqrt(v+f.ResidualSD*f.ResidualSD), confidence)
}

func (f *Fit) at(a []float64) (estimate, variance float64) {
	v := mat.NewVecDense(len(a), a)
	return dot(a, f.Coef), math.Max(0, mat.Inner(v, f.Covariance, v))
}

func (f *Fit) around(estimate, se, confidence float64) Interval {
	t := distuv.StudentsT{Sigma: 1, Nu: float64(f.DF)}.Quantile((1 + confidence) / 2)
	return Interval{Estimate: estimate, SE: se, Low: estimate - t*se, High: estimate + t*se}
}

// TermTest is the F test of some columns given all the others.
type TermTest struct {
	F         float64 // NaN where it does not exist: no spread, or columns too alike
	Terms, DF int
	P         float64
}

// Test asks whether the coefficients of the given columns could all be 0: the F
// statistic bᵀ V⁻¹ b over their number.
func (f *Fit) Test(columns ...int) TermTest {
	k := len(columns)
	if k == 0 {
		panic("regress: a test of no columns")
	}
	b, v := mat.NewVecDense(k, nil), mat.NewSymDense(k, nil)
	for i, c := range columns { // in units of each standard error
		b.SetVec(i, f.Coef[c]/f.SE[c])
		for j := i; j < k; j++ {
			d := columns[j]
			v.SetSym(i, j, f.Covariance.At(c, d)/f.SE[c]/f.SE[d])
		}
	}
	t := TermTest{Terms: k, DF: f.DF, F: math.NaN(), P: math.NaN()}
	var chol mat.Cholesky
	var solved mat.VecDense
	if f.ResidualSD > 0 && chol.Factorize(v) && chol.SolveVecTo(&solved, b) == nil {
		t.F = mat.Dot(b, &solved) / float64(k)
		t.P = aboveF(t.F, float64(k), float64(f.DF))
	}
	return t
}
