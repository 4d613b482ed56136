package region

import (
	"cmp"
	"math"
	"runtime"
	"slices"
	"sync"
)

// Search looks for mixes in the tested range of a chain.
type Search struct {
	Chain  *Chain
	Tested *Tested
	Rules

	axes   [][]float64
	points []Point // the lattice, last variable fastest
}

// Rules are what a search minds beside the chance; nil minds nothing. Allowed forbids
// mixes that were tested for other reasons (too likely to clog). Known is between 0 and 1,
// how well a mix is known: of mixes of nearly the same chance the better known is surer.
type Rules struct {
	Allowed func(p Point) bool
	Known   func(mix []float64) float64
}

// Point is a mix and its chance. Tested is false outside the tested range, where
// neither Chance nor Passes are worked out; Core says whether it is near enough to what
// was tried to be named, Allowed whether it may be.
type Point struct {
	Mix                   []float64
	Passes                []float64 // of each link the chance to pass it, once it is reached
	Chance                float64
	worth                 float64 // the chance, less where the mix is little known
	LimitedBy             int     // the link with the largest share of first failures
	Tested, Core, Allowed bool
}

// latticeSteps is the number of values a variable, by the number of variables:
// about ten thousand mixes at most.
var latticeSteps = []int{1, 201, 61, 23, 11, 7, 5}

// NewSearch evaluates the chain on a lattice over the tested box.
func NewSearch(c *Chain, t *Tested, rules Rules) *Search {
	s := &Search{Chain: c, Tested: t, Rules: rules}
	d := len(t.Low)
	n := latticeSteps[min(d, len(latticeSteps)-1)]
	total := 1
	for i := range d {
		s.axes = append(s.axes, Steps(c.Basis.Coordinates[i], t.Low[i], t.High[i], n))
		total *= n
	}
	s.points = make([]Point, total)
	Parallel(total, func(k int) {
		mix := make([]float64, d)
		for i, at := d-1, k; i >= 0; i-- {
			mix[i] = s.axes[i][at%n]
			at /= n
		}
		s.points[k] = s.at(mix)
	})
	return s
}

// Parallel calls f for 0..n-1 on every processor; f must not share state.
func Parallel(n int, f func(int)) {
	workers := runtime.GOMAXPROCS(0)
	var wg sync.WaitGroup
	for w := range workers {
		wg.Go(func() {
			for k := n * w / workers; k < n*(w+1)/workers; k++ {
				f(k)
			}
		})
	}
	wg.Wait()
}

// Steps is n values from low to high, even on the variable's own scale.
func Steps(c Coordinate, low, high float64, n int) []float64 {
	if n < 2 || low == high {
		n = max(n, 1)
		v := make([]float64, n)
		for i := range v {
			v[i] = low
		}
		return v
	}
	v := make([]float64, n)
	for i := range v {
		u := float64(i) / float64(n-1)
		if c.Log {
			v[i] = math.Exp(math.Log(low)*(1-u) + math.Log(high)*u)
		} else {
			v[i] = low*(1-u) + high*u
		}
	}
	v[0], v[n-1] = low, high
	return v
}

// At is a mix and what the search makes of it.
func (s *Search) At(mix []float64) Point { return s.at(mix) }

func (s *Search) at(mix []float64) Point {
	p := Point{Mix: mix}
	if p.Tested, p.Core = s.Tested.reaches(mix); p.Tested {
		p.Passes = make([]float64, len(s.Chain.Links))
		p.Chance, p.LimitedBy = s.Chain.verdict(mix, p.Passes)
		p.Allowed = s.Allowed == nil || s.Allowed(p)
		p.worth = p.Chance
		if p.Allowed && s.Known != nil {
			p.worth *= s.Known(mix)
		}
	}
	return p
}

// Points is the lattice.
func (s *Search) Points() []Point { return s.points }

// Surest is the allowed mix with the highest chance that is well known, one that has
// the wanted chance before any that has not; false if none is allowed.
func (s *Search) Surest(wanted float64) (Point, bool) {
	surer := func(p, q Point) float64 {
		switch reaches := p.Chance >= wanted; {
		case reaches == (q.Chance >= wanted):
			return p.worth - q.worth
		case reaches:
			return 1
		}
		return -1
	}
	best := s.top(surer)
	if !best.Allowed {
		return best, false
	}
	if best.Chance < wanted { // perhaps a mix between those of the lattice has it
		if p := s.climb(s.Highest(), -1, allowed, likelier); p.Chance >= wanted {
			best = p
		}
	}
	return s.middle(s.climb(best, -1, allowed, surer), wanted), true
}

// FlatTop is how much less a mix may be worth than the top and still belong to it.
const FlatTop = 0.02

