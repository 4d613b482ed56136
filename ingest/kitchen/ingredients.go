package kitchen

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
	"foamfield/ingest/say"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// Declared is a row of an Ingredients sheet.
type Declared struct {
	ingredient.Ingredient
	Typed string // its name in the log, as typed
	At    trial.Place
	HLBAt trial.Place // where its row says an HLB, if it does
	FatAt trial.Place
}

// same reports whether two rows say the same of an ingredient.
func (d Declared) same(o Declared) bool {
	value := func(r *ingredient.Range) ingredient.Range {
		if r == nil {
			return ingredient.Range{Low: -1}
		}
		return *r
	}
	return d.Kind == o.Kind && value(d.HLB) == value(o.HLB) && value(d.FatPercent) == value(o.FatPercent)
}

// Ingredient finds an ingredient under any of its names in the log.
func (s *Sheets) Ingredient(names ...string) (Declared, bool) {
	for _, n := range names {
		if d, ok := s.Ingredients[say.Fold(n)]; ok && n != "" {
			return d, true
		}
	}
	return Declared{}, false
}

// Amount finds an ingredient whose amounts are logged under a name, or the one whose name says more of it.
func (s *Sheets) Amount(header, name, words string) (Declared, bool) {
	if d, ok := s.Ingredient(header, name, words); ok {
		return d, true
	}
	return s.fullerNamed(name)
}

// fullerNamed is the one row whose name says more of the very ingredient: "whole milk" of the milk of the log,
// "butter, unsalted (82 % fat)" of its butter.
func (s *Sheets) fullerNamed(name string) (found Declared, ok bool) {
	what, known := ingredient.Lookup(name)
	for folded, d := range s.Ingredients {
		is, named := ingredient.Lookup(beforeAside(d.Typed))
		same := known && named && is.Name == what.Name && !strings.ContainsAny(name, "0123456789") ||
			!known && len(name) >= leastName && hasWord(folded, say.Fold(name))
		if !same && !(named && is.Kind == what.Kind && (is.Name == what.Name || general(what)) && hasWord(folded, say.Fold(name))) {
			continue
		}
		if ok && !found.same(d) {
			return Declared{}, false // of two creams it may be either
		}
		if !ok || d.At.Sheet < found.At.Sheet || d.At.Sheet == found.At.Sheet && d.At.Row < found.At.Row {
			found, ok = d, true
		}
	}
	return found, ok
}

// beforeAside is a name without what is said of it in brackets or behind a comma.
func beforeAside(name string) string {
	head, _, _ := strings.Cut(aside.ReplaceAllString(name, ""), ",")
	return head
}

// leastName is the letters of a name of nothing known that tell it apart.
const leastName = 5

// general reports a name of many ingredients of a kind: oil, polysorbate.
func general(i ingredient.Ingredient) bool {
	return i.Kind == ingredient.Emulsifier && i.HLB == nil || i.Name == "oil" || i.Name == "fat"
}

// hasWord reports whether a name stands in a text as whole words.
func hasWord(text, name string) bool {
	for range occurrences(text, name) {
		return true
	}
	return false
}

// kindWords are the words of the column "What it is", beside any ingredient's
// name.
var kindWords = map[string]ingredient.Kind{
	"other": ingredient.Other, "sugar": ingredient.Other, "salt": ingredient.Other, "flavour": ingredient.Other,
	"fat": ingredient.Fat, "oil": ingredient.Fat, "butter": ingredient.Fat, "cream": ingredient.Fat, "fat part": ingredient.Fat,
	"water": ingredient.Water, "water part": ingredient.Water, "liquid": ingredient.Water, "stock": ingredient.Water,
	"emulsifier": ingredient.Emulsifier, "lipophilic emulsifier": ingredient.Emulsifier, "hydrophilic emulsifier": ingredient.Emulsifier,
	"ionic": ingredient.Ionic, "ionic emulsifier": ingredient.Ionic, "emulsifier without hlb": ingredient.Ionic,
	"protein": ingredient.Ionic, "thickener": ingredient.Thickener, "stabiliser": ingredient.Thickener, "gum": ingredient.Thickener,
}

// pure is what a kind is taken as where its row says no more: a fat of no name is
// all fat, water has none.
var pure = map[ingredient.Kind]float64{ingredient.Fat: 100, ingredient.Water: 0, ingredient.Thickener: 0, ingredient.Other: 0}

const howToSayKind = "type one of: fat, water, emulsifier, emulsifier without HLB, thickener, other, or the ingredient's common name"

func (k *taker) ingredients(t table) {
	if k.Ingredients == nil {
		k.Ingredients = map[string]Declared{}
	}
	for row := range t.rows {
		name := t.text(row, 0)
		if name == "" {
			continue
		}
		d := Declared{Typed: name, At: t.at(row, 0)}
		var ok bool
		if d.Ingredient, ok = k.whatItIs(t, row); !ok {
			continue
		}
		if d.Name == "" {
			d.Name = name
		}
		if k.values(t, row, &d) {
			d.From = d.At.String()
		}
		if first, again := k.Ingredients[say.Fold(name)]; again {
			if first.At.Sheet == d.At.Sheet || !first.same(d) {
				k.say(trial.Check("ingredient twice", d.At, say.Quoted(name)+" stands at "+first.At.String()+" too", "delete one of the rows; the first is used"))
			}
			continue
		}
		k.Ingredients[say.Fold(name)] = d
	}
}

