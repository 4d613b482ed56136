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
	names string // separated by ";"; "=" before one: only as the whole name
	// fatByName and hlbByName bound the numbers in a name that are read as the
	// fat percent ("cream 35") or the HLB ("sucrose ester 15"); zero = none.
	fatByName, hlbByName Range
}

// alias is one name of an entry, as words in any order.
type alias struct {
	words []string
	whole bool
	entry *entry
}

// aliases indexes the table by the names' first words.
var aliases = sync.OnceValue(func() map[string][]alias {
	index := map[string][]alias{}
	for i := range table {
		for name := range strings.SplitSeq(table[i].names, ";") {
			name = strings.TrimSpace(name)
			a := alias{whole: strings.HasPrefix(name, "="), entry: &table[i]}
			a.words = words(tokens(strings.TrimPrefix(name, "=")), true)
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
// punctuation and word order, in English, French, Spanish, Italian or German.
// Only whole words count; of several names that fit, the one with most words
// wins, then emulsifiers before thickeners, fats, waters and the rest ("MDG %
// (oil)" is MDG). A number in the name gives the fat percent of a cream, milk or
// butter, and the HLB of an emulsifier sold by grade or written "HLB 8".
func Lookup(name string) (Ingredient, bool) {
	head, _, _ := strings.Cut(name, "%")
	for _, part := range []string{name, head} {
		// What stands behind a % is the basis of a dose, unless all the name
		// stands there ("35 % cream").
		if part == name && len(head) < len(name) && match(tokens(head)) != nil {
			continue
		}
		if e := match(tokens(part)); e != nil {
			return e.named(tokens(name)), true
		}
	}
	return Ingredient{}, false
}

// match finds the entry whose name fits best, nil if none does.
func match(ts []token) *entry {
	given, bare := words(ts, true), words(ts, false)
	var best alias
	consider := func(first string) {
		for _, a := range aliases()[first] {
			if a.fits(given, bare) && a.better(best) {
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

// fits reports whether all the alias's words are among those given, or, for a
// whole name, are all of them.
func (a alias) fits(given, bare []string) bool {
	if a.whole && len(bare) != len(a.words) && len(given) != len(a.words) {
		return false
	}
	return !slices.ContainsFunc(a.words, func(w string) bool {
		return !slices.Contains(given, w) && !slices.Contains(given, w+"s")
	})
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
		case e.fatByName.holds(v):
			i.FatPercent, i.From = exact, fmt.Sprintf("the name says %g %% fat", v)
			return i
		}
	}
	return i
}

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
