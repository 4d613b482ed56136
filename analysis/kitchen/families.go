package kitchen

import (
	"hash/fnv"
	"math"
	"math/rand/v2"
)

// The two emulsifiers of every simulated kitchen; blends lie between.
const (
	LipophilicHLB  = 3.8  // glycerol monostearate
	HydrophilicHLB = 15.0 // the sucrose ester of the grade numbered 15
)

// Usual are the targets the kitchens are made around.
var Usual = Targets{HoldMinutes: 20, DrainedPercent: 10}

// Stream is the random stream of a seed for one purpose: streams of different
// purposes do not overlap, so adding one changes no other.
func Stream(seed uint64, purpose string) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(purpose))
	return rand.New(rand.NewPCG(seed, h.Sum64()))
}

// draws gives numbers evenly from a range.
type draws struct{ *rand.Rand }

func (d draws) from(low, high float64) float64  { return low + d.Float64()*(high-low) }
func (d draws) ratio(low, high float64) float64 { return low * math.Pow(high/low, d.Float64()) } // evenly in its logarithm
func (d draws) sign() float64                   { return float64(2*d.IntN(2) - 1) }

// slack is how far from each limit a kitchen's own good formula is; what is
// negative is out of that kitchen's reach there.
type slack struct {
	thick float64 // thickness left before the nozzle stops it
	crowd float64 // percent fat left before droplets merge
	hold  float64 // ln minutes beyond the usual target
	drain float64 // ln percent below the usual target
}

// New is the kitchen of that family and seed. Each has a formula of its own that
// suits it (somewhere in the middle of what its cook tries), laws around it, and
// one story that makes it what it is.
func New(family Family, seed uint64) *Kitchen {
	d := draws{Stream(seed, "truth "+family.String())}
	if family == Stranger {
		return drawnByStranger(seed, d)
	}
	return drawn(family, seed, d)
}

func drawn(family Family, seed uint64, d draws) *Kitchen {
	suits := Mix{FatPercent: d.from(38, 52), BlendHLB: d.from(7, 10.5)}
	t := truth{
		// Droplets of mixed size jam between random (0.64) and mixed-size packing.
		packing:    d.from(0.70, 0.80),
		stiffening: d.from(0.1, 0.4),
		network:    d.from(0.5, 1.2),
		dissolved:  d.from(0.9, 1.8),
		partlyBand: d.from(0.1, 0.3),
		needBase:   0.2,
		// Finer whisking makes more surface to cover.
		needPerFat: d.from(0.025, 0.042),
		bestHLB:    suits.BlendHLB, // moved below where it follows the fat
		hlbLow:     d.from(2, 3.2),
		hlbHigh:    d.from(2, 3.5),
		rate:       d.from(1.2, 1.8),
		breakBase:  d.from(-5, -4),
		perCrowd:   d.from(0.3, 0.8),
		thinCover:  d.from(0.6, 0.8),
		perBare:    d.from(4, 8),
		holdCover:  d.from(3, 5),
		holdBody:   d.from(0.3, 0.9),
		excess:     d.from(1.3, 1.8),
		perExcess:  d.from(0.8, 2.5),
		bodyPerFat: d.from(0.02, 0.07),
		bodyFat:    suits.FatPercent - d.from(0, 5),
		drainCover: d.from(3, 7),
		drainBody:  d.from(0.5, 1.3),
	}
	suits.EmulsifierPercent = d.from(1.1, 1.3) * (t.needBase + t.needPerFat*suits.FatPercent)

	k := &Kitchen{Family: family, Seed: seed}
	var s slack
	switch family {
	case Easy:
		s = easy(d, &t, k)
	case Hard:
		s = hard(d, &t, k)
	case Edges:
		s = edges(d, &t, k)
	default:
		panic("kitchen: no family " + family.String() + " to draw from")
	}
	t.settle(suits, s)
	k.laws = &t
	k.Tries = around(suits, d)
	k.watches = watch(family, d.Rand)
	return k
}

// around is the box a cook tries: what suits lies inside it, rarely in the middle.
func around(suits Mix, d draws) Box {
	side := func(x, width float64) Span {
		low := x - d.from(0.25, 0.75)*width
		return Span{low, low + width}
	}
	ln := side(math.Log(suits.EmulsifierPercent), d.from(0.9, 1.4)) // 2.5 to 4 times the least
	hlb := side(suits.BlendHLB, d.from(4, 6))
	return Box{
		Fat:        side(suits.FatPercent, d.from(14, 22)),
		Emulsifier: Span{math.Exp(ln.Low), math.Exp(ln.High)},
		HLB:        Span{math.Max(hlb.Low, LipophilicHLB+1), math.Min(hlb.High, HydrophilicHLB-1)},
	}
}

// settle puts every limit at its slack from the mix that suits the kitchen.
func (t *truth) settle(suits Mix, s slack) {
	t.bestHLB = suits.BlendHLB - t.hlbPerFat*(suits.FatPercent-45)
	thick := t.thickness(suits)
	t.thickLimit = thick + s.thick
	t.bodyEnough = thick + 0.2
	t.crowded = suits.FatPercent + s.crowd
	t.holdBase, t.drainBase = 0, 0
	l := t.latent(suits)
	t.holdBase = math.Log(Usual.HoldMinutes) + s.hold - l.lnHold
	t.drainBase = lnZ(Usual.DrainedPercent) - s.drain - l.lnDrain
}

