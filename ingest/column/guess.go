package column

import (
	"strings"

	"foamfield/ingest/ingredient"
	"foamfield/ingest/quantity"
)

// guess reads a core that is not in the table: an HLB of something, an
// ingredient, a misspelling, or known words beside others.
func (r *reader) guess() *phrase {
	if len(r.core) > 6 {
		return nil
	}
	for i, t := range r.core {
		if t.text == "hlb" || t.text == "bhl" || t.text == "ehl" {
			others := append(append([]token{}, r.core[:i]...), r.core[i+1:]...)
			if r.grade(i) {
				r.m.Role, r.m.Ingredient, r.m.sure = IngredientAmount, r.m.Words, true
				return nil
			}
			if len(others) > 0 {
				name := raw(r.header, others)
				if i > 0 && i < len(r.core)-1 {
					name = joined(others)
				}
				if low := strings.ToLower(name); low == "low" || low == "high" || low == "lo" || low == "hi" {
					name = map[bool]string{true: "lipophilic emulsifier", false: "hydrophilic emulsifier"}[low[0] == 'l']
				}
				r.m.Role, r.m.Ingredient, r.m.sure = IngredientHLB, trimQuiet(name), true
				if d := r.m.Unit.Dimension(); d == quantity.Mass || d == quantity.Percent {
					r.m.Role = IngredientAmount // nobody weighs an HLB
				}
				return nil
			}
		}
	}
	name := r.m.Words
	if len(r.extra) > 0 {
		name += " " + raw(r.header, r.extra)
	}
	inside, share := r.v.within(r.core)
	if inside == nil {
		if p, s := r.v.within(r.extra); s == 1 {
			inside, share = p, 0.5
		}
	}
	dim := r.m.Unit.Dimension()
	if _, known := ingredient.Lookup(name); known {
		if inside == nil || tellsFat(r.v, r.core) || IngredientAmount.Takes(dim) && dim != quantity.Any && !aboutFoam(inside.entries[0].role) {
			r.m.Role, r.m.Ingredient, r.m.sure = IngredientAmount, name, true
			return nil
		}
	}
	if p := r.v.misspelt(joined(r.core)); p != nil {
		r.m.Fuzzy = true
		return p
	}
	if known := misspeltIngredient(joined(r.core)); known != "" {
		r.m.Role, r.m.Ingredient, r.m.Fuzzy = IngredientAmount, known, true
		return nil
	}
	if inside != nil && share >= 0.4 {
		r.m.Fuzzy = true
		return inside
	}
	return nil
}

// grade reports whether the HLB at place i of the core is the grade of an
// ingredient whose amount the column holds: "sucrose ester HLB 15 (g)".
func (r *reader) grade(i int) bool {
	if i+1 >= len(r.core) || r.core[i+1].kind != number {
		return false
	}
	_, known := ingredient.Lookup(r.m.Words)
	d := r.m.Unit.Dimension()
	return known || len(r.core) > 2 && (d == quantity.Mass || d == quantity.Percent)
}

// aboutFoam reports whether a role is of the foam or its handling, so that an
// ingredient's name beside it ("water drained") does not make it an ingredient.
func aboutFoam(r Role) bool {
	return r >= Chargers && r <= Temperature || r >= Hold && r <= Mouthfeel || r == IngredientFat || r == Unused
}

func trimQuiet(name string) string {
	quiet := vocab().quiet
	fields := strings.Fields(name)
	for len(fields) > 1 && quiet[strings.ToLower(strings.Trim(fields[0], "'"))] {
		fields = fields[1:]
	}
	for len(fields) > 1 && quiet[strings.ToLower(fields[len(fields)-1])] {
		fields = fields[:len(fields)-1]
	}
	return strings.Join(fields, " ")
}
