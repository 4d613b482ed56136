package grid

import (
	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// Some kitchens write a mix once above the rows of its makings: below "F1 | 25 | 0.5 | siphon a
// | 15" stands "| | | siphon b | 13". A row is such a further making where the name of its trial
// and all of its mix are left empty, a result is typed, and a label of its own, another than the
// row above has, tells it from an average.

// MixAgain gives the further makings of a mix the mix of the row that has it.
func (t *Table) MixAgain() {
	id := t.Find(column.TrialID)
	if t.PerReading || t.Long || t.Transposed || t.Places != nil || id < 0 {
		return
	}
	for row := range t.Rows {
		if from := t.source(row, id); t.Fill(row, id) == WrittenOnce && t.madeAgain(row, from) {
			t.Again = append(t.Again, row)
			for h := range t.Heads {
				if ofMix(t.Heads[h].Meaning.Role) {
					t.fills[h] = t.setFill(t.fills[h], row, WrittenOnce, from)
				}
			}
		}
	}
}

// madeAgain reports a row without a mix, with a result and a label of its own, below one with a mix.
func (t *Table) madeAgain(row, from int) bool {
	result, label, mix := false, false, false
	for h := range t.Heads {
		role := t.Heads[h].Meaning.Role
		c, _ := t.Cell(row, h)
		switch {
		case look.Empty(&c):
			above := t.Typed(from, h)
			mix = mix || ofMix(role) && !look.Empty(&above)
		case ofMix(role):
			return false
		case IsResult(role):
			result = true
		case tells(role, &c):
			above, _ := t.Cell(row-1, h)
			label = label || !look.Empty(&above) && !look.SameCell(&c, &above)
		}
	}
	return result && label && mix
}

// ofMix reports the roles of what is in a mix.
func ofMix(r column.Role) bool {
	switch r {
	case column.IngredientAmount, column.EmulsifierAmount, column.FatPercent, column.BlendHLB, column.PhaseRatio, column.EmulsifierRatio,
		column.IngredientType, column.IngredientHLB, column.IngredientFat, column.BatchMass:
		return true
	}
	return false
}

// tells reports a cell that tells makings of one mix apart: under words nobody knows a text.
func tells(r column.Role, c *sheet.Cell) bool {
	switch r {
	case column.Repeat, column.Order, column.Squirt, column.Canister, column.CanisterID:
		return true
	}
	return r == column.None && c.Kind == sheet.Text
}
