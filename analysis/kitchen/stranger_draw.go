package kitchen

import "math"

func (d draws) evenlyInLog(low, high float64) float64 {
	return math.Exp(d.from(math.Log(low), math.Log(high)))
}

// sudden is over how much of the ranges tried a chance goes from 10 to 90 %: from a
// cliff that no two trials straddle twice to a slope over half of them.
func (d draws) sudden() float64 { return d.evenlyInLog(0.01, 0.5) }

// drawnByStranger draws a home formula that is covered and suited, the ranges the
// cook tries around it, ways to clog, split and age, and last the limits. Nothing
// is drawn again for coming out badly: some kitchens can do no good foam.
func drawnByStranger(seed uint64, d draws) *Kitchen {
	home := Mix{FatPercent: d.from(30, 56), BlendHLB: d.from(6, 12.5)}
	s := &stranger{coat: strangeCoat(d, home), dayShare: d.from(0.02, 0.9)}
	home.EmulsifierPercent = d.from(1.1, 1.7) * s.coat.need
	k := &Kitchen{Family: Stranger, Seed: seed, laws: s, Tries: strangeBox(d, home)}

	stops := s.drawStop(d, home)
	splits := s.drawSplit(d, k.Tries, home)
	s.drawFoam(d, home)
	bores := s.settleStops(d, k.Tries)
	s.settleFoam(d, k.Tries)
	k.Why = stops + splits + bores
	k.watches = watch(Stranger, d.Rand)
	return k
}

func strangeCoat(d draws, home Mix) coat {
	k := coat{
		need:  d.from(0.7, 2.2) * home.FatPercent / 45,
		home:  home.FatPercent,
		finer: d.from(0.6, 1.6),
		loose: d.evenlyInLog(0.003, 0.2),
		hlb:   home.BlendHLB,
	}
	if d.IntN(2) == 0 {
		k.drift = d.sign() * d.from(1, 7)
	}
	if d.IntN(2) == 0 {
		k.suited = steep{d.sign() * d.from(2.5, 5)}
	} else {
		k.suited = plateau{below: d.from(1.3, 3.5), above: d.from(1.3, 3.5), edge: d.from(2, 8)}
	}
	return k
}

// strangeBox has the home formula anywhere in it; a cook in five has found it at
// one end of what is tried.
func strangeBox(d draws, home Mix) Box {
	end := -1
	if d.IntN(5) == 0 {
		end = d.IntN(3)
	}
	side := func(i int, x, width float64, within Span) Span {
		at := d.from(0.1, 0.75) // cooks overshoot more than they stop short
		if i == end {
			at = float64(d.IntN(2))
		}
		low := within.clamp(x - at*width)
		return Span{low, within.clamp(low + width)}
	}
	return Box{
		Fat:        side(0, home.FatPercent, d.from(12, 28), Span{15, 75}),
		Emulsifier: side(1, home.EmulsifierPercent, home.EmulsifierPercent*d.from(0.9, 2.2), Span{0.4, 9}),
		HLB:        side(2, home.BlendHLB, d.from(3.5, 6.5), Span{LipophilicHLB + 1, HydrophilicHLB - 1}),
	}
}

// drawStop draws what stops the nozzle, and says what that is like.
func (s *stranger) drawStop(d draws, home Mix) string {
	s.lump = d.from(0, 0.015)
	switch d.IntN(4) {
	case 0:
		s.stop = crystals{fat: d.from(1, 5), seed: home.EmulsifierPercent * d.from(0.2, 0.8), knit: d.from(1.2, 5)}
		return "a fat half set by service: its crystals and the monostearate knit, and how far is up to the chill"
	case 1:
		s.stop = coats{shell: d.from(0.1, 0.4), ties: d.from(2, 12)}
		return "droplets whisked so fine that their coats take up room: it jams as if there were far more fat"
	case 2:
		s.stop = gel{power: d.from(1, 4), at: d.from(4.5, 10), width: d.from(2, 5), fat: d.from(8, 40)}
		return "a blend that swells the water to a gel, at one HLB more than at any other"
	}
	s.stop = grains{fat: d.from(0.5, 3), sticks: d.from(0.5, 3), paste: d.from(0.1, 0.6)}
	return "fat that comes to grains like butter in a churn where it is bare, and sits in the nozzle"
}

// drawSplit draws what splits the foam, and says what that is like.
func (s *stranger) drawSplit(d draws, box Box, home Mix) string {
	sudden, stray := d.sudden(), d.from(0, 0.025)
	stands := home.FatPercent + d.from(0.1, 1)*box.Fat.width()
	switch d.IntN(3) {
	case 0:
		scant := home
		scant.EmulsifierPercent *= d.from(0.35, 0.8)
		h := holes{stray: stray, from: s.coat.on(scant).bare, order: d.from(1, 2.5), crowd: d.from(1, 6)}
		// Covers mostly range over half of what there is.
		h.meets = math.Log(10) / math.Pow(0.5*sudden, h.order)
		s.split = h
		return "; it splits through holes in the coats, and a whole coat stands any shake"
	case 1:
		s.split = shaken{
			stray: stray, stands: stands, bare: d.from(3, 25), unsuit: d.from(0, 10),
			// From 10 to 90 % is a ratio of ln 10/ln (10/9) to the power 1/exponent.
			sudden: math.Log(math.Log(10)/math.Log(10.0/9)) * stands / (sudden * box.Fat.width()),
		}
		return "; a hard shake splits what is rich, poorly coated or badly matched"
	}
	t := turning{stray: stray, perHLB: d.from(0.5, 4), supply: d.from(1, 12), width: sudden * box.Fat.width() / (2 * 1.6377)}
	t.fat = stands - t.perHLB*(home.BlendHLB-9) - t.supply*math.Log(s.coat.on(home).supply)
	s.split = t
	return "; rich and lipophilic, it turns over, fat outside"
}

// drawFoam draws how foams age, and how differently repeats and chills make them.
func (s *stranger) drawFoam(d draws, home Mix) {
	f := foam{
		home:        home.FatPercent,
		coarse:      d.from(0.3, 1.8),
		thick:       d.from(0, 1.8),
		tied:        d.evenlyInLog(0.01, 0.2),
		shellBest:   d.from(0.8, 1.6),
		shellNarrow: d.from(0.7, 4),
		shell:       d.from(0.6, 2.5),
		film:        d.from(1, 4),
		wrong:       d.from(0, 2),
		pushes:      d.evenlyInLog(0.01, 0.2),
		creep:       d.from(0.6, 1.6),
	}
	// At home each rate has its share of ending the foam.
	at := f.raw(home, s.coat.on(home))
	a, b, c := d.from(0.1, 1), d.from(0.1, 1), d.from(0.1, 1)
	f.feeds, f.runs, f.bursts = a/at.feed, b/at.run, c/at.burst
	s.foam = f
	s.hold = scatter{tail(d.IntN(3)), d.evenlyInLog(0.1, 0.45)}
	s.drain = scatter{tail(d.IntN(3)), d.evenlyInLog(0.1, 0.45)}
	s.holdChill = s.hold.spread * d.evenlyInLog(0.05, 1)
	s.drainChill = s.drain.spread * d.evenlyInLog(0.05, 1)
	// A foam too cold may be brittle instead of firm.
	if d.IntN(4) == 0 {
		s.holdChill = -s.holdChill
	}
}
