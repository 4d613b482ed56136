package plan

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// Layout is a way to place trials in the box.
type Layout uint8

// The layouts. Cover is the one that is taken: on simulated kitchens its surest starts
// work most often (cmd/kitchens plan).
const (
	Cover     Layout = iota // every mix of the region has a trial near by
	Scattered               // a Latin hypercube whose points keep apart
	Corners                 // the corners of a box, its axes' ends, its centre
	Sharp                   // second-order terms told as exactly as may be (D)
	Even                    // a second-order surface told evenly over the region (I)
)

// Layouts lists them.
var Layouts = []Layout{Cover, Scattered, Corners, Sharp, Even}

var layoutNames = [...]string{"cover", "scattered", "corners", "sharp", "even"}

func (l Layout) String() string { return layoutNames[l] }

// levels is how finely the box is divided along each side that is varied.
const levels = 9

// tried is the part of each side of the box, of fat, emulsifier and HLB, that a first week
// tries: the richest third mostly clogs, the least emulsifier covers nothing, and few blends
// at either end suit.
var tried = [3]Span{{0, 0.65}, {0.25, 1}, {0.15, 0.9}}

// How much of that, in the order of thickness, is for the first day, and where the thickest
// begins, which is left for when something is known. Settled on simulated kitchens, as is
// what is tried.
const thin, thickest = 0.2, 0.8

// region is the places of the box that trials may take, in the order of thickness.
type region struct {
	ranges Ranges
	sides  []int
	places []point
}

// regionOf is the places of the box between two shares of it in the order of thickness.
func regionOf(r Ranges, from, to float64) region {
	g := region{ranges: r, sides: r.varied()}
	all := []point{{}}
	for _, s := range g.sides {
		var next []point
		for _, p := range all {
			for i := range levels {
				p[s] = tried[s].at((float64(i) + 0.5) / levels)
				next = append(next, p)
			}
		}
		all = next
	}
	slices.SortStableFunc(all, func(a, b point) int { return cmp.Compare(g.thickness(a), g.thickness(b)) })
	n := float64(len(all))
	first := int(from * n)
	g.places = all[first:max(first+1, int(math.Round(to*n)))]
	return g
}

func (g region) thickness(p point) float64 { return Thickness(g.ranges.mix(p)) }

// distance is the square of that in sides of the box.
func (g region) distance(a, b point) (d float64) {
	for _, s := range g.sides {
		d += (a[s] - b[s]) * (a[s] - b[s])
	}
	return d
}

// nearest is the place of the region that is closest.
func (g region) nearest(p point) point {
	return slices.MinFunc(g.places, func(a, b point) int { return cmp.Compare(g.distance(a, p), g.distance(b, p)) })
}

func (g region) centre() (c point) {
	for _, p := range g.places {
		for i := range c {
			c[i] += p[i] / float64(len(g.places))
		}
	}
	return c
}

// points places n points of the region beside those that stand elsewhere.
func (l Layout) points(g region, n int, beside []point, rng *rand.Rand) []point {
	switch l {
	case Scattered:
		return g.scattered(n, beside, rng)
	case Corners:
		return g.corners(n)
	case Sharp, Even:
		return g.exchange(n, beside, l)
	}
	return g.cover(n, beside)
}

// cover moves n points until each is in the middle of the places nearest to it (Lloyd 1982,
// IEEE Trans. Inf. Theory 28:129).
func (g region) cover(n int, beside []point) []point {
	at := g.spread(n, beside)
	for range 50 {
		sum, count := make([]point, n+len(beside)), make([]float64, n+len(beside))
		all := slices.Concat(at, beside)
		for _, p := range g.places {
			i := g.closest(all, p)
			count[i]++
			for s := range p {
				sum[i][s] += p[s]
			}
		}
		for i := range at {
			if count[i] > 0 {
				for s := range at[i] {
					at[i][s] = sum[i][s] / count[i]
				}
			}
		}
	}
	return at
}

func (g region) closest(at []point, p point) int {
	best := 0
	for i := range at {
		if g.distance(at[i], p) < g.distance(at[best], p) {
			best = i
		}
	}
	return best
}

// spread takes, again and again, the place farthest from all taken; the first is the centre
// where none stands elsewhere.
func (g region) spread(n int, beside []point) []point {
	var at []point
	if len(beside) == 0 {
		at = append(at, g.nearest(g.centre()))
	}
	far := make([]float64, len(g.places))
	for i, p := range g.places {
		far[i] = math.Inf(1)
		for _, o := range slices.Concat(at, beside) {
			far[i] = min(far[i], g.distance(p, o))
		}
	}
	for len(at) < n {
		best := 0
		for i := range far {
			if far[i] > far[best]+1e-12 {
				best = i
			}
		}
		at = append(at, g.places[best])
		for i, p := range g.places {
			far[i] = min(far[i], g.distance(p, g.places[best]))
		}
	}
	return at
}

// hypercubes is how many are tried.
const hypercubes = 200

// scattered is the Latin hypercube, of many tried, whose closest two points are farthest
// apart once each is taken to the region (Morris and Mitchell 1995, J. Stat. Plan. Inference
// 43:381, of whose criterion this is the first part).
func (g region) scattered(n int, beside []point, rng *rand.Rand) []point {
	var best []point
	apart := -1.0
	for range hypercubes {
		at := make([]point, n)
		for _, s := range g.sides {
			for i, k := range rng.Perm(n) {
				at[i][s] = (float64(k) + 0.5) / float64(n)
			}
		}
		closest := math.Inf(1)
		for i := range at {
			at[i] = g.nearest(at[i])
			for _, o := range slices.Concat(at[:i], beside) {
				closest = min(closest, g.distance(at[i], o))
			}
		}
		if closest > apart {
			best, apart = at, closest
		}
	}
	return best
}

// composite is the corners and the ends of the axes of a rotatable central composite
// design in k variables, the ends at 1 and the corners nearer by 2^(k/4) (NIST/SEMATECH
// e-Handbook 5.3.3.6.1, the inscribed kind); half the corners stand first, then the axes.
func composite(k int) [][]float64 {
	corner := math.Pow(2, -float64(k)/4)
	var first, rest, axes [][]float64
	for i := range 1 << k {
		c, ones := make([]float64, k), 0
		for j := range c {
			c[j] = corner * float64(2*(i>>j&1)-1)
			ones += i >> j & 1
		}
		if ones%2 == k%2 {
			first = append(first, c)
		} else {
			rest = append(rest, c)
		}
	}
	for j := range k {
		for _, sign := range [...]float64{-1, 1} {
			a := make([]float64, k)
			a[j] = sign
			axes = append(axes, a)
		}
	}
	return slices.Concat(first, axes, rest)
}

// corners is a composite about the region's centre, as large as what is tried lets it be, then
// the centre again and again; what lies outside goes to the region.
func (g region) corners(n int) []point {
	c := g.centre()
	var at []point
	for _, x := range composite(len(g.sides)) {
		p := c
		for k, s := range g.sides {
			p[s] += x[k] * min(c[s]-tried[s].Low, tried[s].High-c[s])
		}
		at = append(at, g.nearest(p))
	}
	for len(at) < n {
		at = append(at, g.nearest(c))
	}
	return at[:n]
}
