package kitchen

import (
	"math"
	"slices"
)

// spots are mixes spread evenly over a box.
func spots(box Box, points int) (all []Mix) {
	at := func(i int) float64 { return (float64(i) + 0.5) / float64(points) }
	for i := range points {
		for j := range points {
			for l := range points {
				all = append(all, box.At(at(i), at(j), at(l)))
			}
		}
	}
	return all
}

// settleStops puts the limit where the share wanted of what the cook tries does not
// come out, and makes chill matter as much as the suddenness drawn asks for. It says
// what the gas does, where that is anything special.
func (s *stranger) settleStops(d draws, box Box) string {
	wanted, sudden := d.from(0.03, 0.45), d.sudden()
	all := spots(box, 8)
	said := s.settleTunnel(d, all, wanted)
	stiff, spared := make([]float64, len(all)), make([]float64, len(all))
	for i, m := range all {
		c := s.coat.on(m)
		stiff[i], spared[i] = s.stop.of(m, c), (1-s.lump)*s.tunnel.spared(m, c)
	}
	low, high := slices.Min(stiff), slices.Max(stiff)
	room := high - low
	s.stopChill = 0.02 * room
	// Where the limit lies says how steep stiffness is there, and chill moves the
	// limit: a few rounds settle both.
	for range 4 {
		s.limit = bisect(low-3*room, high+3*room, func(limit float64) bool {
			stopped := 0.0
			for i, x := range stiff {
				stopped += 1 - spared[i]*normalCDF((limit-x)/s.stopChill)
			}
			return stopped < wanted*float64(len(all))
		})
		// 10 to 90 % is 2.56 spreads of a normal law.
		s.stopChill = sudden * s.steepest(box, all, room) / 2.5631
	}
	s.sputter = d.from(0, 0.08) * room
	return said
}

// settleTunnel lets the gas tunnel in a third of kitchens, for a part of what is
// wanted not to come out.
func (s *stranger) settleTunnel(d draws, all []Mix, wanted float64) string {
	s.tunnel = tunnel{scale: math.Inf(1), sudden: 1}
	if d.IntN(3) != 0 {
		return ""
	}
	// A box stretches over about e-fold, and Weibull's law rises over 3.1/exponent.
	s.tunnel = tunnel{fat: d.from(1, 4), bare: d.from(0, 2), sudden: 3.1 / d.sudden()}
	some := wanted * d.from(0.3, 0.7)
	s.tunnel.scale = bisect(0, 100, func(scale float64) bool {
		s.tunnel.scale = scale
		bored := 0.0
		for _, m := range all {
			bored += 1 - s.tunnel.spared(m, s.coat.on(m))
		}
		return bored < some*float64(len(all))
	})
	return "; and where it is stiff the gas may bore through and leave it behind"
}

// steepest is how much stiffness changes over the whole of the side of the box that
// moves it most, judged near the limit.
func (s *stranger) steepest(box Box, all []Mix, room float64) float64 {
	const step = 1e-3
	fat, emulsifier, weight := 0.0, 0.0, 0.0
	of := func(m Mix) float64 { return s.stop.of(m, s.coat.on(m)) }
	for _, m := range all {
		near := (of(m) - s.limit) / (0.1 * room)
		w := math.Exp(-near*near/2) + 1e-9
		richer, more := m, m
		richer.FatPercent += step * box.Fat.width()
		more.EmulsifierPercent += step * box.Emulsifier.width()
		fat += w * math.Abs(of(richer)-of(m)) / step
		emulsifier += w * math.Abs(of(more)-of(m)) / step
		weight += w
	}
	return max(fat, emulsifier) / weight
}

// bisect is where enough turns true.
func bisect(low, high float64, enough func(float64) bool) float64 {
	for range 40 {
		if mid := (low + high) / 2; enough(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// settleFoam scales hold and drainage so that the mix of most promise in the box has
// the slack drawn: in scatters beyond the usual targets, sometimes too few.
func (s *stranger) settleFoam(d draws, box Box) {
	best, most := Mix{}, math.Inf(-1)
	for _, m := range spots(box, 9) {
		c := s.coat.on(m)
		a := s.foam.ages(m, c)
		sound := s.cameOut(m) * (1 - s.split.chance(m, c))
		if promise := 4*math.Log(sound+1e-9) + a.lnHold - a.lnRun; promise > most {
			best, most = m, promise
		}
	}
	a := s.foam.ages(best, s.coat.on(best))
	holds, retains := d.from(0, 6.2), d.from(0, 6.2)
	s.foam.lnHold = math.Log(Usual.HoldMinutes) + holds*math.Hypot(s.hold.spread, s.holdChill) - a.lnHold
	s.foam.lnRun = lnRunOf(best, Usual.DrainedPercent) - retains*math.Hypot(s.drain.spread, s.drainChill) - a.lnRun
}
