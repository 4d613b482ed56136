package column

import (
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/pattern"
	"foamfield/ingest/units"
)

// longestCore is the most words, numbers and signs in which a name is looked for.
const longestCore = 10

// ingredient reads a core that is an ingredient's name as a whole, with what its
// brackets add or without: "lecithin (soy)".
func (r *reader) ingredient() bool {
	name := raw(r.header, r.core)
	if len(r.extra) > 0 {
		longer, with := name, r.core[:len(r.core):len(r.core)]
		for _, g := range r.extra {
			longer, with = longer+" "+raw(r.header, g), append(with, g...)
		}
		if _, ok := ingredient.Lookup(longer); ok && nameable(with) {
			r.extra, r.m.Role, r.m.Ingredient, r.m.sure = nil, IngredientAmount, longer, true
			return true
		}
	}
	if !r.isIngredient(r.core) {
		return false
	}
	r.m.Role, r.m.Ingredient, r.m.sure = IngredientAmount, name, true
	return true
}

// isIngredient reports whether tokens are the name of a known ingredient.
func (r *reader) isIngredient(ts []token) bool {
	if !nameable(ts) {
		return false
	}
	_, ok := ingredient.Lookup(raw(r.header, ts))
	return ok
}

// nameable reports whether tokens can be an ingredient's name: of signs only the
// one of "cream 35 %" is part of a name, and "HLB of GMS" is no amount.
func nameable(ts []token) bool {
	for i, t := range ts {
		if hlbWords[t.text] && (i+1 == len(ts) || ts[i+1].kind != number) ||
			t.kind == sign && !removable(t) && (t.text != "%" || i == 0 || ts[i-1].kind != number) {
			return false
		}
	}
	return hasWord(ts)
}

func hasWord(ts []token) bool {
	for _, t := range ts {
		if t.kind == word {
			return true
		}
	}
	return false
}

// search reads a core that is neither in the table nor an ingredient.
func (r *reader) search() {
	if len(r.core) > longestCore || r.hlbOf() {
		return
	}
	best := r.coverWhole()
	switch foam := best.p != nil && ofFoam(best.p.entries[0].role); {
	case best.found() && len(best.left) == 0:
		r.take(best)
	case r.lotOf(), r.labelled(), r.misspelling():
	case r.isAmount() && hasWord(r.core) && !foam:
		r.m.Role, r.m.Ingredient, r.m.Unknown, r.m.sure = IngredientAmount, raw(r.header, r.core), true, true
	case best.found():
		r.take(best)
	default:
		r.m.Bare = bare(r.m.Unit)
	}
}

// coverWhole covers the core, or the one before modifiers were peeled off where
// one of these is the name.
func (r *reader) coverWhole() covering {
	best := r.cover()
	if best.found() || len(r.whole) == len(r.core) || len(r.whole) > longestCore {
		return best
	}
	peeled, mods := r.core, r.mods
	r.core, r.mods = r.whole, r.mods[:r.wholeMods]
	if best = r.cover(); best.p == nil || len(best.p.squashed) < 3 {
		r.core, r.mods = peeled, mods
		return covering{}
	}
	return best
}

func bare(u units.Unit) bool { return u == units.NoUnit || u.Dimension() == units.Percent }

// isAmount reports whether the unit makes the column an amount of something.
func (r *reader) isAmount() bool { return amountUnit(r.m.Unit, r.m.Basis) }

func amountUnit(u units.Unit, b Basis) bool {
	switch u.Dimension() {
	case units.Mass, units.Volume, units.Count:
		return true
	case units.Percent:
		return b != NoBasis
	}
	return false
}

var hlbWords = map[string]bool{"hlb": true, "bhl": true, "ehl": true}

