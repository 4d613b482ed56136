package long

import (
	"slices"
	"strings"

	"foamfield/ingest/card"
	"foamfield/ingest/column"
	"foamfield/ingest/grid"
	"foamfield/ingest/look"
	"foamfield/ingest/sheet"
)

// Some kitchens write a card in one row, each value behind its label: butter |
// 150 | cider | 144. Several such rows are one table.

// pair is a label with its value's and its unit's place in a row; 0 = none.
type pair struct {
	label       sheet.Cell
	value, unit int
}

// pairsIn takes a row apart. ok is false unless all of it but a first cell is
// three pairs or more.
func pairsIn(f *look.Reader, row *sheet.Row) (id int, pairs []pair, ok bool) {
	cells := slices.DeleteFunc(slices.Clone(row.Cells), func(c sheet.Cell) bool { return look.Empty(&c) })
	isLabel := func(k int) bool {
		return k < len(cells) && cells[k].Kind == sheet.Text && !look.IsUnit(cells[k].Text) && f.Read(cells[k].Text).Role != column.None
	}
	k := 0
	if len(cells) > 0 && !isLabel(0) {
		id, k = int(cells[0].Col), 1
	}
	for k < len(cells) {
		if !isLabel(k) {
			return 0, nil, false
		}
		p := pair{label: cells[k]}
		k++
		if k < len(cells) && cells[k].Col == p.label.Col+1 {
			p.value = int(cells[k].Col)
			k++
			if k < len(cells) && cells[k].Kind == sheet.Text && look.IsUnit(cells[k].Text) && int(cells[k].Col) == p.value+1 {
				p.unit = int(cells[k].Col)
				k++
			}
		}
		pairs = append(pairs, p)
	}
	return id, pairs, len(pairs) >= 3
}

// FindPairs reads a sheet of cards in one row each.
func FindPairs(f *look.Reader) (tables []grid.Table, outside []grid.Furniture, ok bool) {
	if len(f.Sheet.Rows) > card.CardRows {
		return nil, nil, false
	}
	t := &grid.Table{Sheet: f.Sheet, Heads: []grid.Head{{Col: 1, Text: "trial"}}, Places: [][]grid.Place{nil}}
	p := pivot{Reader: f, t: t, heads: map[string]int{}}
	ids, values := 0, 0
	for i := range f.Sheet.Rows {
		row := &f.Sheet.Rows[i]
		id, pairs, is := pairsIn(f, row)
		if !is || len(pairs) > longHeads {
			kind := grid.Title
			if look.Filled(row.Cells) == 0 {
				kind = grid.Blank
			}
			if f.Look(row.Cells).Header() && look.Filled(row.Cells) > 2 {
				return nil, nil, false // an ordinary table
			}
			t.Furniture = append(t.Furniture, grid.Furniture{Row: row.Number, Kind: kind})
			continue
		}
		r := len(t.Rows)
		t.Rows = append(t.Rows, grid.Row{Number: row.Number, Hidden: row.Hidden, Struck: look.AllStruck(row.Cells), At: int32(i)})
		if id > 0 {
			ids++
			t.Heads[0].Col = id
			*p.at(0, r) = grid.At(i, id)
		}
		for _, pair := range pairs {
			if !p.put(i, r, pair) {
				return nil, nil, false
			}
			c := look.CellAt(row, pair.value)
			if _, number := look.Number(&c); number {
				values++
			}
		}
	}
	if len(t.Rows) == 0 || len(t.Rows)+1 < len(t.Furniture) || values < 2*len(t.Rows) {
		return nil, nil, false
	}
	return p.alternate(ids)
}

// put gives the value of a pair in row i of the sheet its place in row r of the
// table; false when the label comes twice in the row.
func (p *pivot) put(i, r int, pair pair) bool {
	text := strings.TrimSpace(pair.label.Text)
	h, known := p.heads[strings.ToLower(text)]
	if !known {
		h = len(p.t.Heads)
		p.heads[strings.ToLower(text)] = h
		head := grid.Head{Col: max(pair.value, int(pair.label.Col)), Row: p.Sheet.Rows[i].Number, Text: text, UnitCol: pair.unit}
		if c := look.CellAt(&p.Sheet.Rows[i], pair.unit); pair.unit > 0 {
			head.Unit = strings.TrimSpace(c.Text)
		}
		p.t.Heads = append(p.t.Heads, head)
		p.t.Places = append(p.t.Places, nil)
	}
	if p.at(h, r).At > 0 {
		return false
	}
	if pair.value > 0 {
		*p.at(h, r) = grid.At(i, pair.value)
	}
	return true
}

// alternate finishes the table; ids is how many rows have a first cell.
func (p *pivot) alternate(ids int) (tables []grid.Table, outside []grid.Furniture, ok bool) {
	t := p.t
	if ids == 0 {
		t.Heads, t.Places = t.Heads[1:], t.Places[1:]
	} else {
		t.Heads[0].Row = t.Rows[0].Number
	}
	for h := range t.Places {
		p.at(h, len(t.Rows)-1)
	}
	t.HeaderRow = t.Rows[0].Number
	cut := 0
	for cut < len(t.Furniture) && t.Furniture[cut].Row < t.HeaderRow {
		cut++
	}
	outside, t.Furniture = t.Furniture[:cut:cut], t.Furniture[cut:]
	t.ReadHeads()
	t.FillDown(p.Reader)
	t.Readings()
	mix, results := t.Looks()
	return []grid.Table{*t}, outside, mix+results >= 2
}
