// Package mix is the arithmetic of a foam mix: grams, percents, the blend HLB,
// and what a scale's step does to them.
package mix

import "foamfield/ingest/ingredient"

// Part is grams of one ingredient.
type Part struct {
	Grams float64
	What  ingredient.Ingredient
}

// Totals are the sums of a mix. A nil is a number that cannot be known: the
// lists name the parts (by index) to blame. Parts of 0 g do not count.
type Totals struct {
	Grams           float64
	FatPartGrams    float64 // fat ingredients as weighed: the basis of "% of fat"
	WaterPartGrams  float64 // water ingredients: the basis of "% of water"
	EmulsifierGrams float64 // ionic ones too, whole foods such as yolk not

	FatGrams          *float64
	FatPercent        *float64 // of the mix
	EmulsifierPercent *float64 // of the mix; nil only for an empty mix
	BlendHLB          *ingredient.Range

	WithoutFatPercent []int // fat ingredients whose fat percent is unknown
	WithoutHLB        []int // non-ionic emulsifiers whose HLB is unknown
	Ionic             []int // emulsify, but stay out of the blend
}

// Total sums up a mix. The fat is Σ gᵢ·fatᵢ/100 over all ingredients by their
// own fat percent. The blend HLB is Σ gᵢ·HLBᵢ / Σ gᵢ over the non-ionic
// emulsifiers (Griffin 1954, J. Soc. Cosmet. Chem. 5:249-256), its range the
// same mean of the ingredients' ranges; without such emulsifiers there is none.
// Grams must be finite and not negative.
func Total(parts []Part) Totals {
	var t Totals
	var fat float64
	var b blend
	for i, p := range parts {
		if p.Grams == 0 {
			continue
		}
		t.Grams += p.Grams
		switch p.What.Kind {
		case ingredient.Fat:
			t.FatPartGrams += p.Grams
		case ingredient.Water:
			t.WaterPartGrams += p.Grams
		case ingredient.Ionic:
			t.Ionic = append(t.Ionic, i)
		case ingredient.Emulsifier:
			if !b.add(p) {
				t.WithoutHLB = append(t.WithoutHLB, i)
			}
		}
		if p.What.WeighedAsEmulsifier() {
			t.EmulsifierGrams += p.Grams
		}
		if p.What.FatPercent != nil {
			fat += p.Grams * p.What.FatPercent.Value / 100
		} else if p.What.NeedsFatPercent() {
			t.WithoutFatPercent = append(t.WithoutFatPercent, i)
		}
	}
	if len(t.WithoutFatPercent) == 0 {
		t.FatGrams = &fat
	}
	if t.Grams > 0 {
		percent := 100 * t.EmulsifierGrams / t.Grams
		t.EmulsifierPercent = &percent
		if t.FatGrams != nil {
			percent := 100 * fat / t.Grams
			t.FatPercent = &percent
		}
	}
	if len(t.WithoutHLB) == 0 {
		t.BlendHLB = b.hlb()
	}
	return t
}

// blend is the non-ionic emulsifiers of a mix whose HLB is known.
type blend struct {
	grams float64
	sum   ingredient.Range // of grams times HLB
}

// add takes in an emulsifier; false if its HLB is unknown.
func (b *blend) add(p Part) bool {
	h := p.What.HLB
	if h == nil {
		return false
	}
	b.grams += p.Grams
	b.sum.Low += p.Grams * h.Low
	b.sum.Value += p.Grams * h.Value
	b.sum.High += p.Grams * h.High
	return true
}

// hlb is the mean HLB by weight, nil for no emulsifiers.
func (b *blend) hlb() *ingredient.Range {
	if !(b.grams > 0) {
		return nil
	}
	return &ingredient.Range{Low: b.sum.Low / b.grams, Value: b.sum.Value / b.grams, High: b.sum.High / b.grams}
}

// WeighingError is the most that grams read on a scale may be off, as a
// fraction of them: half the step. It is +Inf for 0 g.
func WeighingError(grams, step float64) float64 { return step / 2 / grams }
