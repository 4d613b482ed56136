package formula

import (
	"errors"
	"math"
	"strings"
	"testing"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/mix"

	"pgregory.net/rapid"
)

// part is a template ingredient by its name in the shipped table.
func part(name string, grams float64) Part {
	what, ok := ingredient.Lookup(name)
	if !ok {
		panic("formula: no such ingredient: " + name)
	}
	return Part{Name: name, Grams: grams, What: &what}
}

var together = ingredient.Ingredient{Name: "em", Kind: ingredient.Emulsifier}

func hlb(v float64) *float64 { return &v }

func gramsOf(f *Formula) map[string]float64 {
	out := map[string]float64{}
	for _, l := range f.Lines {
		out[l.Name] = l.Grams
	}
	return out
}

func TestSolve(t *testing.T) {
	cases := []struct {
		name        string
		template    []Part
		want        Wanted
		batch, step float64
		grams       map[string]float64
	}{
		// 40 % of 250 g is 100 g fat = 100 g oil; 2 % is 5 g emulsifier; HLB 6.6 with
		// 3.8 and 15 is a quarter of the high one: 1.25 g.
		{"oil in water, blend of two", []Part{part("sunflower oil", 80), part("water", 100), part("MDG", 2), part("polysorbate 80", 2)},
			Wanted{40, 2, hlb(6.6)}, 250, 0.01,
			map[string]float64{"sunflower oil": 100, "water": 145, "MDG": 3.75, "polysorbate 80": 1.25}},
		// 1.5 % of 200 g is 3 g of what is blended to whatever HLB is wanted.
		{"emulsifiers blended by the kitchen", []Part{part("oil", 80), part("water", 116), {Name: "em", Grams: 4, What: &together, Blended: true}},
			Wanted{30, 1.5, hlb(9.3)}, 200, 0.1,
			map[string]float64{"oil": 60, "water": 137, "em": 3}},
		// Cream 35 as the fat: 28 % fat of 200 g is 56 g fat = 160 g cream.
		{"cream brings water", []Part{part("cream 35", 100), part("cider", 100), part("MDG", 2)},
			Wanted{28, 1, nil}, 200, 0.1,
			map[string]float64{"cream 35": 160, "cider": 38, "MDG": 2}},
		// Salt keeps its 1 %, yolk its 10 % with 2.7 g fat in 100 g: 41.3 g fat from 41.3 g oil.
		{"salt and yolk stay", []Part{part("oil", 50), part("water", 39), part("salt", 1), part("egg yolk", 10)},
			Wanted{44, 0, nil}, 100, 0.1,
			map[string]float64{"oil": 41.3, "water": 47.7, "salt": 1, "egg yolk": 10}},
		// Two fats 1:3 (fat 82 and 100: mean 95.5) and two waters 2:1.
		{"proportions within the parts", []Part{part("butter", 20), part("oil", 60), part("cider", 80), part("stock", 40)},
			Wanted{38.2, 0, nil}, 100, 0.1,
			map[string]float64{"butter": 10, "oil": 30, "cider": 40, "stock": 20}},
		// SSL keeps its half of the emulsifier, out of the blend.
		{"ionic emulsifier keeps its share", []Part{part("oil", 50), part("water", 48), part("SSL", 1), part("MDG", 0.5), part("polysorbate 80", 0.5)},
			Wanted{50, 4, hlb(9.4)}, 100, 0.1,
			map[string]float64{"oil": 50, "water": 46, "SSL": 2, "MDG": 1, "polysorbate 80": 1}},
		// Three emulsifiers: 3.8 and 4.7 stay 1:1 (mean 4.25), 15 fills up to 8.
		{"emulsifiers below keep theirs", []Part{part("oil", 50), part("water", 45), part("MDG", 1), part("sorbitan monostearate", 1), part("polysorbate 80", 1)},
			Wanted{50, 4.3, hlb(4.25 + 10.75/4.3)}, 100, 0.01,
			map[string]float64{"oil": 50, "water": 45.7, "MDG": 1.65, "sorbitan monostearate": 1.65, "polysorbate 80": 1}},
		// No water to give: butter (82) and cream (35) shift to 58.5 % fat.
		{"fats shift when they must", []Part{part("butter 82", 30), part("cream 35", 70)},
			Wanted{58.5, 0, nil}, 100, 0.1,
			map[string]float64{"butter 82": 50, "cream 35": 50}},
		// Cream alone: more emulsifier leaves less room for fat, 34.3 % at most.
		{"as near as the ingredients go", []Part{part("cream 35", 99), part("MDG", 1)},
			Wanted{34.65, 2, nil}, 100, 0.1, map[string]float64{"cream 35": 98, "MDG": 2}},
		{"no emulsifier wanted", []Part{part("oil", 50), part("water", 48), part("MDG", 2)},
			Wanted{50, 0, nil}, 100, 1, map[string]float64{"oil": 50, "water": 50}},
		{"the water takes up the rounding", []Part{part("oil", 1), part("water", 1), part("milk 0", 1), part("cider", 1)},
			Wanted{33.33, 0, nil}, 100, 1, map[string]float64{"oil": 33, "water": 23, "milk 0": 22, "cider": 22}},
		{"a fine emulsifier on a coarse scale", []Part{part("oil", 50), part("water", 50), part("MDG", 1), part("polysorbate 80", 1)},
			Wanted{50, 0.9, hlb(3.9)}, 100, 0.1, map[string]float64{"oil": 50, "water": 49.1, "MDG": 0.9}},
	}
	for _, c := range cases {
		got, err := Solve(c.template, c.want, c.batch, c.step)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		grams := gramsOf(got)
		if len(grams) != len(c.grams) {
			t.Errorf("%s: %v, want %v", c.name, grams, c.grams)
		}
		for name, want := range c.grams {
			if grams[name] != want {
				t.Errorf("%s: %v g of %s, want %v (all: %v)", c.name, grams[name], name, want, grams)
			}
		}
	}
}

