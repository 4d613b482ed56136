package kitchen

import (
	"math"
	"reflect"
	"testing"

	"foamfield/ingest/thorough"

	"pgregory.net/rapid"
)

// kitchens are the demo's and some of each family.
func kitchens(each int) []*Kitchen {
	all := []*Kitchen{Demo()}
	for seed := range uint64(each) {
		all = append(all, New(Easy, 9000+seed), New(Hard, 9000+seed))
	}
	return all
}

// near is a mix where the outcome is truly open: a share of the way from the
// best of what is tried to a corner.
func near(k *Kitchen, share float64) Mix {
	best, _ := k.Best(k.Tries, Usual)
	corner := k.Tries.At(1, 1, 0)
	to := func(a, b float64) float64 { return a + share*(b-a) }
	return Mix{to(best.FatPercent, corner.FatPercent), to(best.EmulsifierPercent, corner.EmulsifierPercent), to(best.BlendHLB, corner.BlendHLB)}
}

// The share of 200 000 simulated mixes that work has a standard error of at most
// 0.0011; five of its own are allowed, and one mix in all for shares near 0 or 1.
func TestChanceAgreesWithSimulation(t *testing.T) {
	n := thorough.Of(t, 20_000, 200_000)
	for _, k := range thorough.Glance(t, 4, kitchens(4)) {
		rng := Stream(k.Seed, "simulation")
		for _, share := range []float64{0, 0.15, 0.3} {
			m := near(k, share)
			met := 0
			for range n {
				if Usual.Met(k.Outcome(m, k.Day(rng), rng)) {
					met++
				}
			}
			want, got := k.Chance(m, Usual), float64(met)/float64(n)
			if tolerance := 5*math.Sqrt(want*(1-want)/float64(n)) + 1.0/float64(n); math.Abs(got-want) > tolerance {
				t.Errorf("%v %d at %+v: chance %.5f, simulated %.5f, tolerance %.5f", k.Family, k.Seed, m, want, got, tolerance)
			}
		}
	}
}

// The day rule against one eight times as fine and wider.
func TestDayIsIntegratedAccurately(t *testing.T) {
	thorough.NotShort(t, "integrates many days anew")
	for _, k := range kitchens(thorough.Of(t, 3, 10)) {
		for _, share := range []float64{0, 0.1, 0.2, 0.4} {
			m := near(k, share)
			sum, weight := 0.0, 0.0
			for d := -8.0; d <= 8; d += 0.05 {
				w := math.Exp(-d * d / 2)
				// A kitchen whose every day is d.
				fixed := *k.laws.(*truth)
				fixed.thickLimit -= fixed.dayThick * d
				fixed.holdBase += fixed.dayHold * d
				fixed.drainBase -= fixed.dayDrain * d
				fixed.dayThick, fixed.dayHold, fixed.dayDrain = 0, 0, 0
				sum, weight = sum+w*fixed.chance(m, Usual), weight+w
			}
			if want, got := sum/weight, k.Chance(m, Usual); math.Abs(got-want) > 1e-6 {
				t.Errorf("%v %d at %+v: %.9f, finely %.9f", k.Family, k.Seed, m, got, want)
			}
		}
	}
}

func TestBestIsBestOnAFinerGrid(t *testing.T) {
	thorough.NotShort(t, "goes over a fine grid of some kitchens")
	const points = 31
	for _, k := range kitchens(thorough.Of(t, 1, 4)) {
		best, chance := k.Best(k.Tries, Usual)
		if got := k.Chance(best, Usual); got != chance {
			t.Errorf("%v %d: best mix has chance %v, said %v", k.Family, k.Seed, got, chance)
		}
		for i := range points {
			for j := range points {
				for l := range points {
					m := k.Tries.At(float64(i)/(points-1), float64(j)/(points-1), float64(l)/(points-1))
					if c := k.Chance(m, Usual); c > chance+1e-6 {
						t.Fatalf("%v %d: best %.6f at %+v, but %.6f at %+v", k.Family, k.Seed, chance, best, c, m)
					}
				}
			}
		}
	}
}

