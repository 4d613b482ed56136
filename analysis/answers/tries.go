package answers

import (
	"fmt"
	"strings"

	"foamfield/analysis/formula"
	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/ingest/trial"
)

// Tried judges the formulas somebody asked about; why says why nothing can be said of them
// if nothing is believed.
func Tried(asked []trial.Try, found *Answers, why string) []result.Try {
	out := make([]result.Try, 0, len(asked))
	for _, a := range asked {
		out = append(out, try(a, found, why))
	}
	return out
}

func try(a trial.Try, found *Answers, why string) result.Try {
	s := found.Ground
	t := result.Try{Name: a.Name, From: a.From, Notes: []string{}, Ingredients: []result.FormulaLine{},
		Fails: map[result.Outcome]float64{}, Predicted: map[result.Outcome]result.Predicted{}}
	t.Mix = result.Mix{FatPercent: a.Fat, EmulsifierPercent: a.Emulsifier, EmulsifierGrams: a.EmulsifierGrams, BlendHLB: a.HLB}
	if t.Name == "" {
		t.Name = "formula at " + a.From
	}
	note := func(format string, args ...any) { t.Notes = append(t.Notes, fmt.Sprintf(format, args...)) }
	if s == nil {
		note("too little is known from these trials to say anything of a mix nobody made: %s", why)
		return t
	}
	var parts []formula.Part
	values, ok := []float64(nil), false
	if len(a.Parts) > 0 {
		values, parts, ok = byName(a, found, note)
	} else {
		values, ok = point(a, found, note)
	}
	if !ok {
		return t
	}
	tested := s.Search.Tested
	outside := false
	for i, v := range s.Vars {
		if x := values[i]; x < tested.Low[i]*(1-1e-9) || x > tested.High[i]*(1+1e-9) {
			outside = true
			note("%s of %s lies outside the %s to %s tried", v.Label, amount(x, v.Unit), amount(tested.Low[i], ""), amount(tested.High[i], v.Unit))
		}
	}
	t.ClosestTrial = closest(s, values)
	if outside {
		note("no chance is given for it: nothing these trials show reaches that far")
		return t
	}
	var f *formula.Formula
	if parts != nil {
		f = s.weighed(parts)
	} else {
		f, _, t.GramsNote = s.Scale.Grams(values)
	}
	if f != nil {
		t.Ingredients = s.Scale.Lines(f)
		values = s.Scale.Values(f)
	}
	t.Mix = s.Mix(values)
	t.Tested = tested.Holds(values)
	if !t.Tested {
		note("no trial is near it, though each number alone was tried: its chance is a guess")
	}
	for _, c := range found.Choices {
		if c.Held != "" {
			note("taken to be made with %s, as the starts are", c.Held)
		}
	}
	c := s.chance(values)
	t.Chance, t.ClogChance, t.Clogging = &c, s.ClogChance(values), s.Clogging(values)
	if t.ClogChance != nil && *t.ClogChance > ClogLimitTrial {
		note("it is likely to clog: do not make it straight away, go there in steps from a thinner one that came out")
	}
	if above := aboveStart(found, s, values, c.Mean); above != "" {
		note("%s", above)
	}
	for i, v := range s.Chain.FirstFailures(values) {
		t.Fails[s.Links[i].Outcome] = v
	}
	t.Predicted = s.predicted(values)
	t.MadeTimes, t.MadeWorked, t.MadeUnclear = s.made(values, t.Ingredients)
	return t
}

// aboveStart says why a mix whose chance is shown above the surest start's is not that start;
// "" where it is not above.
func aboveStart(found *Answers, s *Ground, values []float64, chance float64) string {
	for _, start := range found.Starts {
		if start.Aim != result.Surest || chance < start.Chance.Mean+0.005 {
			continue
		}
		if s.Search.At(values).Allowed {
			return "its chance is above the start's, which stays nearer to trials that worked: further from them a chance flatters"
		}
		return "its chance is above the start's, but it is none itself: too few trials are like it, or it clogs too often"
	}
	return ""
}

// point is the formula's point on the surface, open places filled with what is best for the
// rest, or else from the middle of what was tried.
func point(a trial.Try, found *Answers, note func(string, ...any)) ([]float64, bool) {
	s := found.Ground
	given := map[string]*float64{surface.FatPercent: a.Fat, surface.EmulsifierPercent: a.Emulsifier, surface.EmulsifierGrams: a.EmulsifierGrams, surface.BlendHLB: a.HLB}
	// Percent and grams of emulsifier turn into each other at the batch.
	if b := s.batch.Grams; b > 0 {
		if a.Emulsifier == nil && a.EmulsifierGrams != nil && s.Place(surface.EmulsifierGrams) < 0 {
			p := 100 * *a.EmulsifierGrams / b
			given[surface.EmulsifierPercent] = &p
			note("%s of emulsifier is %s of the batch of %s", amount(*a.EmulsifierGrams, "g"), amount(p, "%"), amount(b, "g"))
		}
	}
	if s.Place(surface.EmulsifierGrams) >= 0 && a.EmulsifierGrams == nil && a.Emulsifier != nil {
		note("this log gives emulsifier in grams without the batch, so %s of the mix cannot be placed; ask for it in grams", amount(*a.Emulsifier, "%"))
		return nil, false
	}
	for name, fixed := range s.Constants {
		if g := given[name]; g != nil && relative(*g, fixed) > 0.02 {
			note("%s was %s in every trial, so nothing is known of %s", strings.ReplaceAll(name, "_", " "), amount(fixed, ""), amount(*g, ""))
			return nil, false
		}
	}
	out := make([]float64, len(s.Vars))
	held := map[int]float64{}
	var open []int
	for i, v := range s.Vars {
		switch g := given[v.Name]; {
		case g != nil:
			out[i], held[i] = *g, *g
		case ofMix(v.Name):
			open = append(open, i)
		default: // a setting stays as it was
			out[i] = (s.Search.Tested.Low[i] + s.Search.Tested.High[i]) / 2
			if len(found.Starts) > 0 {
				out[i] = s.Values(found.Starts[0].Mix)[i]
			}
			held[i] = out[i]
			note("%s was left open: taken as %s", v.Label, amount(out[i], v.Unit))
		}
	}
	if len(open) == 0 {
		return out, true
	}
	best, ok := s.Search.BestBeside(held)
	for _, i := range open {
		v := s.Vars[i]
		if ok {
			out[i] = best.Mix[i]
			note("%s was left open: set to what is best for the rest, %s", v.Label, amount(out[i], v.Unit))
		} else {
			out[i] = (s.Search.Tested.Low[i] + s.Search.Tested.High[i]) / 2
			note("%s was left open: taken from the middle of what was tried, %s", v.Label, amount(out[i], v.Unit))
		}
	}
	return out, true
}

// ofMix reports a variable of the mix itself, not a setting beside it.
func ofMix(name string) bool {
	switch name {
	case surface.FatPercent, surface.EmulsifierPercent, surface.EmulsifierGrams, surface.BlendHLB:
		return true
	}
	return false
}

func relative(a, b float64) float64 { return max(a-b, b-a) / max(max(b, -b), 1e-9) }

// amount is a number with its unit in a sentence.
func amount(x float64, unit string) string {
	text := fmt.Sprintf("%.3g", x)
	if unit != "" {
		text += " " + unit
	}
	return text
}