func TestUnreachable(t *testing.T) {
	pair := []Part{part("oil", 50), part("water", 46), part("MDG", 2), part("polysorbate 80", 2)}
	one := []Part{part("oil", 50), part("water", 46), part("MDG", 4)}
	creamOnly := []Part{part("cream 35", 95), part("sugar", 2.5), part("MDG", 2.5)}
	cases := []struct {
		name     string
		template []Part
		want     Wanted
		batch    float64
		says     string // all words, in order
	}{
		{"rich from cream", []Part{part("cream 35", 100), part("sugar", 2.6)}, Wanted{52, 0, nil}, 200, "52 % fat cannot be reached with cream 35 of 35 %: at most 34.1 %"},
		{"lean with nothing to thin", creamOnly, Wanted{20, 2.5, nil}, 200, "20 % fat cannot be reached with nothing leaner than cream 35 of 35 %: at least 33.2 %"},
		{"HLB too high", pair, Wanted{50, 4, hlb(57)}, 200, "a blend HLB of 57 cannot be reached: the emulsifiers go from 3.8 (MDG) to 15 (polysorbate 80)"},
		{"HLB too low", pair, Wanted{50, 4, hlb(3)}, 200, "from 3.8 (MDG) to 15 (polysorbate 80)"},
		{"one emulsifier", one, Wanted{50, 4, hlb(8)}, 200, "a blend HLB of 8 cannot be reached: MDG has HLB 3.8 only"},
		{"no emulsifier", []Part{part("oil", 1), part("water", 1)}, Wanted{50, 1, nil}, 200, "no emulsifier"},
		{"ionic only", []Part{part("oil", 1), part("water", 1), part("SSL", 1)}, Wanted{50, 1, hlb(8)}, 200, "none of the emulsifiers has an HLB"},
		{"HLB unknown", []Part{part("oil", 1), part("water", 1), part("sucrose ester", 1)}, Wanted{50, 1, hlb(8)}, 200, "the HLB of sucrose ester is not known"},
		{"fat unknown", []Part{part("cream", 1), part("water", 1)}, Wanted{20, 0, nil}, 200, "the fat percent of cream is not known"},
		{"no grams", nil, Wanted{20, 0, nil}, 200, "no ingredients in grams"},
		{"no room", []Part{part("oil", 1), part("water", 1), part("salt", 8), part("MDG", 0.1)}, Wanted{20, 30, nil}, 200, "no room"},
		{"not a mix", pair, Wanted{140, 4, nil}, 200, "no mix"},
		{"NaN", pair, Wanted{math.NaN(), 4, nil}, 200, "no mix"},
		{"too small to weigh", pair, Wanted{50, 0.01, hlb(9)}, 100, "0.01 g of emulsifier cannot be weighed"},
	}
	for _, c := range cases {
		f, err := Solve(c.template, c.want, c.batch, 0.1)
		var out *Unreachable
		if !errors.As(err, &out) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, %v; want %q", c.name, f, err, c.says)
		}
	}
	for _, b := range [][2]float64{{0, 0.1}, {200, 0}, {-1, 0.1}, {0.05, 0.1}, {math.NaN(), 0.1}, {math.Inf(1), 0.1}} {
		if _, err := Solve(pair, Wanted{50, 4, nil}, b[0], b[1]); err == nil {
			t.Errorf("batch %v, step %v: no error", b[0], b[1])
		}
	}
}

