package grid

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// unitHeaders stand above a column of units.
var unitHeaders = look.SetOf(`unit units u u. unité unités unidad unidades ud unità einheit einheiten einh einh. uom`)

// UnitOf is the unit that stands beside the cell of a row under a head, as
// typed in the head's column of units; "" without one.
func (t *Table) UnitOf(row, head int) string {
	if t.Heads[head].UnitCol == 0 {
		return ""
	}
	if unit := t.unitAt(row, head); unit != "" {
		return unit
	}
	return t.unitAt(t.source(row, head), head)
}

func (t *Table) unitAt(row, head int) string {
	at, col := t.PlaceOf(row, head)
	switch {
	case t.Places != nil && t.Places[head][row].At == 0:
		return ""
	case t.Places != nil && !t.Long: // pairs: right of the value, wherever that is
		if c := t.Sheet.At(at, col+1); c.Kind != sheet.Text || !look.IsUnit(c.Text) {
			return ""
		}
		col++
	case t.Transposed && t.UnitCols[row] == 0:
		return ""
	case t.Transposed:
		col = t.UnitCols[row]
	default:
		col = t.Heads[head].UnitCol
	}
	if c := t.Sheet.At(at, col); c.Kind == sheet.Text {
		return strings.TrimSpace(c.Text)
	}
	return ""
}

// TakeUnits gives columns of units without a header, or headed "unit", to the
// numbers at their left: "0.17 | kg".
func (t *Table) TakeUnits() {
	for i := len(t.Heads) - 1; i > 0; i-- {
		u, left := &t.Heads[i], &t.Heads[i-1]
		text := u.Text[strings.LastIndex(u.Text, "/")+1:]
		if u.Row != 0 && !unitHeaders[strings.ToLower(strings.TrimSpace(text))] || left.Col != u.Col-1 {
			continue
		}
		if t.holdsUnits(u.Col) {
			left.UnitCol = u.Col
			t.Heads = slices.Delete(t.Heads, i, i+1)
		}
	}
}

// holdsUnits reports whether a column is units beside numbers.
func (t *Table) holdsUnits(col int) bool {
	filled, units, beside := 0, 0, 0
	for _, r := range t.Rows {
		row := &t.Sheet.Rows[r.At]
		c := look.CellAt(row, col)
		if look.Empty(&c) {
			continue
		}
		filled++
		if c.Kind == sheet.Text && look.IsUnit(c.Text) && !column.IsYesNo(c.Text) {
			units++
			left := look.CellAt(row, col-1)
			if _, number := look.Number(&left); number {
				beside++
			}
		}
	}
	return filled > 0 && units*10 >= filled*7 && beside*2 >= units
}
