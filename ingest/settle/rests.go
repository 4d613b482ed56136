package settle

import (
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/scheme"
	"foamfield/ingest/trial"
)

// rests is which numbers of a mix rest on a column, as it is read or as it would be
// if it were understood.
func (m *maker) rests(f *scheme.Field) trial.Rests {
	role := f.Role
	if role == column.None {
		if role = f.Almost; len(f.Rivals) > 0 {
			role = f.Else
		}
	}
	switch role {
	case column.FatPercent:
		return trial.OnFat | trial.Given
	case column.EmulsifierAmount:
		return trial.OnEmulsifier | trial.Given
	case column.BlendHLB:
		return trial.OnHLB | trial.Given
	case column.IngredientFat, column.PhaseRatio:
		return trial.OnFat
	case column.IngredientHLB, column.EmulsifierRatio:
		return trial.OnHLB
	case column.BatchMass:
		return trial.OnTotal
	case column.IngredientAmount:
		return amountRests(f)
	case column.None:
		if f.Header != "" && !f.Told && m.holdsNumbers(f.Col) && m.varies(f.Col) {
			return trial.Unexplained
		}
	}
	return 0
}

// amountRests is which numbers rest on an amount of one ingredient. What nobody can
// name may be anything.
func amountRests(f *scheme.Field) trial.Rests {
	i := &f.What
	switch {
	case f.Kindless || i.Name == "" || i.Name == scheme.Recipes:
		return trial.OnFat | trial.OnEmulsifier | trial.OnHLB
	case i.Kind == ingredient.Emulsifier && generic[i.Name] && f.TypeCol == 0:
		return trial.OnEmulsifier
	case i.Kind == ingredient.Emulsifier:
		return trial.OnEmulsifier | trial.OnHLB
	case i.WeighedAsEmulsifier():
		return trial.OnEmulsifier
	case i.Kind == ingredient.Fat || i.NeedsFatPercent():
		return trial.OnFat
	}
	return trial.OnTotal
}
