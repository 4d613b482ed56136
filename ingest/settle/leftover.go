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
	"foamfield/ingest/units"
)

// A header of which some words are not accounted for may say something else than the rest of it: it
// is asked, unless the columns beside it show that nothing rests on it.

// leftovers asks about a header of which some words are not accounted for, where
// an amount of the mix may rest on it.
func (m *maker) leftovers(f *scheme.Field) {
	if f.Role != column.None || f.Almost == column.None || f.Told {
		return
	}
	amount := f.Almost == column.IngredientAmount || f.Almost == column.EmulsifierAmount || f.Almost == column.FatPercent || f.Almost == column.BlendHLB
	if amount && f.Apart != "" && m.besideWhole(f) {
		m.say(trial.Check("header in doubt", m.Heading(f.Col), say.Quoted(f.Header)+" is not counted in the mix: another column says how much went in",
			"rename it if it went into the canister as well"))
		f.Role, f.Doubt = column.Unused, ""
		return
	}
	if mean := m.meanOf(f); mean != nil {
		m.say(trial.Note("column twice", m.Heading(f.Col), say.Quoted(f.Header)+" is not used, as "+say.Quoted(mean.Header)+" is the mean of it and others", "nothing to do"))
		f.Role, f.Doubt = column.Unused, ""
		return
	}
	if wordsOnly(f.Almost) {
		return // said, and not worth a question
	}
	m.askColumn(f, amount)
	if amount && f.Almost != column.BlendHLB {
		f.Role, f.Open = f.Almost, say.Quoted(f.Header)+" is not understood"
	}
}

// meanOf is the column of the mean of what a column has one of: "hold mean" beside "hold A".
func (m *maker) meanOf(f *scheme.Field) *scheme.Field {
	if len(f.Left) != 1 || len(f.Left[0]) > 2 {
		return nil
	}
	for i := range m.Fields {
		if o := &m.Fields[i]; o.Role == f.Almost && o.AtMinute == f.AtMinute && saysMean(o.Header) {
			return o
		}
	}
	return nil
}

// besideWhole reports whether another column has the amount of the same thing
// without the words that set this one apart.
func (m *maker) besideWhole(f *scheme.Field) bool {
	same := func(a, b string) bool {
		x, known := ingredient.Lookup(a)
		y, alike := ingredient.Lookup(b)
		return say.Fold(a) == say.Fold(b) || known && alike && (x.Name == y.Name || x.Kind == y.Kind && (x.Name == "oil" || x.Name == "fat" || y.Name == "oil" || y.Name == "fat"))
	}
	return slices.ContainsFunc(m.Fields, func(o scheme.Field) bool {
		return o.Col != f.Col && o.Role == column.IngredientAmount && len(o.Left) == 0 && same(o.Ingredient, f.Ingredient)
	})
}

// askColumn asks what a column is.
func (m *maker) askColumn(f *scheme.Field, blocks bool) {
	choices := []string{"ignore"}
	if plain := f.Almost.Plain(); plain != "" {
		choices = append([]string{plain}, choices...)
	}
	if f.Almost == column.IngredientAmount && f.Ingredient != "" {
		choices[0] = f.Ingredient
	}
	if f.Almost == column.EmulsifierAmount && f.Unit == units.NoUnit {
		choices = slices.Insert(choices, 1, "emulsifier % of mix")
	}
	asked := fmt.Sprintf("What is the column %s?", say.Quoted(f.Header))
	if len(f.Left) > 0 {
		asked = fmt.Sprintf("What is the column %s, as %s may change what it is?", say.Quoted(f.Header), say.Quoted(strings.Join(f.Left, " ")))
	}
	m.asks[f.Col] = &trial.Question{Asked: asked, Choices: choices, Blocks: blocks,
		Cure: trial.Cure{Sheet: "Columns", Row: []string{f.Header, trial.Open, f.Unit.String()}}}
	if f.Doubt == "" {
		f.Doubt = asked
	}
}
