package layout

import "foamfield/ingest/column"

// Looks counts the heads that speak of the mix and of its results. A sheet with
// neither is hardly a log; the caller decides.
func (t *Table) Looks() (mix, results int) {
	for i := range t.Heads {
		switch t.Heads[i].Meaning.Role {
		case column.IngredientAmount, column.EmulsifierAmount, column.FatPercent, column.BlendHLB:
			mix++
		case column.Hold, column.HoldOver, column.GoneBy, column.DrainedAmount, column.CameOut, column.Clogged, column.Broke, column.Result, column.OilLeak:
			results++
		}
	}
	return mix, results
}
