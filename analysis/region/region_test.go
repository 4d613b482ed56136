package region

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"foamfield/analysis/latent"
	"foamfield/analysis/posterior"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

// coordinates of an invented kitchen: fat, emulsifier on a log scale, HLB.
var coordinates = []Coordinate{{false, 45, 10}, {true, math.Log(2), 0.5}, {false, 8.5, 2}}

// invented is a chain fitted to n trials of a known surface, and the mixes tried.
func invented(t testing.TB, n int, seed uint64) (*Chain, [][]float64) {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 7))
	b := Curved(coordinates)
	var mixes, out, kept [][]float64
	var came []bool
	var holds []latent.Obs
	for range n {
		m := []float64{32 + 26*rng.Float64(), math.Exp(1.2 * rng.Float64()), 5 + 7*rng.Float64()}
		mixes = append(mixes, m)
		f := b.Features(m)
		out = append(out, f)
		ok := rng.Float64() > 1/(1+math.Exp(4-2*f[1]-2*f[2]))
		came = append(came, ok)
		if ok {
			kept = append(kept, f)
			hold := math.Exp(3 - 0.3*f[1] + 0.8*f[2] - 0.6*f[9] + 0.3*rng.NormFloat64())
			if hold > 30 {
				holds = append(holds, latent.Obs{Low: 30, High: math.Inf(1)})
			} else {
				holds = append(holds, latent.Exact(hold))
			}
		}
	}
	prior := func(constant posterior.Normal, sd float64) []posterior.Normal {
		p := []posterior.Normal{constant}
		for range len(b.Terms) - 1 {
			p = append(p, posterior.Normal{SD: sd})
		}
		return p
	}
	yes, err := posterior.YesNo{X: out, Y: came, Prior: prior(posterior.Normal{Mean: 3, SD: 3}, 1.5)}.Sample(rng)
	if err != nil {
		t.Fatal(err)
	}
	line, err := posterior.Line{X: kept, Y: holds, Prior: prior(posterior.Normal{Mean: 2.7, SD: 1.2}, 0.7),
		LnSigma: posterior.Normal{Mean: -1.2, SD: 0.5}}.Sample(rng)
	if err != nil {
		t.Fatal(err)
	}
	return &Chain{Basis: b, Links: []Link{{YesNo: yes, Pass: true}, {Line: line, Low: math.Log(20), High: math.Inf(1)}}}, mixes
}

// The closed form of the joint chance against 200 000 draws of the belief. The
// draws are of the true, not quite normal belief, so the bound is the bias that
// the moments may cost (0.015) plus four standard errors of the draws; measured
// at most 0.012.
func TestChanceAgainstDraws(t *testing.T) {
	c, mixes := invented(t, 28, 1)
	d := c.Draw(200_000, rand.New(rand.NewPCG(1, 1)))
	worst := 0.0
	for _, m := range mixes[:8] {
		diff := math.Abs(c.Chance(m) - stat.Mean(d.Shares(m), nil))
		worst = math.Max(worst, diff)
		if diff > 0.015+4*0.5/math.Sqrt(float64(c.Links[0].YesNo.ESS)) {
			t.Errorf("at %v: %.4f in closed form, %.4f by draws", m, c.Chance(m), stat.Mean(d.Shares(m), nil))
		}
	}
	t.Logf("largest difference %.4f", worst)
}

func TestFirstFailuresAddUp(t *testing.T) {
	c, _ := invented(t, 28, 2)
	rapid.Check(t, func(t *rapid.T) {
		m := []float64{rapid.Float64Range(10, 80).Draw(t, "fat"), rapid.Float64Range(0.2, 8).Draw(t, "emulsifier"), rapid.Float64Range(2, 15).Draw(t, "hlb")}
		sum := c.Chance(m)
		for _, v := range c.FirstFailures(m) {
			if v < 0 || v > 1 {
				t.Fatalf("share %v", v)
			}
			sum += v
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Fatalf("chance and failures add up to %v", sum)
		}
	})
}

// Slopes against finite differences, over a straight and a curved basis.
func TestSlope(t *testing.T) {
	coords := []Coordinate{{Scale: 1}, {Scale: 1}, {Scale: 1}}
	for _, b := range []Basis{Straight(coords), Curved(coords)} {
		z := []float64{0.3, -1.2, 0.7}
		for v := range z {
			const h = 1e-6
			up, down := slices.Clone(z), slices.Clone(z)
			up[v], down[v] = z[v]+h, z[v]-h
			fu, fd := b.Features(up), b.Features(down)
			for k, got := range b.Slope(z, v) {
				if want := (fu[k] - fd[k]) / (2 * h); math.Abs(got-want) > 1e-8 {
					t.Errorf("term %v by variable %d: slope %v, finite difference %v", b.Terms[k], v, got, want)
				}
			}
		}
	}
}

func TestTestedRange(t *testing.T) {
	c, mixes := invented(t, 24, 3)
	r := NewTested(c.Basis, mixes, 0.5)
	for _, m := range mixes {
		if !r.Holds(m) {
			t.Errorf("trial %v lies outside its own tested range", m)
		}
	}
	inside := 0
	for _, m := range mixes {
		if _, core := r.reaches(m); core {
			inside++
		}
	}
	if inside < len(mixes)/2 {
		t.Errorf("only %d of %d trials lie in the core", inside, len(mixes))
	}
	for _, far := range [][]float64{{10, 2, 8}, {45, 20, 8}, {45, 2, 15}, {58, math.Exp(1.2), 12.1}} {
		if tested, core := r.reaches(far); tested || core {
			t.Errorf("%v is held for tested", far)
		}
	}
}

