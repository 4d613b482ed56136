package look

import (
	"slices"
	"sort"

	"foamfield/ingest/sheet"
)

// MaxMerged bounds the columns one merged range is followed over.
const MaxMerged = 512

// Merges indexes merged ranges by column, each column's by its first row.
type Merges map[int][]sheet.Range

func indexMerges(s *sheet.Sheet) Merges {
	m := Merges{}
	for _, r := range s.Merged {
		for c := r.FromCol; c <= r.ToCol && c < r.FromCol+MaxMerged; c++ {
			m[c] = append(m[c], r)
		}
	}
	for _, rs := range m {
		slices.SortStableFunc(rs, func(a, b sheet.Range) int { return a.FromRow - b.FromRow })
	}
	return m
}

// At is the merged range that covers a cell.
func (m Merges) At(row, col int) (sheet.Range, bool) {
	rs := m[col]
	i := sort.Search(len(rs), func(i int) bool { return rs[i].FromRow > row }) - 1
	if i >= 0 && rs[i].ToRow >= row {
		return rs[i], true
	}
	return sheet.Range{}, false
}

// Merged is the merged range that covers a cell.
func (r *Reader) Merged(row, col int) (sheet.Range, bool) {
	return r.Merges.At(row, col)
}
