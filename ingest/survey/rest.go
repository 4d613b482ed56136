package survey

import (
	"foamfield/ingest/column"
	"foamfield/ingest/ingredient"
	"foamfield/ingest/sheet"
)

// Cream brings its own water, so a log of cream and butter may be whole without a column of
// water. Where the batches are heavier row after row than all that is logged of them, it is not.

// restRows is how many rows it takes to tell a habit from a slip.
const restRows = 3

// restShort is how much of a batch is missing where it cannot be the emulsifier or an error of
// weighing.
const restShort = 0.05

// restUnlogged reports a table without a water part whose masses fall short of the batch in
// nearly every row and exceed it in none.
func (m *surveyor) restUnlogged() bool {
	batch := m.Find(column.BatchMass)
	if m.WaterColumn > 0 || batch == nil && m.BatchGrams == 0 {
		return false
	}
	known, short := 0, 0
	for n := range m.Rows() {
		whole := m.BatchGrams
		if batch != nil {
			v, ok := m.Exactly(m.Cell(n, batch.Col), batch)
			if !ok {
				continue
			}
			whole = v
		}
		sum, ok := m.fatsOf(n)
		switch {
		case !ok || whole <= 0:
			continue
		case sum > whole:
			return false
		case whole-sum > restShort*whole:
			short++
		}
		known++
	}
	return known >= restRows && 4*short >= 3*known
}

// fatsOf is what the fats and emulsifiers of a row weigh together, false where a mass is not known
// or is of anything else.
func (m *surveyor) fatsOf(row int) (sum float64, ok bool) {
	for i := range m.Fields {
		f := &m.Fields[i]
		if !f.IsAmount() {
			continue
		}
		fat := f.Role == column.IngredientAmount && f.What.Kind == ingredient.Fat
		if f.Open != "" || f.Kindless || fat && !f.InGrams || f.Role == column.IngredientAmount && !fat && !f.What.WeighedAsEmulsifier() {
			return 0, false
		}
		c := m.Cell(row, f.Col)
		if !f.InGrams || c.Kind == sheet.Blank || f.Role == column.EmulsifierAmount && m.NamesEmulsifiers {
			continue
		}
		v, exact := m.Exactly(c, f)
		if !exact {
			return 0, false
		}
		sum, ok = sum+v, ok || fat
	}
	return sum, ok
}