// whatItIs is the ingredient or the bare kind that a row names.
func (k *taker) whatItIs(t table, row int) (ingredient.Ingredient, bool) {
	name, what := t.text(row, 0), t.text(row, 1)
	kind, isKind := kindWords[say.Fold(what)]
	known, found := ingredient.Lookup(name)
	if !found && t.own {
		known, found = ingredient.Lookup(beforeAside(name))
	}
	if isOf, named := ingredient.Lookup(what); named && !(found && isKind && known.Kind == kind) {
		known, found = isOf, true // what an oil is a fat is known better by its own name
	}
	switch {
	case isKind && found && known.Kind == kind:
		return known, true
	case isKind:
		i := ingredient.Ingredient{Kind: kind, From: t.at(row, 1).String()}
		if percent, ok := pure[kind]; ok && say.Fold(what) != "cream" && say.Fold(what) != "butter" {
			i.FatPercent = &ingredient.Range{Low: percent, Value: percent, High: percent}
		}
		return i, true
	case !found && t.own && !slices.Contains(nothing, say.Fold(t.text(row, 2))): // only an emulsifier has an HLB, whatever its type is called
		return ingredient.Ingredient{Kind: ingredient.Emulsifier, From: t.at(row, 2).String()}, true
	case what != "" && !found:
		k.say(trial.Fix("ingredient not known", t.at(row, 1), say.Quoted(what)+" is no kind of ingredient", howToSayKind))
	case !found && t.alone(row) && (t.own || isSentence(name)): // a remark below the list
	case !found:
		k.say(trial.Fix("ingredient not known", t.at(row, 0), say.Quoted(name)+" has nothing in the column What it is", howToSayKind))
	}
	return known, found
}

// isSentence reports words that are no name of an ingredient: five and more, behind a colon or up to a full stop.
func isSentence(text string) bool {
	return len(strings.Fields(text)) >= 5 && (strings.Contains(text, ": ") || strings.HasSuffix(text, ".")) || len(strings.Fields(text)) >= 9
}

// nothing is what stands where a value has no sense, such as the HLB of an oil.
var nothing = []string{"", "-", "–", "—", "n/a", "na", "none"}

// values takes the numbers and texts of a row, and reports whether there were any.
func (k *taker) values(t table, row int, d *Declared) (own bool) {
	for _, v := range []struct {
		column    int
		low, high float64
		name      string
		set       func(ingredient.Range)
	}{
		{2, 0, 40, "HLB", func(r ingredient.Range) { d.HLB, d.HLBAt = &r, t.at(row, 2) }},
		{3, 0, 100, "fat percent", func(r ingredient.Range) { d.FatPercent, d.FatAt = &r, t.at(row, 3) }},
		{4, 0, 100, "use limit", func(r ingredient.Range) {
			d.Limits = []ingredient.Limit{{Percent: r.High, Where: "the kitchen's own limit, " + t.at(row, 4).String(), Own: true}}
		}},
	} {
		text := t.text(row, v.column)
		if slices.Contains(nothing, say.Fold(text)) {
			continue
		}
		r, ok := rangeOf(text, v.low, v.high, v.column != 2)
		if v.column == 3 && ok && t.ofOne() {
			r = ingredient.Range{Low: 100 * r.Low, Value: 100 * r.Value, High: 100 * r.High}
		}
		if !ok {
			k.say(trial.Fix("ingredient value not read", t.at(row, v.column), say.Quoted(text)+" is no "+v.name,
				fmt.Sprintf("type a number between %s and %s", say.Number(v.low), say.Number(v.high))))
			continue
		}
		v.set(r)
		own = true
	}
	if text := t.text(row, 5); text != "" {
		d.Allergens = []string{}
		for a := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ',' || r == ';' || r == '/' }) {
			if a = strings.TrimSpace(a); a != "" && !slices.Contains([]string{"none", "no", "-"}, say.Fold(a)) {
				d.Allergens = append(d.Allergens, a)
			}
		}
		own = true
	}
	if text := t.text(row, 6); text != "" {
		d.Note = text
	}
	if text := t.text(row, 7); text != "" {
		if price, ok := priceOf(text); ok {
			d.Price = &price
		} else {
			k.say(trial.Fix("price not read", t.at(row, 7), say.Quoted(text)+" is no price by weight", howToPrice))
		}
	}
	return own
}

// ofOne reports a column of fat that is in parts of 1: its header says no percent, and none of it is more.
func (t table) ofOne() bool {
	if !t.own || strings.Contains(t.text(t.row, 3), "%") {
		return false
	}
	part := false
	for row := range t.rows {
		switch v := value(t.text(row, 3)); {
		case v == nil:
		case *v > 1:
			return false
		default:
			part = part || *v > 0
		}
	}
	return part
}

// rangeOf reads a number or a range within bounds. A percent of 0.4 is 0.4 %.
func rangeOf(text string, low, high float64, percent bool) (ingredient.Range, bool) {
	want, unit := units.Plain, units.NoUnit
	if percent {
		want, unit = units.Percent, units.PercentUnit
	}
	m, err := quantity.Parse(text, want, unit)
	if err != nil || m.Word != quantity.NoWord || !(low <= m.Low && m.High <= high) {
		return ingredient.Range{}, false
	}
	return ingredient.Range{Low: m.Low, Value: (m.Low + m.High) / 2, High: m.High}, true
}
