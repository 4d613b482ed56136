package handin

import "foamfield/ingest/column"

// Wordy reports the roles of columns in which students write what they like.
func Wordy(r column.Role) bool {
	switch r {
	case column.None, column.Unused, column.Dish, column.Result, column.Note, column.Repeat, column.RepeatOf, column.Declared:
		return true
	}
	return false
}

// Numeric reports the roles whose cells are numbers.
func Numeric(r column.Role) bool {
	switch r {
	case column.BatchMass, column.FatPercent, column.IngredientFat, column.IngredientAmount, column.EmulsifierAmount, column.BlendHLB, column.IngredientHLB,
		column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.OilAmount, column.SampleMass, column.DrainedAt, column.Overrun,
		column.CupLiquid, column.CupFoam, column.DispensedMass, column.LeftInside, column.Spread, column.Score, column.Fill, column.Rest, column.Temperature:
		return true
	}
	return false
}
