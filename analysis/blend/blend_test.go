package blend

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"foamfield/analysis/result/blended"
	"foamfield/ingest/ingredient"
)

// named is grams of an ingredient of the table.
func named(t interface{ Fatalf(string, ...any) }, name string, grams float64) Part {
	what, ok := ingredient.Lookup(name)
	if !ok {
		t.Fatalf("no ingredient %q", name)
	}
	return Part{Name: name, Grams: grams, What: &what}
}

// Published blends of HLB 15.0 with 4.3 (PMC4137601, Table 2), both ways: the blend HLB
// of the shares, and the shares of the blend HLB.
func TestPublishedBlendsBothWays(t *testing.T) {
	for _, c := range []struct{ high, low, hlb float64 }{{9, 1, 13.93}, {8, 2, 12.86}, {7, 3, 11.79}} {
		b, err := Of([]Part{named(t, "polysorbate 80", c.high), named(t, "sorbitan monooleate", c.low)}, 0, 0.1)
		if err != nil || math.Abs(b.Totals.BlendHLB.Value-c.hlb) > 0.005+1e-9 {
			t.Errorf("%v:%v gives %v (%v), published %v", c.high, c.low, b.Totals.BlendHLB, err, c.hlb)
		}
		r, err := Reach([]Part{named(t, "polysorbate 80", 0), named(t, "sorbitan monooleate", 0)}, Wanted{EmulsifierPercent: 10, HLB: &c.hlb, Batch: 1000, Step: 0.01})
		if err != nil {
			t.Fatal(err)
		}
		// the published HLB has two places: of 10.7 between the two, 0.005 is 0.05 g of 100
		if got := r.Lines[0].Grams; math.Abs(got-10*c.high) > 0.06 {
			t.Errorf("HLB %v takes %v g of 100, published %v", c.hlb, got, 10*c.high)
		}
	}
}

// The old counter-check of two parts: (target - low) of the high one goes with (high -
// target) of the low one (mixing by alligation).
func TestAlligation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		target := rapid.Float64Range(4.5, 14.5).Draw(t, "hlb")
		r, err := Reach([]Part{named(t, "sorbitan monooleate", 0), named(t, "polysorbate 80", 0)}, Wanted{EmulsifierPercent: 5, HLB: &target, Batch: 10_000, Step: 0.001})
		if err != nil {
			t.Fatal(err)
		}
		low, high := r.Lines[0].Grams, r.Lines[1].Grams
		if want := (target - 4.3) / (15 - target); math.Abs(high/low-want) > 1e-4*(1+want*want) {
			t.Fatalf("HLB %v: %v to %v, by alligation %v", target, high, low, want)
		}
	})
}

// 20 g of flakes in 250 g oil is 8 % of the oil; 1 g in 250 g water part is 0.4 % of it.
func TestPercents(t *testing.T) {
	b, err := Of([]Part{named(t, "olive oil", 250), named(t, "water", 250), named(t, "flakes", 20), named(t, "lecithin", 1)}, 0, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		got  *float64
		want float64
	}{
		{"flakes of the oil", b.Lines[2].PercentOfFat, 8}, {"lecithin of the water part", b.Lines[3].PercentOfWater, 0.4},
		{"emulsifier of the mix", b.EmulsifierPercent(), 100 * 21. / 521}, {"fat of the mix", b.FatPercent(), 100 * 250. / 521},
	} {
		if c.got == nil || math.Abs(*c.got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	if only, _ := Of([]Part{named(t, "GMS", 4)}, 0, 0.1); only.EmulsifierPercent() != nil || only.Lines[0].PercentOfMix != nil {
		t.Error("emulsifiers alone have a percent of nothing")
	}
}

// What a pre-mix brings into the batch is what was wanted, to 5 %, however each weighing
// falls within half a step.
func TestPremixIsRight(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]float64{0.01, 0.1, 0.5, 1}).Draw(t, "step")
		grams := step * rapid.Float64Range(0.2, 9.9).Draw(t, "steps")
		b, err := Of([]Part{named(t, "butter", 2000*step), named(t, "cider", 3000*step), named(t, "polysorbate 60", grams)}, 0, step)
		if err != nil {
			t.Fatal(err)
		}
		r := b.Lines[2].TooLittle
		if r == nil {
			t.Fatalf("%v g on a scale of %v g is no trouble", grams, step)
		}
		if off := 100 * step / 2 / (grams * r.Times); math.Abs(off-5) > 1e-9 {
			t.Fatalf("%v times as much is off by %v %%", r.Times, off)
		}
		p := r.Premix
		if p == nil {
			return
		}
		found++
		for corner := range 8 {
			by := func(bit int) float64 { return step / 2 * float64(2*(corner>>bit&1)-1) }
			weighed := p.Weigh + by(0)
			comes := (p.Take + by(2)) * weighed / (p.Weigh + p.Into + by(1))
			if math.Abs(comes-grams) > 0.0515*grams { // products of the errors beside their sum
				t.Fatalf("%+v of %v g on %v brings %v", *p, grams, step, comes)
			}
		}
		if math.Abs(p.Less-(p.Take-grams)) > step {
			t.Fatalf("%+v: leaves %v g out for %v g", *p, p.Less, p.Take-grams)
		}
	})
	if found == 0 {
		t.Error("no pre-mix was found")
	}
}

