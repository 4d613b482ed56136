package ingest

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/trial"
)

// ingredient finds what an amount column's ingredient is: in the kitchen's own
// sheet, else in the shipped table. One that is in neither is counted in the
// mix and said so.
func (r *reader) ingredient(t *table, f *field) ingredient.Ingredient {
	name := f.name()
	if d, ok := r.kitchen.named(f.header, name, f.Words); ok {
		return r.met(name, d.Ingredient)
	}
	for _, text := range []string{name, f.Words, f.header} {
		if i, ok := ingredient.Lookup(text); ok {
			r.askNameHLB(t, f, i, text)
			return r.met(name, i)
		}
	}
	i := ingredient.Ingredient{Name: name, Kind: ingredient.Other, From: "not known"}
	if i.Name == "" {
		i.Name = f.header
	}
	r.problem("unknown ingredient", trial.PleaseLook, t.heading(f.col),
		quoted(i.Name)+" is not an ingredient known here: it is counted in the mix, in no part of it",
		fmt.Sprintf("add a sheet Ingredients with the header \"Name in the log | What it is\" and the row \"%s | ...\"; if it is a fat or an emulsifier, the fat percent, emulsifier percent and blend HLB change", i.Name))
	return r.met(name, i)
}

var numberInName = regexp.MustCompile(`\d+(?:[.,]\d+)?`)

// askNameHLB asks about a number in the name of an emulsifier that is most likely
// its HLB and cannot be: "sucrose ester 51".
func (r *reader) askNameHLB(t *table, f *field, i ingredient.Ingredient, name string) {
	head, _, _ := strings.Cut(name, "%")
	text := numberInName.FindString(head)
	v, ok := parsedNumber(text)
	if !ok || i.Kind != ingredient.Emulsifier || i.HLB != nil || v <= mostHLB {
		return
	}
	example := i.Name + " 15"
	if back := reversed(text); back != text {
		if w, ok := parsedNumber(back); ok && w > 0 && w <= mostHLB {
			example = i.Name + " " + back
		}
	}
	r.onceOf(f.name(), "no HLB", trial.MustFix, t.heading(f.col), fmt.Sprintf("the %s in %s cannot be an HLB: it goes from 0 to 20", text, quoted(f.header)),
		fmt.Sprintf("type the HLB on your supplier's sheet in the header, such as “%s g”; until then the blend HLB cannot be worked out", example))
}

func reversed(text string) string {
	digits := []byte(text)
	slices.Reverse(digits)
	return string(digits)
}

// named finds an ingredient under any of its names in the log.
func (k *kitchen) named(names ...string) (declared, bool) {
	for _, n := range names {
		if d, ok := k.ingredients[fold(n)]; ok {
			return d, true
		}
	}
	return declared{}, false
}

// met notes an ingredient in the log's list, once, by the name the log has for
// it, as the Amounts of trials do.
func (r *reader) met(name string, i ingredient.Ingredient) ingredient.Ingredient {
	if i.Name == "" {
		i.Name = name
	}
	listed := i
	if name != "" && name != i.Name {
		listed.Name, listed.Known = name, i.Name
	}
	if !slices.ContainsFunc(r.log.Ingredients, func(o ingredient.Ingredient) bool { return o.Name == listed.Name && o.From == listed.From }) {
		r.log.Ingredients = append(r.log.Ingredients, listed)
	}
	return i
}

// own is a value a row gives for an ingredient of its own: the fat percent of
// today's cream, the HLB of this bag.
type own struct {
	name  string // of the ingredient in the table
	role  column.Role
	value float64
}

// applyOwn gives the doses the row's own values.
func (b *row) applyOwn(r *recipe) {
	for _, o := range r.own {
		for i := range r.doses {
			d := &r.doses[i]
			if d.what.Name != o.name {
				continue
			}
			exact := b.book.exactRange(o.value)
			if o.role == column.IngredientHLB {
				d.what.HLB = exact
			} else {
				d.what.FatPercent = exact
			}
			d.what.From = "the log's own column"
		}
	}
}

// ownValue reads a cell of a column such as "cream fat %" or "HLB GMS".
func (b *row) ownValue(t *trial.Trial, r *recipe, f *field) {
	high := 100.0
	if f.Role == column.IngredientHLB {
		high = 40
	}
	k, _ := b.single(t, f, 0, high, "a "+f.Role.String())
	if !k.ok() {
		return
	}
	if i, ok := ingredient.Lookup(f.Ingredient); ok {
		r.own = append(r.own, own{i.Name, f.Role, k.value})
	}
}
