package draining

import "math"

// Scatter is how far readings lie from the curves of their foams, and with it how well each curve
// is known.
type Scatter struct {
	Free     float64 // readings less what was fitted
	Variance float64 // of a reading, percent squared
	PowerVar float64 // of ln power; 0 where the power is taken as 1
	foams    []known
}

// known is one foam's information: of ln most and ln half, and with ln power.
type known struct {
	curve Curve
	power float64
	a     [2][2]float64 // inverse, without the variance
	toP   [2]float64    // how the two follow ln power
}

// About is the scatter of foams about their curves of one power; nil where no reading is left over,
// or a curve is not settled by its readings. One foam alone does not say by which law it drains: of
// 400 with six readings each, limits by their scatter held the half-time in 0.83 to 0.91 for 0.9.
func About(foams []Readings, curves []Curve, power float64) *Scatter {
	if len(foams) < 2 {
		return nil
	}
	s := &Scatter{Free: -1}
	own := power != 1
	if !own {
		s.Free = 0
	}
	sum, info := 0.0, 0.0
	for i, f := range foams {
		c := curves[i]
		var m [2][2]float64
		var cross [2]float64
		pp := 0.0
		for k, t := range f.Minutes {
			h := share(t, c.Half, power)
			off := f.Percents[k] - c.Most*h
			sum += off * off
			// By ln most, ln half and ln power; (half/t)^power is (1 - h)/h.
			j := [2]float64{c.Most * h, -c.Most * h * (1 - h) * power}
			p := -c.Most * h * (1 - h) * power * math.Log(c.Half/t)
			for x := range 2 {
				for y := range 2 {
					m[x][y] += j[x] * j[y]
				}
				cross[x] += j[x] * p
			}
			pp += p * p
		}
		s.Free += float64(len(f.Minutes) - 2)
		det := m[0][0]*m[1][1] - m[0][1]*m[1][0]
		if !(det > 1e-12*m[0][0]*m[1][1]) {
			return nil
		}
		k := known{curve: c, power: power, a: [2][2]float64{{m[1][1] / det, -m[0][1] / det}, {-m[1][0] / det, m[0][0] / det}}}
		if own {
			for x := range 2 {
				k.toP[x] = -(k.a[x][0]*cross[0] + k.a[x][1]*cross[1])
			}
			info += pp + cross[0]*k.toP[0] + cross[1]*k.toP[1]
		}
		s.foams = append(s.foams, k)
	}
	if s.Free < 1 {
		return nil
	}
	s.Variance = math.Max(sum/s.Free, finest*finest/12)
	if own {
		if !(info > 0) {
			return nil
		}
		s.PowerVar = s.Variance / info
	}
	return s
}

// HalfTime is how well the logarithm of a foam's half-time is known: its own variance for a power,
// and how much it follows the logarithm of that.
func (s *Scatter) HalfTime(i int) (own, byPower float64) {
	k := s.foams[i]
	return s.Variance * k.a[1][1], k.toP[1]
}

// Drained is the same of what has drained at a minute.
func (s *Scatter) Drained(i int, minute float64) (own, byPower float64) {
	k := s.foams[i]
	left := 1 - share(minute, k.curve.Half, k.power)
	by := [2]float64{1, -left * k.power}
	for x := range 2 {
		for y := range 2 {
			own += by[x] * by[y] * k.a[x][y]
		}
		byPower += by[x] * k.toP[x]
	}
	if s.PowerVar > 0 {
		byPower -= left * k.power * math.Log(k.curve.Half/minute)
	}
	return s.Variance * own, byPower
}
