package layout

import (
	"fmt"
	"slices"
	"strings"

	"foamfield/ingest/column"
	"foamfield/ingest/sheet"
)

// A card is small: sheets with more rows are not looked at as cards.
const (
	cardRows   = 400
	cardLabels = 4 // the label column is one of the first few
)

// cards reads a sheet whose variables run down and whose trials run across.
// ok is false when the sheet is no card.
func (f *finder) cards() (tables []Table, outside []Furniture, ok bool) {
	if len(f.s.Rows) > cardRows {
		return nil, nil, false
	}
	labels, down := 0, 0
	for col := 1; col <= cardLabels; col++ {
		if n := f.labelled(col); n > down {
			labels, down = col, n
		}
	}
	if down < 4 || down <= f.across() {
		return nil, nil, false
	}
	return f.deal(labels)
}

// labelled counts the different header words in a column whose rows have
// something to the right; 0 when other texts are more or nothing is a number.
func (f *finder) labelled(col int) int {
	seen := map[string]bool{}
	all, labels, numbers := 0, 0, 0
	for i := range f.s.Rows {
		c := cellAt(&f.s.Rows[i], col)
		if empty(&c) {
			continue
		}
		all++
		if c.Kind != sheet.Text {
			continue
		}
		right := between(f.s.Rows[i].Cells, col+1, lastColumn)
		if m := f.read(c.Text); m.Role != column.None && filledCells(right) > 0 {
			labels++
			seen[fmt.Sprint(m.Role, m.Ingredient, m.AtMinute, m.Unit, m.Else)] = true
			if takesNumbers(m.Role) && f.look(right).values > 0 {
				numbers++
			}
		}
	}
	if labels*2 < all || numbers < 2 {
		return 0
	}
	return len(seen)
}

// across is the most header words in one row that can be a header.
func (f *finder) across() int {
	most := 0
	for i := 0; i < len(f.s.Rows) && i < huntRows; i++ {
		cells := f.s.Rows[i].Cells
		if !f.look(cells).header() {
			continue
		}
		n := 0
		for k := range cells {
			if c := &cells[k]; c.Kind == sheet.Text && f.read(c.Text).Role != column.None {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// deal splits the sheet into cards; a new one starts where the first label
// comes again.
func (f *finder) deal(labels int) (tables []Table, outside []Furniture, ok bool) {
	rows := f.s.Rows
	unitCol := f.unitColumn(labels)
	var t *Table
	group, firstLabel, pending := "", "", -1
	var section []Furniture // titles met before the first label of a card
	for i := range rows {
		row := &rows[i]
		label := cellAt(row, labels)
		right := between(row.Cells, max(labels, unitCol)+1, lastColumn)
		text := strings.TrimSpace(f.s.Display(label))
		known := label.Kind == sheet.Text && f.read(text).Role != column.None
		left := f.leftText(row, labels)
		switch {
		case filledCells(row.Cells) == 0:
			section = append(section, Furniture{row.Number, Blank})
		case filledCells(right) == 0 && (!known || t == nil || column.IsGroup(text) || !f.inCard(i, labels)):
			section = append(section, Furniture{row.Number, Title})
			group = text
		case text == "" && t == nil && f.nextIsLabel(i, labels):
			if pending >= 0 { // the label it stood above came to nothing
				section = append(section, Furniture{rows[pending].Number, Title})
				slices.SortFunc(section, func(a, b Furniture) int { return a.Row - b.Row })
			}
			pending = i
		case !known && t == nil:
			section = append(section, Furniture{row.Number, Title})
		default:
			if t == nil || known && strings.EqualFold(text, firstLabel) {
				if t != nil {
					tables = append(tables, *t)
					group = ""
				} else {
					outside, section = append(outside, section...), nil
				}
				t = &Table{Sheet: f.s, HeaderRow: row.Number, Transposed: true, labels: labels}
				firstLabel = text
				if pending >= 0 {
					t.Heads = append(t.Heads, Head{Col: labels, Row: rows[pending].Number, Text: "trial"})
					t.HeaderRow = rows[pending].Number
				}
				pending = -1
			}
			t.Furniture, section = append(t.Furniture, section...), nil
			head := Head{Col: labels, Row: row.Number, Text: text, Hidden: row.Hidden}
			if left != "" {
				group = left
			}
			if group != "" && text != "" {
				head.Text = group + " / " + text
			}
			if unitCol > 0 {
				if u := cellAt(row, unitCol); u.Kind == sheet.Text {
					head.Unit = strings.TrimSpace(u.Text)
				}
			}
			t.Heads = append(t.Heads, head)
		}
	}
	if t == nil {
		return nil, nil, false
	}
	t.Furniture = append(t.Furniture, section...)
	tables = append(tables, *t)
	for i := range tables {
		tables[i].acrossRows(max(labels, unitCol))
		tables[i].readHeads()
		tables[i].readings()
	}
	return tables, outside, true
}

// leftText is a group written left of the labels.
func (f *finder) leftText(row *sheet.Row, labels int) string {
	for k := range row.Cells {
		if c := &row.Cells[k]; int(c.Col) < labels && c.Kind == sheet.Text && !empty(c) {
			return strings.TrimSpace(c.Text)
		}
	}
	return ""
}

// inCard reports whether a label without values stands among labels with some.
func (f *finder) inCard(i, labels int) bool {
	for _, j := range []int{i - 1, i + 1} {
		if j < 0 || j >= len(f.s.Rows) {
			continue
		}
		if filledCells(between(f.s.Rows[j].Cells, labels+1, lastColumn)) > 0 {
			return true
		}
	}
	return false
}

func (f *finder) nextIsLabel(i, labels int) bool {
	if i+1 >= len(f.s.Rows) {
		return false
	}
	c := cellAt(&f.s.Rows[i+1], labels)
	return c.Kind == sheet.Text && f.read(c.Text).Role != column.None
}

// unitColumn is the column right of the labels if it holds units, else 0.
func (f *finder) unitColumn(labels int) int {
	units, all := 0, 0
	for i := range f.s.Rows {
		if c := cellAt(&f.s.Rows[i], labels+1); !empty(&c) {
			all++
			if c.Kind == sheet.Text && isUnit(c.Text) {
				units++
			}
		}
	}
	if units >= 2 && units*10 >= all*6 {
		return labels + 1
	}
	return 0
}

// acrossRows makes a row of each sheet column right of the labels that has
// something in it and is no average.
func (t *Table) acrossRows(labels int) {
	cols := map[int]bool{}
	average := map[int]bool{}
	for _, h := range t.Heads {
		for c := range rowCells(t.Sheet, h.Row) {
			if col := int(c.Col); col > labels && !empty(c) {
				cols[col] = true
				if c.Kind == sheet.Text && h.Row == t.HeaderRow && isAverage(c.Text) {
					average[col] = true
				}
			}
		}
	}
	for col := range cols {
		if !average[col] {
			t.Rows = append(t.Rows, Row{Number: col, Hidden: t.Sheet.ColHidden(col)})
		}
	}
	slices.SortFunc(t.Rows, func(a, b Row) int { return a.Number - b.Number })
}

// rowCells yields the cells of a sheet row.
func rowCells(s *sheet.Sheet, number int) func(func(*sheet.Cell) bool) {
	return func(yield func(*sheet.Cell) bool) {
		i, found := slices.BinarySearchFunc(s.Rows, number, func(r sheet.Row, n int) int { return r.Number - n })
		if !found {
			return
		}
		for k := range s.Rows[i].Cells {
			if !yield(&s.Rows[i].Cells[k]) {
				return
			}
		}
	}
}
