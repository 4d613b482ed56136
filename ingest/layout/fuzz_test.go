package layout

import (
	"fmt"
	"testing"

	"foamfield/ingest/sheet"
)

// FuzzFind: whatever the grid, nothing panics and no row is lost or counted
// twice.
func FuzzFind(f *testing.F) {
	for _, c := range cases {
		f.Add(c.sheet)
	}
	f.Add("trial | (t)’ | hold (′) | ‘fat’ %\n1 | ½ | 20′ | ’45\n2 | \" | ‘ | ″")
	f.Add("“trial” | [butter] {g} | crème (½ %) | n°\n | (g)’ | [y/n] | (min)″\n1 | 120 | é́ | ’")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4000 {
			return
		}
		s := grid(text)
		accountFor(t, "fuzzed", s)
		tables, _ := Find(s)
		for i := range tables {
			table := &tables[i]
			for r := range table.Rows {
				for h := range table.Heads {
					c, filled := table.Cell(r, h)
					if filled && empty(&c) {
						t.Errorf("row %d head %d is filled from an empty cell", r, h)
					}
				}
			}
		}
	})
}

// long is a log of rows × 20 columns.
func long(rows int) *sheet.Sheet {
	s := grid("trial | butter (g) | GMS (g) | lecithin (g) | cider (g) | batch (g) | fat % | HLB | chargers | shakes | rest (h) | temp (°C) | hold (min) | drained % @20 | oil leak | came out | clogged | score | cook | notes")
	for r := range rows {
		row := sheet.Row{Number: r + 2, Cells: make([]sheet.Cell, 20)}
		for c := range row.Cells {
			row.Cells[c] = sheet.Cell{Col: int32(c + 1), Kind: sheet.Number, Number: float64(r % (c + 7))}
		}
		row.Cells[0] = sheet.Cell{Col: 1, Kind: sheet.Text, Text: fmt.Sprintf("T%d", r)}
		for _, c := range []int{14, 15, 16} {
			row.Cells[c] = sheet.Cell{Col: int32(c + 1), Kind: sheet.Text, Text: []string{"yes", "no"}[r%2]}
		}
		row.Cells[18] = sheet.Cell{Col: 19, Kind: sheet.Text, Text: []string{"Ann", "Bo", `"`}[r%3]}
		row.Cells[19] = sheet.Cell{Col: 20, Kind: sheet.Text, Text: fmt.Sprintf("note on trial %d", r)}
		s.Rows = append(s.Rows, row)
	}
	return s
}

func BenchmarkFind100000(b *testing.B) {
	s := long(100_000)
	b.ReportAllocs()
	for b.Loop() {
		if tables, _ := Find(s); len(tables) != 1 || len(tables[0].Rows) != 100_000 {
			b.Fatalf("%d tables", len(tables))
		}
	}
}

// BenchmarkFindWords is the worst case: a row of new words each time, each
// after a gap, so that every row might be a header.
func BenchmarkFindWords(b *testing.B) {
	s := &sheet.Sheet{}
	for r := range 20_000 {
		row := sheet.Row{Number: 2*r + 1}
		for c := range 10 {
			row.Cells = append(row.Cells, sheet.Cell{Col: int32(c + 1), Kind: sheet.Text, Text: fmt.Sprintf("remark %c%c about it", 'a'+r%26, 'a'+(r/26)%26) + fmt.Sprint(r, c)})
		}
		s.Rows = append(s.Rows, row)
	}
	for b.Loop() {
		Find(s)
	}
}
