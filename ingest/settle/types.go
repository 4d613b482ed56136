package settle

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
)

// "Oil g" may stand beside "oil type", whose cells name the oil of each trial.

// generic are amounts whose ingredient another column can name.
var generic = map[string]bool{"oil": true, "fat": true, "emulsifier": true, "emulsifiers together": true, "water part": true, "vegetable fat": true}

// types finds the columns that name the ingredient of each row's amount: "oil
// type" beside "oil g".
func (m *maker) types() {
	for i := range m.Fields {
		t := &m.Fields[i]
		if t.Role != column.IngredientType {
			continue
		}
		best, kind := -1, m.kindOf(t)
		for k := range m.Fields {
			f := &m.Fields[k]
			if f.IsAmount() && (generic[f.What.Name] || onlyByPhase(f)) && f.TypeCol == 0 && f.What.Kind == kind &&
				(best < 0 || abs(f.Col-t.Col) < abs(m.Fields[best].Col-t.Col)) {
				best = k
			}
		}
		if best >= 0 {
			f := &m.Fields[best]
			f.TypeCol, f.Types = t.Col, m.typesIn(t.Col, kind)
		}
	}
}

// typesIn is what the texts of a column of types name, as the kitchen's own sheets, what is
// known and the lines beside the table say.
func (m *maker) typesIn(col int, kind ingredient.Kind) map[string]ingredient.Ingredient {
	types := map[string]ingredient.Ingredient{}
	for n := range m.Rows() {
		text := m.Text(n, col)
		if _, seen := types[say.Fold(text)]; seen || text == "" || len(types) > mostTypes {
			continue
		}
		if d, ok := m.kitchen.Ingredient(text); ok {
			types[say.Fold(text)] = m.met(text, d.Ingredient)
		} else if i, ok := ingredient.Lookup(text); ok {
			types[say.Fold(text)] = m.met(text, m.stated(text, text, i))
		} else if st, ok := m.kitchen.Stated(text); ok && !st.Disputed {
			i := ingredient.Ingredient{Name: text, Kind: kind, From: "a line beside the table"}
			if st.Is != nil {
				i = *st.Is
			}
			types[say.Fold(text)] = m.met(text, m.stated(text, text, i))
		}
	}
	return types
}

// mostTypes bounds how many names of one column are remembered.
const mostTypes = 500

// kindOf is the kind of ingredient that a column of types is of, by its header, else by what its
// cells name; where neither says it, fat.
func (m *maker) kindOf(t *scheme.Field) ingredient.Kind {
	text := say.Fold(t.Words + " " + t.Ingredient)
	switch {
	case strings.Contains(text, "emulsif") || strings.Contains(text, "emulg") || strings.Contains(text, "surfact"):
		return ingredient.Emulsifier
	case strings.Contains(text, "water") || strings.Contains(text, "liquid"):
		return ingredient.Water
	}
	if what, known := ingredient.Lookup(t.Ingredient); known {
		return what.Kind
	}
	for _, kind := range [...]ingredient.Kind{ingredient.Water, ingredient.Emulsifier} {
		if m.mostly(t, func(text string) bool { return m.isOfKind(text, kind) }) {
			return kind
		}
	}
	return ingredient.Fat
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}
