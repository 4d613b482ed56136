package leaning

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// A gamma variable with shape 4/skew² is skewed by exactly that: gonum's distribution
// function is the reference.
func TestLeanedAgainstGamma(t *testing.T) {
	for _, c := range []struct{ skew, within float64 }{{0.2, 0.0003}, {0.4, 0.0012}, {0.6, 0.0045}, {0.8, 0.012}} {
		shape := 4 / (c.skew * c.skew)
		gamma := distuv.Gamma{Alpha: shape, Beta: 1}
		worst, normal := 0.0, 0.0
		for z := -2.5; z <= 3; z += 0.1 {
			exact := gamma.CDF(shape + z*math.Sqrt(shape))
			worst = math.Max(worst, math.Abs(distuv.UnitNormal.CDF(Leaned(z, c.skew))-exact))
			mirrored := distuv.UnitNormal.CDF(-Leaned(-z, -c.skew))
			worst = math.Max(worst, math.Abs(mirrored-exact))
			normal = math.Max(normal, math.Abs(distuv.UnitNormal.CDF(z)-exact))
		}
		t.Logf("skew %.1f: off by %.5f at most, a normal by %.5f", c.skew, worst, normal)
		if worst > c.within || worst > normal/3 {
			t.Errorf("skew %.1f: off by %.5f", c.skew, worst)
		}
	}
}

// The other way has the moments asked for, by the nine points that integrate it.
func TestLeansHasItsMoments(t *testing.T) {
	x, w := make([]float64, 9), make([]float64, 9)
	quad.Hermite{}.FixedLocations(x, w, math.Inf(-1), math.Inf(1))
	for _, skew := range []float64{-0.9, -0.3, 0, 0.5, 1} {
		var m [4]float64
		for k := range x {
			at, power := Leans(math.Sqrt2*x[k], skew), 1.0
			for i := range m {
				m[i] += w[k] / math.Sqrt(math.Pi) * power
				power *= at
			}
		}
		if math.Abs(m[1]) > 1e-12 || math.Abs(m[2]-1) > 1e-12 || math.Abs(m[3]-skew) > 0.08 {
			t.Errorf("skew %.1f: moments %.4f", skew, m)
		}
	}
}

// Rows are found whose cubes add up to the third moments of draws that lean in three
// directions, at combinations that nothing was fitted to.
func TestLeaningOfDraws(t *testing.T) {
	const n, size = 4000, 5
	rng := rand.New(rand.NewPCG(8, 1))
	draws, weight := mat.NewDense(n, size, nil), make([]float64, n)
	total := 0.0
	for i := range n {
		weight[i] = 0.5 + rng.Float64()
		total += weight[i]
		row := draws.RawRowView(i)
		for k := range row {
			row[k] = rng.NormFloat64()
		}
		long := rng.ExpFloat64() - 1
		row[0] += 2 * long
		row[1] -= long
		row[3] += 1.5 * (rng.ExpFloat64() - 1) * (1 + 0.2*row[4])
	}
	for i := range weight {
		weight[i] /= total
	}
	mean, cov := make([]float64, size), mat.NewSymDense(size, nil)
	for i, w := range weight {
		floats.AddScaled(mean, w, draws.RawRowView(i))
	}
	for i, w := range weight {
		floats.Sub(draws.RawRowView(i), mean)
		cov.SymRankOne(cov, w, draws.RowView(i))
	}
	rows := Of(draws, weight, cov)
	for range 50 {
		f := make([]float64, size)
		for k := range f {
			f[k] = rng.NormFloat64()
		}
		third := 0.0
		for i, w := range weight {
			third += w * math.Pow(floats.Dot(f, draws.RawRowView(i)), 3)
		}
		v := mat.NewVecDense(size, f)
		sd := math.Sqrt(mat.Inner(v, cov, v))
		if got, want := Skewness(rows.Third(f), sd), Skewness(third, sd); math.Abs(got-want) > 0.1 {
			t.Errorf("at %.1f: skewness %.3f by rows, %.3f by draws", f, got, want)
		}
	}
}