// Every start lies in the tested range, is allowed, and the surest is worth as much as any
// lattice point but for what a flat top may cost; the richest reaches the wanted chance with at least as much fat.
func TestSearch(t *testing.T) {
	for seed := range uint64(5) {
		c, mixes := invented(t, 30, seed)
		r := NewTested(c.Basis, mixes, 0.5)
		allowed := func(p Point) bool { return p.Mix[1] < 2.8 }
		s := NewSearch(c, r, Rules{Allowed: allowed})
		surest, ok := s.Surest(0.8)
		if !ok {
			t.Fatalf("seed %d: no start", seed)
		}
		for _, p := range s.Points() {
			if p.Allowed && p.Chance > surest.Chance+FlatTop+1e-9 {
				t.Errorf("seed %d: %v is surer than the surest %v", seed, p, surest)
			}
		}
		if !r.Holds(surest.Mix) || !allowed(surest) {
			t.Errorf("seed %d: surest start %v may not be named", seed, surest.Mix)
		}
		// Where mixes near the middle are known best, the start moves there and no further
		// than its chance is worth; one that has the wanted chance comes first all the same.
		known := func(m []float64) float64 { return math.Exp(-math.Pow(c.Basis.Place(m)[0], 2)) }
		marked := NewSearch(c, r, Rules{Allowed: allowed, Known: known})
		near, _ := marked.Surest(0)
		for _, p := range s.Points() {
			if p.Allowed && p.Chance*known(p.Mix) > near.Chance*known(near.Mix)+FlatTop+1e-9 {
				t.Errorf("seed %d: %v is worth more than %v", seed, p, near)
			}
		}
		if far := math.Abs(c.Basis.Place(near.Mix)[0]); far > math.Abs(c.Basis.Place(surest.Mix)[0])+1e-9 || near.Chance > surest.Chance+FlatTop {
			t.Errorf("seed %d: marked down, the start went from %v to %v", seed, surest, near)
		}
		if p, _ := marked.Surest(surest.Chance - 1e-3); p.Chance < surest.Chance-1e-3 {
			t.Errorf("seed %d: a mix of chance %.4f was named where one has %.4f, which was wanted", seed, p.Chance, surest.Chance)
		}
		wanted := surest.Chance - 0.1
		richest, ok := s.Richest(0, surest, wanted)
		if !ok || richest.Chance < wanted-1e-9 || richest.Mix[0] < surest.Mix[0]-1e-9 || !r.Holds(richest.Mix) || !allowed(richest) {
			t.Errorf("seed %d: richest %v for wanted %.3f, surest %v", seed, richest, wanted, surest)
		}
		if _, ok := s.Richest(0, surest, surest.Chance+0.01); ok {
			t.Errorf("seed %d: a richest start above the surest chance", seed)
		}
		last := math.Inf(-1)
		for _, l := range s.BestAt(0, 15) {
			p, q := l.Best, l.Named
			if p.Mix[0] <= last || !p.Tested {
				t.Errorf("seed %d: best mixes are not in order of fat or not tested: %v", seed, p)
			}
			if q.Allowed && (q.Mix[0] != p.Mix[0] || !allowed(q) || q.Chance > p.Chance+0.01) {
				t.Errorf("seed %d: %v may be named, and is not the best allowed beside %v", seed, q, p)
			}
			last = p.Mix[0]
		}
		low, high := s.Slack(surest, 2, 0.05)
		if low > surest.Mix[2] || high < surest.Mix[2] {
			t.Errorf("seed %d: slack %v to %v does not hold %v", seed, low, high, surest.Mix[2])
		}
		for _, v := range []float64{low, high} {
			m := append([]float64(nil), surest.Mix...)
			m[2] = v
			if c.Chance(m) < surest.Chance-0.05-1e-9 {
				t.Errorf("seed %d: at the end of the slack the chance is %.3f, not %.3f less 0.05", seed, c.Chance(m), surest.Chance)
			}
		}
	}
}

// One formula only: no variables, one point, its chance.
func TestNoVariables(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	b := Curved(nil)
	yes, err := posterior.YesNo{X: [][]float64{{1}, {1}, {1}}, Y: []bool{true, true, true}, Prior: []posterior.Normal{{Mean: 0, SD: 2}}}.Sample(rng)
	if err != nil {
		t.Fatal(err)
	}
	c := &Chain{Basis: b, Links: []Link{{YesNo: yes, Pass: true}}}
	s := NewSearch(c, NewTested(b, [][]float64{{}}, 0.5), Rules{})
	p, ok := s.Surest(0.8)
	if !ok || p.Chance < 0.6 || p.Chance > 0.99 {
		t.Errorf("three of three came out: %v %v", p, ok)
	}
}

func BenchmarkLattice(b *testing.B) {
	c, mixes := invented(b, 60, 1)
	r := NewTested(c.Basis, mixes, 0.5)
	for b.Loop() {
		NewSearch(c, r, Rules{})
	}
}
