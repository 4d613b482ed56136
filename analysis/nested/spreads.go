package nested

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Fit is a line with its groups, over what its spreads may be.
type Fit struct {
	s      *problem
	Mode   Spreads // the likeliest
	LogML  float64 // restricted log likelihood at the mode
	B      []float64
	mode   *state
	points []*state
	weight []float64
	ESS    float64
}

// Prior is how large spreads of groups may be before anything is seen: half a Student t
// of 3 degrees of freedom, of this scale. A scale of +Inf is none.
type Prior struct{ Inner, Level, Lean float64 }

func (pr Prior) ln(s *problem, sp Spreads) float64 {
	half := func(sd, scale float64) float64 {
		if math.IsInf(scale, 1) {
			return 0
		}
		return math.Log(sd/scale) - 2*math.Log1p(sd*sd/(3*scale*scale))
	}
	l := 0.0
	if s.Within {
		l += half(sp.Inner, pr.Inner)
	}
	for a, r := range s.random {
		scale := pr.Lean
		if r < 0 {
			scale = pr.Level
		}
		l += half(sp.Outer[a], scale)
	}
	return l
}

// theta and back: logarithms of the spreads that the model has.
func (s *problem) theta(sp Spreads) []float64 {
	t := []float64{math.Log(sp.Rest)}
	if s.Within {
		t = append(t, math.Log(sp.Inner))
	}
	for _, sd := range sp.Outer {
		t = append(t, math.Log(sd))
	}
	return t
}

func (s *problem) spreads(t []float64) Spreads {
	e := func(x float64) float64 { return math.Exp(math.Max(-14, math.Min(7, x))) }
	sp := Spreads{Rest: e(t[0])}
	t = t[1:]
	if s.Within {
		sp.Inner = e(t[0])
		t = t[1:]
	}
	for _, x := range t {
		sp.Outer = append(sp.Outer, e(x))
	}
	return sp
}

// draws is how many sets of spreads stand for all; where there are many rows the spreads are
// well known, and fewer do.
func (s *problem) draws() int { return max(40, min(150, 400000/len(s.X))) }

// Of fits the data.
func Of(d Data, prior Prior) (*Fit, error) {
	s := newProblem(d)
	return s.fit(prior, s.usual())
}

// From fits the data, the likeliest spreads sought from some that are near them.
func From(d Data, prior Prior, near Spreads) (*Fit, error) { return newProblem(d).fit(prior, near) }

func (s *problem) fit(prior Prior, start Spreads) (*Fit, error) {
	f := &Fit{s: s}
	at, mode, hess, err := s.top(prior, start, true)
	if err != nil {
		return nil, err
	}
	f.mode = mode
	f.Mode, f.LogML, f.B = mode.Spreads, mode.logML, mode.b
	if f.draw(at, hess, prior, mode); len(f.points) == 0 {
		return nil, ErrNoFit // so few of the rows are exact that the line goes through all of them
	}
	s.spare = nil
	return f, nil
}

// usual is where a search begins: what kitchens are like, on logarithms.
func (s *problem) usual() Spreads {
	start := Spreads{Rest: 0.25, Inner: 0.1, Outer: make([]float64, s.q)}
	for a := range start.Outer {
		start.Outer[a] = 0.15
	}
	return start
}

// top is the likeliest spreads, the line at them, and minus the curvature there.
func (s *problem) top(prior Prior, start Spreads, curvature bool) (at []float64, mode *state, hess *mat.SymDense, err error) {
	last, err := s.solve(start, nil)
	if err != nil {
		return nil, nil, nil, err
	}
	at, hess = climb(s.value(prior, last), s.theta(start), curvature)
	mode, err = s.solve(s.spreads(at), last)
	return at, mode, hess, err
}

// value is how likely spreads are, from their logarithms; bounds are first taken where another
// state has them.
func (s *problem) value(prior Prior, from *state) func([]float64) float64 {
	return func(t []float64) float64 {
		sp := s.spreads(t)
		st, err := s.solve(sp, from)
		if err != nil {
			return math.Inf(-1)
		}
		s.spare = st
		return st.logML + prior.ln(s, sp)
	}
}

