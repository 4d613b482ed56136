package kitchen

import (
	"math"
	"slices"
	"testing"

	"foamfield/ingest/thorough"

	"gonum.org/v1/gonum/integrate/quad"
)

func strangers(each int) (all []*Kitchen) {
	for seed := range uint64(each) {
		all = append(all, New(Stranger, 9000+seed))
	}
	return all
}

// openMixes are mixes of a kitchen where outcomes differ: its best, ways from there
// to corners, and one that comes out about half the time.
func openMixes(k *Kitchen) []Mix {
	best, _ := k.Best(k.Tries, Usual)
	half, _ := k.BestOf(k.Tries, func(m Mix) float64 { return -math.Abs(k.CameOut(m) - 0.5) })
	return []Mix{best, half, near(k, 0.1), near(k, 0.25), near(k, 0.5), k.Tries.At(0.5, 0.5, 0.5), k.Tries.At(0.2, 0.8, 0.7)}
}

// Four standard errors of 20 000 outcomes, and one outcome for chances near 0 or 1.
func TestStrangersAgreeWithSimulation(t *testing.T) {
	thorough.NotShort(t, "makes some hundred thousand mixes")
	const n = 20_000
	for _, k := range strangers(thorough.Of(t, 3, 12)) {
		rng := Stream(k.Seed, "simulation")
		for _, m := range openMixes(k) {
			met, out := 0, 0
			for range n {
				o := k.Outcome(m, k.Day(rng), rng)
				if Usual.Met(o) {
					met++
				}
				if o.CameOut {
					out++
				}
				if o.Partly && o.CameOut || o.DrainedPercent < 0 || o.DrainedPercent > 100 || math.IsNaN(o.HoldMinutes) {
					t.Fatalf("%d at %+v: outcome %+v", k.Seed, m, o)
				}
			}
			for what, c := range map[string]struct {
				want float64
				got  int
			}{"works": {k.Chance(m, Usual), met}, "came out": {k.CameOut(m), out}} {
				got := float64(c.got) / n
				if tolerance := 4*math.Sqrt(c.want*(1-c.want)/n) + 1.0/n; math.Abs(got-c.want) > tolerance {
					t.Errorf("%d at %+v, %s: chance %.5f, simulated %.5f, tolerance %.5f", k.Seed, m, what, c.want, got, tolerance)
				}
			}
		}
	}
}

// The chill rule against one of many narrow panels.
func TestChillIsIntegratedAccurately(t *testing.T) {
	thorough.NotShort(t, "integrates many days anew")
	for _, k := range strangers(thorough.Of(t, 8, 40)) {
		s := k.laws.(*stranger)
		for _, m := range openMixes(k) {
			c := s.coat.on(m)
			a := s.foam.ages(m, c)
			works := func(chill float64) float64 {
				return math.Exp(-chill*chill/2) / math.Sqrt(2*math.Pi) *
					(1 - s.hold.below(math.Log(Usual.HoldMinutes)-a.lnHold-s.holdChill*chill)) *
					(1 - s.drain.below(a.lnRun-lnRunOf(m, Usual.DrainedPercent)-s.drainChill*chill))
			}
			const panels, reach = 60, 9.0
			end, sum := math.Max(-reach, math.Min(reach, s.setsAt(m, c))), 0.0
			for i := range panels {
				at := func(i int) float64 { return -reach + (end+reach)*float64(i)/panels }
				sum += quad.Fixed(works, at(i), at(i+1), 12, quad.Legendre{}, 0)
			}
			want := sum * (1 - s.lump) * s.tunnel.spared(m, c) * (1 - s.split.chance(m, c))
			if got := k.Chance(m, Usual); math.Abs(got-want) > 1e-6 {
				t.Errorf("%d at %+v: %.9f, finely %.9f", k.Seed, m, got, want)
			}
		}
	}
}

// What strangers are for: some kitchens can do no good foam, and clogging is frequent
// in some and rare in others, sudden in some and gradual in others.
func TestStrangersAreSpreadAsClaimed(t *testing.T) {
	thorough.Only(t, "looks over 100 strangers' kitchens")
	const each = 100
	var good float64
	var clogs, sudden []float64
	for _, k := range strangers(each) {
		if _, best := k.Best(k.Tries, Usual); best >= 0.8 {
			good++
		}
		stopped, all := 0.0, spots(k.Tries, 10)
		for _, m := range all {
			stopped += 1 - k.CameOut(m)
		}
		clogs = append(clogs, stopped/float64(len(all)))
		if wide, ok := cloggingWidth(k); ok {
			sudden = append(sudden, wide)
		}
	}
	slices.Sort(clogs)
	slices.Sort(sudden)
	at := func(x []float64, p float64) float64 { return x[int(p*float64(len(x)-1)+0.5)] }
	t.Logf("%.0f of %d can do a good foam; clog share %.3f to %.3f; width of clogging over %d: 10 %% %.3f, median %.3f, 90 %% %.3f",
		good, each, clogs[0], clogs[each-1], len(sudden), at(sudden, 0.1), at(sudden, 0.5), at(sudden, 0.9))
	if share := good / each; share < 0.62 || share > 0.88 {
		t.Errorf("%.0f %% can do a good foam", 100*share)
	}
	if clogs[0] < 0.02 || clogs[each-1] > 0.5 || at(clogs, 0.1) > 0.12 || at(clogs, 0.9) < 0.35 {
		t.Errorf("clog shares %v", clogs)
	}
	if len(sudden) < each/2 || at(sudden, 0.1) > 0.04 || at(sudden, 0.9) < 0.25 {
		t.Errorf("widths of clogging %v", sudden)
	}
}

// cloggingWidth is how much of the emulsifier tried takes clogging from 10 to 90 %:
// the middle of the columns of the box where it does, if some do.
func cloggingWidth(k *Kitchen) (float64, bool) {
	const columns, step = 7, 0.002
	var wide []float64
	for i := range columns * columns {
		fat, hlb := (float64(i%columns)+0.5)/columns, (float64(i/columns)+0.5)/columns
		last, from, half := 1.0, math.NaN(), math.NaN()
		for x := -0.4; x < 1.8; x += step {
			c := 1 - k.CameOut(k.Tries.At(fat, x, hlb))
			switch {
			case last < 0.1 && c >= 0.1:
				from = x
			case last < 0.9 && c >= 0.9 && half > 0 && half < 1 && half >= from:
				wide = append(wide, x-from)
			}
			if last < 0.5 && c >= 0.5 {
				half = x
			}
			last = c
		}
	}
	if len(wide) < 3 {
		return 0, false
	}
	slices.Sort(wide)
	return wide[len(wide)/2], true
}
