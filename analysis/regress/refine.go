package regress

import "math"

// twofold is an unevaluated sum of two numbers, hi the nearest to it: about 32
// digits (Dekker 1971, Numer. Math. 18:224-242).
type twofold struct {
	hi, lo float64
}

func (s *twofold) add(v float64) {
	h := s.hi + v
	t := h - s.hi
	s.lo += (s.hi - (h - t)) + (v - t)
	s.hi = h
}

// addProduct adds a*b without rounding it first.
func (s *twofold) addProduct(a, b float64) {
	p := a * b
	s.add(p)
	s.lo += math.FMA(a, b, -p)
}

func (s twofold) value() float64 { return s.hi + s.lo }

func (s *twofold) renormalise() {
	h := s.hi + s.lo
	s.lo -= h - s.hi
	s.hi = h
}

// written is by how much the decimal number that v was read from exceeds v: 0.1
// is not a binary number, and the fit is to be that of the numbers as written.
// It is 0 for a number that 15 decimal digits do not give, such as a computed
// one.
func written(v float64) float64 {
	const mostDigits = 1e15
	for _, ten := range tens {
		d := math.Round(v * ten)
		if math.Abs(d) >= mostDigits {
			return 0
		}
		if d/ten == v {
			return -math.FMA(v, ten, -d) / ten
		}
	}
	return 0
}

var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

// weighted is the number as written times the root of a weight.
func weighted(v, root float64) (w twofold) {
	w.addProduct(v, root)
	w.lo += written(v) * root
	return w
}

// solution is b and r with X b + r = y and Xᵀr = h.
type solution struct {
	b, r []twofold
}

// solve finds it by the decomposition and then improves it with remainders
// formed in twice the precision, until they no longer shrink (Björck 1967, BIT
// 7:257-278). For h = 0 it is the least-squares fit of y; for y = 0 and h a unit
// vector, r is a row of the pseudo-inverse. A nil y or h is zeros.
func (q *qr) solve(y []twofold, h []float64) solution {
	n, p := q.n, q.p
	s := solution{make([]twofold, p), make([]twofold, n)}
	f, g := make([]float64, n), make([]float64, p)
	last := math.Inf(1)
	const rounds = 20
	for range rounds {
		q.remainders(s, y, h, f, g)
		q.forward(g)
		q.turn(f)
		step := f[:p]
		for j, z := range g {
			step[j], g[j] = step[j]-z, z
		}
		db := append([]float64(nil), step...)
		q.backward(db)
		copy(step, g)
		q.turnBack(f)
		move := norm(db) + norm(f)
		if !(move < last/2) {
			break
		}
		last = move
		for j, d := range db {
			s.b[j].add(d)
			s.b[j].renormalise()
		}
		for i, d := range f {
			s.r[i].add(d)
			s.r[i].renormalise()
		}
	}
	return s
}

// remainders is y - r - X b into f and h - Xᵀr into g.
func (q *qr) remainders(s solution, y []twofold, h, f, g []float64) {
	n := q.n
	sum := make([]twofold, n)
	for i, r := range s.r {
		if y != nil {
			sum[i] = y[i]
		}
		sum[i].add(-r.hi)
		sum[i].lo -= r.lo
	}
	for j, b := range s.b {
		c, low := q.x[j*n:(j+1)*n], q.low[j*n:(j+1)*n]
		var t twofold
		if h != nil {
			t.hi = h[j]
		}
		for i, x := range c {
			sum[i].addProduct(-x, b.hi)
			sum[i].lo -= x*b.lo + low[i]*b.hi
			t.addProduct(-x, s.r[i].hi)
			t.lo -= x*s.r[i].lo + low[i]*s.r[i].hi
		}
		g[j] = t.value()
	}
	for i, t := range sum {
		f[i] = t.value()
	}
}