// easy: one cook, one stove, weighed well; limits are rounded, days hardly
// differ, and there is room around the formula that suits.
func easy(d draws, t *truth, k *Kitchen) slack {
	t.kink = d.from(0.05, 0.25)
	t.thickSpread = d.from(0.07, 0.14)
	t.holdSpread = d.from(0.15, 0.28) // repeats of hold scatter by 15-30 %
	t.drainSpread = d.from(0.2, 0.35)
	t.dayThick, t.dayHold, t.dayDrain = d.from(0, 0.04), d.from(0, 0.08), d.from(0, 0.08)
	s := slack{thick: d.from(0.3, 0.7), crowd: d.from(2, 6), hold: d.from(0.25, 0.6), drain: d.from(0.3, 0.8)}
	switch d.IntN(4) {
	case 0:
		k.Why = "warm oil and a wide nozzle: little network forms, so richness ends by splitting, not clogging"
		t.network *= 0.5
		s.thick += 0.2
		s.crowd = d.from(1, 3)
	case 1:
		k.Why = "butter served just warm: monostearate beyond what it dissolves sets at once, so a little more clogs"
		t.network *= 1.6
		t.dissolved *= 0.9
		t.kink = 0
	case 2:
		k.Why = "a thin, sugary water part: it runs out between the bubbles long before the foam falls"
		s.drain = d.from(0.2, 0.4)
		s.hold += 0.4
		t.drainCover += 1.5
	case 3:
		k.Why = "a stock with protein in it: past full cover the emulsifier pushes the protein off the bubbles and hold falls"
		t.excess = d.from(1.2, 1.45)
		t.perExcess = d.from(2.5, 4)
		s.hold -= 0.05
	}
	return s
}

// hard: several cooks, warm and cold days, a mix that leaves little room; limits
// are mostly sharp, scatter has heavy tails, and the HLB that suits follows the fat.
func hard(d draws, t *truth, k *Kitchen) slack {
	if d.IntN(3) == 0 {
		t.kink = d.from(0, 0.2)
	}
	t.thickSpread = d.from(0.08, 0.22)
	t.holdSpread = d.from(0.18, 0.35)
	t.drainSpread = d.from(0.22, 0.45)
	t.wildShare = d.from(0.03, 0.12) // a cold canister, a short charge, a forgotten shake
	t.dayThick, t.dayHold, t.dayDrain = d.from(0.03, 0.1), d.from(0.08, 0.22), d.from(0.08, 0.22)
	// A fat's own surface-active parts come with it, and shift what blend suits.
	t.hlbPerFat = d.sign() * d.from(0.05, 0.15)
	room := d.from(-0.25, 2.2)
	s := slack{thick: 0.15 + 0.5*room, crowd: 1 + 4*room, hold: 0.1 + 0.5*room, drain: 0.15 + 0.6*room}
	switch d.IntN(5) {
	case 0:
		k.Why = "a pass that is cold in the morning and hot at service: the same mix holds half as long some days"
		t.dayHold, t.dayDrain = d.from(0.25, 0.4), d.from(0.2, 0.35)
		s.hold += 0.2
		s.drain += 0.2
	case 1:
		k.Why = "a fine decorating nozzle: it stops mixes that any other would pass, and not always the same ones"
		s.thick -= 0.15
		t.thickSpread *= 1.4
	case 2:
		k.Why = "a fat that brings its own lecithin: the blend that suits at 40 % fat is wrong at 50 %"
		t.hlbPerFat = d.sign() * d.from(0.15, 0.25)
		t.hlbLow, t.hlbHigh = 0.8*t.hlbLow, 0.8*t.hlbHigh
		s.hold += 0.1
	case 3:
		k.Why = "churned hard in a blender that warms it: droplets merge early and all at once when crowded"
		s.crowd -= 3
		t.perCrowd = d.from(0.8, 1.4)
	case 4:
		k.Why = "old monostearate, partly hydrolysed: it thickens as ever and covers badly, so the clog comes before the cover"
		t.network *= 1.4
		s.hold -= 0.2
		s.drain -= 0.15
	}
	return s
}

// edges: kitchens like the easy ones but for how sudden clogging and splitting are, which
// spans a factor of eight and of six between them. The wider an edge, the further
// back from it a kitchen's own good formula lies.
func edges(d draws, t *truth, k *Kitchen) slack {
	s := easy(d, t, k)
	t.thickSpread *= d.ratio(0.5, 4)
	width := d.ratio(0.6, 3.6)
	t.perCrowd /= width
	t.perBare /= width
	// Hold follows how well the droplets are covered, hardly how thick the mix is.
	t.holdCover *= 1.3
	t.holdBody *= 0.5
	s.thick = math.Max(s.thick, t.thickSpread*d.from(3, 5))
	s.crowd += 2 * (width - 1)
	k.Why += nozzle(t.thickSpread)
	return s
}

// nozzle tells how the kitchen's edge came to be as wide as it is.
func nozzle(spread float64) string {
	switch {
	case spread < 0.08:
		return "; one nozzle, strained twice: it passes or it does not"
	case spread < 0.2:
		return "; the usual nozzle, strained once"
	}
	return "; several heads, lumps now and then: it may clog long before it must"
}
