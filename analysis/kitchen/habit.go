package kitchen

// Habit is the trial a cook would repeat without any analysis: of those that
// came out, did not break and did not weep beyond the target, the one that held
// longest; of equals the one with most fat. Where no trial is that good it is
// the best of those that came out whole, then of those that came out; where all
// clogged, the thinnest: least fat, then least emulsifier.
func Habit(log []Logged, targets Targets) Mix { return bestOf(log, targets).Mix() }

func bestOf(log []Logged, targets Targets) Logged {
	rank := func(l Logged) int {
		switch {
		case !l.CameOut:
			return 0
		case l.Broke:
			return 1
		case l.Drained != nil && l.Drained.Low > targets.DrainedPercent:
			return 2
		}
		return 3
	}
	held := func(l Logged) float64 {
		if l.Hold == nil {
			return 0
		}
		return l.Hold.Low
	}
	better := func(a, b Logged) bool {
		ma, mb := a.Mix(), b.Mix()
		switch {
		case rank(a) != rank(b):
			return rank(a) > rank(b)
		case held(a) != held(b):
			return held(a) > held(b)
		case rank(a) > 0:
			return ma.FatPercent > mb.FatPercent
		case ma.FatPercent != mb.FatPercent:
			return ma.FatPercent < mb.FatPercent
		}
		return ma.EmulsifierPercent < mb.EmulsifierPercent
	}
	best := log[0]
	for _, l := range log[1:] {
		if better(l, best) {
			best = l
		}
	}
	return best
}

// Tested is the box of what was truly made.
func Tested(log []Logged) Box {
	at := func(m Mix) Box {
		return Box{Span{m.FatPercent, m.FatPercent}, Span{m.EmulsifierPercent, m.EmulsifierPercent}, Span{m.BlendHLB, m.BlendHLB}}
	}
	var box Box
	for i, l := range log {
		if l.Made.EmulsifierPercent == 0 { // a control lies on no surface
			continue
		}
		b := at(l.Made)
		if i == 0 || box == (Box{}) {
			box = b
		}
		box = Box{box.Fat.with(b.Fat), box.Emulsifier.with(b.Emulsifier), box.HLB.with(b.HLB)}
	}
	return box
}

func (s Span) with(o Span) Span { return Span{min(s.Low, o.Low), max(s.High, o.High)} }
