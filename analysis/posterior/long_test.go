package posterior

import (
	"math"
	"math/rand/v2"
	"testing"

	"foamfield/ingest/thorough"

	"gonum.org/v1/gonum/mat"
)

// A long random-walk Metropolis chain (Metropolis et al. 1953, J. Chem. Phys. 21:1087;
// steps scaled as Roberts, Gelman and Gilks 1997, Ann. Appl. Probab. 7:110) knows
// nothing of proposals, rounds and weights. Chances from the weighted draws must be
// those of the chain, and so must the closed forms on their moments.
func TestAgreesWithALongChain(t *testing.T) {
	thorough.NotShort(t, "walks some hundred thousand steps")
	const steps, burn = 120_000, 10_000
	few := func(events int) YesNo {
		y := yesNoOf(24, 5)
		for i := range y.Y {
			y.Y[i] = true
		}
		for i := range events { // spread over the trials
			y.Y[(7*i+3)%len(y.Y)] = false
		}
		return y
	}
	signed := few(3)
	row := make([]float64, len(signed.Prior))
	row[1] = -1
	signed.Signs = []Sign{{Row: row, Soft: 0.3}}
	line := lineOf(24, 6)
	for i := range line.Y { // half of them still standing at 20 or fallen before
		if i%2 == 0 {
			line.Y[i].Low, line.Y[i].High = math.Min(line.Y[i].Low, 20), math.Inf(1)
		}
	}
	for _, c := range []struct {
		name string
		d    density
		made func(*rand.Rand) (*Posterior, func(f []float64) float64)
		of   func(f, draw []float64) float64
		x    [][]float64
		// closed is how far the closed form may be off: it takes the belief for normal,
		// which that of a line with half its results open to one side is not quite.
		closed float64
	}{
		{"no event", newYesNoDensity(few(0)), yesNoMade(t, few(0)), YesGiven, few(0).X, 0.012},
		{"one event", newYesNoDensity(few(1)), yesNoMade(t, few(1)), YesGiven, few(1).X, 0.012},
		{"three events and a sign", newYesNoDensity(signed), yesNoMade(t, signed), YesGiven, signed.X, 0.012},
		{"a line half seen", &lineDensity{Line: line, x: dense(line.X, len(line.Prior))}, func(rng *rand.Rand) (*Posterior, func([]float64) float64) {
			p, err := line.Sample(rng)
			if err != nil {
				t.Fatal(err)
			}
			return p.Posterior, func(f []float64) float64 { return p.AtLeast(f, math.Log(20), 0.1) }
		}, func(f, draw []float64) float64 { return AtLeastGiven(f, draw, math.Log(20), 0.1) }, line.X, 0.025},
	} {
		t.Run(c.name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(11, 13))
			p, chance := c.made(rng)
			n := len(p.Mean)
			var chol mat.Cholesky
			if !chol.Factorize(p.Cov) {
				t.Fatal("the spread is not a covariance")
			}
			var lower mat.TriDense
			chol.LTo(&lower)
			at := mat.NewDense(1, n, append([]float64(nil), p.Mean...))
			next := mat.NewDense(1, n, nil)
			density := make([]float64, 1)
			logp := func(m *mat.Dense) float64 {
				c.d.batch(m, density, nil)
				return density[0]
			}
			now, size := logp(at), 2.38/math.Sqrt(float64(n))
			points := c.x[:6]
			sums := make([]float64, len(points))
			for k := range steps + burn {
				for i := range n {
					v := at.At(0, i)
					next.Set(0, i, v)
				}
				for j := range n {
					z := size * rng.NormFloat64()
					for i := j; i < n; i++ {
						next.Set(0, i, next.At(0, i)+lower.At(i, j)*z)
					}
				}
				if l := logp(next); math.Log(rng.Float64()) < l-now {
					at, next, now = next, at, l
				}
				if k >= burn {
					for i, f := range points {
						sums[i] += c.of(f, at.RawRowView(0)) / steps
					}
				}
			}
			draws, closed := 0.0, 0.0
			for i, f := range points {
				mean := 0.0
				for k, w := range p.weight {
					mean += w * c.of(f, p.draws.RawRowView(k))
				}
				draws = math.Max(draws, math.Abs(sums[i]-mean))
				closed = math.Max(closed, math.Abs(sums[i]-chance(f)))
			}
			t.Logf("largest difference of a chance: draws %.4f, closed form %.4f; effective draws %.0f", draws, closed, p.ESS)
			if draws > 0.012 {
				t.Errorf("the draws' chance differs by %.4f from the long chain's", draws)
			}
			if closed > c.closed {
				t.Errorf("the closed form's chance differs by %.4f from the long chain's", closed)
			}
			if p.ESS < EnoughESS {
				t.Errorf("%.0f effective draws", p.ESS)
			}
		})
	}
}

func yesNoMade(t *testing.T, y YesNo) func(*rand.Rand) (*Posterior, func([]float64) float64) {
	return func(rng *rand.Rand) (*Posterior, func([]float64) float64) {
		p, err := y.Sample(rng)
		if err != nil {
			t.Fatal(err)
		}
		return p.Posterior, p.Yes
	}
}
