package region

import (
	"math"

	"foamfield/analysis/posterior"
)

// Link is one outcome of the chain: exactly one of Line and YesNo is set. A
// link that is a yes/no passes when the answer is Pass; a line passes between its
// bounds, of which one may be infinite.
type Link struct {
	YesNo *posterior.YesNoPosterior
	Pass  bool // the answer that passes

	Line      *posterior.LinePosterior
	Low, High float64
	ExtraSD   float64 // scatter added for another day
}

// Passes is the predictive probability that a mix passes the link.
func (l *Link) Passes(f []float64) float64 {
	if l.YesNo != nil {
		p := l.YesNo.Yes(f)
		if !l.Pass {
			p = 1 - p
		}
		return p
	}
	return l.between(func(bound float64) float64 { return l.Line.AtLeast(f, bound, l.ExtraSD) })
}

// passesGiven is the share that pass if the parameters were draw.
func (l *Link) passesGiven(f, draw []float64) float64 {
	if l.YesNo != nil {
		p := posterior.YesGiven(f, draw)
		if !l.Pass {
			p = 1 - p
		}
		return p
	}
	return l.between(func(bound float64) float64 { return posterior.AtLeastGiven(f, draw, bound, l.ExtraSD) })
}

// passesWith is passesGiven for a mix whose own offset is known too.
func (l *Link) passesWith(f, draw []float64, own float64) float64 {
	if l.YesNo != nil {
		return l.passesGiven(f, draw)
	}
	return l.between(func(bound float64) float64 { return posterior.AtLeastWith(f, draw, bound, l.ExtraSD, own) })
}

// between is the probability of lying between the bounds, from that of being at least
// a value.
func (l *Link) between(atLeast func(float64) float64) float64 {
	p := 1.0
	if !math.IsInf(l.Low, -1) {
		p = atLeast(l.Low)
	}
	if !math.IsInf(l.High, 1) {
		p -= atLeast(l.High)
	}
	return math.Max(p, 0)
}

// Believed is what is believed of the link's line.
func (l *Link) Believed() *posterior.Posterior {
	if l.YesNo != nil {
		return l.YesNo.Posterior
	}
	return l.Line.Posterior
}

// Chain is the outcomes a mix meets one after the other. Each was fitted on the
// trials that reached it, so given the features they are independent and the
// chance is the product of their predictive probabilities.
type Chain struct {
	Basis Basis
	Links []Link
}

// With is the chain with other values beside the mix.
func (c *Chain) With(beside []float64) *Chain {
	return &Chain{Basis: c.Basis.With(beside), Links: c.Links}
}

// Chance is the probability that the next mix of these values works.
func (c *Chain) Chance(mix []float64) float64 {
	chance, _ := c.verdict(mix, make([]float64, len(c.Links)))
	return chance
}

// verdict is the chance and the link with the largest share of first failures; it fills in
// the chance to pass each link.
func (c *Chain) verdict(mix, passes []float64) (chance float64, limitedBy int) {
	var buf [48]float64
	f := c.Basis.FeaturesInto(buf[:c.Basis.Width()], mix)
	chance = 1
	most := -1.0
	for i := range c.Links {
		pass := c.Links[i].Passes(f)
		passes[i] = pass
		if fails := chance * (1 - pass); fails > most {
			most, limitedBy = fails, i
		}
		chance *= pass
	}
	return chance, limitedBy
}

// Passes is the probability of passing each link, given that it is reached.
func (c *Chain) Passes(mix []float64) []float64 {
	f := c.Basis.Features(mix)
	p := make([]float64, len(c.Links))
	for i := range c.Links {
		p[i] = c.Links[i].Passes(f)
	}
	return p
}

// DrawnChance is Chance as the mean over the draws of each link, which a belief that is
// seldom asked needs no closed form for.
func (c *Chain) DrawnChance(mix []float64) float64 {
	f := c.Basis.Features(mix)
	p := 1.0
	for i := range c.Links {
		l := &c.Links[i]
		p *= l.Believed().MeanOf(func(draw []float64) float64 { return l.passesGiven(f, draw) })
	}
	return p
}

// CanLeaveOut reports whether ChanceWithout may be asked.
func (c *Chain) CanLeaveOut() bool {
	for i := range c.Links {
		if !c.Links[i].Believed().CanLeaveOut() {
			return false
		}
	}
	return true
}

// ChanceWithout is Chance in the belief that forgets one observation of each link:
// forget[link] is its index there, or -1.
func (c *Chain) ChanceWithout(mix []float64, forget []int) float64 {
	f := c.Basis.Features(mix)
	p := 1.0
	for i, obs := range forget {
		l := &c.Links[i]
		if obs < 0 {
			p *= l.Passes(f)
		} else {
			p *= l.Believed().MeanWithout(obs, func(draw []float64) float64 { return l.passesGiven(f, draw) })
		}
	}
	return p
}

// FirstFailures is the share of mixes that fail first at each link; with the
// chance of working they add up to one.
func (c *Chain) FirstFailures(mix []float64) []float64 {
	reached := 1.0
	p := c.Passes(mix)
	for i, pass := range p {
		p[i] = reached * (1 - pass)
		reached *= pass
	}
	return p
}
