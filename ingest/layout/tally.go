package layout

import (
	"slices"

	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// medianAgreement is agreement with the medians of the rows above, for which
// their numbers must be sorted.
func (t *open) medianAgreement(cells []sheet.Cell) (agree, differ int) {
	for _, from := range []int{0, t.tally.blockFrom} {
		a, d := 0, 0
		for k := range cells {
			x, ok := look.Number(&cells[k])
			if h := t.HeadAt(int(cells[k].Col)); h < 0 || !ok || int(cells[k].Col) == t.labelCol() {
				continue
			}
			var above []float64
			for r := from; r < len(t.Rows); r++ {
				c := look.CellAt(&t.Sheet.Rows[t.Rows[r].At], int(cells[k].Col))
				if y, ok := look.Number(&c); ok {
					above = append(above, y)
				}
			}
			slices.Sort(above)
			switch n := len(above); {
			case n == 0:
			case !look.IsOneOf(x, look.Step(&cells[k]), []float64{(above[n/2] + above[(n-1)/2]) / 2}):
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

// tally keeps the moments of a table's columns: of all rows, and of those
// since the last furniture. It is brought up to date only when somebody asks,
// as most tables have no row that sums up others.
type tally struct {
	whole, block []look.Moments // by head
	next         int            // the first row not counted yet
	blockFrom    int            // the first row of the block
	ids, digits  int            // filled label cells, and those with a digit
	medians      int            // worked out so far
}

// maxMedians bounds how often columns are sorted.
const maxMedians = 20

// counted brings the tally up to date.
func (t *open) counted() *tally {
	c := &t.tally
	if c.whole == nil {
		c.whole, c.block = make([]look.Moments, len(t.Heads)), make([]look.Moments, len(t.Heads))
	}
	label := t.labelCol()
	for ; c.next < len(t.Rows); c.next++ {
		if c.next == c.blockFrom {
			clear(c.block)
		}
		cells := t.Sheet.Rows[t.Rows[c.next].At].Cells
		for k := range cells {
			cell := &cells[k]
			if int(cell.Col) == label && !look.Empty(cell) {
				c.ids++
				if cell.Kind != sheet.Text || look.IsShortID(cell.Text) {
					c.digits++
				}
			}
			h := t.HeadAt(int(cell.Col))
			if x, ok := look.Number(cell); h >= 0 && ok {
				c.whole[h].Add(x)
				c.block[h].Add(x)
			}
		}
	}
	return c
}

// agreement counts the numbers of a row that are the statistic of those above,
// and those that are not; a column of equal numbers can only speak against it.
func (t *open) agreement(s look.Statistic, cells []sheet.Cell) (agree, differ int) {
	c := t.counted()
	if s == look.Median {
		if c.medians++; c.medians > maxMedians {
			return 0, 0
		}
		return t.medianAgreement(cells)
	}
	a, d := t.agreesWith(c.whole, s, cells)
	if x, y := t.agreesWith(c.block, s, cells); x-y > a-d {
		return x, y
	}
	return a, d
}

func (t *open) agreesWith(above []look.Moments, s look.Statistic, cells []sheet.Cell) (agree, differ int) {
	for k := range cells {
		h := t.HeadAt(int(cells[k].Col))
		x, ok := look.Number(&cells[k])
		if h < 0 || !ok || int(cells[k].Col) == t.labelCol() || above[h].N == 0 {
			continue
		}
		switch same := look.IsOneOf(x, look.Step(&cells[k]), above[h].Values(s)); {
		case !same:
			differ++
		case above[h].Told(s):
			agree++
		}
	}
	return agree, differ
}
