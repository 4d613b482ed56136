package kitchen

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"foamfield/analysis/plan"
)

var insiders = flag.Int("insider", 0, "easy kitchens a layout for somebody who knows their laws; 40 take some minutes")

// No log of 24 trials tells everything: this is what is lost even by somebody who knows
// how the kitchens come about, every law and how its numbers are drawn, and lacks only
// this kitchen's numbers. The insider walks at random over the numbers that kitchens are
// drawn from (Metropolis, in the unit cube), keeps the kitchens that the log allows, and
// starts from the mix that works most often in those.
func TestInsider(t *testing.T) {
	if *insiders == 0 {
		t.Skip("takes minutes: go test ./analysis/kitchen -run Insider -insider 40 -v")
	}
	for i, layout := range Layouts {
		best, start, claim := make([]float64, *insiders), make([]float64, *insiders), make([]float64, *insiders)
		var wg sync.WaitGroup
		for j := range *insiders {
			wg.Go(func() {
				k := New(Easy, uint64(20_000+i*50+j)) // those that the priors were settled on
				log := k.Log(layout, 24, Stream(k.Seed, fmt.Sprint("log ", layout, 24)))
				_, best[j] = k.Best(Tested(log), Usual)
				mix, says := insider(k.watches, Tested(log), log, working, rand.New(rand.NewPCG(k.Seed, 5)))
				start[j], claim[j] = k.Chance(mix, Usual), says
			})
		}
		wg.Wait()
		mean := func(x []float64) (m float64) {
			for _, v := range x {
				m += v / float64(len(x))
			}
			return m
		}
		t.Logf("%-14v best %.3f, insider's start %.3f, claimed %.3f", layout, mean(best), mean(start), mean(claim))
		if lost := mean(best) - mean(start); lost < 0 || lost > 0.1 {
			t.Errorf("the insider lost %.3f", lost)
		}
	}
}

func working(k *Kitchen, m Mix) float64 { return k.Chance(m, Usual) }

// permitted is the chance of mixes that may be named.
func permitted(k *Kitchen, m Mix) float64 {
	if k.CameOut(m) < 0.95 {
		return 0
	}
	return working(k, m)
}

// What is lost with a planned week of 12 even by the insider, who may start anywhere in the
// box: no analysis of these trials can be asked for less.
func TestInsiderOfAPlannedWeek(t *testing.T) {
	if *insiders == 0 {
		t.Skip("takes minutes: go test ./analysis/kitchen -run InsiderOfAPlannedWeek -insider 40 -v")
	}
	short := make([]float64, *insiders)
	var wg sync.WaitGroup
	for i := range short {
		wg.Go(func() {
			k := New(Easy, uint64(20_000+i))
			r := plan.Ranges{Fat: plan.Span(k.Tries.Fat), Emulsifier: plan.Span(k.Tries.Emulsifier), HLB: plan.Span(k.Tries.HLB)}
			days := make([][]Mix, 2)
			for _, p := range plan.Week(r, plan.Cover, 12, len(days), k.Seed) {
				days[p.Day-1] = append(days[p.Day-1], Mix(p.Mix))
			}
			var log []Logged
			rng := Stream(k.Seed, "insider's week")
			for _, today := range days {
				log = k.Continue(log, today, rng)
			}
			_, best := k.BestOf(k.Tries, func(m Mix) float64 { return permitted(k, m) })
			mix, _ := insider(k.watches, k.Tries, log, permitted, rand.New(rand.NewPCG(k.Seed, 5)))
			short[i] = best - min(best, working(k, mix))
		})
	}
	wg.Wait()
	lost := 0.0
	for _, s := range short {
		lost += s / float64(len(short))
	}
	t.Logf("insider's start %.3f short of the permitted best", lost)
	if lost < 0 || lost > 0.2 {
		t.Errorf("the insider lost %.3f", lost)
	}
}

func insider(watches watching, box Box, log []Logged, chance func(*Kitchen, Mix) float64, rng *rand.Rand) (Mix, float64) {
	const cells, settle, walk, keep = 90, 400, 60_000, 300
	made := func(c []uint64) (*Kitchen, float64) {
		k := drawn(Easy, 0, draws{rand.New(&tape{cells: c})})
		k.watches = watches
		return k, k.logLikelihood(log)
	}
	var at []uint64
	var now *Kitchen
	fits := math.Inf(-1)
	for range settle {
		c := make([]uint64, cells)
		for i := range c {
			c[i] = rng.Uint64()
		}
		if k, l := made(c); l > fits {
			at, now, fits = c, k, l
		}
	}
	const points = 11
	var mixes []Mix
	for i := range points {
		for j := range points {
			for l := range points {
				mixes = append(mixes, box.At(float64(i)/(points-1), float64(j)/(points-1), float64(l)/(points-1)))
			}
		}
	}
	works := make([]float64, len(mixes))
	for step := range walk {
		next := slices.Clone(at)
		for range 1 + rng.IntN(3) {
			i := rng.IntN(cells)
			if rng.IntN(4) == 0 {
				next[i] = rng.Uint64()
				continue
			}
			x := float64(next[i]<<11>>11)/(1<<53) + math.Exp(-1-3*rng.Float64())*rng.NormFloat64()
			next[i] = uint64((x - math.Floor(x)) * (1 << 53))
		}
		if k, l := made(next); math.Log(rng.Float64()) < l-fits {
			at, now, fits = next, k, l
		}
		if step >= walk/4 && step%(3*walk/4/keep) == 0 {
			for i, m := range mixes {
				works[i] += chance(now, m) / keep
			}
		}
	}
	best := 0
	for i, w := range works {
		if w > works[best] {
			best = i
		}
	}
	return mixes[best], works[best]
}

// tape is a stream that can be written by hand.
type tape struct {
	cells []uint64
	at    int
}

func (t *tape) Uint64() uint64 {
	t.at++
	return t.cells[t.at-1]
}

// logLikelihood is of what a log says, days taken as part of the scatter.
func (k *Kitchen) logLikelihood(log []Logged) float64 {
	t := k.laws.(*truth)
	hold, drain := math.Hypot(t.holdSpread, t.dayHold), math.Hypot(t.drainSpread, t.dayDrain)
	sum := 0.0
	add := func(p float64) { sum += math.Log(math.Max(p, 1e-300)) }
	between := func(low, high, middle, sd float64) { add(normalCDF((high-middle)/sd) - normalCDF((low-middle)/sd)) }
	for i := range log {
		one := &log[i]
		l := t.latent(one.Mix())
		out := logistic((t.thickLimit - l.thickness) / math.Hypot(t.thickSpread, 0.6*t.dayThick)) // 0.6: a logistic's scale for an SD
		if !one.CameOut {
			add(1 - out)
			continue
		}
		add(out)
		if one.Broke {
			add(logistic(l.breakLogit))
			continue
		}
		add(1 - logistic(l.breakLogit))
		if h := one.Hold; h != nil {
			half := 0.0
			if h.Low == h.High { // read to the minute
				half = 0.5
			}
			between(math.Log(h.Low-half), math.Log(h.High+half), l.lnHold, hold)
		}
		if d := one.Drained; d != nil {
			half := 0.0
			if d.Low == d.High {
				half = k.watches.readLimit / 2
			}
			low, high := math.Inf(-1), math.Inf(1)
			if d.Low-half > 0 {
				low = lnZ(d.Low - half)
			}
			if d.High+half < 100 {
				high = lnZ(d.High + half)
			}
			between(low, high, l.lnDrain, drain)
		}
	}
	return sum
}
