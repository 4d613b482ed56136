package settle

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// A kitchen that mixes two emulsifiers may log them together, "A+B g", and how much of that
// is one of them: "% B in blend". The rest is the other.

// together takes the sum of several emulsifiers for what it is.
func (m *maker) together() {
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Role != column.IngredientAmount || !f.Unknown || f.Told {
			continue
		}
		if names := summed(f.Ingredient); len(names) > 0 && !slices.ContainsFunc(names, func(n string) bool { return m.emulsifier(n).Name == "" }) {
			f.Role, f.Unknown, f.Ingredient = column.EmulsifierAmount, false, ""
		}
	}
}

// summed are the names that words add up; none where they name one thing.
func summed(words string) (names []string) {
	for _, name := range strings.FieldsFunc(words, func(r rune) bool { return r == '+' || r == '&' }) {
		names = append(names, strings.TrimSpace(name))
	}
	if len(names) < 2 {
		return nil
	}
	return names
}

// share gives what a single share of the emulsifiers leaves to the other one. Where nobody
// knows which that is, it is some emulsifier.
func (m *maker) share() {
	of := -1
	for i := range m.Fields {
		if f := &m.Fields[i]; f.Role == column.IngredientAmount && f.Basis == column.OfEmulsifier {
			if of >= 0 {
				return // each has its own
			}
			of = i
		}
	}
	if of < 0 || m.Find(column.EmulsifierAmount) == nil {
		return
	}
	f := &m.Fields[of]
	f.Second, f.SecondWhat = scheme.TotalEmulsifier.Name, scheme.TotalEmulsifier
	if others := m.othersThan(f.Called()); len(others) == 1 {
		f.Second, f.SecondWhat = others[0], m.met(others[0], m.emulsifier(others[0]))
	} else if m.Find(column.BlendHLB) == nil {
		m.say(trial.Check("rest of the blend not named", m.Heading(f.Col), say.Quoted(f.Header)+" does not say which emulsifier the rest is, so the blend HLB cannot be worked out",
			fmt.Sprintf("name both in the header, such as \"ratio %s:GMS\" with 30:70 in the cells, or add a column \"blend HLB\"", f.Called())))
	}
}

// othersThan are the emulsifiers beside one that headers name: in the sum of both, or by an
// HLB of their own.
func (m *maker) othersThan(name string) (others []string) {
	add := func(other string) {
		if say.Fold(other) != say.Fold(name) && m.emulsifier(other).Name != "" && !slices.ContainsFunc(others, func(o string) bool { return say.Fold(o) == say.Fold(other) }) {
			others = append(others, other)
		}
	}
	if other := m.otherPhase(name); other != "" {
		add(other)
	}
	for i := range m.Fields {
		switch f := &m.Fields[i]; f.Role {
		case column.IngredientHLB:
			add(f.Ingredient)
		case column.EmulsifierAmount:
			for _, n := range summed(f.Words) {
				add(n)
			}
		}
	}
	return others
}

// emulsifier is what a name is of an emulsifier: in the kitchen's own sheet, in lines beside
// the table, among what is known, or because a column gives its HLB.
func (m *maker) emulsifier(name string) (none ingredient.Ingredient) {
	if d, ok := m.kitchen.Ingredient(name); ok {
		return d.Ingredient
	}
	if i, ok := m.phase(name, name, ""); ok {
		return i
	}
	if i, ok := ingredient.Lookup(name); ok {
		if i.WeighedAsEmulsifier() {
			return m.stated(name, name, i)
		}
		return none
	}
	if st, ok := m.kitchen.Stated(name); ok && st.Is != nil && st.Is.WeighedAsEmulsifier() && !st.Disputed {
		return m.stated(name, name, *st.Is)
	}
	if i, ok := m.byItsHLB(name); ok {
		i.Name = name
		return i
	}
	if m.hasHLBColumn(name) {
		return ingredient.Ingredient{Name: name, Kind: ingredient.Emulsifier, From: "a column gives its HLB"}
	}
	return none
}

// hasHLBColumn reports a column of the HLB of an ingredient.
func (m *maker) hasHLBColumn(name string) bool {
	return slices.ContainsFunc(m.Fields, func(f scheme.Field) bool {
		return f.Role == column.IngredientHLB && say.Fold(f.Ingredient) == say.Fold(name)
	})
}
