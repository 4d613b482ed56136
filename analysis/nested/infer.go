package nested

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/stat/distuv"
)

// Value is something of a line with limits that allow for not knowing the spreads.
type Value struct{ Mean, SD, Low, High float64 }

// Combination is a sum over the coefficients of the line and, if Of is not negative, over
// the level and slopes of the outer group Of, in the order of the level and Data.Lean.
type Combination struct {
	Line []float64
	Of   int
	Own  []float64
}

// At is the combination that is the line at x in outer group of; -1 leaves groups out.
func (f *Fit) At(x []float64, of int) Combination {
	c := Combination{Line: x, Of: of}
	if of >= 0 {
		for _, r := range f.s.random {
			c.Own = append(c.Own, x[max(r, 0)])
		}
	}
	return c
}

// Minus is the difference of two combinations that are of one group or of none.
func (c Combination) Minus(d Combination) Combination {
	out := Combination{Line: make([]float64, len(c.Line)), Of: max(c.Of, d.Of)}
	for j := range out.Line {
		out.Line[j] = c.Line[j] - d.Line[j]
	}
	out.Own = make([]float64, max(len(c.Own), len(d.Own)))
	for j := range c.Own {
		out.Own[j] += c.Own[j]
	}
	for j := range d.Own {
		out.Own[j] -= d.Own[j]
	}
	return out
}

// normal is a combination at one set of spreads.
func (s *problem) normal(st *state, c Combination) (mean, sd float64) {
	p := s.p
	a := append([]float64(nil), c.Line...)
	v := 0.0
	if c.Of >= 0 && s.q > 0 {
		sol := &st.groups[c.Of]
		for k, x := range c.Own {
			mean += x * sol.base[k]
			for j := range p {
				a[j] -= x * sol.towards[k*p+j]
			}
		}
		e := append([]float64(nil), c.Own...)
		forward(sol.chol, s.q, e, 1)
		v += square(e)
	}
	for j, b := range st.b {
		mean += a[j] * b
	}
	forward(st.chol, p, a, 1)
	return mean, math.Sqrt(v + square(a))
}

func square(v []float64) (t float64) {
	for _, x := range v {
		t += x * x
	}
	return t
}

// Value is a combination with limits that hold it with the probability level.
func (f *Fit) Value(c Combination, level float64) Value {
	means, sds := make([]float64, len(f.points)), make([]float64, len(f.points))
	v := Value{}
	low, high := math.Inf(1), math.Inf(-1)
	for k, st := range f.points {
		means[k], sds[k] = f.s.normal(st, c)
		v.Mean += f.weight[k] * means[k]
		low, high = math.Min(low, means[k]-8*sds[k]), math.Max(high, means[k]+8*sds[k])
	}
	for k := range means {
		v.SD += f.weight[k] * (sds[k]*sds[k] + (means[k]-v.Mean)*(means[k]-v.Mean))
	}
	v.SD = math.Sqrt(v.SD)
	below := func(x float64) (t float64) {
		for k := range means {
			t += f.weight[k] * 0.5 * math.Erfc(-(x-means[k])/math.Max(sds[k], 1e-300)/math.Sqrt2)
		}
		return t
	}
	v.Low, v.High = quantile(below, low, high, (1-level)/2), quantile(below, low, high, (1+level)/2)
	return v
}

// Likely is a combination at the likeliest spreads.
func (f *Fit) Likely(c Combination) (mean, sd float64) { return f.s.normal(f.mode, c) }