// hlbOf reads the HLB of something, and the grade in an ingredient's name.
func (r *reader) hlbOf() bool {
	for i, t := range r.core {
		if !hlbWords[t.text] {
			continue
		}
		others := append(r.core[:i:i], r.core[i+1:]...)
		if r.grade(i) {
			r.m.Role, r.m.Ingredient, r.m.sure = IngredientAmount, raw(r.header, r.core), true
			_, known := ingredient.Lookup(r.m.Ingredient)
			if p := r.v.exact(r.withoutModifiers(r.core[:i])); !known && i+2 == len(r.core) && p != nil && p.entries[0].role == EmulsifierAmount {
				r.m.Ingredient, known = "emulsifier "+raw(r.header, r.core[i:]), true // "emulsifier blend HLB 8"
			}
			r.m.Unknown = !known
			return true
		}
		others = r.withoutModifiers(others)
		if len(others) == 0 || r.ofBlend(others) {
			return false
		}
		name := raw(r.header, others)
		if i > 0 && i < len(r.core)-1 {
			name = joined(others)
		}
		if grade, ok := lowOrHigh(name); ok {
			name = grade
		}
		_, known := ingredient.Lookup(name)
		r.m.Role, r.m.Ingredient, r.m.Unknown, r.m.sure = IngredientHLB, name, !known, true
		if d := r.m.Unit.Dimension(); d == units.Mass || d == units.Percent {
			r.m = r.m.ofGrade()
		}
		return true
	}
	return false
}

// ofGrade is the amount of the emulsifier of an HLB: nobody weighs an HLB. "HLB 15 (g)" is of one
// that has no other name.
func (m Meaning) ofGrade() Meaning {
	m.Role = IngredientAmount
	if aloneHLB(tokens(m.Ingredient)) {
		m.Ingredient, m.Unknown = "emulsifier HLB "+m.Ingredient, false
		m.Words = m.Ingredient
	}
	return m
}

// lowOrHigh is the emulsifier that "low" or "high" before HLB speaks of.
func lowOrHigh(name string) (string, bool) {
	switch strings.ToLower(name) {
	case "low", "lo", "lower", "bas", "basse", "faible", "bajo", "baja", "basso", "bassa", "niedrig", "niedriger", "niedriges", "tief", "tiefer", "laag", "lage":
		return "lipophilic emulsifier", true
	case "high", "hi", "higher", "haut", "haute", "élevé", "élevée", "alto", "alta", "hoch", "hoher", "hohes", "hoog", "hoge":
		return "hydrophilic emulsifier", true
	}
	if p := vocab().exact(tokens(name)); p != nil && OnlyByPhase(p.entries[0].ingredient) {
		return p.entries[0].ingredient, true
	}
	return "", false
}

// ofBlend reports whether words beside HLB, or some of them, make it the mix's.
func (r *reader) ofBlend(others []token) bool {
	for _, t := range others {
		for _, key := range []string{"hlb " + t.text, t.text + " hlb"} {
			if p := r.v.phrases[key]; p != nil && p.entries[0].role == BlendHLB {
				return true
			}
		}
	}
	return false
}

// withoutModifiers takes the words that change nothing off both ends.
func (r *reader) withoutModifiers(ts []token) []token {
	inner := reader{header: r.header, v: r.v, core: ts}
	for len(inner.core) > 0 && (removable(inner.core[0]) || inner.peel(anything)) {
		if len(inner.core) > 0 && removable(inner.core[0]) {
			inner.core = inner.core[1:]
		}
	}
	return inner.core
}

// grade reports whether the HLB at place i of the core is the grade of an
// ingredient whose amount the column holds: "sucrose ester HLB 15 (g)".
func (r *reader) grade(i int) bool {
	if i+1 >= len(r.core) || r.core[i+1].kind != number {
		return false
	}
	_, known := ingredient.Lookup(raw(r.header, r.core))
	d := r.m.Unit.Dimension()
	return known || len(r.core) > 2 && (d == units.Mass || d == units.Percent)
}

var lotWords = map[string]Role{"lot": IngredientLot, "lots": IngredientLot, "lote": IngredientLot, "lotto": IngredientLot, "los": IngredientLot,
	"supplier": Supplier, "fournisseur": Supplier, "proveedor": Supplier, "fornitore": Supplier, "lieferant": Supplier}

// lotOf reads the lots or the supplier of something: "butter lot", "lot of cream",
// which would else be read as an amount of it.
func (r *reader) lotOf() bool {
	n := len(r.core)
	if n < 2 {
		return false
	}
	rest, role := r.core[1:], lotWords[r.core[0].text]
	if role == None {
		rest, role = r.core[:n-1], lotWords[r.core[n-1].text]
	}
	if role == None {
		return false
	}
	r.m.Role, r.m.sure = role, true
	if rest = r.withoutModifiers(rest); !r.thing(rest) {
		r.leave(rest)
	}
	return true
}

