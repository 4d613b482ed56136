package region

import (
	"math"
	"math/rand/v2"
	"slices"

	"foamfield/analysis/posterior"

	"gonum.org/v1/gonum/mat"
)

// Draws holds parameter draws of equal weight for every link.
type Draws struct {
	chain *Chain
	links []*mat.Dense
	own   [][]float64 // by link and draw: how far the surface misses the mix, standard normal
	n     int
}

// Draw takes n draws of every link.
func (c *Chain) Draw(n int, rng *rand.Rand) *Draws {
	believed := make([]*posterior.Posterior, len(c.Links))
	for i := range believed {
		believed[i] = c.Links[i].Believed()
	}
	return c.DrawFrom(believed, n, rng)
}

// DrawFrom takes n draws of every link from others than its own.
func (c *Chain) DrawFrom(believed []*posterior.Posterior, n int, rng *rand.Rand) *Draws {
	d := &Draws{chain: c, n: n}
	for _, from := range believed {
		d.links = append(d.links, from.Equal(n, rng))
		own := make([]float64, n)
		for k := range own {
			own[k] = rng.NormFloat64()
		}
		d.own = append(d.own, own)
	}
	return d
}

// Without is the weight of every draw in the belief that forgets a trial: the likelihood of
// what the trial showed is divided out, weights capped by the square-root rule of
// truncated importance sampling (Ionides 2008, J. Comput. Graph. Stat. 17:295). LogLik is
// that of one link's draw.
func (d *Draws) Without(links []int, logLik func(link int, draw []float64) float64) []float64 {
	w := make([]float64, d.n)
	least := math.Inf(1)
	for k := range w {
		for _, i := range links {
			w[k] -= logLik(i, d.links[i].RawRowView(k))
		}
		least = min(least, w[k])
	}
	sum := 0.0
	for k := range w {
		w[k] = math.Exp(math.Min(w[k]-least, 600))
		sum += w[k]
	}
	most := sum / math.Sqrt(float64(d.n))
	for k := range w {
		w[k] = math.Min(w[k], most)
	}
	return w
}

// Shares is the long-run share of mixes that work, draw by draw.
func (d *Draws) Shares(mix []float64) []float64 {
	f := d.chain.Basis.Features(mix)
	s := make([]float64, d.n)
	for k := range s {
		p := 1.0
		for i := range d.links {
			p *= d.chain.Links[i].passesWith(f, d.links[i].RawRowView(k), d.own[i][k])
		}
		s[k] = p
	}
	return s
}

// Believed is the share of mixes the surface itself foresees, for the first n draws:
// without the mix's own offset, of which no other mix tells anything.
func (d *Draws) Believed(mix []float64, n int) []float64 {
	f := d.chain.Basis.Features(mix)
	s := make([]float64, min(n, d.n))
	for k := range s {
		p := 1.0
		for i := range d.links {
			p *= d.chain.Links[i].passesGiven(f, d.links[i].RawRowView(k))
		}
		s[k] = p
	}
	return s
}

// Passing is the share of mixes that the surface itself foresees to pass one link, for the
// first n draws.
func (d *Draws) Passing(link int, mix []float64, n int) []float64 {
	f := d.chain.Basis.Features(mix)
	s := make([]float64, min(n, d.n))
	for k := range s {
		s[k] = d.chain.Links[link].passesGiven(f, d.links[link].RawRowView(k))
	}
	return s
}

// Limits are the mean of the long-run share and its quantiles (1-level)/2 and (1+level)/2.
func (d *Draws) Limits(mix []float64, level float64) (mean, low, high float64) {
	return limits(d.Shares(mix), level)
}

// PassLimits are the same of the share that passes one link at some features.
func (d *Draws) PassLimits(link int, f []float64, level float64) (mean, low, high float64) {
	s := make([]float64, d.n)
	for k := range s {
		s[k] = d.chain.Links[link].passesWith(f, d.links[link].RawRowView(k), d.own[link][k])
	}
	return limits(s, level)
}

func limits(s []float64, level float64) (mean, low, high float64) {
	slices.Sort(s)
	for _, v := range s {
		mean += v / float64(len(s))
	}
	at := func(q float64) float64 {
		x := q * float64(len(s)-1)
		i := min(int(x), len(s)-2)
		return s[i] + (x-float64(i))*(s[i+1]-s[i])
	}
	return mean, at((1 - level) / 2), at((1 + level) / 2)
}
