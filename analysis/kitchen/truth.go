package kitchen

import (
	"math"
	"math/rand/v2"
)

// truth holds the limits of one kitchen. Three quantities carry it:
//
//	thickness  ln of how much thicker than water the mix is: fat droplets crowd
//	           (Krieger and Dougherty's packing law), lipophilic emulsifier sets
//	           a network once there is more of it than the fat dissolves
//	coverage   emulsifier that suits this fat, over what the droplets need: 1 =
//	           just covered
//	cover      1 − exp(−rate·coverage): each further gram buys less
//
// A mix clogs when it is too thick for nozzle and gas; it breaks when crowded
// beyond a limit or poorly covered; it holds by cover and body; it drains by
// what cover and body do not retain.
type truth struct {
	packing     float64 // fat share at which droplets jam, 0 to 1
	stiffening  float64 // thickness per percent emulsifier
	network     float64 // thickness per percent lipophilic emulsifier above dissolved
	dissolved   float64 // percent lipophilic emulsifier the warm fat keeps dissolved
	thickLimit  float64 // thickness the nozzle passes half the time
	thickSpread float64
	partlyBand  float64 // above the limit by less than this: comes out partly

	needBase, needPerFat float64 // percent emulsifier needed: base + per percent fat
	bestHLB              float64 // at 45 % fat
	hlbPerFat            float64 // how it moves with each percent fat
	hlbLow, hlbHigh      float64 // half-value widths below and above the best HLB
	rate                 float64 // of saturation of cover

	kink      float64 // softness of every limit: 0 = sharp
	breakBase float64 // logit of breaking far from any limit
	crowded   float64 // fat percent beyond which droplets merge
	perCrowd  float64 // logit per percent beyond
	thinCover float64 // coverage below which bare droplets merge
	perBare   float64 // logit per unit of coverage missing

	holdBase   float64 // ln minutes
	holdCover  float64
	holdBody   float64 // per unit thickness, up to bodyEnough
	bodyEnough float64
	excess     float64 // coverage beyond which emulsifier displaces what holds the foam
	perExcess  float64 // ln minutes per unit beyond
	bodyFat    float64 // fat percent below which there is too little of it to build on
	bodyPerFat float64 // ln minutes per percent short of that
	holdSpread float64

	drainBase     float64 // ln of drained over retained, in percent: see drainedPercent
	drainCover    float64
	drainBody     float64
	drainOffMatch float64 // per unit of HLB off, beyond what cover says
	drainSpread   float64

	wildShare float64 // share of mixes with three times the spread
	dayThick  float64 // what one standard day does to thickness,
	dayHold   float64 // to ln hold,
	dayDrain  float64 // and, downwards, to drained
}

// Day is how far a day is from the usual, in standard days: + is cool, which
// thickens, holds and retains.
type Day float64

// above is max(x, 0), rounded off over a width soft.
func above(x, soft float64) float64 {
	if soft == 0 {
		return math.Max(x, 0)
	}
	if x > 30*soft {
		return x
	}
	return soft * math.Log1p(math.Exp(x/soft))
}