// middle moves a mix to the middle of those that are worth nearly as much: the very top of
// a flat hill is where the draws happen to put it, and its middle is furthest from
// every edge. Where hills are not one it stays.
func (s *Search) middle(top Point, wanted float64) Point {
	d := len(top.Mix)
	sum, n := make([]float64, d), 0.0
	good := func(p Point) bool {
		return p.Allowed && p.worth >= top.worth-FlatTop && (p.Chance >= wanted || top.Chance < wanted)
	}
	for _, p := range s.points {
		if !good(p) {
			continue
		}
		w := p.worth - top.worth + FlatTop
		for i, z := range s.Chain.Basis.Place(p.Mix) {
			sum[i] += w * z
		}
		n += w
	}
	if n == 0 {
		return top
	}
	mix := append([]float64(nil), top.Mix...)
	for i, z := range s.Chain.Basis.Place(top.Mix) {
		mix[i] = s.move(i, mix[i], sum[i]/n-z)
	}
	if p := s.at(mix); good(p) {
		return p
	}
	return top
}

// Highest is the allowed mix of the lattice with the highest chance, well known or not;
// one that is not allowed if none is.
func (s *Search) Highest() Point { return s.top(likelier) }

func (s *Search) top(better func(p, q Point) float64) (best Point) {
	for _, p := range s.points {
		if p.Allowed && (!best.Allowed || better(p, best) > 0) {
			best = p
		}
	}
	return best
}

func tested(p Point) bool  { return p.Tested }
func allowed(p Point) bool { return p.Allowed }

// likelier is by how much more often a mix works than another.
func likelier(p, q Point) float64 { return p.Chance - q.Chance }

// climb improves a mix by steps along each variable, halving them, among the mixes
// that may be named; the variable held, if any, keeps its value. What is better by is
// more than nothing.
func (s *Search) climb(p Point, held int, may func(Point) bool, better func(p, q Point) float64) Point {
	return s.climbBeside(p, func(i int) bool { return i == held }, may, better)
}

// climbBeside is climb with several variables held.
func (s *Search) climbBeside(p Point, held func(int) bool, may func(Point) bool, better func(p, q Point) float64) Point {
	d := len(p.Mix)
	step := make([]float64, d)
	for i := range d {
		c := s.Chain.Basis.Coordinates[i]
		step[i] = math.Abs(c.Of(s.Tested.High[i])-c.Of(s.Tested.Low[i])) / 20
	}
	for range 7 {
		for improved := true; improved; {
			improved = false
			for i := range d {
				if held(i) || step[i] == 0 {
					continue
				}
				for _, sign := range []float64{1, -1} {
					m := append([]float64(nil), p.Mix...)
					m[i] = s.move(i, m[i], sign*step[i])
					if q := s.at(m); may(q) && better(q, p) > 1e-7 {
						p, improved = q, true
					}
				}
			}
		}
		for i := range step {
			step[i] /= 2
		}
	}
	return p
}

// move shifts a value by a step in its coordinate, staying inside the box.
func (s *Search) move(i int, value, step float64) float64 {
	c := s.Chain.Basis.Coordinates[i]
	if c.Log {
		value = math.Exp(math.Log(value) + step*c.Scale)
	} else {
		value += step * c.Scale
	}
	return math.Min(math.Max(value, s.Tested.Low[i]), s.Tested.High[i])
}

// BestBeside is the likeliest mix whose held variables have the values given: one that may be
// named if there is one, else one that was tested, else false.
func (s *Search) BestBeside(held map[int]float64) (Point, bool) {
	for _, may := range []func(Point) bool{allowed, tested} {
		var best Point
		for _, p := range s.points {
			m, first := append([]float64(nil), p.Mix...), true
			for v, x := range held { // each mix of the other variables once
				first = first && p.Mix[v] == s.axes[v][0]
				m[v] = x
			}
			if !first {
				continue
			}
			if q := s.at(m); may(q) && (!may(best) || q.Chance > best.Chance) {
				best = q
			}
		}
		if may(best) {
			isHeld := func(i int) bool { _, ok := held[i]; return ok }
			return s.climbBeside(best, isHeld, may, likelier), true
		}
	}
	return Point{}, false
}

// Level is the best of one value of a variable: of the mixes tested, and of those that may be
// named; the latter is not Allowed where none may.
type Level struct{ Best, Named Point }

// BestAt is, for each of n even values of variable v, the mixes with the highest chance;
// values where nothing was tested are left out.
func (s *Search) BestAt(v, n int) []Level {
	levels := Steps(s.Chain.Basis.Coordinates[v], s.Tested.Low[v], s.Tested.High[v], n)
	out := make([]Level, len(levels))
	Parallel(len(levels), func(k int) {
		out[k] = Level{s.bestAt(v, levels[k], tested), s.bestAt(v, levels[k], allowed)}
	})
	return slices.DeleteFunc(out, func(l Level) bool { return !l.Best.Tested })
}

