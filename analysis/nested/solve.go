package nested

import "math"

// mostSteps is how often the bounds are taken anew; they settle in three to six.
const mostSteps = 40

// solve is the mode of the line and all levels at one set of spreads, and the logarithm of
// the likelihood that is left when they are integrated out around it.
func (s *problem) solve(sp Spreads, from *state) (*state, error) {
	st := s.fresh()
	st.Spreads, st.converged = sp, false
	bounded := s.exact < len(s.X)
	if from != nil {
		copy(st.eta, from.eta)
	} else if bounded {
		for i := range st.eta {
			st.eta[i] = nearest(s.Low[i], s.High[i])
		}
	}
	for range mostSteps {
		if err := s.step(st); err != nil {
			return nil, err
		}
		if !bounded {
			st.converged = true
			break
		}
		moved := s.follow(st)
		if moved < 1e-4*sp.Rest {
			st.converged = true
			break
		}
	}
	s.likelihood(st)
	return st, nil
}

// fresh is a state to fill, the spare one if there is one.
func (s *problem) fresh() *state {
	if st := s.spare; st != nil {
		s.spare = nil
		return st
	}
	p, q := s.p, s.q
	st := &state{eta: make([]float64, len(s.X)), b: make([]float64, p), chol: make([]float64, p*p), groups: make([]solved, len(s.outers))}
	each := q + q*p + q*q
	all := make([]float64, len(s.outers)*each)
	for o := range st.groups {
		of := all[o*each : (o+1)*each]
		st.groups[o] = solved{base: of[:q], towards: of[q : q+q*p], chol: of[q+q*p:]}
	}
	return st
}

// nearest is a first guess of a value known up to bounds.
func nearest(low, high float64) float64 {
	switch {
	case math.IsInf(high, 1):
		return low
	case math.IsInf(low, -1):
		return high
	}
	return (low + high) / 2
}

// step solves the line and the levels with the bounds taken at the last means.
func (s *problem) step(st *state) error {
	p, w := s.p, s.p+1
	prec := 1 / (st.Rest * st.Rest)
	h, g, cross, sum := st.chol, st.b, s.cross, s.sum
	clear(h)
	clear(g)
	st.freedom = float64(s.exact)
	st.logML = 0
	for o := range s.outers {
		group := &s.outers[o]
		for i, c := range group.cross {
			cross[i] = c * prec
		}
		for k := range group.inners {
			in := &group.inners[k]
			for i, c := range in.sum {
				sum[i] = c * prec
			}
			weight := in.count * prec
			for _, i := range in.bounded {
				_, slope, curve := bounds(s.Low[i], s.High[i], st.eta[i], st.Rest)
				add(cross, sum, s.X[i], st.eta[i]+slope/curve, curve)
				weight += curve
				st.freedom += curve / prec
			}
			if s.Within {
				own := weight + 1/(st.Inner*st.Inner)
				pending := s.pending[o][k*w : k*w+w]
				for j := range w {
					f := sum[j] / own
					if pending[j] = f; f == 0 {
						continue
					}
					row := cross[j*w : j*w+j+1]
					for l, v := range sum[:j+1] {
						row[l] -= f * v
					}
				}
				st.logML -= 0.5 * math.Log1p(st.Inner*st.Inner*weight)
			}
		}
		if err := s.fold(st, &st.groups[o], cross, h, g); err != nil {
			return err
		}
	}
	if !cholesky(h, p) {
		return ErrNoFit
	}
	solveCholesky(h, p, g)
	for j := range p {
		st.logML -= math.Log(h[j*p+j])
	}
	st.freedom -= float64(p)
	return nil
}

// fold takes the levels and slopes of an outer group out of its sums and adds what is left
// to the line's.
func (s *problem) fold(st *state, sol *solved, cross, h, g []float64) error {
	p, w, q := s.p, s.p+1, s.q
	full := func(a, b int) float64 {
		if a < b {
			a, b = b, a
		}
		return cross[a*w+b]
	}
	// The level's column is the constant of the line, the first.
	col := func(r int) int { return max(s.random[r], 0) }
	if q > 0 {
		block := sol.chol
		for a := range q {
			for b := 0; b <= a; b++ {
				block[a*q+b] = full(col(a), col(b))
			}
			sd := st.Outer[a]
			block[a*q+a] += 1 / (sd * sd)
			sol.base[a] = full(p, col(a))
			for j := range p {
				sol.towards[a*p+j] = full(col(a), j)
			}
			st.logML -= math.Log(sd)
		}
		if !cholesky(block, q) {
			return ErrNoFit
		}
		for a := range q {
			st.logML -= math.Log(block[a*q+a])
		}
		s.leave(sol, h, g)
	}
	for j := range p {
		for k := 0; k <= j; k++ {
			h[j*p+k] += cross[j*w+k]
		}
		g[j] += cross[p*w+j]
	}
	return nil
}