// climb is Newton's way up with differences for derivatives. How spreads bend together is
// taken at the start, and once more at the top if the curvature there is wanted: hess is
// minus it, made positive.
func climb(value func([]float64) float64, at []float64, curvature bool) (top []float64, hess *mat.SymDense) {
	d := len(at)
	const h = 0.02
	best := value(at)
	probe := func(i int, a float64, j int, b float64) float64 {
		t := append([]float64(nil), at...)
		t[i] += a
		if j >= 0 {
			t[j] += b
		}
		return value(t)
	}
	grad, up := make([]float64, d), make([]float64, d)
	bend := mat.NewSymDense(d, nil)
	slopes := func() {
		for i := range d {
			up[i] = probe(i, h, -1, 0)
			down := probe(i, -h, -1, 0)
			grad[i] = (up[i] - down) / (2 * h)
			bend.SetSym(i, i, -(up[i]-2*best+down)/(h*h))
		}
	}
	together := func() {
		for i := range d {
			for j := range i {
				bend.SetSym(i, j, -(probe(i, h, j, h)-up[i]-up[j]+best)/(h*h))
			}
		}
	}
	for n := range 40 {
		slopes()
		if n == 0 {
			together()
		}
		step, ok := newton(bend, grad)
		if !ok {
			break
		}
		size := mat.Norm(step, math.Inf(1))
		scale := math.Min(1, 1.5/math.Max(size, 1e-12))
		moved := false
		for range 12 {
			t := append([]float64(nil), at...)
			for i := range t {
				t[i] += scale * step.AtVec(i)
			}
			if v := value(t); v > best {
				moved = v-best > 1e-6
				at, best = t, v
				break
			}
			scale /= 2
		}
		if !moved || scale*size < 1e-3 {
			break
		}
	}
	if curvature {
		slopes()
		together()
		hess = bend
		positive(hess)
	}
	return at, hess
}

// newton is the step to the top of a bend with a slope.
func newton(bend *mat.SymDense, grad []float64) (*mat.VecDense, bool) {
	hess := mat.NewSymDense(len(grad), nil)
	hess.CopySym(bend)
	positive(hess)
	var c mat.Cholesky
	step := mat.NewVecDense(len(grad), nil)
	return step, c.Factorize(hess) && c.SolveVecTo(step, mat.NewVecDense(len(grad), grad)) == nil
}

// positive lifts the small eigenvalues of a curvature.
func positive(h *mat.SymDense) {
	var e mat.EigenSym
	if !e.Factorize(h, true) {
		for i := range h.SymmetricDim() {
			for j := range i {
				h.SetSym(i, j, 0)
			}
			h.SetSym(i, i, 1)
		}
		return
	}
	v := e.Values(nil)
	var q mat.Dense
	e.VectorsTo(&q)
	n := len(v)
	for i := range n {
		for j := 0; j <= i; j++ {
			t := 0.0
			for k := range n {
				t += q.At(i, k) * q.At(j, k) * math.Max(math.Abs(v[k]), 0.15)
			}
			h.SetSym(i, j, t)
		}
	}
}

// axis is a direction in which spreads move together, and how far either way the density
// falls to e^-2 of its top.
type axis struct {
	along    []float64
	up, down float64
}

// axes are the directions of the curvature, with their two reaches: what is known of a
// spread is skewed, since one that is small may as well be nothing.
func axes(value func([]float64) float64, top []float64, hess *mat.SymDense) []axis {
	var e mat.EigenSym
	if !e.Factorize(hess, true) {
		return nil
	}
	var q mat.Dense
	e.VectorsTo(&q)
	best := value(top)
	var out []axis
	for k, v := range e.Values(nil) {
		a := axis{along: mat.Col(nil, k, &q)}
		reach := func(sign float64) float64 {
			x := math.Sqrt(2 * fall / v)
			for range 4 {
				t := append([]float64(nil), top...)
				for i := range t {
					t[i] += sign * x * a.along[i]
				}
				// As far as it would be were the fall that of a square.
				further := math.Min(2, math.Max(0.5, math.Sqrt(fall/math.Max(best-value(t), 1e-6))))
				if x *= further; math.Abs(further-1) < 0.1 {
					break
				}
			}
			return x / math.Sqrt(2*fall)
		}
		a.up, a.down = reach(1), reach(-1)
		out = append(out, a)
	}
	return out
}

