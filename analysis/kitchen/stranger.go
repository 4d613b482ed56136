package kitchen

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/integrate/quad"
)

// stranger holds laws that share no form with truth's. The fat takes up emulsifier
// as a surface binds it (coat); what stops the nozzle, what splits the foam and how
// it ages build on that, each in one of several ways a kitchen can have.
//
// One number ties a trial together, its chill: a standard normal, part of it the
// day's, the rest the canister's own. It alone decides whether a mix sets in the
// nozzle, and it moves hold and drainage too.
type stranger struct {
	coat coat

	stop      stiffness
	limit     float64 // stiffness the nozzle passes at the usual chill
	stopChill float64 // what one chill adds to stiffness: small = clogs all at once
	sputter   float64 // stiffer than the limit by less than this: comes out partly
	tunnel    tunnel
	lump      float64 // share of canisters that something stray blocks, whatever the mix

	split split

	foam       foam
	hold       scatter
	drain      scatter
	holdChill  float64 // ln minutes per chill
	drainChill float64 // ln of drainage per chill, downwards

	dayShare float64 // of the chill's variance
}

func (s *stranger) outcome(m Mix, day Day, rng *rand.Rand) Outcome {
	chill := math.Sqrt(s.dayShare)*float64(day) + math.Sqrt(1-s.dayShare)*rng.NormFloat64()
	c := s.coat.on(m)
	if rng.Float64() < s.lump {
		return Outcome{}
	}
	if over := s.stop.of(m, c) + s.stopChill*chill - s.limit; over >= 0 {
		return Outcome{Partly: over < s.sputter}
	}
	if rng.Float64() >= s.tunnel.spared(m, c) {
		return Outcome{Partly: rng.IntN(2) == 0}
	}
	a := s.foam.ages(m, c)
	return Outcome{
		CameOut:        true,
		Broke:          rng.Float64() < s.split.chance(m, c),
		HoldMinutes:    math.Exp(a.lnHold + s.holdChill*chill + s.hold.draw(rng)),
		DrainedPercent: drainedOf(m, a.lnRun-s.drainChill*chill-s.drain.draw(rng)),
	}
}

// setsAt is the chill from which on the mix sets in the nozzle.
func (s *stranger) setsAt(m Mix, c cover) float64 { return (s.limit - s.stop.of(m, c)) / s.stopChill }

func (s *stranger) cameOut(m Mix) float64 {
	c := s.coat.on(m)
	return (1 - s.lump) * s.tunnel.spared(m, c) * normalCDF(s.setsAt(m, c))
}

// chance integrates over the chills that let the mix out: up to a sharp end the
// integrand is smooth, so Gauss and Legendre's rule serves however sudden clogging is.
func (s *stranger) chance(m Mix, targets Targets) float64 {
	c := s.coat.on(m)
	whole := (1 - s.lump) * s.tunnel.spared(m, c) * (1 - s.split.chance(m, c))
	end := math.Min(s.setsAt(m, c), chillReach)
	if end <= -chillReach || whole < 1e-12 {
		return 0
	}
	a := s.foam.ages(m, c)
	hold, run := math.Log(targets.HoldMinutes)-a.lnHold, a.lnRun-lnRunOf(m, targets.DrainedPercent)
	half, sum := (end+chillReach)/2, 0.0
	for i, x := range chillAt {
		chill := half*(x+1) - chillReach
		density := math.Exp(-chill*chill/2) / math.Sqrt(2*math.Pi)
		sum += chillWeight[i] * density *
			(1 - s.hold.below(hold-s.holdChill*chill)) *
			(1 - s.drain.below(run-s.drainChill*chill))
	}
	return whole * half * sum
}

const chillReach = 7.0

var chillAt, chillWeight = func() (x, w [48]float64) {
	quad.Legendre{}.FixedLocations(x[:], w[:], -1, 1)
	return x, w
}()
