package card

import (
	"slices"
	"strings"

	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// acrossRows makes a row of each column of a card that has something in it and
// is neither units nor an average, a goal or the best once more.
func (t *card) acrossRows(f *look.Reader, b block) {
	filled := map[int]bool{}
	lines := make([]*sheet.Row, len(t.Heads))
	for i, h := range t.Heads {
		at, _ := slices.BinarySearchFunc(f.Sheet.Rows, h.Row, func(r sheet.Row, n int) int { return r.Number - n })
		lines[i] = &f.Sheet.Rows[at]
		cells := look.Between(lines[i].Cells, b.values(), b.to)
		for k := range cells {
			if !look.Empty(&cells[k]) {
				filled[int(cells[k].Col)] = true
			}
		}
	}
	var cols []int
	for col := range filled {
		cols = append(cols, col)
	}
	slices.Sort(cols)
	above := make([]look.Moments, len(lines))
	for i, col := range cols {
		cells := cellsDown(lines, col)
		switch {
		case i > 0 && cols[i-1] == col-1 && len(t.Rows) > 0 && t.Rows[len(t.Rows)-1].Number == col-1 && look.AreUnits(cells):
			t.unitsOfLast(col)
			continue
		case len(t.Rows) == 0 && t.aboutHeads(cells), t.goalAbove(f, col), t.sumsUpColumns(f, cells, above):
			continue
		}
		for h := range cells {
			if x, ok := look.Number(&cells[h]); ok {
				above[h].Add(x)
			}
		}
		t.Rows = append(t.Rows, grid.Row{Number: col, Hidden: t.Sheet.ColHidden(col), Struck: look.AllStruck(cells)})
		t.UnitCols = append(t.UnitCols, 0)
	}
}

// goalAbove reports a column that the row right above the first label calls what is asked for:
// "for the pass | at least | at most".
func (t *card) goalAbove(f *look.Reader, col int) bool {
	i, found := slices.BinarySearchFunc(f.Sheet.Rows, t.Heads[0].Row-1, func(r sheet.Row, n int) int { return r.Number - n })
	if !found {
		return false
	}
	c := look.CellAt(&f.Sheet.Rows[i], col)
	_, goal := look.IsGoal(c.Text)
	return c.Kind == sheet.Text && goal
}

// cellsDown is the cells of a column in some rows.
func cellsDown(rows []*sheet.Row, col int) []sheet.Cell {
	cells := make([]sheet.Cell, len(rows))
	for i := range rows {
		cells[i] = look.CellAt(rows[i], col)
	}
	return cells
}

// unitsOfLast makes a column the units of the trial at its left.
func (t *card) unitsOfLast(col int) {
	t.UnitCols[len(t.UnitCols)-1] = col
	for h := range t.Heads {
		if t.Heads[h].UnitCol == 0 {
			t.Heads[h].UnitCol = col
		}
	}
}

// sumsUpColumns reports whether the cells of a card's column are no trial: its
// first cell is a word for a statistic and its numbers agree or the others are
// numbered, or a word for a goal.
func (t *card) sumsUpColumns(f *look.Reader, cells []sheet.Cell, above []look.Moments) bool {
	if cells[0].Kind != sheet.Text || look.Empty(&cells[0]) {
		return false
	}
	if _, goal := look.IsGoal(cells[0].Text); goal {
		return true
	}
	s, whole := look.Summary(cells[0].Text)
	if s == look.None {
		return false
	}
	agree, differ := 0, 0
	for h := 1; h < len(cells); h++ {
		x, ok := look.Number(&cells[h])
		switch {
		case !ok || above[h].N == 0:
		case !look.IsOneOf(x, look.Step(&cells[h]), above[h].Values(s)):
			differ++
		case above[h].Told(s):
			agree++
		}
	}
	if agree > differ && agree >= 2 {
		return true
	}
	return whole && t.numbered() && !look.IsName(f.Read(t.Heads[0].Text).Role)
}

// numbered reports whether the trials of a card so far are called by numbers
// or letters.
func (t *card) numbered() bool {
	short := 0
	for r := range t.Rows {
		if c := t.Typed(r, 0); !look.Empty(&c) && (c.Kind != sheet.Text || look.IsShortID(c.Text)) {
			short++
		}
	}
	return short*4 >= len(t.Rows)*3
}

// dealSideBySide reads cards that stand beside each other. Those whose labels
// stand in the same rows are trials of one table.
func (f cards) dealSideBySide(blocks []block) (tables []card, outside []grid.Furniture) {
	for _, b := range blocks {
		dealt, _ := f.deal(b)
		for i := range dealt {
			t := &dealt[i]
			k := slices.IndexFunc(tables, func(have card) bool { return have.alignedWith(t) })
			if k < 0 {
				t.Furniture = nil
				tables = append(tables, *t)
				continue
			}
			tables[k].Rows = append(tables[k].Rows, t.Rows...)
			tables[k].UnitCols = append(tables[k].UnitCols, t.UnitCols...)
			tables[k].join(t.Heads)
		}
	}
	if len(tables) == 0 {
		return nil, nil
	}
	slices.SortStableFunc(tables, func(a, b card) int { return a.HeaderRow - b.HeaderRow })
	return tables, f.furnishCards(tables)
}

// alignedWith reports whether two cards have the same labels in the same rows.
func (t *card) alignedWith(o *card) bool {
	return slices.EqualFunc(t.Heads, o.Heads, func(a, b grid.Head) bool {
		return a.Row == b.Row && strings.EqualFold(t.label(&a), o.label(&b)) && strings.EqualFold(a.Unit, b.Unit)
	})
}

// label is the text of a card's head without what stands above or left of it.
func (t *card) label(h *grid.Head) string {
	if c := t.Sheet.At(h.Row, h.Col); !look.Empty(&c) {
		return strings.TrimSpace(t.Sheet.Display(c))
	}
	return h.Text
}

// join brings the heads of a card at its right into a card's own. What stands
// above the labels of one card only, its title, is no part of them.
func (t *card) join(heads []grid.Head) {
	for h := range t.Heads {
		own := &t.Heads[h]
		if own.UnitCol == 0 {
			own.UnitCol = heads[h].UnitCol
		}
		if own.Text != heads[h].Text {
			own.Text = t.label(own)
		}
	}
}

// furnishCards gives the rows that are in no card to the last one above them,
// or returns them.
func (f cards) furnishCards(tables []card) (outside []grid.Furniture) {
	taken := map[int]bool{}
	for i := range tables {
		for _, h := range tables[i].Heads {
			taken[h.Row] = true
		}
	}
	next := -1
	for i := range f.Sheet.Rows {
		row := &f.Sheet.Rows[i]
		for next+1 < len(tables) && tables[next+1].HeaderRow <= row.Number {
			next++
		}
		if taken[row.Number] {
			continue
		}
		furniture := grid.Furniture{Row: row.Number, Kind: grid.Title}
		if look.Filled(row.Cells) == 0 {
			furniture.Kind = grid.Blank
		}
		if next < 0 {
			outside = append(outside, furniture)
		} else {
			tables[next].Furniture = append(tables[next].Furniture, furniture)
		}
	}
	return outside
}

// aboutHeads takes a column right of the labels that says of each ingredient what it is, "HLB 3.8",
// with units among them; false where anything else stands in it.
func (t *card) aboutHeads(cells []sheet.Cell) bool {
	numbers := 0
	for i := range cells {
		c := &cells[i]
		_, said, ok := look.Described(strings.TrimSpace(c.Text))
		switch {
		case look.Empty(c):
		case c.Kind != sheet.Text || !ok:
			return false
		case strings.ContainsAny(said, "0123456789"):
			numbers++
		}
	}
	if numbers == 0 {
		return false
	}
	for i := range cells {
		unit, said, _ := look.Described(strings.TrimSpace(cells[i].Text))
		if t.Heads[i].About = said; t.Heads[i].Unit == "" {
			t.Heads[i].Unit = unit
		}
	}
	return true
}
