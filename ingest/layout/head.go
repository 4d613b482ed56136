package layout

import (
	"math"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// lastColumn stands for "to the right end of the sheet".
const lastColumn = math.MaxInt32

// start opens the table or tables whose header begins in row i.
func (f *finder) start(i int) {
	rows := f.s.Rows
	h := i
	if f.lowerHeader(i) {
		h = i + 1
	}
	groups, units := f.aboveHead(i, h)
	if units < 0 && h+1 < len(rows) && rows[h+1].Number <= rows[h].Number+2 {
		if l := f.look(rows[h+1].Cells); l.unitsRow() {
			units = h + 1
		}
	}
	heads, texts := f.heads(h, groups, units)
	f.openTables(h, heads, texts, f.headFurniture(h, groups, units))
}

// aboveHead takes the rows just above row i that belong to the header in row h:
// groups, in order, and units, -1 without.
func (f *finder) aboveHead(i, h int) (groups []int, units int) {
	rows := f.s.Rows
	if h > i {
		groups = append(groups, i)
	}
	units = -1
	for up := i - 1; up >= 0 && up >= i-2 && rows[up].Number >= rows[i].Number-(i-up)-1; up-- {
		if n := len(f.outside); n == 0 || f.outside[n-1].Row != rows[up].Number {
			break
		}
		if up == i-1 && f.look(rows[up].Cells).unitsOnly() {
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
func (f *finder) headFurniture(h int, groups []int, units int) []Furniture {
	rows := f.s.Rows
	var furniture []Furniture
	for _, g := range groups {
		furniture = append(furniture, Furniture{Row: rows[g].Number, Kind: Group})
	}
	furniture = append(furniture, Furniture{Row: rows[h].Number, Kind: Header})
	if units >= 0 {
		furniture = append(furniture, Furniture{Row: rows[units].Number, Kind: Units})
		slices.SortFunc(furniture, func(a, b Furniture) int { return a.Row - b.Row })
	}
	return furniture
}

// openTables opens the tables whose heads stand in row h: one, or several side
// by side.
func (f *finder) openTables(h int, heads []Head, texts map[int]string, furniture []Furniture) {
	from := 1
	for _, part := range f.sideBySide(heads) {
		if len(f.open) > 0 {
			from = part[0].Col
			f.open[len(f.open)-1].toCol = from - 1
		}
		t := &Table{Sheet: f.s, HeaderRow: f.s.Rows[h].Number, Heads: part, Furniture: slices.Clone(furniture),
			fromCol: from, toCol: lastColumn, used: map[int]bool{}, texts: texts, labels: part[0].Col}
		f.open = append(f.open, t)
	}
}

// lowerHeader reports whether row i is the group header of row i+1: both are
// words, and the lower one has words where the upper is empty or merged.
func (f *finder) lowerHeader(i int) bool {
	rows := f.s.Rows
	if i+1 >= len(rows) || rows[i+1].Number != rows[i].Number+1 {
		return false
	}
	l := f.look(rows[i+1].Cells)
	if l.unitsOnly() || l.values > 0 && l.values*4 > l.cells {
		return false
	}
	below := 0
	for k := range rows[i+1].Cells {
		c := &rows[i+1].Cells[k]
		if c.Kind == sheet.Text && !empty(c) && f.isHeaderWord(c.Text) && f.groupedBy(&rows[i], int(c.Col)) {
			below++
		}
	}
	return below >= 2 || below == 1 && l.header()
}

// isHeaderWord reports whether a text says something as a header below a group.
func (f *finder) isHeaderWord(text string) bool {
	m := f.read(text)
	return m.Role != column.None || m.AtMinute != 0 || isUnit(text)
}

// groupedBy reports whether a column lies under a text of the row above that is
// wider than it: the row is empty or merged there.
func (f *finder) groupedBy(row *sheet.Row, col int) bool {
	up := cellAt(row, col)
	merged, ok := f.merged(row.Number, col)
	return empty(&up) && col > int(row.Cells[0].Col) || ok && merged.ToCol > merged.FromCol
}

// groupRow reports whether the words of row up are titles above several
// columns of the header row h, and not the sheet's title.
func (f *finder) groupRow(up, h int) bool {
	cells := f.s.Rows[up].Cells
	first, last := f.s.Rows[h].Cells[0].Col, f.s.Rows[h].Cells[len(f.s.Rows[h].Cells)-1].Col
	n, above := 0, 0
	for k := range cells {
		c := &cells[k]
		if empty(c) {
			continue
		}
		if c.Kind != sheet.Text || len(c.Text) > 60 || valueLike(c.Text) {
			return false
		}
		n++
		m, ok := f.merged(f.s.Rows[up].Number, int(c.Col))
		if ok && (m.FromCol > int(first) || m.ToCol < int(last)) || !ok && c.Col > first {
			above++
		}
	}
	return n >= 2 && above >= 1 || n == 1 && above == 1
}

// heads builds the heads of header row h with its groups and units.
func (f *finder) heads(h int, groups []int, units int) (heads []Head, texts map[int]string) {
	rows := f.s.Rows
	texts = map[int]string{}
	cols := map[int]bool{}
	for k := range rows[h].Cells {
		if c := &rows[h].Cells[k]; !empty(c) {
			texts[int(c.Col)] = strings.TrimSpace(f.s.Display(*c))
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
		head := Head{Col: col, Row: rows[h].Number, Text: strings.Join(parts, " / "), Hidden: f.s.ColHidden(col)}
		if units >= 0 {
			if c := cellAt(&rows[units], col); c.Kind == sheet.Text {
				head.Unit = strings.TrimSpace(c.Text)
			}
		}
		head.Meaning = f.read(head.full())
		heads = append(heads, head)
	}
	slices.SortFunc(heads, func(a, b Head) int { return a.Col - b.Col })
	return heads, texts
}

// full is the text for package column: group, header and unit.
func (h Head) full() string {
	if h.Unit == "" || strings.Contains(strings.ToLower(h.Text), "("+strings.ToLower(h.Unit)+")") {
		return h.Text
	}
	return h.Text + " (" + strings.Trim(h.Unit, "()[] ") + ")"
}

// spread gives the text of a group row for each column it stands above: over
// its merged cells, or, unmerged, up to the next text as long as the header
// has words there and the row above the first of them has too.
func (f *finder) spread(g, h int) map[int]string {
	out := map[int]string{}
	row := &f.s.Rows[g]
	for k := range row.Cells {
		c := &row.Cells[k]
		if empty(c) {
			continue
		}
		text, col := strings.TrimSpace(f.s.Display(*c)), int(c.Col)
		out[col] = text
		if m, ok := f.merged(row.Number, col); ok {
			for c := m.FromCol; c <= m.ToCol && c < m.FromCol+maxMerged; c++ {
				if own := cellAt(&f.s.Rows[h], c); !empty(&own) || c == col {
					out[c] = text
				}
			}
			continue
		}
		below := cellAt(&f.s.Rows[h], col)
		next := lastColumn
		if k+1 < len(row.Cells) {
			next = int(row.Cells[k+1].Col)
		}
		if empty(&below) {
			continue
		}
		for j := range f.s.Rows[h].Cells {
			if own := &f.s.Rows[h].Cells[j]; int(own.Col) > col && int(own.Col) < next && !empty(own) {
				if _, merged := f.merged(row.Number, int(own.Col)); !merged {
					out[int(own.Col)] = text
				}
			}
		}
	}
	return out
}

// sideBySide splits the heads at gaps of empty columns where what comes after
// is a table of its own: at least two of its roles were there before.
func (f *finder) sideBySide(heads []Head) [][]Head {
	var parts [][]Head
	start := 0
	for i := 1; i < len(heads); i++ {
		if heads[i].Col > heads[i-1].Col+1 && sameRoles(heads[start:i], heads[i:]) {
			parts = append(parts, heads[start:i:i])
			start = i
		}
	}
	return append(parts, heads[start:])
}

func sameRoles(a, b []Head) bool {
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
