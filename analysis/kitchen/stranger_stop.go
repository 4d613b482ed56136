package kitchen

import "math"

// stiffness is what the gas has to overcome, on a scale of the kitchen's own where
// chill adds. The limit is put on that scale afterwards.
type stiffness interface{ of(m Mix, c cover) float64 }

// lipophilicShare is the monostearate's share of the emulsifier.
func lipophilicShare(m Mix) float64 {
	return (HydrophilicHLB - m.BlendHLB) / (HydrophilicHLB - LipophilicHLB)
}

// crystals knit half-set fat and monostearate into one network: its yield stress is
// a power of what has set, and chill multiplies it.
type crystals struct {
	fat  float64 // power of the fat
	seed float64 // percent monostearate that doubles the stress
	knit float64 // power of the monostearate
}

func (s crystals) of(m Mix, _ cover) float64 {
	return s.fat*math.Log(m.FatPercent) + math.Log1p(math.Pow(m.EmulsifierPercent*lipophilicShare(m)/s.seed, s.knit))
}

// coats make droplets larger than their fat: the mix jams at a room filled by fat,
// its coats and the water that free emulsifier ties up. Chill takes from the room.
type coats struct {
	shell float64 // room of a full coat, per room of fat
	ties  float64 // percent of room per percent emulsifier that is not on the fat
}

func (s coats) of(m Mix, c cover) float64 {
	free := m.EmulsifierPercent * math.Max(0, 1-(1-c.bare)/math.Max(c.supply, 1e-9))
	return m.FatPercent*(1+s.shell*(1-c.bare)) + s.ties*free
}

// gel sets the water: the emulsifier in it swells into layers at one HLB more than
// at any other, on top of how fat thickens everything.
type gel struct {
	power float64 // of the emulsifier in the water
	at    float64 // HLB at which it swells most
	width float64
	fat   float64 // percent fat that stiffens as much as e-fold emulsifier
}

func (s gel) of(m Mix, _ cover) float64 {
	inWater := m.EmulsifierPercent / (100 - m.FatPercent)
	off := (m.BlendHLB - s.at) / s.width
	return s.power*math.Log(inWater) - off*off/2 + m.FatPercent/s.fat
}

// grains stop the nozzle: bare droplets stick together like butter coming in the
// churn, so too little emulsifier clogs as too much does.
type grains struct {
	fat    float64 // power of the fat
	sticks float64 // per share bare
	paste  float64 // per percent emulsifier
}

func (s grains) of(m Mix, c cover) float64 {
	return s.fat*math.Log(m.FatPercent) + s.sticks*c.bare*c.bare + s.paste*m.EmulsifierPercent
}

// tunnel is the gas boring a channel through the mix instead of carrying it out:
// stretched with richness and bare fat, whether it does is Weibull's law.
type tunnel struct {
	fat, bare float64
	scale     float64 // +Inf: never
	sudden    float64
}

func (t tunnel) bores(m Mix, c cover) float64 {
	return math.Pow(m.FatPercent/45, t.fat) * (1 + t.bare*c.bare)
}

// spared is the chance that the gas does not tunnel.
func (t tunnel) spared(m Mix, c cover) float64 {
	return math.Exp(-math.Pow(t.bores(m, c)/t.scale, t.sudden))
}
