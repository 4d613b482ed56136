package analysis

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/ingest/ingredient"
)

// ingredients lists what each ingredient was taken for, and the allergens found
// by name.
func (s *study) ingredients() {
	found := []string{}
	unknownFor := []string{}
	for _, i := range s.log.Ingredients {
		u := result.Used{Name: i.Name, Known: i.Known, Kind: i.Kind.String(), From: i.From, Note: i.Note, Allergens: i.Allergens}
		if i.HLB != nil {
			u.HLB, u.HLBLow, u.HLBHigh = finite(i.HLB.Value), finite(i.HLB.Low), finite(i.HLB.High)
		}
		if i.FatPercent != nil {
			u.FatPercent = finite(i.FatPercent.Value)
		}
		s.out.Ingredients = append(s.out.Ingredients, u)
		if i.Allergens == nil {
			unknownFor = append(unknownFor, i.Name)
		}
		for _, a := range i.Allergens {
			if !slices.Contains(found, a) {
				found = append(found, a)
			}
		}
	}
	s.out.Allergens = result.Allergens{Found: found, Unknown: unknownFor}
}

// cautions collects the safety sentences that apply. Each defers to the maker's
// marking, local codes and licensed practice.
func (s *study) cautions() {
	add := func(kind, text, bench string) {
		s.out.Cautions = append(s.out.Cautions, result.Caution{Kind: kind, Text: text, Bench: bench})
	}
	add("canister", "The canister's own marking decides how much mix and how many chargers it takes, whatever a log says. Check that its head has not been recalled; scrap a corroded, cracked or cross-threaded one.",
		"Strain the mix. Fill and charge to your canister's marking, whatever stands here.")
	add("vent", "Vent all gas, nozzle up and under a cloth, before opening. If it clogs: do not open, vent first. Strain every mix, and wear eye protection with thick ones.",
		"Before you open it, vent all gas, nozzle up and under a cloth. Clogged: do not open, vent first. Thick mix: wear eye protection.")
	add("chargers", "Keep chargers away from heat and never swap gas types; vent in an aired room; never inhale the gas.", "")
	names := strings.ToLower(s.namesAndNotes())
	if s.hasKind(ingredient.Fat) || s.hasKind(ingredient.Emulsifier) {
		add("hot", "Melted fat and emulsifier burn. Cool the mix to what the canister is rated for before filling; warm a canister in a water bath, never over a flame.",
			"Hot fat burns. Cool the mix to what your canister is rated for before you fill it.")
	}
	add("keep", "Keep foams and mixes at 5 °C or below, or at 57 °C or above; otherwise by a written time plan of 4 hours at most (FDA Food Code 3-501.16 and 3-501.19; follow the code in force where you serve).", "")
	if containsAny(names, "egg", "yolk", "œuf", "oeuf", "huevo", "uovo", "eigelb") {
		add("egg", "Raw egg: use pasteurised egg.", "Pasteurised egg only.")
	}
	if containsAny(names, "garlic", "herb", "chilli", "chili", "truffle", "basil", "rosemary", "thyme", "ail ", "ajo", "aglio", "knoblauch") {
		add("infused", "Oil infused with fresh garlic, herbs, chilli or truffle: keep at 4 °C or below and no more than 4 days (US National Center for Home Food Preservation; official figures differ, check your local authority).", "")
	}
	if s.hasKind(ingredient.Emulsifier) || s.hasKind(ingredient.Ionic) {
		text := "Use food-grade emulsifiers only. Use limits differ by country and food: check the text in force where you serve."
		if limits := s.useLimits(); limits != "" {
			text += " " + limits
		}
		add("emulsifiers", text, "")
	}
	a := s.out.Allergens
	if len(a.Found) > 0 || len(a.Unknown) > 0 {
		text := "Allergens found by name: " + strings.Join(a.Found, ", ") + "; check labels."
		if len(a.Found) == 0 {
			text = "No allergen was found by name; check labels."
		}
		if len(a.Unknown) > 0 {
			text += " Unknown for: " + strings.Join(a.Unknown, ", ") + "."
		}
		add("allergens", text, "")
	}
	for _, t := range s.trials {
		if t.Student != "" {
			add("class", "Classroom: do not eat the foams; lock chargers away and count them out and in.", "Classroom: do not eat the foam; count chargers out and in.")
			break
		}
	}
	if b := s.out.Batch; b.Canisters > 1 {
		add("fill", fmt.Sprintf("A batch of %.0f g is more than the largest fill logged (%.0f g): split it over %d canisters, each to its own marking.", b.Grams, *b.LargestFillGrams, b.Canisters),
			fmt.Sprintf("Split it over %d canisters.", b.Canisters))
	}
	scope := "taste, canister or food safety"
	if len(s.want.Results) > 0 {
		scope = "canister or food safety"
	}
	add("scope", "A chance here is about the foam only; it says nothing of "+scope+".", "")
}

func (s *study) hasKind(k ingredient.Kind) bool {
	return slices.ContainsFunc(s.log.Ingredients, func(i ingredient.Ingredient) bool { return i.Kind == k })
}

func (s *study) namesAndNotes() string {
	var b strings.Builder
	for _, i := range s.log.Ingredients {
		b.WriteString(i.Name + " ; " + i.Known + " ; ")
	}
	for _, t := range s.trials {
		b.WriteString(t.Note + " ; ")
	}
	return b.String()
}

func containsAny(text string, words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}

// useLimits names the limits on file for the emulsifiers logged.
func (s *study) useLimits() string {
	var out []string
	for _, i := range s.log.Ingredients {
		for _, l := range i.Limits {
			out = append(out, fmt.Sprintf("%s: %g %% (%s)", i.Name, l.Percent, l.Where))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return "On file: " + strings.Join(out, "; ") + "."
}
