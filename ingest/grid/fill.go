package grid

import (
	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// writtenOnce are roles that kitchens write in the first of several rows only.
func writtenOnce(r column.Role) bool {
	switch r {
	case column.TrialID, column.Day, column.Dish, column.Cook, column.Student:
		return true
	}
	return false
}

// Fill says where the cell of a row under a head comes from.
type Fill uint8

// The fills. Unresolved is a ditto mark with nothing above it: its cell is
// Blank, and nobody knows what it stands for.
const (
	Own Fill = iota
	Ditto
	MergedDown
	WrittenOnce
	Unresolved
)

// A fill is kept as one number: 0 for a cell of its own, unresolved, or the
// row it comes from with its kind.
const unresolved = -1

func filledFrom(row int, kind Fill) int32 { return int32(row)<<2 | int32(kind) }

func (t *Table) fillOf(row, head int) int32 {
	if head >= len(t.fills) || t.fills[head] == nil {
		return 0
	}
	return t.fills[head][row]
}

// Fill tells how the cell that Cell gives came to the row.
func (t *Table) Fill(row, head int) Fill {
	switch v := t.fillOf(row, head); {
	case v == 0:
		return Own
	case v == unresolved:
		return Unresolved
	default:
		return Fill(v & 3)
	}
}

// source is the row whose cell stands for that of a row.
func (t *Table) source(row, head int) int {
	if v := t.fillOf(row, head); v > 0 {
		return int(v >> 2)
	}
	return row
}

// MergedAcross reports whether the cell of a row under a head belongs to a
// merged cell that spans several heads: "7.5 for both".
func (t *Table) MergedAcross(row, head int) bool {
	if t.Places != nil {
		return false
	}
	at, col := t.PlaceOf(t.source(row, head), head)
	span, ok := t.merges.At(at, col)
	if !ok {
		return false
	}
	heads := 0
	for i := range t.Heads {
		h := &t.Heads[i]
		if t.Transposed && h.Row >= span.FromRow && h.Row <= span.ToRow || !t.Transposed && h.Col >= span.FromCol && h.Col <= span.ToCol {
			heads++
		}
	}
	return heads > 1
}

// FillDown works out which cells stand for one above, of a card to the left:
// ditto marks, merged cells, and ids and days written once. What is written
// once stops at a title between the rows, and is not carried into rows of
// another merged cell.
func (t *Table) FillDown(f *look.Reader) {
	stops := map[int]bool{} // rows of the table before which a title stands
	next := 0
	for _, fu := range t.Furniture {
		for next < len(t.Rows) && t.Rows[next].Number < fu.Row {
			next++
		}
		if fu.Kind == Title || fu.Kind == Legend {
			stops[next] = true
		}
	}
	t.merges = f.Merges
	t.fills = make([][]int32, len(t.Heads))
	for h := range t.Heads {
		t.fills[h] = t.fillHead(f, h, stops)
	}
}

// fillHead is FillDown for one head; nil if every cell is its own.
func (t *Table) fillHead(f *look.Reader, h int, stops map[int]bool) (fills []int32) {
	role := t.Heads[h].Meaning.Role
	// In a long sheet another quantity stands above.
	apart := t.Long && t.Heads[h].Row != t.HeaderRow
	once := writtenOnce(role) && !t.Transposed && !apart
	from := -1 // the row whose cell holds for the next ones
	for r := range t.Rows {
		c := t.Typed(r, h)
		kind, take := Own, -1
		switch {
		case f.Ditto(&c, role):
			if kind = Ditto; !apart {
				take = from
			}
		case !look.Empty(&c):
			from = r
			continue
		default:
			kind, take = t.fillBlank(r, h, from, once)
			if stops[r] && kind != MergedDown && !t.Transposed {
				kind, take, from = Own, -1, -1
			}
		}
		fills = t.setFill(fills, r, kind, take)
		if take < 0 && !once {
			from = -1
		}
	}
	return fills
}

// fillBlank says what stands for a blank cell, of which the row from has the
// last value above it.
func (t *Table) fillBlank(row, head, from int, once bool) (kind Fill, take int) {
	span, merged := t.spanOf(row, head)
	switch {
	case from < 0:
	case merged && t.within(span, from):
		return MergedDown, from
	case !merged && once:
		return WrittenOnce, from
	}
	return Own, -1
}

// setFill notes that the cell of a row is filled from another row, or with
// nothing if that is -1.
func (t *Table) setFill(fills []int32, row int, kind Fill, from int) []int32 {
	if kind == Own {
		return fills
	}
	if fills == nil {
		fills = make([]int32, len(t.Rows))
	}
	if fills[row] = unresolved; from >= 0 {
		fills[row] = filledFrom(from, kind)
	}
	return fills
}

// spanOf is the merged range over the cell of a row under a head.
func (t *Table) spanOf(row, head int) (sheet.Range, bool) {
	if len(t.merges) == 0 || t.Places != nil {
		return sheet.Range{}, false
	}
	return t.merges.At(t.PlaceOf(row, head))
}

// within reports whether a row of the table lies in a merged range.
func (t *Table) within(span sheet.Range, row int) bool {
	n := t.Rows[row].Number
	if t.Transposed {
		return n >= span.FromCol && n <= span.ToCol
	}
	return n >= span.FromRow && n <= span.ToRow
}