// Published proportions of two emulsifiers for a wanted blend.
func TestPublishedBlends(t *testing.T) {
	for _, c := range []struct{ low, high, want, share float64 }{
		{4.3, 15, 13.93, 0.9}, // PMC4137601, Table 2
		{4.3, 15, 12.86, 0.8},
		{4.3, 15, 11.79, 0.7},
		{4.7, 14.9, 12, 0.716}, // teaching notes, jovanaeducation.com PHT-SRF-5
	} {
		emulsifier := func(v float64) Part {
			return Part{Grams: 1, What: &ingredient.Ingredient{Kind: ingredient.Emulsifier, HLB: &ingredient.Range{Low: v, Value: v, High: v}}}
		}
		got, err := shares([]Part{part("oil", 50), part("water", 48), emulsifier(c.low), emulsifier(c.high)}, Wanted{50, 2, hlb(c.want)})
		if err != nil || math.Abs(got[3]/(got[2]+got[3])-c.share) > 0.005 {
			t.Errorf("HLB %v of %v and %v: %v, %v; published share of the high one %v", c.want, c.low, c.high, got, err, c.share)
		}
	}
}

// drawTemplate is a trial with every kind of ingredient in it, or not.
func drawTemplate(t *rapid.T) []Part {
	names := []string{"sunflower oil", "butter 82", "cream 35", "water", "milk 3,5 %", "cider", "MDG", "sorbitan monostearate",
		"polysorbate 80", "de-oiled lecithin", "SSL", "egg yolk", "salt", "xanthan"}
	template := []Part{part("ghee", 100), part("agua", 80)}
	for _, n := range names {
		if rapid.Bool().Draw(t, n) {
			template = append(template, part(n, rapid.Float64Range(0.5, 60).Draw(t, "g")))
		}
	}
	return template
}

// fatReached allows a miss only by what is near enough, at an end of what the
// ingredients give: all fats and waters used are then equally rich.
func fatReached(template []Part, shares []float64, got, wanted float64) bool {
	if math.Abs(got-wanted) <= 1e-7 {
		return true
	}
	lowest, highest := math.Inf(1), math.Inf(-1)
	for i, p := range template {
		if k := p.What.Kind; shares[i] > 0 && (k == ingredient.Fat || k == ingredient.Water) {
			lowest, highest = min(lowest, p.What.FatPercent.Value), max(highest, p.What.FatPercent.Value)
		}
	}
	return math.Abs(got-wanted) <= nearEnough && highest-lowest < 1e-6
}