// leave takes what an outer group accounts for from the line's precision and right side, and
// solves for its levels given the line.
func (s *problem) leave(sol *solved, h, g []float64) {
	p, w, q := s.p, s.p+1, s.q
	// The precision that is left to the line, and its right side.
	half := s.half
	for j := range p {
		for a := range q {
			half[a*w+j] = sol.towards[a*p+j]
		}
	}
	for a := range q {
		half[a*w+p] = sol.base[a]
	}
	forward(sol.chol, q, half, w)
	for a := range q {
		row := half[a*w : a*w+w]
		for j, f := range row[:p] {
			if f == 0 {
				continue
			}
			to := h[j*p : j*p+j+1]
			for k, v := range row[:j+1] {
				to[k] -= f * v
			}
			g[j] -= f * row[p]
		}
	}
	backward(sol.chol, q, half, w)
	for a := range q {
		sol.base[a] = half[a*w+p]
		copy(sol.towards[a*p:a*p+p], half[a*w:a*w+p])
	}
}

// levels are what an outer group adds, given the line.
func (s *problem) levels(sol *solved, b []float64) []float64 {
	u := append([]float64(nil), sol.base...)
	for a := range u {
		for j, v := range b {
			u[a] -= sol.towards[a*s.p+j] * v
		}
	}
	return u
}

// follow moves the means of the rows known up to bounds, by as much as keeps the
// likelihood from falling, and says how far the furthest moved.
func (s *problem) follow(st *state) (most float64) {
	for o := range s.outers {
		sol := &st.groups[o]
		u := s.levels(sol, st.b)
		for k := range s.outers[o].inners {
			in := &s.outers[o].inners[k]
			if len(in.bounded) == 0 {
				continue
			}
			v := s.innerLevel(o, k, st.b, u)
			for _, i := range in.bounded {
				eta := s.mean(i, st.b, u) + v
				step := eta - st.eta[i]
				// Far steps overshoot where the probability is nearly 1.
				step = math.Max(-3*st.Rest, math.Min(3*st.Rest, step))
				st.eta[i] += step
				most = math.Max(most, math.Abs(step))
			}
		}
	}
	return most
}

// innerLevel is what the k-th inner group of an outer one adds.
func (s *problem) innerLevel(o, k int, b, u []float64) float64 {
	if !s.Within {
		return 0
	}
	w := s.p + 1
	sums := s.pending[o][k*w : k*w+w]
	v := sums[s.p]
	for j, x := range b {
		v -= sums[j] * x
	}
	for a, r := range s.random {
		v -= sums[max(r, 0)] * u[a]
	}
	return v
}

// mean is a row's place without the level of its inner group.
func (s *problem) mean(i int, b, u []float64) float64 {
	m := 0.0
	for j, x := range s.X[i] {
		m += x * b[j]
	}
	for a, r := range s.random {
		m += s.X[i][max(r, 0)] * u[a]
	}
	return m
}

// likelihood completes logML: the fit at the mode, beside the determinants that step and
// fold have gathered.
func (s *problem) likelihood(st *state) {
	prec := 1 / (st.Rest * st.Rest)
	l := -float64(s.exact)*(math.Log(st.Rest)+0.5*math.Log(2*math.Pi)) + 0.5*float64(s.p)*math.Log(2*math.Pi)
	w := s.p + 1
	for o := range s.outers {
		group, sol := &s.outers[o], &st.groups[o]
		u := s.levels(sol, st.b)
		for a := range u {
			l -= 0.5 * u[a] * u[a] / (st.Outer[a] * st.Outer[a])
		}
		// Squares of the exact rows about b and u, from their sums.
		c := append([]float64(nil), st.b...)
		for a, r := range s.random {
			c[max(r, 0)] += u[a]
		}
		square := func(cross []float64) float64 {
			t := cross[w*w-1]
			for j := range s.p {
				t -= 2 * c[j] * cross[(w-1)*w+j]
				t += c[j] * c[j] * cross[j*w+j]
				for k := range j {
					t += 2 * c[j] * c[k] * cross[j*w+k]
				}
			}
			return t
		}
		ss := square(group.cross)
		for k := range group.inners {
			in := &group.inners[k]
			v := s.innerLevel(o, k, st.b, u)
			if s.Within {
				l -= 0.5 * v * v / (st.Inner * st.Inner)
				dev := in.sum[s.p]
				for j := range s.p {
					dev -= in.sum[j] * c[j]
				}
				ss += -2*v*dev + in.count*v*v
			}
			for _, i := range in.bounded {
				ln, _, _ := bounds(s.Low[i], s.High[i], s.mean(i, st.b, u)+v, st.Rest)
				l += ln
			}
		}
		l -= 0.5 * prec * math.Max(ss, 0)
	}
	st.logML += l
}
