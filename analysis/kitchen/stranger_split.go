package kitchen

import "math"

// split is the chance that a foam that comes out breaks.
type split interface{ chance(m Mix, c cover) float64 }

// holes split a foam where coats have them: bare patches meet, the oftener the
// richer and the harder the shake, and below a bare share nothing happens at all.
type holes struct {
	stray float64 // meetings that break a foam whatever the mix
	from  float64 // bare share
	meets float64 // meetings at the whole bare share and 45 % fat
	order float64 // how many patches it takes
	crowd float64 // power of the fat
}

func (s holes) chance(m Mix, c cover) float64 {
	open := math.Max(0, c.bare-s.from)
	return 1 - math.Exp(-s.stray-s.meets*math.Pow(m.FatPercent/45, s.crowd)*math.Pow(open, s.order))
}

// shaken foams split where the shake shears them to more than they stand: a fat
// percent that bare fat and a blend that does not suit both lower.
type shaken struct {
	stray        float64
	stands       float64 // percent fat split half the time when covered and suited
	bare, unsuit float64 // percent of fat it falls by
	sudden       float64 // Weibull's exponent
}

func (s shaken) chance(m Mix, c cover) float64 {
	stands := math.Max(5, s.stands-s.bare*c.bare-s.unsuit*c.unsuits*c.unsuits)
	return 1 - math.Exp(-s.stray-math.Ln2*math.Pow(m.FatPercent/stands, s.sudden))
}

// turning foams turn over, fat outside: past a line in fat and HLB that more
// emulsifier moves away. How near the line a batch gets has long tails.
type turning struct {
	stray  float64
	fat    float64 // percent of fat on the line at HLB 9, supply 1
	perHLB float64 // percent of fat the line rises with HLB
	supply float64 // percent of fat per e-fold supply
	width  float64
}

func (s turning) chance(m Mix, c cover) float64 {
	line := s.fat + s.perHLB*(m.BlendHLB-9) + s.supply*math.Log(math.Max(c.supply, 0.05))
	return 1 - math.Exp(-s.stray)*(1-student3CDF((m.FatPercent-line)/s.width))
}
