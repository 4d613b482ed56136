package mixture

import (
	"fmt"
	"foamfield/analysis/grade/verdict"
	"math"
)

// FatWays are the ways a fat percent goes wrong.
func FatWays(m *Mixture) (out []verdict.Way) {
	fat, _ := m.FatGrams()
	raw, water, em := m.Of(IsFat), m.Of(IsWater), m.Of(IsEmulsifier)
	add := func(x float64, class, words string) { out = append(out, verdict.By(x, words, class)) }
	for _, d := range m.Denominators() {
		add(100*raw/d, "all fat", "the "+m.Names(IsFat)+" in percent of the mix, as if all of it were fat")
		add(100*fat.Value/(d-em), "without emulsifiers", "the fat in percent of a mix without its emulsifiers")
		add(100*raw/(d-em), "all fat without emulsifiers", "the "+m.Names(IsFat)+" in percent of a mix without its emulsifiers, as if all of it were fat")
		add(100*(fat.Value+em)/d, "with emulsifiers", "the fat with the emulsifiers")
		add(100*water/d, "water", "the percent of the water part")
		add(fat.Value/d, "fraction", "a fraction, not a percent")
		if k := swapFatWater(m); k > 0 {
			add(100*k/d, "exchanged", "what follows if the grams of fat and of water are exchanged")
		}
	}
	for _, o := range OtherFats(m) {
		for _, d := range m.Denominators() {
			add(100*o.Grams/d, o.Class, o.Words)
		}
	}
	for k := range m.Parts {
		p := &m.Parts[k]
		if IsFat(p) && p.Grams > 0 && p.Fat.Value > 0 {
			add(p.Fat.Value, "own percent", fmt.Sprintf("the fat percent of the %s itself, not of the mix", p.Said()))
		}
	}
	for _, d := range m.Denominators() {
		add(100*fat.Value/(d-water), "without water", "the fat in percent of everything but the water")
	}
	if water > 0 {
		add(100*fat.Value/water, "of water", "the fat in percent of the water part, not of the mix")
		add(100*raw/water, "butter of water", "the "+m.Names(IsFat)+" in percent of the water part, not of the mix")
	}
	if raw > 0 {
		add(100*fat.Value/raw, "of fat", "the fat in percent of the "+m.Names(IsFat)+", not of the mix")
	}
	add(fat.Value, "grams", "the grams of fat, not its percent")
	add(raw, "grams as weighed", "the grams of "+m.Names(IsFat)+", not a percent")
	for _, d := range m.Denominators() {
		for _, to := range []float64{5, 10} {
			add(to*math.Round(100*fat.Value/d/to), "rounded to "+verdict.Num(to), "rounded too far, to a multiple of "+verdict.Num(to))
		}
	}
	return append(out, slipsOf(100*fat.Value, m)...)
}

// Other is the fat of a mix in which one part is counted at a percent that is not its own.
type Other struct {
	Grams        float64
	Class, Words string
}

// OtherFats are the grams of fat with one part taken for pure fat, at the percent of another
// part, or left out.
func OtherFats(m *Mixture) (out []Other) {
	fat, ok := m.FatGrams()
	if !ok {
		return nil
	}
	for k := range m.Parts {
		p := &m.Parts[k]
		if p.Grams <= 0 || IsEmulsifier(p) || p.Fat.Value <= 0 {
			continue
		}
		at := func(percent float64) float64 { return fat.Value + p.Grams*(percent-p.Fat.Value)/100 }
		if p.Fat.High < 99 {
			out = append(out, Other{at(100), "pure " + p.Name, fmt.Sprintf("the fat with all of the %s counted as fat", p.Name)})
		}
		for n := range m.Parts {
			if o := &m.Parts[n]; n != k && o.Grams > 0 && o.Fat.Value > 0 && !IsEmulsifier(o) && (o.Fat.Value < p.Fat.Low-0.5 || o.Fat.Value > p.Fat.High+0.5) {
				out = append(out, Other{at(o.Fat.Value), p.Name + " as " + o.Name, fmt.Sprintf("the fat with the %s counted at the %s %% of the %s", p.Name, verdict.Num(o.Fat.Value), o.Name)})
			}
		}
		if fat.Value > p.Grams*p.Fat.Value/100+1e-9 && (IsFat(p) || p.Fat.Low == p.Fat.High) {
			out = append(out, Other{at(0), "without fat of " + p.Name, fmt.Sprintf("the fat without that of the %s", p.Name)})
		}
	}
	return out
}

// slipsOf are slips of the finger of a percent of the mix.
func slipsOf(hundredfold float64, m *Mixture) (out []verdict.Way) {
	for _, d := range m.Denominators() {
		out = append(out, verdict.Slips(hundredfold/d)...)
	}
	return out
}

// swapFatWater is the fat in grams if the fat and the water, with its own fat, had changed
// places.
func swapFatWater(m *Mixture) float64 {
	var fat, water *Part
	for k := range m.Parts {
		switch p := &m.Parts[k]; {
		case p.Grams == 0:
		case IsFat(p) && fat == nil:
			fat = p
		case IsWater(p) && water == nil:
			water = p
		case IsFat(p), IsWater(p):
			return 0
		}
	}
	if fat == nil || water == nil {
		return 0
	}
	return (water.Grams*fat.Fat.Value + fat.Grams*water.Fat.Value) / 100
}