// fall is how far down a reach is measured: as a normal falls in two standard deviations.
const fall = 2.0

// draw weighs sets of spreads around the mode, spread out along the axes as two halves of a
// Student t by a sequence that fills space evenly, by how likely they are.
func (f *Fit) draw(top []float64, hess *mat.SymDense, prior Prior, mode *state) {
	lines := axes(f.s.value(prior, mode), top, hess)
	if lines == nil {
		f.points, f.weight, f.ESS = []*state{mode}, []float64{1}, 1
		return
	}
	even := evenly(len(top))
	student := distuv.StudentsT{Sigma: 1, Nu: tails}
	ln := []float64{}
	for k := range f.s.draws() {
		t := append([]float64(nil), top...)
		dens := 0.0
		for i, a := range lines {
			z := student.Quantile(even(k, i))
			reach := a.up
			if z < 0 {
				reach = a.down
			}
			dens += student.LogProb(z) - math.Log(reach)
			// Each half holds a half, however far it reaches.
			for j := range t {
				t[j] += z * reach * a.along[j]
			}
		}
		sp := f.s.spreads(t)
		st, err := f.s.solve(sp, mode)
		if err != nil || math.IsNaN(st.logML) {
			continue
		}
		f.points = append(f.points, st.without())
		ln = append(ln, st.logML+prior.ln(f.s, sp)-dens)
	}
	f.weigh(ln)
}

// weigh turns logarithms of weights into weights.
func (f *Fit) weigh(ln []float64) {
	most := math.Inf(-1)
	for _, l := range ln {
		most = math.Max(most, l)
	}
	sum, squares := 0.0, 0.0
	f.weight = make([]float64, len(ln))
	for k, l := range ln {
		f.weight[k] = math.Exp(l - most)
		sum += f.weight[k]
	}
	// One draw far out must not stand for all (Ionides 2008, J. Comp. Graph. Stat. 17:295).
	most, sum = sum/math.Sqrt(float64(len(ln))), 0
	for k, w := range f.weight {
		f.weight[k] = math.Min(w, most)
		sum += f.weight[k]
	}
	for k := range f.weight {
		f.weight[k] /= sum
		squares += f.weight[k] * f.weight[k]
	}
	f.ESS = 1 / squares
}

// tails is the degrees of freedom of the Student t that spreads are drawn from.
const tails = 5

// evenly is a sequence of points that fill a cube, by steps of powers of the root of
// x^(d+1) = x + 1 (Weyl's sequence with the constants of a generalised golden ratio).
func evenly(d int) func(k, dim int) float64 {
	root := 2.0
	for range 60 {
		root = math.Pow(1+root, 1/float64(d+1))
	}
	return func(k, dim int) float64 {
		_, x := math.Modf(0.5 + float64(k+1)*math.Pow(root, -float64(dim+1)))
		return math.Min(math.Max(x, 1e-9), 1-1e-9)
	}
}

// Likeliest is the restricted log likelihood at its top, with the same prior, sought from
// spreads that are near it.
func Likeliest(d Data, prior Prior, near Spreads) (float64, error) {
	s := newProblem(d)
	_, mode, _, err := s.top(prior, near, false)
	if err != nil {
		return 0, err
	}
	return mode.logML, nil
}

// without is a state without what only the search for it needed.
func (st *state) without() *state {
	st.eta = nil
	return st
}

// Near is a fit of which only the likeliest spreads are wanted.
func Near(d Data, prior Prior) (*Fit, error) {
	s := newProblem(d)
	_, mode, _, err := s.top(prior, s.usual(), false)
	if err != nil {
		return nil, err
	}
	return &Fit{s: s, mode: mode, Mode: mode.Spreads, LogML: mode.logML, B: mode.b, points: []*state{mode}, weight: []float64{1}, ESS: 1}, nil
}
