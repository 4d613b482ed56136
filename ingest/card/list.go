package card

import (
	"foamfield/ingest/column"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// listsIn are the places of the rows that list what was used with its fat and HLB, by their own
// heads: "ingredient | fat % | HLB". Its names are those of a card's labels, and its numbers no trials.
func listsIn(r *look.Reader) map[int]bool {
	in := map[int]bool{}
	at := 0 // the column of the names; 0 = in no list
	for i := range r.Sheet.Rows {
		row := &r.Sheet.Rows[i]
		gap := i > 0 && row.Number != r.Sheet.Rows[i-1].Number+1
		if name := look.CellAt(row, at); at > 0 && (gap || look.Empty(&name)) {
			at = 0
		}
		if at == 0 {
			at = listHead(r, row)
		}
		if at > 0 {
			in[i] = true
		}
	}
	return in
}

// listHead is the column of the names of a list whose heads stand in a row, 0 where none do.
func listHead(r *look.Reader, row *sheet.Row) int {
	first := look.FirstFilled(row.Cells)
	if first.Kind != sheet.Text || !look.HeadsList(first.Text) {
		return 0
	}
	told := 0
	for k := range row.Cells {
		c := &row.Cells[k]
		if look.Empty(c) || c.Col == first.Col {
			continue
		}
		if role := r.Read(c.Text).Role; c.Kind == sheet.Text && (role == column.FatPercent || role == column.BlendHLB) {
			told++
		}
	}
	if told == 0 {
		return 0
	}
	return int(first.Col)
}
