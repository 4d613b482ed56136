package settle

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/sheet"
	"foamfield/ingest/trial"
	"foamfield/ingest/units"
)

// holdsRecipes reports a column whose cells each name a whole mix, in a table that has no
// other column of one.
func (m *maker) holdsRecipes(head int) bool {
	if mix, _ := m.Found.Looks(); mix > 0 {
		return false
	}
	switch m.Found.Heads[head].Meaning.Role {
	case column.None, column.TrialID, column.Dish, column.BatchMass, column.Note, column.IngredientType, column.Unused:
	default:
		return false
	}
	filled, of := 0, 0
	for n := range min(len(m.Found.Rows), scheme.LookedAt) {
		c := m.Found.Typed(n, head)
		if c.Kind == sheet.Blank {
			continue
		}
		filled++
		known := 0
		parts := scheme.PartsOf(c.Text)
		for _, p := range parts {
			if _, ok := m.partOf(p.Name); ok && p.Unit != "" {
				known++
			}
		}
		if c.Kind == sheet.Text && len(parts) >= 2 && 2*known > len(parts) {
			of++
		}
	}
	return filled >= 2 && nearlyAll(of, filled)
}

// recipes makes one amount of such a column, whose cells say what it is of.
func (m *maker) recipes(f *scheme.Field) {
	f.Meaning = column.Meaning{Role: column.IngredientAmount, Ingredient: f.Header, Words: f.Words, Unit: units.Gram}
	f.Told, f.What = true, ingredient.Ingredient{Name: scheme.Recipes, Kind: ingredient.Other}
	m.say(trial.Note("column by its cells", m.Heading(f.Col), say.Quoted(f.Header)+" is read as the whole mix of each trial, by what stands in the column",
		"nothing to do; a column for each ingredient is surer"))
}

// partsOf notes what the cells of a column of recipes name.
func (m *maker) partsOf(f *scheme.Field) {
	f.Types = map[string]ingredient.Ingredient{}
	for n := range m.Rows() {
		for _, p := range scheme.PartsOf(m.Text(n, f.Col)) {
			name := say.Fold(p.Name)
			if _, seen := f.Types[name]; seen || len(f.Types) > mostTypes {
				continue
			}
			if i, ok := m.partOf(p.Name); ok {
				f.Types[name] = m.met(strings.TrimSpace(p.Name), i)
			}
		}
	}
	f.InGrams, m.NamesEmulsifiers = true, true
	m.EmulsifierColumn, m.FatColumn, m.WaterColumn = f.Col, f.Col, f.Col
}

// partOf is the ingredient of a name, as the kitchen's own sheet, what is known and the lines
// beside the table say.
func (m *maker) partOf(name string) (ingredient.Ingredient, bool) {
	if d, ok := m.kitchen.Ingredient(name); ok {
		return d.Ingredient, true
	}
	if i, ok := ingredient.Lookup(name); ok {
		return m.stated(name, name, i), true
	}
	i := m.emulsifier(name)
	return i, i.Name != ""
}
