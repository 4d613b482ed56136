package column

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
)

// A kitchen that weighs its emulsifiers together may give the two as a ratio in a column of
// its own: "ratio GMS:polysorbate 80" above 70:30.

var (
	ratioWords = wordsIn(`ratio proportion proportions split parts part shares share blend mix mixture emulsifier emulsifiers emulsifying by weight mass in of the between w w/w wt is are always given as
		rapport proportion parts mélange émulsifiants émulsifiant en poids masse de des
		proporción relación mezcla emulsionantes emulsionante peso rapporto proporzione miscela emulsionanti
		verhältnis mischung mischungsverhältnis emulgatoren emulgator gewicht nach im ist immer
		verhouding mengsel emulgatoren gewicht van de`)
	namesRatio = wordsIn(`ratio proportion proportions shares rapport proporción relación rapporto proporzione verhältnis mischungsverhältnis verhouding`)
	blends     = wordsIn(`blend mix mixture mélange mezcla miscela mischung mengsel`) // "blend low/high"; of names it may be what both weigh
	ratioSigns = strings.NewReplacer("(", " ", ")", " ", "[", " ", "]", " ", ",", " ", "=", " ", "%", " ")
	ratioTo    = pattern.Of(`\s*(?::|/|÷|\s(?:to|zu|à|a|tot|op)\s)\s*`)
)

func wordsIn(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// ofRatio reads a header that names two emulsifiers and a ratio; false for any other. Every
// word beside the two names must be one of a ratio's.
func ofRatio(header string) (m Meaning, ok bool) {
	parts := groups(header)
	text := parts[len(parts)-1]
	for _, at := range ratioTo.FindAllStringIndex(text, -1) {
		left, first := emulsifierAt(strings.Fields(ratioSigns.Replace(text[:at[0]])), true)
		right, second := emulsifierAt(strings.Fields(ratioSigns.Replace(text[at[1]:])), false)
		if first == "" || second == "" || strings.EqualFold(first, second) {
			continue
		}
		said, aim := strings.Contains(text[at[0]:at[1]], ":"), Actual
		for _, w := range append(left, right...) {
			w = strings.Trim(strings.ToLower(w), ".:;")
			if vocab().modifiers[w]&meant != 0 {
				aim = Planned
				continue
			}
			if w != "" && !ratioWords[w] {
				return m, false
			}
			said = said || namesRatio[w] || blends[w] && OnlyByPhase(first)
		}
		if said && (OnlyByPhase(first) == OnlyByPhase(second)) {
			return Meaning{Role: EmulsifierRatio, Ingredient: first, Second: second, Words: strings.TrimSpace(text), typed: header, sure: true, Aim: aim}, true
		}
	}
	return m, false
}

// theRest is what of a mix is no fat: "fat : rest".
var theRest = wordsIn(`rest remainder reste restant resto restante overige`)

// ofPhases reads a header that names a fat and a water part, and that they share the mix: "oil :
// water phase", "ratio fat/stock". Every word beside the two must be one of a ratio's.
func ofPhases(header string) (m Meaning, ok bool) {
	parts := groups(header)
	text := parts[len(parts)-1]
	at := ratioTo.FindAllStringIndex(text, -1)
	if len(at) != 1 {
		return m, false
	}
	said := strings.Contains(text[at[0][0]:at[0][1]], ":")
	var names [2]string
	var kinds [2]ingredient.Kind
	for i, side := range [...]string{text[:at[0][0]], text[at[0][1]:]} {
		var kept []string
		for _, w := range strings.Fields(ratioSigns.Replace(side)) {
			key := strings.ToLower(w)
			if said = said || namesRatio[key]; !ratioWords[key] {
				kept = append(kept, w)
			}
		}
		name := strings.Join(kept, " ")
		if theRest[strings.ToLower(name)] {
			name = "water part"
		}
		what, known := ingredient.Lookup(name)
		if !known {
			return m, false
		}
		names[i], kinds[i] = name, what.Kind
	}
	if !said || kinds != [2]ingredient.Kind{ingredient.Fat, ingredient.Water} && kinds != [2]ingredient.Kind{ingredient.Water, ingredient.Fat} {
		return m, false
	}
	return Meaning{Role: PhaseRatio, Ingredient: names[0], Second: names[1], Words: strings.TrimSpace(text), typed: header, sure: true}, true
}

// OnlyByPhase reports the name of an emulsifier of which nothing is known but what it loves.
func OnlyByPhase(name string) bool {
	return name == "lipophilic emulsifier" || name == "hydrophilic emulsifier"
}

var shareWords = wordsIn(`which thereof davon hiervon dont lesquels cual cuales cui waarvan daarvan share shares fraction proportion part of the part de du des le la les proportion fracción proporción parte del el quota frazione proporzione di dello della
	anteil von vom der des aandeel deel van de het`)

// share is a share of the emulsifiers, by the name of the one it is of: "share of B in the
// blend". What is known to be none has no share of them.
func (m Meaning) share() Meaning {
	if m.Role != IngredientAmount || m.Basis != OfEmulsifier {
		return m
	}
	words := strings.FieldsFunc(m.Ingredient, func(r rune) bool { return r == ' ' || r == '-' })
	words = slices.DeleteFunc(words, func(w string) bool { return shareWords[strings.ToLower(w)] })
	if name := strings.Join(words, " "); m.Unknown && name != "" && len(words) < len(strings.Fields(strings.ReplaceAll(m.Ingredient, "-", " "))) {
		_, known := ingredient.Lookup(name)
		m.Ingredient, m.Unknown = name, !known
	}
	if grade, ok := lowOrHigh(m.Ingredient); ok {
		m.Ingredient, m.Unknown = grade, false
	}
	if i, known := ingredient.Lookup(m.Ingredient); known && !i.WeighedAsEmulsifier() {
		m.Basis = NoBasis
		m.Doubt = fmt.Sprintf("%q is no emulsifier, so nobody can tell what it is a percent of; type \"%s (%% of mix)\" or the like", m.Ingredient, m.Ingredient)
		m.sure = false
		m = m.aside(None)
	}
	return m
}

// SaysRatio reports whether a header says that its column is a ratio, and not of what.
func SaysRatio(header string) bool {
	said := false
	for _, w := range strings.Fields(ratioSigns.Replace(strings.ToLower(header))) {
		if w = strings.Trim(w, ".:;"); w != "" && !ratioWords[w] {
			return false
		}
		said = said || namesRatio[w]
	}
	return said
}

// emulsifierAt is the longest emulsifier's name at the end of some words, or at their start,
// and what is left of them.
func emulsifierAt(words []string, atEnd bool) (left []string, name string) {
	for k := min(4, len(words)); k >= 1; k-- {
		run, rest := words[:k], words[k:]
		if atEnd {
			run, rest = words[len(words)-k:], words[:len(words)-k]
		}
		text := strings.Join(run, " ")
		if grade, ok := lowOrHigh(strings.TrimSuffix(strings.TrimSuffix(strings.ReplaceAll(strings.ToLower(text), "-", " "), " emulsifier"), " hlb")); ok {
			return rest, grade
		}
		if what, ok := ingredient.Lookup(text); ok && what.WeighedAsEmulsifier() && what.Name != "emulsifier" {
			return rest, text
		}
	}
	return words, ""
}