// climbsFrom is how many of a level's best lattice points are climbed from: the
// chance may have more than one top.
const climbsFrom = 3

// bestAt climbs from the best lattice points of the nearest level, moved to this one, among
// the mixes that may be taken.
func (s *Search) bestAt(v int, level float64, may func(Point) bool) Point {
	n := len(s.axes[v])
	nearest := 0
	for i, a := range s.axes[v] {
		if math.Abs(a-level) < math.Abs(s.axes[v][nearest]-level) {
			nearest = i
		}
	}
	stride := 1
	for range len(s.axes) - 1 - v {
		stride *= n
	}
	var near []Point
	for k := range s.points {
		if k/stride%n == nearest {
			near = append(near, s.points[k])
		}
	}
	slices.SortStableFunc(near, func(a, b Point) int {
		switch first := may(a); {
		case first == may(b):
			return cmp.Compare(b.Chance, a.Chance)
		case first:
			return -1
		}
		return 1
	})
	best, tried := Point{}, 0
	for _, from := range near {
		m := append([]float64(nil), from.Mix...)
		m[v] = level
		p := s.at(m)
		if !may(p) {
			continue
		}
		if p = s.climb(p, v, may, likelier); !may(best) || p.Chance > best.Chance {
			best = p
		}
		if tried++; tried == climbsFrom {
			break
		}
	}
	return best
}

// Richest is the mix with most of variable v whose chance is at least wanted and
// which connects to from through allowed mixes that reach wanted too. It
// reports false if from itself does not reach it.
func (s *Search) Richest(v int, from Point, wanted float64) (Point, bool) {
	if from.Chance < wanted || !from.Allowed {
		return Point{}, false
	}
	reached := s.flood(from.Mix, wanted)
	best := from
	for _, k := range reached {
		p := s.points[k]
		if p.Mix[v] > best.Mix[v] || p.Mix[v] == best.Mix[v] && p.Chance > best.Chance {
			best = p
		}
	}
	best = s.climb(best, v, allowed, likelier)
	// Between two lattice levels: halve towards more.
	n := len(s.axes[v])
	low, high := best.Mix[v], s.Tested.High[v]
	if n > 1 {
		c := s.Chain.Basis.Coordinates[v]
		high = s.move(v, low, math.Abs(c.Of(s.axes[v][1])-c.Of(s.axes[v][0])))
	}
	for range 12 {
		mid := (low + high) / 2
		m := append([]float64(nil), best.Mix...)
		m[v] = mid
		p := s.at(m)
		if p.Allowed {
			p = s.climb(p, v, allowed, likelier)
		} else { // more of it needs less of another: what clogs with that much emulsifier
			p = s.bestAt(v, mid, allowed)
		}
		if p.Allowed && p.Chance >= wanted {
			low, best = mid, p
		} else {
			high = mid
		}
	}
	return best, true
}

// flood returns the lattice points that reach wanted and connect to mix.
func (s *Search) flood(mix []float64, wanted float64) []int {
	n := len(s.axes[0])
	d := len(s.axes)
	ok := func(k int) bool { return s.points[k].Allowed && s.points[k].Chance >= wanted }
	// the corners of the cell around mix, or else the nearest workable point
	start, near := -1, math.Inf(1)
	for k := range s.points {
		if !ok(k) {
			continue
		}
		dist := 0.0
		for i, c := range s.Chain.Basis.Coordinates {
			dist += math.Pow(c.Of(s.points[k].Mix[i])-c.Of(mix[i]), 2)
		}
		if dist < near {
			start, near = k, dist
		}
	}
	if start < 0 {
		return nil
	}
	seen := make([]bool, len(s.points))
	seen[start] = true
	queue := []int{start}
	for at := 0; at < len(queue); at++ {
		stride := 1
		for i := d - 1; i >= 0; i-- {
			pos := queue[at] / stride % n
			for _, step := range []int{-1, 1} {
				if pos+step < 0 || pos+step >= n {
					continue
				}
				if k := queue[at] + step*stride; !seen[k] && ok(k) {
					seen[k] = true
					queue = append(queue, k)
				}
			}
			stride *= n
		}
	}
	return queue
}

// Slack is how far variable v may move from p, the others held, before the
// chance drops by more than drop or the tested range ends.
func (s *Search) Slack(p Point, v int, drop float64) (low, high float64) {
	c := s.Chain.Basis.Coordinates[v]
	width := math.Abs(c.Of(s.Tested.High[v]) - c.Of(s.Tested.Low[v]))
	reach := func(sign float64) float64 {
		value := p.Mix[v]
		for range 200 {
			m := append([]float64(nil), p.Mix...)
			m[v] = s.move(v, value, sign*width/200)
			q := s.at(m)
			if m[v] == value || !q.Tested || q.Chance < p.Chance-drop {
				break
			}
			value = m[v]
		}
		return value
	}
	return reach(-1), reach(1)
}