func TestReachRefuses(t *testing.T) {
	for _, c := range []struct {
		at   []Part
		hlb  float64
		says string
	}{
		{[]Part{named(t, "GMS", 0), named(t, "polysorbate 80", 0)}, 57, "no emulsifier without charge"},
		{[]Part{named(t, "GMS", 0), named(t, "polysorbate 80", 0)}, 16, "from 3.8 to 15"},
		{[]Part{named(t, "GMS", 0)}, 8, "name a second emulsifier, of an HLB above 8"},
		{[]Part{named(t, "polysorbate 80", 0)}, 8, "of an HLB below 8"},
		{[]Part{named(t, "SSL", 0)}, 8, "none of these has an HLB"},
		{[]Part{named(t, "sucrose ester", 0), named(t, "GMS", 0)}, 8, "type its grade"},
	} {
		if _, err := Reach(c.at, Wanted{EmulsifierPercent: 2, HLB: &c.hlb, Batch: 100, Step: 0.1}); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("HLB %v: %v, want a sentence with %q", c.hlb, err, c.says)
		}
	}
}

// A stand-in takes the grams of what it stands in for, and keeps the blend HLB where the
// emulsifiers lie on either side of it.
func TestReplace(t *testing.T) {
	mixed := []Part{named(t, "butter", 120), named(t, "cider", 174), named(t, "GMS", 4.2), named(t, "sucrose ester 15", 1.8)}
	s, err := Replace(mixed, []string{"GMS"}, []Part{named(t, "sorbitan monostearate", 0)}, 0, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if a, b := s.Old.Totals.EmulsifierGrams, s.New.Totals.EmulsifierGrams; math.Abs(a-b) > 0.11 {
		t.Errorf("%v g of emulsifier instead of %v", b, a)
	}
	if a, b := s.Old.Totals.BlendHLB.Value, s.New.Totals.BlendHLB.Value; !s.HLBKept || math.Abs(a-b) > 0.1 {
		t.Errorf("blend HLB %v instead of %v, kept %v", b, a, s.HLBKept)
	}
	s, err = Replace(mixed, []string{"GMS"}, []Part{named(t, "SSL", 0)}, 0, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	verdicts := map[string]blended.Same{}
	for _, c := range s.Compared {
		verdicts[c.What] = c.Same
	}
	if s.HLBKept || verdicts["charge"] != blended.Differs || verdicts["blend HLB"] != blended.Differs || verdicts["allergens by name"] != blended.Matches {
		t.Errorf("SSL for GMS: %v, kept %v", verdicts, s.HLBKept)
	}
	for _, c := range []struct {
		old, new, says string
	}{
		{"lecithin", "SSL", "not in the mix"}, {"butter", "SSL", "no emulsifier"}, {"GMS", "water", "no emulsifier"}, {"GMS", "sucrose ester 15", "already"},
	} {
		if _, err := Replace(mixed, []string{c.old}, []Part{named(t, c.new, 0)}, 0, 0.1); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s for %s: %v, want a sentence with %q", c.new, c.old, err, c.says)
		}
	}
}

// Limits of one text are shared (21 CFR 172.836(c)(1) and its like).
func TestLimitsAreShared(t *testing.T) {
	b, err := Of([]Part{named(t, "oil", 100), named(t, "water", 99.4), named(t, "polysorbate 60", 0.3), named(t, "polysorbate 80", 0.3)}, 0, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if o := b.Over[0]; len(o.Names) != 2 || math.Abs(o.Percent-0.3) > 1e-9 || o.Passed {
		t.Errorf("%+v, want both together, 0.3 %%, within 0.4", o)
	}
}

// Old and new by turns: as many of each in either half of the day, and the middles of the
// two lie together.
func TestHalfAndHalf(t *testing.T) {
	test := HalfAndHalf(4)
	sum := map[bool]int{}
	for i, isNew := range test.Turns {
		sum[isNew] += i
	}
	if len(test.Turns) != 8 || sum[true] != sum[false] {
		t.Errorf("turns %v", test.Turns)
	}
	// R 4.2.2: for (s in c(.15, .3)) print(power.t.test(n = 4, sd = sqrt(log1p(s^2)),
	// power = .8, strict = TRUE, tol = 1e-12)$delta, digits = 10)
	for i, want := range []float64{0.3551284878, 0.6988951097} {
		if got := math.Log(test.Shows[i]); math.Abs(got-want) > 1e-8 {
			t.Errorf("ln %v shows, R says %v", got, want)
		}
	}
}

// What has no grams is not in the mix, so that every remark is of the line it is meant for.
func TestNothingOfAnIngredient(t *testing.T) {
	b, err := Of([]Part{named(t, "butter", 0), named(t, "GMS", 4), named(t, "sodium stearoyl lactylate", 2)}, 0, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if r := b.Result(); len(r.Lines) != 2 || len(r.Charged) != 1 || r.Charged[0] != "sodium stearoyl lactylate" {
		t.Errorf("%d lines, %q charged", len(r.Lines), r.Charged)
	}
}