// Whatever is not refused hits the wanted mix exactly before rounding.
func TestSharesHitTheMix(t *testing.T) {
	tried, reached := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		tried++
		template := drawTemplate(t)
		w := Wanted{FatPercent: rapid.Float64Range(0, 99).Draw(t, "fat"), EmulsifierPercent: rapid.Float64Range(0, 8).Draw(t, "emulsifier")}
		if rapid.Bool().Draw(t, "blend") {
			w.BlendHLB = hlb(rapid.Float64Range(3, 16).Draw(t, "hlb"))
		}
		got, err := shares(template, w)
		if err != nil {
			var out *Unreachable
			if !errors.As(err, &out) {
				t.Fatalf("%v is not an *Unreachable", err)
			}
			return
		}
		reached++
		parts := make([]mix.Part, len(got))
		for i, s := range got {
			if s < 0 {
				t.Fatalf("share %v of %s", s, template[i].Name)
			}
			parts[i] = mix.Part{Grams: s, What: *template[i].What}
		}
		sums := mix.Total(parts)
		if math.Abs(sums.Grams-1) > 1e-9 || !fatReached(template, got, *sums.FatPercent, w.FatPercent) || math.Abs(*sums.EmulsifierPercent-w.EmulsifierPercent) > 1e-9 {
			t.Fatalf("sum %v, fat %v, emulsifier %v; wanted %+v", sums.Grams, *sums.FatPercent, *sums.EmulsifierPercent, w)
		}
		if w.BlendHLB != nil && sums.EmulsifierGrams > 1e-6 && math.Abs(sums.BlendHLB.Value-*w.BlendHLB) > 1e-7 {
			t.Fatalf("blend %v, wanted %v", sums.BlendHLB.Value, *w.BlendHLB)
		}
	})
	if reached*5 < tried {
		t.Errorf("only %d of %d mixes reached", reached, tried)
	}
}

// Asking for the template's own mix gives the template back.
func TestTemplateGivesItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		template := drawTemplate(t)
		parts := make([]mix.Part, len(template))
		for i, p := range template {
			parts[i] = mix.Part{Grams: p.Grams, What: *p.What}
		}
		sums := mix.Total(parts)
		w := Wanted{FatPercent: *sums.FatPercent, EmulsifierPercent: *sums.EmulsifierPercent}
		if sums.BlendHLB != nil && rapid.Bool().Draw(t, "blend") {
			w.BlendHLB = &sums.BlendHLB.Value
		}
		got, err := shares(template, w)
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range got {
			if want := template[i].Grams / sums.Grams; math.Abs(s-want) > 1e-9 {
				t.Fatalf("%s: share %v, template %v", template[i].Name, s, want)
			}
		}
	})
}

// Rounded grams are whole steps, add up to the batch, and are near the exact ones.
func TestRounding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		template := drawTemplate(t)
		step := rapid.SampledFrom([]float64{0.01, 0.1, 0.5, 1}).Draw(t, "step")
		batch := step * float64(rapid.IntRange(int(100/step), int(900/step)).Draw(t, "steps"))
		w := Wanted{FatPercent: rapid.Float64Range(10, 70).Draw(t, "fat"), EmulsifierPercent: rapid.Float64Range(0, 6).Draw(t, "emulsifier")}
		f, err := Solve(template, w, batch, step)
		if err != nil {
			return
		}
		sum, percent := 0.0, 0.0
		for _, l := range f.Lines {
			sum += l.Grams
			percent += l.PercentOfMix
			if n := l.Grams / step; math.Abs(n-math.Round(n)) > 1e-6 || n < 0.5 {
				t.Fatalf("%v g of %s is not on a scale of %v", l.Grams, l.Name, step)
			}
			if l.WeighingErrorPercent <= 0 || math.IsInf(l.WeighingErrorPercent, 0) {
				t.Fatalf("weighing error %v", l.WeighingErrorPercent)
			}
		}
		if math.Abs(sum-batch) > 1e-9*batch || math.Abs(f.BatchGrams-batch) > 1e-9*batch || math.Abs(percent-100) > 1e-9 {
			t.Fatalf("lines add up to %v g and %v %%, batch %v (%v)", sum, percent, batch, f.BatchGrams)
		}
		// Each part is off by half a step at most, the pool by half a step of each other.
		n := float64(len(template))
		if off := math.Abs(f.FatPercent - w.FatPercent); off > 100*n*step/batch {
			t.Fatalf("fat %v, wanted %v", f.FatPercent, w.FatPercent)
		}
		if off := math.Abs(f.EmulsifierPercent - w.EmulsifierPercent); off > 100*n*step/batch {
			t.Fatalf("emulsifier %v, wanted %v", f.EmulsifierPercent, w.EmulsifierPercent)
		}
	})
}

