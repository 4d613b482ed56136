package layout

import (
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// isTitle reports whether a cell that has row i for itself is the title of the
// rows below it: a day or a date, a cell merged across the table, or words at
// its left with rows after them.
func (t *open) isTitle(f *finder, i int, c *sheet.Cell) bool {
	h := t.HeadAt(int(c.Col))
	across, merged := f.Merged(f.Sheet.Rows[i].Number, int(c.Col))
	wide := merged && across.ToCol >= across.FromCol+2
	left := int(c.Col) <= t.Heads[0].Col || int(c.Col) == t.labelCol()
	if !left && !wide || !f.rowsFollow(t, i) {
		return false
	}
	switch {
	case c.Kind == sheet.Date:
		return true
	case c.Kind != sheet.Text || len(c.Text) > 80:
		return false
	case wide, look.IsDay(c.Text), f.headFollows(t, i):
		return true
	case h >= 0 && t.Heads[h].Meaning.Role == column.TrialID && short(c.Text):
		return false
	}
	return !strings.HasPrefix(c.Text, "*") && !strings.HasSuffix(strings.TrimSpace(c.Text), ".")
}

// rowsFollow reports whether the next filled row of the sheet has several
// cells of the table.
func (f *finder) rowsFollow(t *open, i int) bool {
	for j := i + 1; j < len(f.Sheet.Rows); j++ {
		if n := look.Filled(f.Sheet.Rows[j].Cells); n > 0 {
			return look.Filled(look.Between(f.Sheet.Rows[j].Cells, t.from, t.to)) >= 2
		}
	}
	return false
}

// headFollows reports whether the next row of the sheet is the header once more.
func (f *finder) headFollows(t *open, i int) bool {
	return i+1 < len(f.Sheet.Rows) && f.Sheet.Rows[i+1].Number == f.Sheet.Rows[i].Number+1 && t.repeats(f.Sheet.Rows[i+1].Cells)
}
