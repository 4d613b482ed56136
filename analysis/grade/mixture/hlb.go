package mixture

import (
	"fmt"
	"foamfield/analysis/grade/verdict"
	"strings"
)

// BlendOf is the blend HLB of a mix; false where an HLB is not known or nothing has
// one.
func BlendOf(m *Mixture, with map[string]float64) (float64, bool) {
	sum, weighted := 0.0, 0.0
	for k := range m.Parts {
		p := &m.Parts[k]
		if p.Grams == 0 || !IsEmulsifier(p) {
			continue
		}
		h, ok := hlbOf(p, with)
		if !ok {
			return 0, false
		}
		sum, weighted = sum+p.Grams, weighted+p.Grams*h
	}
	return weighted / sum, sum > 0 && !m.blind
}

func hlbOf(p *Part, with map[string]float64) (float64, bool) {
	if v, ok := with[p.Name]; ok {
		return v, true
	}
	if p.HLB == nil {
		return 0, false
	}
	return p.HLB.Value, true
}

// RangeOf is the blend with the range its emulsifiers leave.
func RangeOf(m *Mixture, value float64) verdict.Accepted {
	low, high := map[string]float64{}, map[string]float64{}
	for k := range m.Parts {
		if p := &m.Parts[k]; p.HLB != nil {
			low[p.Name], high[p.Name] = p.HLB.Low, p.HLB.High
		}
	}
	l, _ := BlendOf(m, low)
	h, _ := BlendOf(m, high)
	return verdict.Between(min(l, value), value, max(h, value))
}

// BlendWritten writes the mean out: "(3.9 × 3.8 + 2.1 × 15) / 6".
func BlendWritten(m *Mixture, with map[string]float64) string {
	var terms []string
	sum := 0.0
	for k := range m.Parts {
		if p := &m.Parts[k]; IsEmulsifier(p) && p.Grams > 0 {
			h, _ := hlbOf(p, with)
			terms = append(terms, fmt.Sprintf("%s × %s", verdict.Num(p.Grams), verdict.Num(h)))
			sum += p.Grams
		}
	}
	return fmt.Sprintf("by grams (%s) / %s", strings.Join(terms, " + "), verdict.Num(sum))
}

// BlendWays are the ways a blend HLB goes wrong.
func BlendWays(m *Mixture, with map[string]float64) (out []verdict.Way) {
	var ps []*Part
	var hs []float64
	for k := range m.Parts {
		if p := &m.Parts[k]; IsEmulsifier(p) && p.Grams > 0 {
			h, _ := hlbOf(p, with)
			ps, hs = append(ps, p), append(hs, h)
		}
	}
	add := func(x float64, class, words string, weak bool) {
		out = append(out, verdict.Either(x, words, class, weak))
	}
	sum, weighted, plain := 0.0, 0.0, 0.0
	var list []string
	for k, p := range ps {
		sum, weighted, plain = sum+p.Grams, weighted+p.Grams*hs[k], plain+hs[k]
		list = append(list, verdict.Num(hs[k]))
	}
	if len(ps) < 2 {
		return out
	}
	names := strings.Join(list, " and ")
	add(plain/float64(len(ps)), "plain mean", "the plain mean of "+names+", whatever they weigh", false)
	add(plain, "plain sum", "the sum of "+names, false)
	add(weighted, "not divided", "the weighted sum, not divided by the grams of the emulsifiers", false)
	for _, d := range m.Denominators() {
		add(weighted/d, "over the mix", "weighted over the whole mix, not over the emulsifiers", false)
	}
	for _, d := range []float64{m.Of(IsFat), m.Of(IsWater)} {
		if d > 0 {
			add(weighted/d, "over a part", "weighted over a part of the mix, not over the emulsifiers", false)
		}
	}
	if len(ps) == 2 {
		add((ps[0].Grams*hs[1]+ps[1].Grams*hs[0])/sum, "exchanged", "what follows if the two grams are exchanged", false)
		if ps[0].Grams != ps[1].Grams {
			inverse := (hs[0]/ps[0].Grams + hs[1]/ps[1].Grams) / (1/ps[0].Grams + 1/ps[1].Grams)
			add(inverse, "exchanged", "what follows if the two grams are exchanged", false)
		}
		add(hs[0]*ps[0].Grams/sum, "one term", "only the term of the "+ps[0].Name, true)
		add(hs[1]*ps[1].Grams/sum, "one term", "only the term of the "+ps[1].Name, true)
	} else {
		for a := range ps {
			for b := range a {
				x := weighted + (hs[a]-hs[b])*(ps[b].Grams-ps[a].Grams)
				add(x/sum, "exchanged", fmt.Sprintf("what follows if the grams of %s and %s are exchanged", ps[b].Name, ps[a].Name), false)
			}
		}
		for k, p := range ps {
			add((weighted-p.Grams*hs[k])/(sum-p.Grams), "without "+p.Name, "the blend without the "+p.Said(), false)
		}
	}
	for k, p := range ps {
		add(hs[k], "only "+p.Name, "the HLB of the "+p.Said()+" alone", true)
	}
	return out
}
