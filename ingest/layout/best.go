package layout

import (
	"hash/maphash"
	"math"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// mixIndex finds the rows of a table with a given mix.
type mixIndex struct {
	seed maphash.Seed
	rows map[uint64][]int32
	next int // the first row not indexed yet
}

// maxAlike bounds the rows of one mix that are compared with a row.
const maxAlike = 50

// repeatsRow reports whether the cells are a row of the table once more, in
// every cell of the mix and of the results.
func (t *open) repeatsRow(cells []sheet.Cell) bool {
	x := &t.mixes
	if x.rows == nil {
		x.seed, x.rows = maphash.MakeSeed(), map[uint64][]int32{}
	}
	for ; x.next < len(t.Rows); x.next++ {
		if key, n := t.mixKey(t.Sheet.Rows[t.Rows[x.next].At].Cells); n > 0 && len(x.rows[key]) < maxAlike {
			x.rows[key] = append(x.rows[key], int32(x.next))
		}
	}
	key, n := t.mixKey(cells)
	if n == 0 {
		return false
	}
	row := sheet.Row{Cells: cells}
	for _, r := range x.rows[key] {
		if t.sameRow(&row, &t.Sheet.Rows[t.Rows[r].At]) {
			return true
		}
	}
	return false
}

// mixKey is a number for the mix of a row, and how many cells it has.
func (t *open) mixKey(cells []sheet.Cell) (key uint64, n int) {
	var h maphash.Hash
	h.SetSeed(t.mixes.seed)
	for k := range cells {
		c := &cells[k]
		head := t.HeadAt(int(c.Col))
		if head < 0 || look.Empty(c) || !look.IsOfMix(t.Heads[head].Meaning.Role) {
			continue
		}
		n++
		maphash.WriteComparable(&h, c.Col)
		maphash.WriteComparable(&h, math.Float64bits(c.Number))
		h.WriteString(strings.ToLower(strings.TrimSpace(c.Text)))
	}
	return h.Sum64(), n
}

// sameRow compares a row with one above in the cells of the mix and of the results, of
// which it may leave some out.
func (t *open) sameRow(a, b *sheet.Row) bool {
	same := 0
	for h := range t.Heads {
		switch r := t.Heads[h].Meaning.Role; {
		case r == column.Note || !look.IsOfMix(r) && !look.TakesNumbers(r) && !look.Happened(r):
			continue
		}
		x, y := look.CellAt(a, t.Heads[h].Col), look.CellAt(b, t.Heads[h].Col)
		switch {
		case look.Empty(&x):
		case !look.SameCell(&x, &y):
			return false
		default:
			same++
		}
	}
	return same >= 3
}
