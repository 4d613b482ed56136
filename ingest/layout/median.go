package layout

import (
	"slices"

	"foamfield/ingest/sheet"
)

// medianAgreement is agreement with the medians of the rows above, for which
// their numbers must be sorted.
func (t *Table) medianAgreement(cells []sheet.Cell) (agree, differ int) {
	for _, from := range []int{0, t.tally.blockFrom} {
		a, d := 0, 0
		for k := range cells {
			x, ok := numberIn(&cells[k])
			if h := t.headAt(int(cells[k].Col)); h < 0 || !ok || int(cells[k].Col) == t.labelCol() {
				continue
			}
			var above []float64
			for r := from; r < len(t.Rows); r++ {
				c := cellAt(&t.Sheet.Rows[t.Rows[r].at], int(cells[k].Col))
				if y, ok := numberIn(&c); ok {
					above = append(above, y)
				}
			}
			slices.Sort(above)
			switch n := len(above); {
			case n == 0:
			case !isOneOf(x, stepIn(&cells[k]), []float64{(above[n/2] + above[(n-1)/2]) / 2}):
				d++
			case above[n-1] > above[0]:
				a++
			}
		}
		if a-d > agree-differ {
			agree, differ = a, d
		}
	}
	return agree, differ
}
