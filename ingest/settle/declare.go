package settle

import (
	"cmp"
	"slices"

	"foamfield/ingest/column"
	"foamfield/ingest/kitchen"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// What the kitchen's own sheets say of a column wins over what its header looks like.

// declare applies the kitchen's Columns sheet to a header; it wins over Ingredients.
func (m *maker) declare(f *scheme.Field) bool {
	d, ok := m.kitchen.Column(f.Header, f.Words)
	if ok {
		declareColumn(f, d)
	}
	return ok
}

// nameIngredient applies the kitchen's Ingredients sheet to a header.
func (m *maker) nameIngredient(f *scheme.Field) {
	if i, named := m.kitchen.Ingredient(f.Header, f.Ingredient, f.Words); named && !f.IsAmount() {
		// Naming it makes it an amount, whatever its header looks like.
		f.Meaning = column.Meaning{Role: column.IngredientAmount, Ingredient: f.Words, Words: f.Words, Unit: f.Unit, Basis: f.Basis}
		f.Told, f.What = true, i.Ingredient
		if f.Ingredient == "" {
			f.Ingredient = f.Header
		}
	}
}

// declareColumn applies a row of the Columns sheet: its own unit and basis win over
// those of the meaning it gives, and what both leave open stays as the header has it.
func declareColumn(f *scheme.Field, d kitchen.Meaning) {
	header := f.Meaning
	switch {
	case d.Ignore:
		f.Meaning = column.Meaning{Role: column.Unused, Words: header.Words}
	case d.Variable:
		declareVariable(f, d.Result)
	case d.Words != "":
		if f.Meaning = column.Read(d.Words); f.Role == column.None {
			f.Role, f.Ingredient, f.Left = column.IngredientAmount, d.Words, nil
		}
	}
	f.Doubt, f.Fuzzy = "", false
	f.Unit = cmp.Or(d.Unit, f.Unit, header.Unit)
	f.Basis = cmp.Or(d.Basis, f.Basis, header.Basis)
	if d.Basis != column.NoBasis {
		f.BasisName = ""
	}
	f.AtMinute = cmp.Or(f.AtMinute, header.AtMinute)
	f.GramsPerML, f.Told = d.GramsPerML, true
	f.DayFirst, f.MonthFirst = d.DayFirst, d.MonthFirst
	declareMarks(f, d.Marks)
}

// declareVariable makes a column a number to carry along under its header's name.
func declareVariable(f *scheme.Field, result bool) {
	words := cmp.Or(f.Words, f.Header)
	name := trial.VariableName(words)
	if slices.Contains(ourNames, name) {
		name += "_declared"
	}
	f.Meaning = column.Meaning{Role: column.Declared, Words: words}
	f.Extra, f.Raw, f.Result = name, name, result
}

// declareMarks takes what each mark answers. A column without declared marks keeps
// none at all: then its cells decide.
func declareMarks(f *scheme.Field, marks map[string]bool) {
	for mark, yes := range marks {
		if f.Marks == nil {
			f.Marks = map[string]trial.Answer{}
		}
		f.Marks[mark] = trial.No
		if yes {
			f.Marks[mark] = trial.Yes
		}
	}
}

// ourNames are variables and outcomes of every log; a column that is declared under
// one of them is something else.
var ourNames = []string{"came_out", "broke", "hold_minutes", "drained_percent", "fat_percent", "emulsifier_percent", "emulsifier_grams",
	"ln_emulsifier_percent", "ln_emulsifier_grams", "blend_hlb"}
