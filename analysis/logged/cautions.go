package logged

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/analysis/result"
	"foamfield/analysis/surface"
	"foamfield/analysis/works"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// Ingredients lists what each ingredient was taken for, and the allergens found
// by name.
func Ingredients(log *trial.Log) ([]result.Used, result.Allergens) {
	used := []result.Used{}
	found := []string{}
	unknownFor := []string{}
	for _, i := range log.Ingredients {
		u := result.Used{Name: i.Name, Known: i.Known, Kind: i.Kind.String(), From: i.From, Note: i.Note, Allergens: i.Allergens}
		if i.HLB != nil {
			u.HLB, u.HLBLow, u.HLBHigh = works.Finite(i.HLB.Value), works.Finite(i.HLB.Low), works.Finite(i.HLB.High)
		}
		if i.FatPercent != nil {
			u.FatPercent = works.Finite(i.FatPercent.Value)
		}
		used = append(used, u)
		if i.Allergens == nil {
			unknownFor = append(unknownFor, i.Name)
		}
		for _, a := range i.Allergens {
			if !slices.Contains(found, a) {
				found = append(found, a)
			}
		}
	}
	return used, result.Allergens{Found: found, Unknown: unknownFor}
}

// Cautions collects the safety sentences that apply. Each defers to the maker's
// marking, local codes and licensed practice.
func Cautions(log *trial.Log, trials []surface.Placed, batch result.Batch, want result.Targets) []result.Caution {
	out := slices.Concat(handling(log), food(log, trials))
	for _, t := range trials {
		if t.Student != "" {
			out.add("class", "Classroom: do not eat the foams; lock chargers away and count them out and in.", "Classroom: do not eat the foam; count chargers out and in.")
			break
		}
	}
	if batch.Canisters > 1 {
		out.add("fill", fmt.Sprintf("A batch of %.0f g is more than the largest fill logged (%.0f g): split it over %d canisters, each to its own marking.", batch.Grams, *batch.LargestFillGrams, batch.Canisters),
			fmt.Sprintf("Split it over %d canisters.", batch.Canisters))
	}
	scope := "taste, canister or food safety"
	if len(want.Results) > 0 {
		scope = "canister or food safety"
	}
	out.add("scope", "A chance here is about the foam only; it says nothing of "+scope+".", "")
	return out
}

type cautions []result.Caution

func (c *cautions) add(kind, text, bench string) {
	*c = append(*c, result.Caution{Kind: kind, Text: text, Bench: bench})
}

// handling is what the canister, the gas and the heat ask for.
func handling(log *trial.Log) (out cautions) {
	out.add("canister", "The canister's own marking decides how much mix and how many chargers it takes, whatever a log says. Check that its head has not been recalled; scrap a corroded, cracked or cross-threaded one.",
		"Strain the mix. Fill and charge to your canister's marking, whatever stands here.")
	out.add("vent", "Vent all gas, nozzle up and under a cloth, before opening. If it clogs: do not open, vent first. Strain every mix and wear eye protection.",
		"Before you open it, vent all gas, nozzle up and under a cloth. Clogged: do not open, vent first. Wear eye protection.")
	out.add("chargers", "Keep chargers away from heat and never swap gas types; vent in an aired room; never inhale the gas.", "")
	if hasKind(log, ingredient.Fat) || hasKind(log, ingredient.Emulsifier) {
		out.add("hot", "Melted fat and emulsifier burn. Cool the mix to what the canister is rated for before filling; warm a canister in a water bath, never over a flame.",
			"Hot fat burns. Cool the mix to what your canister is rated for before you fill it.")
	}
	out.add("keep", "Keep foams and mixes at 5 °C or below, or at 57 °C or above; otherwise by a written time plan of 4 hours at most (FDA Food Code 3-501.16 and 3-501.19; follow the code in force where you serve).", "")
	return out
}

// food is what the ingredients ask for.
func food(log *trial.Log, trials []surface.Placed) (out cautions) {
	names := strings.ToLower(namesAndNotes(log, trials))
	if containsAny(names, "egg", "yolk", "œuf", "oeuf", "huevo", "uovo", "eigelb") {
		out.add("egg", "Raw egg: use pasteurised egg.", "Pasteurised egg only.")
	}
	if containsAny(names, "garlic", "herb", "chilli", "chili", "truffle", "basil", "rosemary", "thyme", "ail ", "ajo", "aglio", "knoblauch") {
		out.add("infused", "Oil infused with fresh garlic, herbs, chilli or truffle: keep at 4 °C or below and no more than 4 days (US National Center for Home Food Preservation; official figures differ, check your local authority).", "")
	}
	if hasKind(log, ingredient.Emulsifier) || hasKind(log, ingredient.Ionic) {
		text := "Use food-grade emulsifiers only. Use limits differ by country and food: check the text in force where you serve."
		if limits := useLimits(log); limits != "" {
			text += " " + limits
		}
		out.add("emulsifiers", text, "")
	}
	_, a := Ingredients(log)
	if len(a.Found) > 0 || len(a.Unknown) > 0 {
		text := "Allergens found by name: " + strings.Join(a.Found, ", ") + "; check labels."
		if len(a.Found) == 0 {
			text = "No allergen was found by name; check labels."
		}
		if len(a.Unknown) > 0 {
			text += " Unknown for: " + strings.Join(a.Unknown, ", ") + "."
		}
		out.add("allergens", text, "")
	}
	return out
}

func hasKind(log *trial.Log, k ingredient.Kind) bool {
	return slices.ContainsFunc(log.Ingredients, func(i ingredient.Ingredient) bool { return i.Kind == k })
}

func namesAndNotes(log *trial.Log, trials []surface.Placed) string {
	var b strings.Builder
	for _, i := range log.Ingredients {
		b.WriteString(i.Name + " ; " + i.Known + " ; ")
	}
	for _, t := range trials {
		b.WriteString(t.Note + " ; ")
	}
	return b.String()
}

func containsAny(text string, words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}

// useLimits names the limits on file for the emulsifiers logged.
func useLimits(log *trial.Log) string {
	var out []string
	for _, i := range log.Ingredients {
		for _, l := range i.Limits {
			out = append(out, fmt.Sprintf("%s: %g %% (%s)", i.Name, l.Percent, l.Where))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return "On file: " + strings.Join(out, "; ") + "."
}
