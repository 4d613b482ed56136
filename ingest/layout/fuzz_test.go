package layout

import (
	"fmt"
	"slices"
	"testing"

	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// FuzzFind: whatever the grid, nothing panics and no row is lost or counted
// twice.
func FuzzFind(f *testing.F) {
	for _, c := range slices.Concat(cases, rowCases, cardCases) {
		f.Add(c.sheet)
	}
	f.Add("trial | (t)’ | hold (′) | ‘fat’ %\n1 | ½ | 20′ | ’45\n2 | \" | ‘ | ″")
	f.Add("“trial” | [butter] {g} | crème (½ %) | n°\n | (g)’ | [y/n] | (min)″\n1 | 120 | é́ | ’")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 4000 {
			return
		}
		s := typed(text)
		accountFor(t, "fuzzed", s)
		tables, _ := Find(s)
		for i := range tables {
			table := &tables[i]
			for r := range table.Rows {
				for h := range table.Heads {
					c, filled := table.Cell(r, h)
					if filled && look.Empty(&c) {
						t.Errorf("row %d head %d is filled from an empty cell", r, h)
					}
					fill := table.Fill(r, h)
					if filled != (fill == grid.Ditto || fill == grid.MergedDown || fill == grid.WrittenOnce) || fill == grid.Unresolved && !look.Empty(&c) {
						t.Errorf("row %d head %d: filled %v, fill %d, %v", r, h, filled, fill, c)
					}
					if table.UnitOf(r, h) != "" && table.Heads[h].UnitCol == 0 {
						t.Errorf("row %d head %d has a unit from nowhere", r, h)
					}
					table.MergedAcross(r, h)
				}
			}
		}
	})
}

// longSheet is a log of rows × 20 columns.
func longSheet(rows int) *sheet.Sheet {
	s := typed("trial | butter (g) | GMS (g) | lecithin (g) | cider (g) | batch (g) | fat % | HLB | chargers | shakes | rest (h) | temp (°C) | hold (min) | drained % @20 | oil leak | came out | clogged | score | cook | notes")
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

// BenchmarkFindLabels is the worst case of rows that sum up others: every row
// says it is one, and some are.
func BenchmarkFindLabels(b *testing.B) {
	for _, label := range []string{"Average", "Max", "Median", "Best", "Goal", "Mean Green", "Durchschn"} {
		s := longSheet(100_000)
		for r := range s.Rows[1:] {
			if r%3 > 0 {
				s.Rows[r+1].Cells[0].Text = label
			}
		}
		b.Run(label, func(b *testing.B) {
			for b.Loop() {
				Find(s)
			}
		})
	}
}

// BenchmarkFindLong turns a sheet of 100 000 quantities round.
func BenchmarkFindLong(b *testing.B) {
	s := typed("trial | what | value | unit")
	for r := range 100_000 {
		what := []string{"butter", "cider", "GMS", "lecithin", "hold", "drained", "came out"}[r%7]
		s.Rows = append(s.Rows, sheet.Row{Number: r + 2, Cells: []sheet.Cell{{Col: 1, Kind: sheet.Number, Number: float64(r / 7)},
			{Col: 2, Kind: sheet.Text, Text: what}, {Col: 3, Kind: sheet.Number, Number: float64(r % 90)}, {Col: 4, Kind: sheet.Text, Text: "g"}}})
	}
	for b.Loop() {
		if tables, _ := Find(s); len(tables) != 1 || !tables[0].Long {
			b.Fatal("not long")
		}
	}
}

func BenchmarkFind100000(b *testing.B) {
	s := longSheet(100_000)
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