func TestLines(t *testing.T) {
	// 20 g of flakes in 250 g oil is 8 % of the oil, 1 g in 250 g water 0.4 % of it.
	template := []Part{part("oil", 250), part("water", 250), part("MDG", 20), part("polysorbate 80", 1), part("salt", 2)}
	f, err := Solve(template, Wanted{100 * 250. / 523, 100 * 21. / 523, nil}, 523, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct {
		part    string
		percent float64
		weigh   float64
	}{{"fat", 100, 0.02}, {"water", 100, 0.02}, {"fat", 8, 0.25}, {"water", 0.4, 5}, {"", -1, 2.5}} {
		l := f.Lines[i]
		percent := -1.0
		if l.PercentOfPart != nil {
			percent = *l.PercentOfPart
		}
		if l.Part != want.part || math.Abs(percent-want.percent) > 1e-9 || math.Abs(l.WeighingErrorPercent-want.weigh) > 1e-9 {
			t.Errorf("%s: %v %% of %q, weighing error %v; want %v", l.Name, percent, l.Part, l.WeighingErrorPercent, want)
		}
	}
}

func TestSame(t *testing.T) {
	base := []Part{part("oil", 100), part("water", 96), part("MDG", 3), part("polysorbate 80", 1)}
	with := func(grams ...float64) []Part {
		out := append([]Part(nil), base...)
		for i, g := range grams {
			out[i].Grams = g
		}
		return out
	}
	reversed := []Part{base[3], base[2], base[1], base[0]}
	cases := []struct {
		name string
		b    []Part
		same bool
	}{
		{"itself", base, true},
		{"twice as much", with(200, 192, 6, 2), true},
		{"other order", reversed, true},
		{"a step off", with(100, 96, 3, 1.1), true},
		{"two steps off", with(100, 96, 3, 1.2), false},
		{"more oil", with(101, 96, 3, 1), false},
		{"without one", with(100, 96, 3, 0), false},
		{"an unused column", append(with(), part("salt", 0)), true},
		{"another one", append(with(), part("salt", 1)), false},
		{"another name", []Part{base[0], base[1], base[2], part("polysorbate 60", 1)}, false},
		{"nothing", nil, false},
	}
	for _, c := range cases {
		if Same(base, c.b, 0.1) != c.same || Same(c.b, base, 0.1) != c.same {
			t.Errorf("%s: not %v both ways", c.name, c.same)
		}
	}
	if Same(nil, nil, 0.1) {
		t.Error("two trials without grams are the same")
	}
}

// Two weighings of one formula are the same, whatever the scale did.
func TestSameAllowsTheScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		template := drawTemplate(t)
		a, b := append([]Part(nil), template...), append([]Part(nil), template...)
		for i := range template {
			a[i].Grams += rapid.Float64Range(-0.05, 0.05).Draw(t, "a")
			b[i].Grams += rapid.Float64Range(-0.05, 0.05).Draw(t, "b")
		}
		if !Same(a, b, 0.1) {
			t.Fatalf("not the same: %v, %v", a, b)
		}
	})
}

func BenchmarkSame(b *testing.B) {
	one := []Part{part("oil", 100), part("water", 96), part("MDG", 3), part("polysorbate 80", 1)}
	other := []Part{part("oil", 100), part("water", 96), part("MDG", 3), part("polysorbate 80", 2)}
	for b.Loop() {
		Same(one, other, 0.1)
	}
}

func BenchmarkSolve(b *testing.B) {
	template := []Part{part("oil", 100), part("water", 96), part("MDG", 3), part("polysorbate 80", 1)}
	for b.Loop() {
		if _, err := Solve(template, Wanted{45, 3, hlb(7)}, 400, 0.1); err != nil {
			b.Fatal(err)
		}
	}
}
