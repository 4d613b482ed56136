package look

import "foamfield/ingest/column"

// IsOfMix reports whether a column of the role says what is in the mix.
func IsOfMix(r column.Role) bool {
	switch r {
	case column.IngredientAmount, column.EmulsifierAmount, column.FatPercent, column.BlendHLB:
		return true
	}
	return false
}

// IsName reports whether a column of the role holds names or words.
func IsName(r column.Role) bool {
	switch r {
	case column.Cook, column.Student, column.Dish, column.CanisterID, column.Supplier, column.Note, column.Result:
		return true
	}
	return false
}

// Happened reports whether words of the role also tell what happened to a
// trial, and then stand in any column: "clogged" where a hold should be.
func Happened(r column.Role) bool {
	switch r {
	case column.Clogged, column.Broke, column.OilLeak, column.Spits, column.Grainy, column.CameOut, column.Result, column.GoneBy, column.Note, column.Unused:
		return true
	}
	return false
}

// TakesNumbers reports whether a column of the role holds numbers, so that
// other words in it are not data.
func TakesNumbers(r column.Role) bool {
	switch r {
	case column.Hold, column.BatchMass, column.FatPercent, column.IngredientAmount, column.EmulsifierAmount, column.BlendHLB,
		column.IngredientHLB, column.DrainedAmount, column.OilAmount, column.SampleMass, column.DrainedAt, column.ReadingMinute,
		column.Overrun, column.Temperature, column.Rest, column.Shakes, column.Chargers, column.HoldOver, column.GoneBy:
		return true
	}
	return false
}

// IsLabel reports whether a column of the role tells trials apart.
func IsLabel(r column.Role) bool {
	return r == column.TrialID || r == column.Day || r == column.Order || r == column.Time
}