// labelled reads an emulsifier that goes by a label: "emulsifier A", "em 1". With
// a unit of an amount any words beside will do.
func (r *reader) labelled() bool {
	at := -1
	for i := range r.core {
		if p := r.v.exact(r.core[i : i+1]); p != nil && p.entries[0].role == EmulsifierAmount {
			at = i
		}
	}
	if at < 0 || len(r.core) < 2 {
		return false
	}
	for i, t := range r.core {
		if i != at && !r.isAmount() && t.kind == word && len(t.text) > 2 {
			return false
		}
	}
	r.m.Role, r.m.Ingredient, r.m.Unknown, r.m.sure = IngredientAmount, raw(r.header, r.core), true, true
	return true
}

// misspelling reads a core that is a header text or an ingredient with slips.
func (r *reader) misspelling() bool {
	if p := r.v.misspelt(joined(r.core)); p != nil {
		r.could, r.m.Fuzzy = p.entries, true
		return true
	}
	if known := misspeltIngredient(joined(r.core)); known != "" {
		r.m.Role, r.m.Ingredient, r.m.Fuzzy = IngredientAmount, known, true
		return true
	}
	return false
}

// leave notes words that nothing accounts for.
func (r *reader) leave(ts []token) {
	for _, t := range ts {
		if t.kind != sign || !removable(t) {
			r.m.left = append(r.m.left, raw(r.header, []token{t}))
		}
	}
}

// bracketsLeft accounts for bracketed words beside a name.
func (r *reader) bracketsLeft() {
	for _, g := range r.extra {
		name := raw(r.header, g)
		named := r.m.Role == IngredientAmount && len(r.m.could) == 0
		switch {
		case named && sameIngredient(r.m.Ingredient, name):
		case r.whichEmulsifier(name):
		case r.m.Role == Day && len(g) == 1 && isYear(g[0]):
		case r.m.Role == Chargers && isMass(g), r.m.Role == IngredientAmount && (isHLB(g) || len(r.m.could) > 0 && aloneHLB(g)): // their size; of "low-HLB emulsifier (3.6)"
		case r.m.Role == EmulsifierAmount && r.ofHLB(g):
		case attribute(r.m.Role) && r.thing(r.withoutModifiers(g)):
		case named && freeOfFat.MatchString(name):
			r.m.Ingredient, r.m.Unknown = r.m.Ingredient+" "+name, true
		case named && r.isAmount():
			if left, mods, _, _ := r.account(g, nil); len(left) == 0 {
				r.mods = append(r.mods, mods...)
			} else {
				r.m.Ingredient, r.m.Unknown = r.m.Ingredient+" "+name, true
			}
		case r.m.Role == None && len(r.m.left) == 0:
			r.m.Words = strings.TrimSpace(r.m.Words + " " + name)
		default:
			r.bracket(g)
		}
	}
}

// freeOfFat is a bracket that says of a stock that it has no fat.
var freeOfFat = pattern.Of(`(?i)^(?:fat[ -]?free|non[ -]?fat|(?:no|without|free of) fat|defatted|skimmed|fettfrei|entfettet|ohne fett|sans (?:gras|matière grasse)|dégraissée?|sin grasa|desgrasad[oa]|senza grassi|sgrassat[oa]|vetvrij|ontvet|zonder vet|0 ?% ?(?:fat|fett|mg|vet|gras|grasa|grassi))$`)

// blended are words of a bracket that say the emulsifiers were mixed beforehand to an HLB.
var blended = strings.Fields(`ready made mixed blended pre premixed premix blend mix mixture the of our house own at to with value = : , fertig mischung gemischt fertige vorgemischt eigene auf mit wert
	melange pret prete premelange maison de a valeur mezcla lista premezcla de miscela pronta premiscela di mengsel kant klaar voorgemengd van op`)