// quantile is where a growing function reaches share.
func quantile(below func(float64) float64, low, high, share float64) float64 {
	for range 60 {
		if mid := (low + high) / 2; below(mid) < share {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// Zero is how often columns as far from 0 as these would come from coefficients that are
// all 0: the chi-squared tail of their Wald statistic, averaged over what the spreads may
// be. With no groups and no bounds it is the tail of F.
func (f *Fit) Zero(columns ...int) (p float64) {
	k := len(columns)
	chi := distuv.ChiSquared{K: float64(k)}
	for i, st := range f.points {
		cov := make([]float64, k*k)
		inverse := make([][]float64, k)
		for a, ca := range columns {
			e := make([]float64, f.s.p)
			e[ca] = 1
			forward(st.chol, f.s.p, e, 1)
			inverse[a] = e
			for b := 0; b <= a; b++ {
				for j := range e {
					cov[a*k+b] += e[j] * inverse[b][j]
				}
			}
		}
		v := make([]float64, k)
		for a, ca := range columns {
			v[a] = st.b[ca]
		}
		if !cholesky(cov, k) {
			p += f.weight[i]
			continue
		}
		forward(cov, k, v, 1)
		p += f.weight[i] * chi.Survival(square(v))
	}
	return math.Min(p, 1)
}

// Spread is the limits of one spread: 0 = rest, 1 = inner, then the outer ones.
func (f *Fit) Spread(of func(Spreads) float64, level float64) Value {
	below := func(x float64) (t float64) {
		for k, st := range f.points {
			if of(st.Spreads) < x {
				t += f.weight[k]
			}
		}
		return t
	}
	v := Value{}
	for k, st := range f.points {
		v.Mean += f.weight[k] * of(st.Spreads)
	}
	v.Low, v.High = quantile(below, 0, 100, (1-level)/2), quantile(below, 0, 100, (1+level)/2)
	v.SD = 0
	return v
}

// Draw is one possible truth.
type Draw struct {
	Spreads
	B []float64
	U [][]float64 // of each outer group: the level, then the slopes
}

// Draws are n possible truths, each as likely as the next.
func (f *Fit) Draws(n int, rng *rand.Rand) []Draw {
	out := make([]Draw, 0, n)
	sum, k := f.weight[0], 0
	for i := range n {
		for share := (float64(i) + 0.5) / float64(n); share > sum && k+1 < len(f.weight); {
			k++
			sum += f.weight[k]
		}
		st := f.points[k]
		d := Draw{Spreads: st.Spreads, B: make([]float64, f.s.p)}
		for j := range d.B {
			d.B[j] = rng.NormFloat64()
		}
		backward(st.chol, f.s.p, d.B, 1)
		for j := range d.B {
			d.B[j] += st.b[j]
		}
		for o := range st.groups {
			sol := &st.groups[o]
			u := make([]float64, f.s.q)
			for a := range u {
				u[a] = rng.NormFloat64()
			}
			if f.s.q > 0 {
				backward(sol.chol, f.s.q, u, 1)
			}
			for a, m := range f.s.levels(sol, d.B) {
				u[a] += m
			}
			d.U = append(d.U, u)
		}
		out = append(out, d)
	}
	return out
}

// Columns is how many the line has.
func (f *Fit) Columns() int { return f.s.p }

// Among is the spread of the levels of which these columns are the steps from the first
// one: what their differences say of it, with a prior of the scale, weighed over a grid.
func (f *Fit) Among(columns []int, scale, level float64) Value {
	k := len(columns)
	b := make([]float64, k)
	base := make([]float64, k*k)
	for i, st := range f.points {
		half := make([][]float64, k)
		for a, ca := range columns {
			e := make([]float64, f.s.p)
			e[ca] = 1
			forward(st.chol, f.s.p, e, 1)
			half[a] = e
			b[a] += f.weight[i] * st.b[ca]
			for c := range a + 1 {
				for j := range e {
					base[a*k+c] += f.weight[i] * e[j] * half[c][j]
				}
			}
		}
	}
	const points = 200
	at, ln := make([]float64, points), make([]float64, points)
	most := math.Inf(-1)
	for g := range points {
		sd := math.Exp(math.Log(0.003) + (math.Log(5)-math.Log(0.003))*float64(g)/(points-1))
		v := append([]float64(nil), base...)
		for a := range k {
			for c := range a + 1 {
				v[a*k+c] += sd * sd
			}
			v[a*k+a] += sd * sd
		}
		at[g], ln[g] = sd, math.Inf(-1)
		if cholesky(v, k) {
			z := append([]float64(nil), b...)
			forward(v, k, z, 1)
			ln[g] = -square(z)/2 + math.Log(sd) - 2*math.Log1p(sd*sd/(3*scale*scale))
			for a := range k {
				ln[g] -= math.Log(v[a*k+a])
			}
		}
		most = math.Max(most, ln[g])
	}
	return ofGrid(at, ln, most, level)
}

// ofGrid is a value known by its log density at places of a grid.
func ofGrid(at, ln []float64, most, level float64) Value {
	sum := 0.0
	for g := range ln {
		ln[g] = math.Exp(ln[g] - most)
		sum += ln[g]
	}
	v := Value{}
	below := 0.0
	for g, w := range ln {
		before := below
		below += w / sum
		v.Mean += at[g] * w / sum
		if before < (1-level)/2 {
			v.Low = at[g]
		}
		if before < (1+level)/2 {
			v.High = at[g]
		}
	}
	return v
}

// Step is the coefficient of one column more and its standard error, at the likeliest
// spreads and with bounds taken where the line without it puts them.
func (f *Fit) Step(x []float64) (step, se float64, ok bool) {
	st, err := newProblem(f.with(x)).solve(f.Mode, nil)
	if err != nil {
		return 0, 0, false
	}
	p := f.s.p + 1
	e := make([]float64, p)
	e[p-1] = 1
	forward(st.chol, p, e, 1)
	return st.b[p-1], math.Sqrt(square(e)), true
}

// with is the data with one column more.
func (f *Fit) with(x []float64) Data {
	d := f.s.Data
	d.X = make([][]float64, len(f.s.X))
	for i, row := range f.s.X {
		d.X[i] = append(append(make([]float64, 0, len(row)+1), row...), x[i])
	}
	return d
}

// Beside is a fit with the spreads that are likeliest beside one column more.
func (f *Fit) Beside(x []float64, prior Prior) (*Fit, error) {
	_, mode, _, err := newProblem(f.with(x)).top(prior, f.Mode, false)
	if err != nil {
		return nil, err
	}
	out := *f
	out.Mode = mode.Spreads
	return &out, nil
}
