package ingredient

import (
	"fmt"
	"slices"
	"strings"
	"sync"
)

// entry is a row of the shipped table: an ingredient, the names it goes by and
// what a number in its name means.
type entry struct {
	Ingredient
	names string // separated by ";"
	// fatByName and hlbByName bound the numbers in a name that are read as the
	// fat percent ("cream 35") or the HLB ("sucrose ester 15"); zero = none.
	fatByName, hlbByName Range
}

// alias is one name of an entry, as words in any order.
type alias struct {
	words []string
	entry *entry
}

// aliases indexes the table by the names' first words.
var aliases = sync.OnceValue(func() map[string][]alias {
	index := map[string][]alias{}
	for i := range table {
		for name := range strings.SplitSeq(table[i].Name+";"+table[i].names, ";") {
			a := alias{words: words(tokens(name), true), entry: &table[i]}
			if len(a.words) == 0 {
				panic("ingredient: empty name in the entry for " + table[i].Name)
			}
			index[a.words[0]] = append(index[a.words[0]], a)
		}
	}
	return index
})

// All is the shipped table, for a kitchen to read and correct.
func All() []Ingredient {
	out := make([]Ingredient, len(table))
	for i, e := range table {
		out[i] = e.copied()
	}
	return out
}

// Lookup finds the ingredient a name speaks of, whatever its case, accents,
// punctuation and word order, in English, French, Spanish, Italian, German or Dutch. Every
// word and number of the name is accounted for: it belongs to the ingredient's own
// name, or does not change what the ingredient is; "apple butter" is no butter. Of
// several names that fit, the one with most words wins, then emulsifiers before
// thickeners, fats, waters and the rest. A number in the name gives the fat percent of a
// cream, milk or butter, and the HLB of an emulsifier sold by grade or written "HLB 8".
func Lookup(name string) (Ingredient, bool) {
	if part, own, named := strings.Cut(name, ":"); named && phases[strings.Join(words(tokens(part), false), " ")] {
		name = own // "oil phase: sunflower oil"
	}
	if both, ok := together(name); ok {
		return both, true
	}
	head, tail, percent := strings.Cut(name, "%")
	parts := []string{name}
	// What stands behind a % is the basis of a dose ("MDG % (oil)"), unless all the
	// name stands there ("35 % cream").
	switch {
	case percent && strings.TrimSpace(head) == "":
		parts = []string{name, withoutBasis(tail)}
	case percent && basisOnly(tail):
		parts = []string{head, name}
	}
	for _, part := range parts {
		if e := match(tokens(part)); e != nil {
			return e.named(tokens(name)), true
		}
	}
	if i, ok := inBrackets(name); ok {
		return i, true
	}
	if i, ok := abbreviated(name); ok {
		return i, true
	}
	return compound(name)
}

// compound reads a German name that is one word with what it is made of: Gemüsefond.
func compound(name string) (Ingredient, bool) {
	w := fold(strings.TrimSpace(name))
	for _, last := range []string{"saft", "fond", "bruhe", "essig", "sirup", "puree", "wasser", "tee", "most"} {
		of, ok := strings.CutSuffix(w, last)
		if ok && (compounded[of] || compounded[strings.TrimSuffix(of, "n")] || compounded[strings.TrimSuffix(of, "en")]) {
			e := match(tokens(last))
			return e.copied(), true
		}
	}
	return Ingredient{}, false
}

// compounded are German words for what has no fat in its juice, stock or purée.
var compounded = setOf(`ananas apfel birne kirsch holunder johannisbeer himbeer brombeer heidelbeer orange zitrone limette mango maracuja traube pflaume quitte rhabarber
	karotte mohre sellerie gurke kurbis spargel erbse pilz steinpilz gemuse krauter ingwer tomate paprika zwiebel knoblauch lauch fenchel rotebete randen kohl spinat
	rinder kalbs geflugel huhner fisch wild hummer krusten krustentier ente lamm schinken algen minz pfefferminz salbei fichtennadel heu malz reis zucker rosen`)

// phases are the parts of a mix that an ingredient's name may stand behind.
var phases = map[string]bool{}

func init() {
	for _, p := range strings.Split("oil; fat; water; liquid; aqueous; lipid; huile; eau; Öl; Fett; Wasser; oil phase; fat phase; water phase; aqueous phase; lipid phase; phase grasse; phase aqueuse; Ölphase; Fettphase; Wasserphase", "; ") {
		phases[strings.Join(words(tokens(p), false), " ")] = true
	}
}

