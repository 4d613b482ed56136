package layout

import (
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// start opens the table or tables whose header begins in row i.
func (f *finder) start(i int) {
	rows := f.Sheet.Rows
	above := f.aboutNext(i)
	if above > 0 {
		i++
	}
	h := i
	if f.lowerHeader(i) {
		h = i + 1
	}
	if above == 0 {
		above = f.aboutAbove(i, h)
	}
	groups, units := f.aboveHead(i, h)
	if units < 0 && h+1 < len(rows) && rows[h+1].Number <= rows[h].Number+2 {
		if l := f.Look(rows[h+1].Cells); l.UnitsRow() {
			units = h + 1
		} else if own := f.firstRun(h, rows[h+1].Cells); len(own) >= 3 && len(own) < len(rows[h+1].Cells) {
			if l := f.Look(own); l.UnitsRow() { // what stands beside the table is a list of its own
				units = h + 1
			}
		}
	}
	heads, texts := f.heads(h, groups, units)
	furniture := f.headFurniture(h, groups, units)
	if about := f.aboutBelow(max(h, units), heads); about >= 0 {
		if f.hasUnits(&rows[about]) && units < 0 {
			heads, texts = f.heads(h, groups, about)
		}
		furniture = append(furniture, grid.Furniture{Row: rows[about].Number, Kind: grid.About})
	}
	if above > 0 {
		furniture = slices.Insert(furniture, 0, grid.Furniture{Row: above, Kind: grid.About})
	}
	f.openTables(h, heads, texts, furniture)
}

// firstRun are the cells of a row below the heads of row h up to their first gap.
func (f *finder) firstRun(h int, cells []sheet.Cell) []sheet.Cell {
	last := int32(0)
	for k := range f.Sheet.Rows[h].Cells {
		c := &f.Sheet.Rows[h].Cells[k]
		if look.Empty(c) {
			continue
		}
		if last > 0 && c.Col > last+1 {
			break
		}
		last = c.Col
	}
	return cells[:len(cells)-len(slices.DeleteFunc(slices.Clone(cells), func(c sheet.Cell) bool { return c.Col <= last }))]
}

// aboveHead takes the rows just above row i that belong to the header in row h:
// groups, in order, and units, -1 without.
func (f *finder) aboveHead(i, h int) (groups []int, units int) {
	rows := f.Sheet.Rows
	if h > i {
		groups = append(groups, i)
	}
	units = -1
	for up := i - 1; up >= 0 && up >= i-2 && rows[up].Number >= rows[i].Number-(i-up)-1; up-- {
		if n := len(f.outside); n == 0 || f.outside[n-1].Row != rows[up].Number {
			break
		}
		if up == i-1 && f.Look(rows[up].Cells).UnitsOnly() {
			units = up
		} else if rows[up].Number == rows[up+1].Number-1 && f.groupRow(up, h) {
			groups = append(groups, up)
		} else {
			break
		}
		f.outside = f.outside[:len(f.outside)-1]
	}
	slices.Sort(groups)
	return groups, units
}

// headFurniture is the rows of a header as furniture.
func (f *finder) headFurniture(h int, groups []int, units int) []grid.Furniture {
	rows := f.Sheet.Rows
	var furniture []grid.Furniture
	for _, g := range groups {
		furniture = append(furniture, grid.Furniture{Row: rows[g].Number, Kind: grid.Group})
	}
	furniture = append(furniture, grid.Furniture{Row: rows[h].Number, Kind: grid.Header})
	if units >= 0 {
		furniture = append(furniture, grid.Furniture{Row: rows[units].Number, Kind: grid.Units})
		slices.SortFunc(furniture, func(a, b grid.Furniture) int { return a.Row - b.Row })
	}
	return furniture
}

// openTables opens the tables whose heads stand in row h: one, or several side
// by side.
func (f *finder) openTables(h int, heads []grid.Head, texts map[int]string, furniture []grid.Furniture) {
	from := 1
	for _, part := range f.sideBySide(heads) {
		if len(f.open) > 0 {
			from = part[0].Col
			f.open[len(f.open)-1].to = from - 1
		}
		t := &open{Table: &grid.Table{Sheet: f.Sheet, HeaderRow: f.Sheet.Rows[h].Number, Heads: part, Furniture: slices.Clone(furniture)},
			from: from, to: look.LastColumn, used: map[int]bool{}, texts: texts, labels: part[0].Col}
		f.open = append(f.open, t)
	}
}

// lowerHeader reports whether row i is the group header of row i+1: both are
// words, and the lower one has words where the upper is empty or merged.
func (f *finder) lowerHeader(i int) bool {
	rows := f.Sheet.Rows
	if i+1 >= len(rows) || rows[i+1].Number != rows[i].Number+1 {
		return false
	}
	l := f.Look(rows[i+1].Cells)
	if l.UnitsOnly() || l.Values > 0 && l.Values*4 > l.Cells {
		return false
	}
	below := 0
	for k := range rows[i+1].Cells {
		c := &rows[i+1].Cells[k]
		if c.Kind == sheet.Text && !look.Empty(c) && f.isHeaderWord(c.Text) && f.groupedBy(&rows[i], int(c.Col)) {
			below++
		}
	}
	return below >= 2 || below == 1 && l.Header()
}

// isHeaderWord reports whether a text says something as a header below a group.
func (f *finder) isHeaderWord(text string) bool {
	m := f.Read(text)
	return m.Role != column.None || m.AtMinute != 0 || look.IsUnit(text) || column.IsAim(text)
}

// groupedBy reports whether a column lies under a text of the row above that is
// wider than it: the row is empty or merged there.
func (f *finder) groupedBy(row *sheet.Row, col int) bool {
	up := look.CellAt(row, col)
	merged, ok := f.Merged(row.Number, col)
	return look.Empty(&up) && col > int(row.Cells[0].Col) || ok && merged.ToCol > merged.FromCol
}

// groupRow reports whether the words of row up are titles above several
// columns of the header row h, and not the sheet's title.
func (f *finder) groupRow(up, h int) bool {
	cells := f.Sheet.Rows[up].Cells
	first, last := f.Sheet.Rows[h].Cells[0].Col, f.Sheet.Rows[h].Cells[len(f.Sheet.Rows[h].Cells)-1].Col
	n, above := 0, 0
	for k := range cells {
		c := &cells[k]
		if look.Empty(c) {
			continue
		}
		if c.Kind != sheet.Text || len(c.Text) > 60 || look.ValueLike(c.Text) {
			return false
		}
		if own := look.CellAt(&f.Sheet.Rows[h], int(c.Col)); look.States(c.Text) && f.namedAlone(&own) {
			return false // what is said of an ingredient above "fat (% of mix)" is no title of that
		}
		n++
		m, ok := f.Merged(f.Sheet.Rows[up].Number, int(c.Col))
		if ok && (m.FromCol > int(first) || m.ToCol < int(last)) || !ok && c.Col > first {
			above++
		}
	}
	return n >= 2 && above >= 1 || n == 1 && above == 1
}

// namedAlone reports a head that needs no name above it: it is no unit, and no amount of something.
func (f *finder) namedAlone(c *sheet.Cell) bool {
	m := f.Read(c.Text)
	return c.Kind == sheet.Text && m.Sure() && m.Words != "" && m.Role != column.IngredientAmount && m.Role != column.IngredientHLB && m.Role != column.IngredientFat
}

// heads builds the heads of header row h with its groups and units.
func (f *finder) heads(h int, groups []int, units int) (heads []grid.Head, texts map[int]string) {
	rows := f.Sheet.Rows
	texts = map[int]string{}
	cols := map[int]bool{}
	for k := range rows[h].Cells {
		if c := &rows[h].Cells[k]; !look.Empty(c) {
			texts[int(c.Col)] = strings.TrimSpace(f.Sheet.Display(*c))
			cols[int(c.Col)] = true
		}
	}
	above := map[int][]string{}
	for _, g := range groups {
		for col, text := range f.spread(g, h) {
			if texts[col] != text {
				above[col] = append(above[col], text)
			}
			cols[col] = true
		}
	}
	for col := range cols {
		parts := above[col]
		if own := texts[col]; own != "" {
			parts = append(parts, own)
		} else if len(parts) > 0 {
			texts[col] = parts[len(parts)-1]
		}
		head := grid.Head{Col: col, Row: rows[h].Number, Text: strings.Join(parts, " / "), Hidden: f.Sheet.ColHidden(col)}
		if units >= 0 {
			if c := look.CellAt(&rows[units], col); c.Kind == sheet.Text {
				head.Unit = strings.TrimSpace(c.Text)
				if unit, said, ok := look.Described(head.Unit); ok && said != "" {
					head.Unit = unit
				}
			}
		}
		head.Meaning = f.Read(head.Full())
		heads = append(heads, head)
	}
	slices.SortFunc(heads, func(a, b grid.Head) int { return a.Col - b.Col })
	return heads, texts
}

// spread gives the text of a group row for each column it stands above: over
// its merged cells, or, unmerged, up to the next text as long as the header
// has words there and the row above the first of them has too.
func (f *finder) spread(g, h int) map[int]string {
	out := map[int]string{}
	row := &f.Sheet.Rows[g]
	for k := range row.Cells {
		c := &row.Cells[k]
		if look.Empty(c) {
			continue
		}
		text, col := strings.TrimSpace(f.Sheet.Display(*c)), int(c.Col)
		out[col] = text
		if m, ok := f.Merged(row.Number, col); ok {
			for c := m.FromCol; c <= m.ToCol && c < m.FromCol+look.MaxMerged; c++ {
				if own := look.CellAt(&f.Sheet.Rows[h], c); !look.Empty(&own) || c == col {
					out[c] = text
				}
			}
			continue
		}
		below := look.CellAt(&f.Sheet.Rows[h], col)
		next := look.LastColumn
		if k+1 < len(row.Cells) {
			next = int(row.Cells[k+1].Col)
		}
		if look.Empty(&below) {
			continue
		}
		for j := range f.Sheet.Rows[h].Cells {
			if own := &f.Sheet.Rows[h].Cells[j]; int(own.Col) > col && int(own.Col) < next && !look.Empty(own) {
				if _, merged := f.Merged(row.Number, int(own.Col)); !merged {
					out[int(own.Col)] = text
				}
			}
		}
	}
	return out
}

// sideBySide splits the heads at gaps of empty columns where what comes after
// is a table of its own: at least two of its roles were there before.
func (f *finder) sideBySide(heads []grid.Head) [][]grid.Head {
	var parts [][]grid.Head
	start := 0
	for i := 1; i < len(heads); i++ {
		if heads[i].Col > heads[i-1].Col+1 && sameRoles(heads[start:i], heads[i:]) {
			parts = append(parts, heads[start:i:i])
			start = i
		}
	}
	return append(parts, heads[start:])
}

func sameRoles(a, b []grid.Head) bool {
	type what struct {
		role   column.Role
		name   string
		minute float64
	}
	seen := map[what]bool{}
	for _, h := range a {
		seen[what{h.Meaning.Role, strings.ToLower(h.Meaning.Ingredient), h.Meaning.AtMinute}] = true
	}
	same := 0
	for _, h := range b {
		k := what{h.Meaning.Role, strings.ToLower(h.Meaning.Ingredient), h.Meaning.AtMinute}
		if h.Meaning.Role != column.None && h.Meaning.Role != column.Note && seen[k] {
			same++
			delete(seen, k)
		}
	}
	return same >= 2
}