func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// normalCDF is accurate in both tails.
func normalCDF(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

func (t *truth) thickness(m Mix) float64 {
	crowding := math.Min(m.FatPercent/100/t.packing, 0.995)
	lipophilic := m.EmulsifierPercent * (HydrophilicHLB - m.BlendHLB) / (HydrophilicHLB - LipophilicHLB)
	return -2.5*t.packing*math.Log(1-crowding) + t.stiffening*m.EmulsifierPercent +
		t.network*above(lipophilic-t.dissolved, t.kink)
}

func (t *truth) hlbOff(m Mix) float64 {
	return m.BlendHLB - t.bestHLB - t.hlbPerFat*(m.FatPercent-45)
}

func (t *truth) coverage(m Mix) float64 {
	off := t.hlbOff(m)
	if off < 0 {
		off /= t.hlbLow
	} else {
		off /= t.hlbHigh
	}
	return m.EmulsifierPercent / (1 + off*off) / (t.needBase + t.needPerFat*m.FatPercent)
}

// latent is the middle of everything at one mix on the usual day.
type latent struct{ thickness, breakLogit, lnHold, lnDrain float64 }

func (t *truth) latent(m Mix) latent {
	thick, coverage := t.thickness(m), t.coverage(m)
	cover := 1 - math.Exp(-t.rate*coverage)
	body := math.Min(thick, t.bodyEnough)
	return latent{
		thickness: thick,
		breakLogit: t.breakBase + t.perCrowd*above(m.FatPercent-t.crowded, 4*t.kink) +
			t.perBare*above(t.thinCover-coverage, t.kink/2),
		lnHold: t.holdBase + t.holdCover*cover + t.holdBody*body -
			t.perExcess*above(coverage-t.excess, t.kink/2) -
			t.bodyPerFat*above(t.bodyFat-m.FatPercent, 4*t.kink),
		lnDrain: t.drainBase - t.drainCover*cover - t.drainBody*body + t.drainOffMatch*math.Abs(t.hlbOff(m)),
	}
}

// Drained percent is 100·z/(100 + z) for z lognormal: it nears 100 and never passes it.
func drainedPercent(lnZ float64) float64 { z := math.Exp(lnZ); return 100 * z / (100 + z) }
func lnZ(percent float64) float64        { return math.Log(100 * percent / (100 - percent)) }

func (t *truth) outcome(m Mix, day Day, rng *rand.Rand) Outcome {
	d := float64(day)
	l := t.latent(m)
	u := rng.Float64()
	thick := l.thickness + t.dayThick*d + t.thickSpread*math.Log(u/(1-u))
	if thick >= t.thickLimit {
		return Outcome{Partly: thick < t.thickLimit+t.partlyBand}
	}
	return Outcome{
		CameOut:        true,
		Broke:          rng.Float64() < logistic(l.breakLogit),
		HoldMinutes:    math.Exp(l.lnHold + t.dayHold*d + t.holdSpread*t.scatter(rng)),
		DrainedPercent: drainedPercent(l.lnDrain - t.dayDrain*d + t.drainSpread*t.scatter(rng)),
	}
}

// scatter is standard normal, three times as wide in a share of mixes.
func (t *truth) scatter(rng *rand.Rand) float64 {
	z := rng.NormFloat64()
	if rng.Float64() < t.wildShare {
		z *= 3
	}
	return z
}

func (t *truth) scatterCDF(z float64) float64 {
	if t.wildShare == 0 {
		return normalCDF(z)
	}
	return (1-t.wildShare)*normalCDF(z) + t.wildShare*normalCDF(z/3)
}

// Given the day the outcomes are independent and their chances closed forms; the
// day is integrated by the trapezium rule, which for a smooth function times the
// normal density is accurate far beyond need (step 0.4 to ±6).
func (t *truth) chance(m Mix, targets Targets) float64 {
	l := t.latent(m)
	sound := 1 - logistic(l.breakLogit)
	hold, drain := l.lnHold-math.Log(targets.HoldMinutes), lnZ(targets.DrainedPercent)-l.lnDrain
	given := func(d float64) float64 {
		return logistic((t.thickLimit-l.thickness-t.dayThick*d)/t.thickSpread) *
			t.scatterCDF((hold+t.dayHold*d)/t.holdSpread) *
			t.scatterCDF((drain+t.dayDrain*d)/t.drainSpread)
	}
	if t.dayThick == 0 && t.dayHold == 0 && t.dayDrain == 0 {
		return sound * given(0)
	}
	sum := 0.0
	for i, w := range dayWeights {
		sum += w * given(dayNode(i))
	}
	return sound * sum
}

const dayStep, dayReach = 0.4, 6.0

func dayNode(i int) float64 { return -dayReach + dayStep*float64(i) }

var dayWeights = func() []float64 {
	w := make([]float64, int(math.Round(2*dayReach/dayStep))+1)
	sum := 0.0
	for i := range w {
		w[i] = math.Exp(-dayNode(i) * dayNode(i) / 2)
		sum += w[i]
	}
	for i := range w {
		w[i] /= sum
	}
	return w
}()

func (t *truth) cameOut(m Mix) float64 {
	room := t.thickLimit - t.thickness(m)
	sum := 0.0
	for i, w := range dayWeights {
		sum += w * logistic((room-t.dayThick*dayNode(i))/t.thickSpread)
	}
	return sum
}

// Best is the mix in the box with the highest chance, and that chance: a grid,
// then a shrinking pattern search from its best few points, since truths with
// kinks have no gradient to follow.
func (k *Kitchen) Best(box Box, targets Targets) (Mix, float64) {
	return k.BestOf(box, func(m Mix) float64 { return k.Chance(m, targets) })
}

// BestOf is the mix in the box where a chance is highest.
func (k *Kitchen) BestOf(box Box, chance func(Mix) float64) (Mix, float64) {
	const points, starts = 13, 3
	type found struct {
		mix    Mix
		chance float64
	}
	var top [starts]found
	for i := range points {
		for j := range points {
			for l := range points {
				m := box.At(float64(i)/(points-1), float64(j)/(points-1), float64(l)/(points-1))
				f := found{m, chance(m)}
				for s := range top {
					if f.chance > top[s].chance || top[s].mix == (Mix{}) {
						f, top[s] = top[s], f
					}
				}
			}
		}
	}
	best := top[0]
	for _, f := range top {
		for step := 0.5 / (points - 1); step > 1e-4; {
			moved := false
			for _, d := range steps {
				m := box.clamp(Mix{
					f.mix.FatPercent + d[0]*step*box.Fat.width(),
					f.mix.EmulsifierPercent + d[1]*step*box.Emulsifier.width(),
					f.mix.BlendHLB + d[2]*step*box.HLB.width(),
				})
				if c := chance(m); c > f.chance {
					f, moved = found{m, c}, true
				}
			}
			if !moved {
				step /= 2
			}
		}
		if f.chance > best.chance {
			best = f
		}
	}
	return best.mix, best.chance
}

// Richest is the most fat percent in the box at which some mix has the chance wanted:
// from the top down in a twentieth of the box, then by halves; false if there is none.
func (k *Kitchen) Richest(box Box, wanted float64, chance func(Mix) float64) (float64, bool) {
	const levels, halvings = 20, 4
	reaches := func(fat float64) bool {
		_, c := k.BestOf(Box{Span{fat, fat}, box.Emulsifier, box.HLB}, chance)
		return c >= wanted
	}
	for i := levels; i >= 0; i-- {
		low := box.Fat.at(float64(i) / levels)
		if !reaches(low) {
			continue
		}
		high := box.Fat.at(math.Min(1, float64(i+1)/levels))
		for range halvings {
			if mid := (low + high) / 2; reaches(mid) {
				low = mid
			} else {
				high = mid
			}
		}
		return low, true
	}
	return 0, false
}

// steps are 80 directions spread evenly over the ball (a golden spiral): a ridge
// where two laws meet runs along no axis, and a few directions would stall on it.
var steps = func() (all [80][3]float64) {
	for i := range all {
		z := 1 - (2*float64(i)+1)/float64(len(all))
		sin, cos := math.Sincos(float64(i) * math.Pi * (3 - math.Sqrt(5)))
		r := math.Sqrt(1 - z*z)
		all[i] = [3]float64{r * cos, r * sin, z}
	}
	return all
}()