// together finds two ingredients without fat that were weighed as one: "water +
// sugar syrup".
func together(name string) (Ingredient, bool) {
	a, b, two := strings.Cut(name, "+")
	if !two || strings.Contains(b, "+") {
		return Ingredient{}, false
	}
	x, ok := Lookup(a)
	y, also := Lookup(b)
	if !ok || !also || x.Kind != Water || !x.free() || !y.free() || y.Kind != Water && y.Kind != Other {
		return Ingredient{}, false
	}
	return x, true
}

// free reports an ingredient that surely has no fat.
func (i Ingredient) free() bool { return i.FatPercent != nil && i.FatPercent.High == 0 }

// inBrackets finds an ingredient that bears another of its names, or of its kind's,
// in brackets: "GMS (E471)".
func inBrackets(name string) (Ingredient, bool) {
	outer, rest, found := strings.Cut(name, "(")
	inner, after, closed := strings.Cut(rest, ")")
	if !found || !closed || strings.TrimSpace(after) != "" || strings.TrimSpace(outer) == "" {
		return Ingredient{}, false
	}
	a, b := match(tokens(outer)), match(tokens(inner))
	if a == nil || b == nil || a.Kind != b.Kind {
		return Ingredient{}, false
	}
	return a.named(tokens(outer)), true
}

// match finds the entry whose name fits best, nil if none does.
func match(ts []token) *entry {
	given := words(ts, true)
	var best alias
	consider := func(first string) {
		for _, a := range aliases()[first] {
			if a.fits(ts) && a.better(best) {
				best = a
			}
		}
	}
	for _, w := range given {
		consider(w)
		if singular, cut := strings.CutSuffix(w, "s"); cut {
			consider(singular)
		}
	}
	return best.entry
}

// fits reports whether all the alias's words are among those given, and nothing
// else that changes what it is.
func (a alias) fits(ts []token) bool {
	used := make([]bool, len(ts))
	for _, w := range a.words {
		i := 0
		for i < len(ts) && (used[i] || ts[i].text != w && ts[i].text != w+"s") {
			i++
		}
		if i == len(ts) {
			return false
		}
		used[i] = true
	}
	for i, t := range ts {
		if !used[i] && !a.entry.bears(ts, i, t) {
			return false
		}
	}
	return true
}

// better says whether a is the more specific of two aliases.
func (a alias) better(b alias) bool {
	if b.entry == nil || len(a.words) != len(b.words) {
		return b.entry == nil || len(a.words) > len(b.words)
	}
	if ra, rb := rank[a.entry.Kind], rank[b.entry.Kind]; ra != rb {
		return ra < rb
	}
	return len(strings.Join(a.words, "")) > len(strings.Join(b.words, ""))
}

var rank = [...]int{Emulsifier: 0, Ionic: 1, Thickener: 2, Fat: 3, Water: 4, Other: 5}

// named is the entry's ingredient with what numbers in the name say of it.
func (e *entry) named(ts []token) Ingredient {
	i := e.copied()
	for n, t := range ts {
		if !t.numeric || t.amount {
			continue
		}
		v := t.number
		exact := &Range{v, v, v}
		after := ""
		if n > 0 {
			after = ts[n-1].text
		}
		switch {
		case e.Kind == Emulsifier && after == "hlb" && 0 < v && v <= 20,
			e.hlbByName.holds(v) && !t.percent && !strings.HasPrefix(after, "polygl"):
			i.HLB, i.From = exact, fmt.Sprintf("the name says HLB %g", v)
			return i
		case e.fatByName.holds(v), e.asksFat() && t.percent && n+1 < len(ts) && fatWords[ts[n+1].text]:
			i.FatPercent, i.From = exact, fmt.Sprintf("the name says %g %% fat", v)
			return i
		}
	}
	return i
}

// asksFat reports a fat of which only its label says how fat it is.
func (e *entry) asksFat() bool { return e.Kind == Fat && e.FatPercent == nil }

func (r Range) holds(v float64) bool { return r.High > 0 && r.Low <= v && v <= r.High }

// copied is the ingredient with nothing shared with the table.
func (e *entry) copied() Ingredient {
	i := e.Ingredient
	if i.HLB != nil {
		r := *i.HLB
		i.HLB = &r
	}
	if i.FatPercent != nil {
		r := *i.FatPercent
		i.FatPercent = &r
	}
	i.Allergens = slices.Clone(i.Allergens)
	i.Limits = slices.Clone(i.Limits)
	return i
}
