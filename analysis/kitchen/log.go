package kitchen

import (
	"math"
	"math/rand/v2"
)

// Bounds is a result known up to limits: equal when exact, 0 or +Inf where open.
type Bounds struct{ Low, High float64 }

// Logged is one trial as the kitchen's log has it. What was made and what truly
// happened stand beside, for scoring; they are never written.
type Logged struct {
	No, Day                                                 int
	OilGrams, WaterGrams, LipophilicGrams, HydrophilicGrams float64
	CameOut, Partly, Broke                                  bool
	Hold, Drained                                           *Bounds // nil = not logged

	Made  Mix
	Truth Outcome
	Slip  Slip

	aimed Mix
}

// Slip says which value of a trial was typed wrong.
type Slip uint8

// The slips.
const (
	NoSlip Slip = iota
	HoldSlip
	FatSlip
	EmulsifierSlip
)

// Mix is what the logged grams come to.
func (l Logged) Mix() Mix {
	emulsifier := l.LipophilicGrams + l.HydrophilicGrams
	total := l.OilGrams + l.WaterGrams + emulsifier
	if emulsifier == 0 { // a control: no blend, so no HLB
		return Mix{FatPercent: 100 * l.OilGrams / total}
	}
	return Mix{
		FatPercent:        100 * l.OilGrams / total,
		EmulsifierPercent: 100 * emulsifier / total,
		BlendHLB:          (LipophilicHLB*l.LipophilicGrams + HydrophilicHLB*l.HydrophilicGrams) / emulsifier,
	}
}

// watching is how a kitchen sees its foams.
type watching struct {
	batch     float64 // grams
	stop      float64 // minutes; still standing then is "at least"
	every     float64 // minutes between looks; 0 = someone stays with it
	readLimit float64 // drained percent that can still be read
	skips     float64 // share of trials whose drainage nobody measured
	slips     bool    // one value of the log is typed wrong
}

func watch(family Family, rng *rand.Rand) watching {
	pick := func(x ...float64) float64 { return x[rng.IntN(len(x))] }
	w := watching{
		batch:     pick(200, 250, 300, 400),
		stop:      pick(20, 20, 20, 30, 30),
		every:     pick(0, 0, 5),
		readLimit: pick(0.5, 1, 1, 2),
		skips:     pick(0, 0, 0.05, 0.1),
	}
	if family == Hard {
		w.stop = pick(15, 20, 20, 20, 30, 30) // 15: they plate at 15 and never look again
		w.slips = rng.IntN(3) == 0
	}
	if family == Stranger {
		w.slips = rng.IntN(6) == 0
	}
	return w
}

// Log lets the cook make n trials in the layout and writes down what a kitchen would.
func (k *Kitchen) Log(layout Layout, n int, rng *rand.Rand) []Logged {
	var log []Logged
	var today Day
	day := 0
	for i := range n {
		if d := layout.day(i); d != day {
			day, today = d, k.Day(rng)
		}
		l := k.watches.weigh(layout.next(k.Tries, log, rng))
		l.No, l.Day = i+1, day
		l.Made = l.offBy(0.05, rng)
		l.Truth = k.Outcome(l.Made, today, rng)
		k.watches.see(&l, rng)
		log = append(log, l)
	}
	if k.watches.slips {
		slip(log, rng)
	}
	return log
}

// Continue makes mixes somebody suggested on one more day and writes them down too.
func (k *Kitchen) Continue(log []Logged, mixes []Mix, rng *rand.Rand) []Logged {
	day, today := 1, k.Day(rng)
	if len(log) > 0 {
		day = log[len(log)-1].Day + 1
	}
	for _, m := range mixes {
		l := k.watches.weigh(m)
		l.No, l.Day = len(log)+1, day
		l.Made = l.offBy(0.05, rng)
		l.Truth = k.Outcome(l.Made, today, rng)
		k.watches.see(&l, rng)
		log = append(log, l)
	}
	return log
}

func tenth(x float64) float64 { return math.Round(10*x) / 10 }

// weigh turns the aim into grams on a 0.1 g scale.
func (w watching) weigh(aim Mix) Logged {
	emulsifier := aim.EmulsifierPercent / 100 * w.batch
	lipophilic := emulsifier * (HydrophilicHLB - aim.BlendHLB) / (HydrophilicHLB - LipophilicHLB)
	l := Logged{OilGrams: tenth(aim.FatPercent / 100 * w.batch), LipophilicGrams: tenth(lipophilic), HydrophilicGrams: tenth(emulsifier - lipophilic), aimed: aim}
	l.WaterGrams = tenth(w.batch - l.OilGrams - l.LipophilicGrams - l.HydrophilicGrams)
	return l
}

// offBy is the mix truly in the canister when each weighing is off by up to half a step.
func (l Logged) offBy(half float64, rng *rand.Rand) Mix {
	for _, g := range []*float64{&l.OilGrams, &l.WaterGrams, &l.LipophilicGrams, &l.HydrophilicGrams} {
		if off := half * (2*rng.Float64() - 1); *g > 0 { // what is left out is not weighed
			*g += off
		}
	}
	return l.Mix()
}

// see writes down what the cook sees of the truth. What did not come out fully,
// or broke, is thrown away: neither hold nor drainage is taken.
func (w watching) see(l *Logged, rng *rand.Rand) {
	o := l.Truth
	l.CameOut, l.Partly, l.Broke = o.CameOut, o.Partly, o.Broke
	if !o.CameOut || o.Broke {
		return
	}
	l.Hold = w.hold(o.HoldMinutes)
	// Nobody sets to drain what has fallen before the sample is weighed.
	if o.HoldMinutes < 1 || rng.Float64() < w.skips {
		return
	}
	switch read := w.readLimit * math.Round(o.DrainedPercent/w.readLimit); {
	case o.DrainedPercent < w.readLimit:
		l.Drained = &Bounds{0, w.readLimit}
	default:
		l.Drained = &Bounds{read, read}
	}
}

func (w watching) hold(minutes float64) *Bounds {
	switch {
	case minutes >= w.stop:
		return &Bounds{w.stop, math.Inf(1)}
	case w.every > 0:
		from := w.every * math.Floor(minutes/w.every)
		return &Bounds{from, from + w.every}
	case minutes < 1:
		return &Bounds{0, 1}
	}
	whole := math.Round(minutes)
	return &Bounds{whole, whole}
}

// StillStanding reports whether the foam outlasted the watching.
func (l Logged) StillStanding() bool { return l.Hold != nil && math.IsInf(l.Hold.High, 1) }
