package mix

import (
	"math"
	"testing"

	"foamfield/ingest/ingredient"

	"pgregory.net/rapid"
)

// item is an ingredient for tests; NaN = not known.
func item(kind ingredient.Kind, fat, hlb float64) ingredient.Ingredient {
	i := ingredient.Ingredient{Kind: kind}
	if !math.IsNaN(fat) {
		i.FatPercent = &ingredient.Range{Low: fat, Value: fat, High: fat}
	}
	if !math.IsNaN(hlb) {
		i.HLB = &ingredient.Range{Low: hlb, Value: hlb, High: hlb}
	}
	return i
}

var (
	none   = math.NaN()
	oil    = item(ingredient.Fat, 100, none)
	butter = item(ingredient.Fat, 82, none)
	cream  = item(ingredient.Fat, 35, none)
	plain  = item(ingredient.Fat, none, none) // cream of unknown fat
	water  = item(ingredient.Water, 0, none)
	milk   = item(ingredient.Water, 3.5, none)
	salt   = item(ingredient.Other, none, none)
	low    = item(ingredient.Emulsifier, none, 3.8)
	high   = item(ingredient.Emulsifier, none, 15)
	grade  = item(ingredient.Emulsifier, none, none) // HLB unknown
	ssl    = item(ingredient.Ionic, none, none)
	yolk   = ingredient.Ingredient{Kind: ingredient.Ionic, Whole: true, FatPercent: &ingredient.Range{Low: 27, Value: 27, High: 27}}
)

// value is the number, NaN if there is none.
func value(p *float64) float64 {
	if p == nil {
		return math.NaN()
	}
	return *p
}

func near(a, b float64) bool {
	return math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) <= 1e-12*max(1, math.Abs(b))
}

func TestTotal(t *testing.T) {
	cases := []struct {
		name                     string
		parts                    []Part
		grams, fat, emuls, blend float64 // percents; NaN = not known
	}{
		{"butter, cider, two emulsifiers", []Part{{100, butter}, {96, water}, {3, low}, {1, high}}, 200, 41, 2, 6.6},
		{"cream brings its own water", []Part{{200, cream}}, 200, 35, 0, none},
		{"milk brings fat", []Part{{100, oil}, {100, milk}}, 200, 51.75, 0, none},
		{"salt counts in the mix only", []Part{{50, oil}, {50, salt}}, 100, 50, 0, none},
		{"unknown cream", []Part{{100, plain}, {100, water}, {1, high}}, 201, none, 100. / 201, 15},
		{"unknown cream, but none of it", []Part{{0, plain}, {50, oil}, {50, water}}, 100, 50, 0, none},
		{"unknown HLB", []Part{{50, oil}, {49, water}, {1, grade}}, 100, 50, 1, none},
		{"unknown HLB, but none of it", []Part{{50, oil}, {49, water}, {1, low}, {0, grade}}, 100, 50, 1, 3.8},
		{"SSL is an emulsifier without HLB", []Part{{50, oil}, {48, water}, {1, ssl}, {1, high}}, 100, 50, 2, 15},
		{"yolk is a food with fat", []Part{{40, oil}, {40, water}, {20, yolk}}, 100, 45.4, 0, none},
		{"empty", nil, 0, none, none, none},
	}
	for _, c := range cases {
		got := Total(c.parts)
		blend := none
		if got.BlendHLB != nil {
			blend = got.BlendHLB.Value
		}
		if !near(got.Grams, c.grams) || !near(value(got.FatPercent), c.fat) || !near(value(got.EmulsifierPercent), c.emuls) || !near(blend, c.blend) {
			t.Errorf("%s: %v g, fat %v, emulsifier %v, HLB %v; want %v, %v, %v, %v", c.name,
				got.Grams, value(got.FatPercent), value(got.EmulsifierPercent), blend, c.grams, c.fat, c.emuls, c.blend)
		}
	}
}

// Blend HLBs as published.
func TestPublishedBlends(t *testing.T) {
	cases := []struct {
		low, high           float64
		gramsLow, gramsHigh float64
		want, places        float64
	}{
		{4.3, 15, 1, 9, 13.93, 2}, // PMC4137601, Table 2
		{4.3, 15, 2, 8, 12.86, 2},
		{4.3, 15, 3, 7, 11.79, 2},
		{4.7, 14.9, 0.284, 0.716, 12.0, 1}, // teaching notes, jovanaeducation.com PHT-SRF-5
	}
	for _, c := range cases {
		got := Total([]Part{{c.gramsLow, item(ingredient.Emulsifier, none, c.low)}, {c.gramsHigh, item(ingredient.Emulsifier, none, c.high)}})
		if half := 0.5 * math.Pow(10, -c.places); math.Abs(got.BlendHLB.Value-c.want) > half+1e-9 {
			t.Errorf("%v of HLB %v with %v of HLB %v: %v, published %v", c.gramsLow, c.low, c.gramsHigh, c.high, got.BlendHLB.Value, c.want)
		}
	}
}

// The HLB range of a blend is the mean of the ends.
func TestBlendRange(t *testing.T) {
	mdg, _ := ingredient.Lookup("MDG")           // 3 to 6
	ps, _ := ingredient.Lookup("polysorbate 80") // 15
	got := *Total([]Part{{3, mdg}, {1, ps}}).BlendHLB
	if want := (ingredient.Range{Low: 6, Value: 6.6, High: 8.25}); !near(got.Low, want.Low) || !near(got.Value, want.Value) || !near(got.High, want.High) {
		t.Errorf("range %v, want %v", got, want)
	}
}

// drawMix is a mix of fats, waters and emulsifiers.
func drawMix(t *rapid.T) []Part {
	kinds := []ingredient.Ingredient{oil, butter, cream, water, milk, salt, low, high, ssl, yolk}
	parts := []Part{{100, oil}, {100, water}}
	for range rapid.IntRange(0, 6).Draw(t, "more") {
		parts = append(parts, Part{rapid.Float64Range(0, 200).Draw(t, "g"), rapid.SampledFrom(kinds).Draw(t, "what")})
	}
	return parts
}

func TestBlendLiesBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := drawMix(t)
		n := rapid.IntRange(1, 4).Draw(t, "emulsifiers")
		lowest, highest := math.Inf(1), math.Inf(-1)
		for _, p := range parts {
			if p.What.HLB != nil && p.Grams > 0 {
				lowest, highest = min(lowest, p.What.HLB.Value), max(highest, p.What.HLB.Value)
			}
		}
		for range n {
			h := rapid.Float64Range(1, 16).Draw(t, "hlb")
			lowest, highest = min(lowest, h), max(highest, h)
			parts = append(parts, Part{rapid.Float64Range(0.1, 10).Draw(t, "g"), item(ingredient.Emulsifier, none, h)})
		}
		if b := Total(parts).BlendHLB.Value; b < lowest-1e-9 || b > highest+1e-9 {
			t.Fatalf("blend %v outside %v to %v", b, lowest, highest)
		}
	})
}
