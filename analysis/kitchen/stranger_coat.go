package kitchen

import "math"

// coat is how a fat takes up emulsifier. What it offers to bind to grows as a power
// of the fat; what binds follows the mass balance of a surface with a binding
// strength, so that cover is whole only with some to spare.
type coat struct {
	need   float64 // percent emulsifier that would just cover the home fat
	home   float64 // percent fat
	finer  float64 // above 1: richer mixes break up finer
	loose  float64 // 0 = every molecule binds
	hlb    float64 // that suits the home fat
	drift  float64 // how it moves with ln fat
	suited suited
}

// cover is how a mix is covered.
type cover struct {
	supply  float64 // emulsifier that suits, over what the fat would bind
	bare    float64 // share of the fat without any
	unsuits float64 // share of the emulsifier that does not suit
}

func (k coat) on(m Mix) cover {
	rich := m.FatPercent / k.home
	suits := k.suited.share(m.BlendHLB - k.hlb - k.drift*math.Log(rich))
	supply := suits * m.EmulsifierPercent / (k.need * math.Pow(rich, k.finer))
	b := 1 + supply + k.loose
	bound := (b - math.Sqrt(b*b-4*supply)) / 2
	return cover{supply: supply, bare: 1 - bound, unsuits: 1 - suits}
}

// suited is the share of a blend that is of use to this fat, by how far its HLB is
// above what suits.
type suited interface{ share(off float64) float64 }

const leastSuited = 0.03

// steep falls off steeply on one side and slowly on the other, as a bond does when
// pressed and when drawn.
type steep struct{ width float64 } // negative: steep above

func (s steep) share(off float64) float64 {
	e := math.Exp(-off / s.width)
	return math.Max(e*(2-e), leastSuited)
}

// plateau does not mind the blend within a range, and soon minds it much outside.
type plateau struct{ below, above, edge float64 }

func (p plateau) share(off float64) float64 {
	wide := p.above
	if off < 0 {
		wide = p.below
	}
	return math.Max(1/(1+math.Pow(math.Abs(off)/wide, p.edge)), leastSuited)
}