// ofHLB takes the bracket of "emulsifier (HLB 8, ready mixed)": whatever was weighed there, it is of
// that HLB.
func (r *reader) ofHLB(g []token) bool {
	hlb, value := false, ""
	for _, t := range g {
		switch {
		case hlbWords[t.text] && !hlb:
			hlb = true
		case t.kind == number && value == "" && 0 < t.number && t.number <= ingredient.MostHLB:
			value = r.header[t.from:t.to]
		case !slices.Contains(blended, t.text) && !removable(t):
			return false
		}
	}
	if !hlb || value == "" {
		return false
	}
	name := raw(r.header, r.core) + " HLB " + value
	if _, known := ingredient.Lookup(name); !known {
		name = "emulsifier HLB " + value
	}
	r.m.Role, r.m.Ingredient, r.m.could = IngredientAmount, name, nil
	r.mods = slices.DeleteFunc(r.mods, func(b modifier) bool { return slices.Contains(blended, joined(b.tokens)) })
	return true
}

// isHLB reports whether tokens are an HLB: "HLB 3.8".
func isHLB(ts []token) bool { return len(ts) == 2 && ts[0].text == "hlb" && ts[1].kind == number }

// aloneHLB reports a number that can be an HLB, in the brackets of an emulsifier known only
// as lipophilic or hydrophilic.
func aloneHLB(ts []token) bool {
	return len(ts) == 1 && ts[0].kind == number && 0 < ts[0].number && ts[0].number <= ingredient.MostHLB
}

// isYear reports the year of "date (2025)".
func isYear(t token) bool { return t.kind == number && 1990 <= t.number && t.number < 2100 }

// isMass reports whether tokens are some grams: "8 g".
func isMass(ts []token) bool { return len(ts) == 2 && ts[0].kind == number && ts[1].text == "g" }

// bracket accounts for the words of one bracket beside a header text.
func (r *reader) bracket(g []token) {
	left, mods, could, measured := r.account(g, r.m.could)
	if len(left) > 0 {
		r.leave(left)
		return
	}
	r.mods = append(r.mods, mods...)
	for _, u := range measured {
		r.setUnit(u)
	}
	if len(could) > 0 {
		r.m.could = could
		r.m = r.m.as(could[0])
	}
}

// sameIngredient reports whether two names are of one ingredient: "butter (beurre)".
func sameIngredient(a, b string) bool {
	x, known := ingredient.Lookup(a)
	y, too := ingredient.Lookup(b)
	return known && too && x.Name == y.Name
}

// emulsifiersJoined parts the names of several emulsifiers.
var emulsifiersJoined = pattern.Of(`\s*[+&/,;]\s*|\s+(?:and|und|et|y|e|en)\s+`)

// whichEmulsifier takes the name of one emulsifier in the brackets of what any may be: "low-HLB
// emulsifier (GMS)". One of many grades tells less than its side, which stays its name.
func (r *reader) whichEmulsifier(name string) bool {
	general := kindOf(r.m) == "emulsifier"
	if i, _ := ingredient.Lookup(r.m.Ingredient); !general && (r.m.Role != IngredientAmount || i.Name != "emulsifier") {
		return false
	}
	names := map[string]bool{}
	for _, part := range emulsifiersJoined.Split(name, -1) {
		names[oneEmulsifier(part).Name] = true
	}
	if len(names) > 1 && !names[""] {
		return general // "emulsifiers (GMS + PS80)": all of them
	}
	i := oneEmulsifier(name)
	if i.Name == "" {
		return false
	}
	if general || i.HLB != nil {
		r.m = r.m.take(IngredientAmount)
		r.m.Ingredient = name
	}
	return true
}

// oneEmulsifier is the emulsifier of a name, nothing where it names none or any.
func oneEmulsifier(name string) ingredient.Ingredient {
	if i, ok := ingredient.Lookup(name); ok && i.WeighedAsEmulsifier() && i.Name != "emulsifier" {
		return i
	}
	return ingredient.Ingredient{}
}

// unknownName takes words that no ingredient's amount goes by as part of its
// name, where a unit says that it is an amount: "foam butter (g)".
func (r *reader) unknownName() {
	if r.m.Role != IngredientAmount || len(r.m.could) > 0 || !r.isAmount() {
		return
	}
	name, kept := r.core[:len(r.core):len(r.core)], r.mods[:0:0]
	for _, b := range r.mods {
		if b.sense.fits(r.m) || b.sense&(rate|byVolume) != 0 {
			kept = append(kept, b)
		} else {
			name = append(name, b.tokens...)
		}
	}
	if len(kept) < len(r.mods) {
		r.mods, r.m.Ingredient, r.m.Unknown = kept, raw(r.header, name), true
	}
}
