package layout

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// Right below a header a kitchen may say of each ingredient what it is: HLB 3.8 below GMS,
// 82 % fat below butter, "fat", "water part", with units among them or a row of their own.
// No trial is read there; what it says is said beside the table.

// aboutBelow is the row below a header in row i that says what its columns are; -1 without.
func (f *finder) aboutBelow(i int, heads []grid.Head) int {
	rows := f.Sheet.Rows
	if i+1 < len(rows) && rows[i+1].Number == rows[i].Number+1 && f.aboutRow(&rows[i+1], heads, false) {
		return i + 1
	}
	return -1
}

// aboutAbove takes the row right above a header for such a row, and gives its number; 0 without.
// It must say numbers: kinds alone are titles of groups.
func (f *finder) aboutAbove(i, h int) int {
	up := i - 1
	rows := f.Sheet.Rows
	if n := len(f.outside); up < 0 || n == 0 || f.outside[n-1].Row != rows[up].Number || rows[up].Number != rows[i].Number-1 {
		return 0
	}
	heads, _ := f.heads(h, nil, -1)
	if !f.aboutRow(&rows[up], heads, true) {
		return 0
	}
	f.outside = f.outside[:len(f.outside)-1]
	return rows[up].Number
}

// aboutNext is the number of row i where it says what the columns of the header below it are,
// though it looks like a header itself; 0 where it does not.
func (f *finder) aboutNext(i int) int {
	rows := f.Sheet.Rows
	if i+1 >= len(rows) || rows[i+1].Number != rows[i].Number+1 || !f.Look(rows[i+1].Cells).Header() {
		return 0
	}
	heads, _ := f.heads(i+1, nil, -1)
	if !f.aboutRow(&rows[i], heads, true) {
		return 0
	}
	return rows[i].Number
}

// hasUnits reports whether units stand in a row.
func (f *finder) hasUnits(row *sheet.Row) bool {
	return slices.ContainsFunc(row.Cells, func(c sheet.Cell) bool {
		unit, _, _ := look.Described(strings.TrimSpace(c.Text))
		return c.Kind == sheet.Text && unit != ""
	})
}

// aboutRow reports whether each filled cell of a row says what the ingredient of the head
// above it is, or its unit.
func (f *finder) aboutRow(row *sheet.Row, heads []grid.Head, above bool) bool {
	at := map[int]*grid.Head{}
	for i := range heads {
		at[heads[i].Col] = &heads[i]
	}
	of, numbers, kinds := "", 0, 0
	for k := range row.Cells {
		c := &row.Cells[k]
		if look.Empty(c) {
			continue
		}
		h := at[int(c.Col)]
		text := strings.TrimSpace(f.Sheet.Display(*c))
		unit, said, _ := look.Described(text)
		ofMix := h != nil && (h.Meaning.Role == column.IngredientAmount || h.Meaning.Role == column.FatPercent || h.Meaning.Role == column.None)
		switch {
		case of == "" && numbers+kinds == 0 && look.LabelOfNumbers(text) != "" && !(ofMix && said != ""):
			of = text // "HLB" before the numbers
		case c.Kind != sheet.Text && (of == "" || !ofMix || c.Kind != sheet.Number):
			return false
		case c.Kind != sheet.Text:
			numbers++
		case unit != "" && said == "":
		case said == "" || !ofMix:
			return false
		case strings.ContainsAny(said, "0123456789"):
			numbers++
		default:
			kinds++
		}
	}
	return numbers > 0 || kinds > 1 && !above
}