// No mix of a finer grid that is a twentieth of the box richer has the chance wanted.
func TestRichestIsRichest(t *testing.T) {
	thorough.NotShort(t, "goes over a fine grid of some kitchens")
	const points, wanted = 21, 0.8
	for _, k := range kitchens(thorough.Of(t, 2, 6)) {
		chance := func(m Mix) float64 { return k.Chance(m, Usual) }
		fat, ok := k.Richest(k.Tries, wanted, chance)
		_, best := k.Best(k.Tries, Usual)
		if ok != (best >= wanted) {
			t.Errorf("%v %d: found %v where the best is %.3f", k.Family, k.Seed, ok, best)
		}
		if !ok {
			continue
		}
		if _, c := k.BestOf(Box{Span{fat, fat}, k.Tries.Emulsifier, k.Tries.HLB}, chance); c < wanted {
			t.Errorf("%v %d: at %.2f %% fat the best is %.3f", k.Family, k.Seed, fat, c)
		}
		for i := range points {
			m := Mix{FatPercent: k.Tries.Fat.at(float64(i) / (points - 1))}
			if m.FatPercent < fat+k.Tries.Fat.width()/20 {
				continue
			}
			for j := range points {
				for l := range points {
					m.EmulsifierPercent, m.BlendHLB = k.Tries.Emulsifier.at(float64(j)/(points-1)), k.Tries.HLB.at(float64(l)/(points-1))
					if c := chance(m); c >= wanted {
						t.Fatalf("%v %d: richest said to be %.2f %%, but %.3f at %+v", k.Family, k.Seed, fat, c, m)
					}
				}
			}
		}
	}
}

func TestChanceFallsWithHarderTargets(t *testing.T) {
	all := kitchens(6)
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(all).Draw(t, "kitchen")
		share := rapid.Float64Range(0, 1)
		m := k.Tries.At(share.Draw(t, "fat"), share.Draw(t, "emulsifier"), share.Draw(t, "hlb"))
		easier := Targets{rapid.Float64Range(1, 60).Draw(t, "hold"), rapid.Float64Range(1, 60).Draw(t, "drained")}
		harder := Targets{easier.HoldMinutes * (1 + share.Draw(t, "longer")), easier.DrainedPercent * (1 - 0.9*share.Draw(t, "drier"))}
		a, b := k.Chance(m, easier), k.Chance(m, harder)
		if a < 0 || a > 1 || b > a+1e-12 {
			t.Fatalf("chance %v at %v, %v at %v", a, easier, b, harder)
		}
	})
}

func TestSameSeedSameKitchenAndLog(t *testing.T) {
	for _, family := range Families {
		a, b := New(family, 5), New(family, 5)
		if !reflect.DeepEqual(a, b) {
			t.Errorf("%v: seed 5 gives two kitchens", family)
		}
		if reflect.DeepEqual(a.laws, New(family, 6).laws) {
			t.Errorf("%v: seeds 5 and 6 give one truth", family)
		}
		for _, layout := range Layouts {
			if !reflect.DeepEqual(a.Log(layout, 24, Stream(5, "log")), b.Log(layout, 24, Stream(5, "log"))) {
				t.Errorf("%v, %v: one stream gives two logs", family, layout)
			}
			if reflect.DeepEqual(a.Log(layout, 24, Stream(5, "log")), a.Log(layout, 24, Stream(5, "other"))) {
				t.Errorf("%v, %v: two streams give one log", family, layout)
			}
		}
	}
}

// The best mix lies well inside what the cook tries: the most emulsifier, the
// most fat and either end of HLB are never the answer.
func TestBestMixesLieInside(t *testing.T) {
	thorough.NotShort(t, "looks for the best mix of many kitchens")
	each := thorough.Of(t, 20, 60)
	for _, family := range []Family{Easy, Hard} {
		ends := map[string]int{}
		for seed := range uint64(each) {
			k := New(family, 9000+seed)
			best, _ := k.Best(k.Tries, Usual)
			for name, at := range map[string]float64{
				"most fat":         (k.Tries.Fat.High - best.FatPercent) / k.Tries.Fat.width(),
				"most emulsifier":  (k.Tries.Emulsifier.High - best.EmulsifierPercent) / k.Tries.Emulsifier.width(),
				"least fat":        (best.FatPercent - k.Tries.Fat.Low) / k.Tries.Fat.width(),
				"least emulsifier": (best.EmulsifierPercent - k.Tries.Emulsifier.Low) / k.Tries.Emulsifier.width(),
				"lowest HLB":       (best.BlendHLB - k.Tries.HLB.Low) / k.Tries.HLB.width(),
				"highest HLB":      (k.Tries.HLB.High - best.BlendHLB) / k.Tries.HLB.width(),
			} {
				if at < 0.02 {
					ends[name]++
				}
			}
		}
		t.Logf("%v: best at an end of the range in %v of %d", family, ends, each)
		for name, n := range ends {
			if n > each/10 {
				t.Errorf("%v: best mix at the %s in %d of %d kitchens", family, name, n, each)
			}
		}
	}
}

func TestUnknownFamilyPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("New(Demonstration, 1) did not panic")
		}
	}()
	New(Demonstration, 1)
}
