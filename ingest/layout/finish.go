package layout

import (
	"slices"

	"foamfield/ingest/grid"
	"foamfield/ingest/look"
)

// finish reads the heads together, once all rows are known.
func (t *open) finish(f *look.Reader) *grid.Table {
	for col := range t.used {
		t.Heads = append(t.Heads, grid.Head{Col: col, Hidden: t.Sheet.ColHidden(col)})
	}
	slices.SortFunc(t.Heads, func(a, b grid.Head) int { return a.Col - b.Col })
	slices.SortStableFunc(t.Furniture, func(a, b grid.Furniture) int { return a.Row - b.Row })
	t.TakeUnits()
	t.ReadHeads()
	t.markRemarks(f)
	t.FillDown(f)
	t.Readings()
	t.MixAgain()
	t.MixAsNamed()
	return t.Table
}
