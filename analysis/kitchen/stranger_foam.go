package kitchen

import "math"

// foam is how a foam ages. Three things end it at rates that add: small bubbles
// feeding large ones, water running off the films, films bursting. Each has its own
// use for emulsifier, and too much of it softens the shells that stop the feeding.
type foam struct {
	home          float64 // percent fat
	coarse        float64 // how much larger bubbles are on bare fat
	thick         float64 // power of the fat in what slows running
	tied          float64 // slowing per percent emulsifier in the water
	shellBest     float64 // supply at which shells are stiffest
	shellNarrow   float64
	shell         float64 // ln of how much the stiffest shells slow feeding
	film          float64 // ln of how much full cover slows bursting
	pushes        float64 // bursting at supply 1 by what pushes the protein off, over that of bare films
	wrong         float64 // ln bursting per share of emulsifier that does not suit
	creep         float64 // power of the running rate in the drained liquid
	feeds, runs   float64 // rates
	bursts        float64
	lnHold, lnRun float64 // scales
}

// ages is the middle of how long a foam holds and how much of its liquid runs off.
type ages struct{ lnHold, lnRun float64 }

type rates struct{ feed, run, burst float64 }

// raw is the three rates but for the kitchen's share of each.
func (f foam) raw(m Mix, c cover) rates {
	size := 1 + f.coarse*c.bare
	x := c.supply / f.shellBest
	shells := math.Pow(x*math.Exp(1-x), f.shellNarrow)
	slow := math.Pow(m.FatPercent/f.home, f.thick) * (1 + f.tied*100*m.EmulsifierPercent/(100-m.FatPercent))
	return rates{
		feed:  math.Exp(-f.shell*shells) / (size * size),
		run:   size * size / slow,
		burst: (math.Exp(-f.film*(1-c.bare)+f.wrong*c.unsuits) + f.pushes*c.supply*c.supply) * size,
	}
}

func (f foam) ages(m Mix, c cover) ages {
	r := f.raw(m, c)
	return ages{
		lnHold: f.lnHold - math.Log(f.feeds*r.feed+f.runs*r.run+f.bursts*r.burst),
		lnRun:  f.lnRun + f.creep*math.Log(r.run),
	}
}

// mobile is the percent of the foam that can run off at all: its water, but for
// what the corners between bubbles keep.
func mobile(m Mix) float64 { return 0.85 * (100 - m.FatPercent - m.EmulsifierPercent) }

// drainedOf nears what is mobile as an exponential does.
func drainedOf(m Mix, lnRun float64) float64 { return -mobile(m) * math.Expm1(-math.Exp(lnRun)) }

// lnRunOf is the inverse; +Inf where that much cannot drain.
func lnRunOf(m Mix, drained float64) float64 {
	share := drained / mobile(m)
	if share >= 1 {
		return math.Inf(1)
	}
	return math.Log(-math.Log1p(-share))
}
