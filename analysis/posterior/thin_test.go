package posterior

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"foamfield/ingest/thorough"
)

// unthinned is a density that is held against every observation.
type unthinned struct{ density }

func (unthinned) observations() int { return many }

// Beyond many observations a few stand for all. Over draws that matter the logarithm of the
// density is then off by less than 0.1, one standard deviation, where an independent draw of
// it scatters by 2 and more, and the mean of every parameter by less than 0.05 of its own.
func TestThinned(t *testing.T) {
	rare := yesNoOf(9000, 4)
	for i := range rare.Y {
		rare.Y[i] = rare.Y[i] && i%20 == 0
	}
	signed := yesNoOf(20_000, 5)
	row := make([]float64, len(signed.Prior))
	row[2] = -1
	signed.Signs = []Sign{{Row: row, Soft: 0.3}}
	for _, c := range thorough.Glance(t, 3, []struct {
		name string
		of   func() density
	}{
		{"40 events", func() density { return newYesNoDensity(rare) }},
		{"with a sign", func() density { return newYesNoDensity(signed) }},
		{"a line", func() density { return lineDensityOf(lineOf(9000, 6)) }},
	}) {
		t.Run(c.name, func(t *testing.T) {
			all := c.of()
			centre, cov, err := mode(all)
			if err != nil {
				t.Fatal(err)
			}
			few := thin(all, centre, cov)
			if n := few.density.observations(); n < fewKept*9/10 || n > fewKept*11/10 {
				t.Errorf("%d observations are kept", n)
			}
			const n = 600
			draws, proposed := mat.NewDense(n, len(centre), nil), make([]float64, n)
			if _, err := propose(draws, proposed, centre, cov, rand.New(rand.NewPCG(1, 2))); err != nil {
				t.Fatal(err)
			}
			a, b := make([]float64, n), make([]float64, n)
			weigh(all, draws, a, nil)
			weigh(few, draws, b, nil)
			off := make([]float64, n)
			for k := range a {
				off[k] = b[k] - a[k]
				a[k], b[k] = a[k]-proposed[k], b[k]-proposed[k]
			}
			right, thinned := &Posterior{draws: draws}, &Posterior{draws: draws}
			for p, logw := range map[*Posterior][]float64{right: a, thinned: b} {
				if _, err := p.count(logw); err != nil {
					t.Fatal(err)
				}
				p.moments()
			}
			mean, square := 0.0, 0.0
			for k, w := range right.weight {
				mean += w * off[k]
				square += w * off[k] * off[k]
			}
			t.Logf("log density ±%.4f", math.Sqrt(square-mean*mean))
			if sd := math.Sqrt(square - mean*mean); !(sd < 0.1) {
				t.Errorf("the log density is off by %.4f", sd)
			}
			for i, m := range thinned.Mean {
				if by := (m - right.Mean[i]) / math.Sqrt(right.Cov.At(i, i)); !(math.Abs(by) < 0.05) {
					t.Errorf("parameter %d is off by %.3f standard deviations", i, by)
				}
			}
		})
	}
}

// The whole recipe on a few gives the chances that it gives on all observations, to what
// its own draws scatter them.
func TestThinnedChances(t *testing.T) {
	thorough.NotShort(t, "samples with thousands of observations")
	y, l := yesNoOf(9000, 7), lineOf(9000, 8)
	near := func(what string, a, b, most float64) {
		t.Helper()
		if !(math.Abs(a-b) < most) {
			t.Errorf("%s: %.5f from all, %.5f from a few", what, a, b)
		}
	}
	stream := func(k uint64) *rand.Rand { return rand.New(rand.NewPCG(k, 3)) }
	all, err := sample(unthinned{newYesNoDensity(y)}, false, 1, stream(1))
	if err != nil {
		t.Fatal(err)
	}
	few, err := y.Sample(stream(2))
	if err != nil {
		t.Fatal(err)
	}
	whole := &YesNoPosterior{all, []Edge{{1, 1, all.Mean, all.Cov, all.leaning()}}}
	allLine, err := sample(unthinned{lineDensityOf(l)}, false, 1, stream(3))
	if err != nil {
		t.Fatal(err)
	}
	fewLine, err := l.Sample(stream(4))
	if err != nil {
		t.Fatal(err)
	}
	for _, z := range somewhere {
		f := curved(z)
		near("a yes", whole.Yes(f), few.Yes(f), 0.003)
		near("at least 15", newLinePosterior(allLine).AtLeast(f, math.Log(15), 0), fewLine.AtLeast(f, math.Log(15), 0), 0.003)
		_, sd := newLinePosterior(allLine).Level(f)
		_, fewSD := fewLine.Level(f)
		near("its spread", 1, fewSD/sd, 0.1)
	}
}

// Each place stands for as many as its share bids, the largest for themselves.
func TestChosen(t *testing.T) {
	sizes := make([]float64, 5000)
	total := 0.0
	for i := range sizes {
		sizes[i] = math.Pow(float64(i%97), 3)
		if i%1000 == 7 {
			sizes[i] = 1e9
		}
		total += sizes[i]
	}
	index, times := chosen(sizes, 300)
	sum, all, seen := 0.0, 0.0, map[int]bool{}
	for k, i := range index {
		if seen[i] || times[k] < 1 {
			t.Errorf("place %d counts %v times", i, times[k])
		}
		seen[i] = true
		if sizes[i] == 1e9 && times[k] != 1 {
			t.Errorf("one of the largest counts %v times", times[k])
		}
		sum, all = sum+times[k]*sizes[i], all+times[k]
	}
	if len(index) < 299 || len(index) > 301 || math.Abs(sum/total-1) > 0.01 || math.Abs(all/5000-1) > 0.1 {
		t.Errorf("%d places stand for %.0f, and for %.4f of the sum", len(index), all, sum/total)
	}
}

func BenchmarkLine20000(b *testing.B) {
	l := lineOf(20_000, 1)
	for b.Loop() {
		if _, err := l.Sample(rand.New(rand.NewPCG(1, 1))); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkYesNo20000(b *testing.B) {
	y := yesNoOf(20_000, 1)
	for b.Loop() {
		if _, err := y.Sample(rand.New(rand.NewPCG(1, 1))); err != nil {
			b.Fatal(err)
		}
	}
}
