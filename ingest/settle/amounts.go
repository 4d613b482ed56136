package settle

import (
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/say"
	"foamfield/ingest/scheme"
	"foamfield/ingest/units"
)

// amounts settles what each column of amounts is of, and in what its numbers are.
func (m *maker) amounts() {
	m.together()
	for i := range m.Fields {
		f := &m.Fields[i]
		m.leftovers(f)
		if f.Role == column.EmulsifierRatio {
			m.ratio(f)
		}
		if f.Role == column.PhaseRatio {
			m.phases(f)
		}
		if f.Role == column.IngredientHLB {
			f.What = m.emulsifier(f.Ingredient)
		}
		if !f.IsAmount() {
			continue
		}
		if f.What.Name == scheme.Recipes {
			m.partsOf(f)
			continue
		}
		switch f.Role {
		case column.FatPercent:
			f.What = scheme.FatAsLogged
			if f.Want == units.Percent && f.Basis == column.NoBasis {
				f.Basis = column.OfMix
			}
		case column.EmulsifierAmount:
			f.What = scheme.TotalEmulsifier
		case column.IngredientAmount:
			m.ingredient(f)
		}
		m.reckon(f)
		m.note(f)
	}
	m.share()
	m.types()
	m.plans()
	m.askHLBs()
}

// plans finds beside each amount the column of what was meant to go in.
func (m *maker) plans() {
	for i := range m.Fields {
		p := &m.Fields[i]
		if p.Role != column.Unused || p.Aim != column.Planned || p.Almost != column.IngredientAmount && p.Almost != column.EmulsifierAmount {
			continue
		}
		for k := range m.Fields {
			if f := &m.Fields[k]; f.Role == p.Almost && f.PlanCol == 0 && say.Fold(f.Ingredient) == say.Fold(p.Ingredient) {
				f.PlanCol = p.Col
				break
			}
		}
	}
}

// askHLBs asks for the HLB of every emulsifier, where no column gives the blend's.
func (m *maker) askHLBs() {
	if m.Find(column.BlendHLB) != nil || m.Find(column.IngredientHLB) != nil {
		return
	}
	for i := range m.Fields {
		f := &m.Fields[i]
		if f.Role == column.IngredientAmount && f.What.Kind == ingredient.Emulsifier && f.What.HLB == nil && f.TypeCol == 0 && !generic[f.What.Name] {
			m.say(scheme.NoHLB(f.Called(), m.Heading(f.Col), true))
		}
	}
}

// note remembers which columns give the parts of the mix.
func (m *maker) note(f *scheme.Field) {
	switch {
	case f.Role == column.EmulsifierAmount:
		m.EmulsifierColumn = f.Col
	case f.Role == column.FatPercent:
		m.FatColumn = f.Col
	case f.What.WeighedAsEmulsifier():
		m.NamesEmulsifiers, m.EmulsifierColumn = true, f.Col
	case f.What.Kind == ingredient.Fat:
		m.FatColumn = f.Col
		m.Fats++
	case f.What.Kind == ingredient.Water:
		m.WaterColumn = f.Col
	}
}
