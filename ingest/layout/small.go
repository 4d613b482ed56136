package layout

import (
	"strings"
	"unicode"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
	"foamfield/ingest/units"
)

// Below the trials, apart from them, may stand a small table under the first few of their heads:
// what was used with its fat and HLB, the squirts of one siphon. Its rows are no trials of the table
// above, whatever stands in the columns there.

// mostSmall are the heads of such a table, and more.
const mostSmall = 6

// smallHeader reports a row of a few heads that an empty row or a title parts from the rows above:
// words alone, of which one behind the first can be nothing but a head, with a number right below it.
func (f *finder) smallHeader(i int) bool {
	cells := f.Sheet.Rows[i].Cells
	if n := look.Filled(cells); n < 2 || n > mostSmall || !f.apart(i) {
		return false
	}
	for _, t := range f.open {
		if t.repeats(look.Between(cells, t.from, t.to)) {
			return false
		}
	}
	var first *sheet.Cell
	telling, numbers := false, false
	for k := range cells {
		c := &cells[k]
		switch {
		case look.Empty(c):
			continue
		case c.Kind != sheet.Text || first == nil && strings.ContainsFunc(c.Text, unicode.IsDigit):
			return false
		case first == nil:
			first = c
			continue
		}
		if f.onlyHead(first, c) {
			telling = true
			numbers = numbers || f.numberBelow(i, int(c.Col))
		}
	}
	return telling && numbers
}

// onlyHead reports a text that is a head and cannot be what became of a trial: it has a unit, or
// stands behind "ingredient".
func (f *finder) onlyHead(first, c *sheet.Cell) bool {
	m := f.Read(c.Text)
	if look.HeadsList(first.Text) && (m.Role == column.FatPercent || m.Role == column.BlendHLB) {
		return true
	}
	return m.Role != column.None && m.Unit != units.NoUnit && !strings.ContainsFunc(c.Text[:1], unicode.IsDigit)
}

// apart reports a row with nothing, or one text, in the row above.
func (f *finder) apart(i int) bool {
	if i == 0 || f.Sheet.Rows[i-1].Number < f.Sheet.Rows[i].Number-1 {
		return true
	}
	above := f.Sheet.Rows[i-1].Cells
	return look.Filled(above) == 0 || look.Filled(above) == 1 && look.FirstFilled(above).Kind == sheet.Text
}

// numberBelow reports a number in a column in one of the rows right below.
func (f *finder) numberBelow(i, col int) bool {
	rows := f.Sheet.Rows
	for j := i + 1; j < len(rows) && j <= i+mostSmall && rows[j].Number == rows[j-1].Number+1; j++ {
		c := look.CellAt(&rows[j], col)
		if _, ok := look.Number(&c); ok {
			return true
		}
	}
	return false
}
