// Package layout finds the tables of a log in a sheet: the header under its
// title rows, group headers and a row of units, the rows that are trials, and
// what every other row is. It knows what a header looks like from package
// column and nothing of what the values mean.
//
// Every row of the sheet with something in it is accounted for: it is a row of
// a table, furniture of a table, or furniture outside any table.
package layout

import (
	"foamfield/ingest/card"
	"foamfield/ingest/grid"
	"foamfield/ingest/long"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// Find finds the tables of a sheet, and says what the rows outside of them
// are. A sheet that is no log has no tables. The work grows with the number of
// cells, not with its square.
func Find(s *sheet.Sheet) (tables []grid.Table, outside []grid.Furniture) {
	r := look.NewReader(s)
	if tables, rest, ok := long.Find(r); ok {
		return tables, rest
	}
	if tables, rest, ok := long.FindPairs(r); ok {
		return tables, rest
	}
	if cards, rest, ok := card.Find(r); ok {
		return cards, rest
	}
	f := finder{Reader: r}
	f.run()
	for _, t := range f.done {
		tables = append(tables, *t.finish(r))
	}
	return tables, f.outside
}
