package line

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Noncentralities of chi-squared that are beyond its 5 % limit 8 times in 10, as tables have them
// (Haynam, Govindarajulu and Leone 1962; also in Cohen 1988).
func TestPowerAsTables(t *testing.T) {
	for steps, want := range map[int]float64{1: 7.849, 2: 9.635, 3: 10.903, 4: 11.935, 5: 12.828, 10: 16.241} {
		if got := Power(steps); math.Abs(got*got-want) > 0.002 {
			t.Errorf("%d steps: %.4f, want %.3f", steps, got*got, want)
		}
	}
}

// Groups that scatter by so much are seen to 8 times in 10.
func TestSpreadIsSeen(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	for _, groups := range []int{4, 15, 200} {
		const variance, logs = 0.04, 3000
		sd := Spread(groups, variance)
		limit := distuv.ChiSquared{K: float64(groups - 1)}.Quantile(0.95)
		seen := 0.0
		for range logs {
			means := make([]float64, groups)
			for i := range means {
				means[i] = sd*rng.NormFloat64() + math.Sqrt(variance)*rng.NormFloat64()
			}
			if stat.Variance(means, nil)*float64(groups-1)/variance > limit {
				seen++
			}
		}
		if math.Abs(seen/logs-0.8) > 0.025 {
			t.Errorf("%d groups, SD %.3f: seen in %.3f", groups, sd, seen/logs)
		}
	}
}
